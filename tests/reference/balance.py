"""How does the rider keep his balance and his speed?

He senses lean, lean rate and speed late, holds an inner loop on the lean and an outer one on the speed.
"""

import math

from equations import GRAVITY

MOST_TRIM = 0.25  # rad


class Balance:
    """The rider's feedback with its memory."""

    def __init__(self, rider, rig, dt):
        skill, pace = rider["balance"], rider["pace"]
        self.dt = dt
        self.delay_ticks = skill["delayS"] / dt
        self.drive, self.brake = pace["driveMPerS2"], pace["brakeMPerS2"]
        self.speed_time, self.trim_time, self.smoothing = (
            pace["speedTimeS"], pace["trimTimeS"], pace["smoothingRadPerS"],
        )  # fmt: skip
        m, length, r = rig["riderMassKg"], rig["legLengthM"], rig["wheelRadiusM"]
        total = m + rig["deckMassKg"] + rig["wheelMassKg"]
        inertia = rig["riderInertiaKgM2"] + m * length**2
        give = 1 + m * length / (r * (total + rig["wheelInertiaKgM2"] / r**2))
        w, zeta = skill["frequencyRadPerS"], skill["dampingRatio"]
        self.stiffness = (m * GRAVITY * length + inertia * w**2) / give
        self.damping = 2 * zeta * w * inertia / give
        self.kappa = total * r / (m * length)
        self.torque_per_acceleration = total * r
        self.trim = self.smooth = self.smooth_rate = 0.0
        self.samples, self.first, self.speed_before = [], None, None

    def begin(self, lean, speed, trim):
        """Before the start everything was as at the start."""
        self.first = (lean, 0.0, speed)
        self.speed_before = speed
        self.trim = trim

    def late(self):
        """(lean, lean rate, speed) as they reach him now; straight between ticks."""
        whole = math.floor(self.delay_ticks)
        part = self.delay_ticks - whole
        newest = len(self.samples) - 1

        def at(tick):
            return self.samples[tick] if tick >= 0 else self.first

        return [(1 - part) * a + part * b for a, b in zip(at(newest - whole), at(newest - whole - 1))]

    def step(self, sensed, wanted_speed, nose_down):
        """Active torque [Nm] of this tick from (lean, lean rate, speed) of now; then one tick on."""
        self.samples.append(sensed)
        lean, lean_rate, speed = self.late()
        kappa, dt = self.kappa, self.dt
        error = wanted_speed - speed
        wished = error / self.speed_time
        asked = min(self.drive, max(-self.brake, wished))

        insisting = self.smooth * asked > 0.9 * asked**2
        straying = insisting and wished * (speed - self.speed_before) < 0
        held = asked != wished and wished * self.trim >= 0 and not straying
        self.speed_before = speed
        by = asked * self.speed_time if straying else error
        drift = 0.0 if held else (1 + kappa) / (GRAVITY * self.speed_time * self.trim_time) * by
        trim_next = min(MOST_TRIM, max(-MOST_TRIM, self.trim + drift * dt))
        trim_rate = (trim_next - self.trim) / dt

        a, a_rate = self.smooth, self.smooth_rate
        reference = (1 + kappa) * math.atan(a / GRAVITY) + self.trim
        reference_rate = (1 + kappa) * a_rate / (GRAVITY * (1 + (a / GRAVITY) ** 2)) + trim_rate
        torque = -self.torque_per_acceleration * a - self.stiffness * (lean - reference)
        torque -= self.damping * (lean_rate - reference_rate) + nose_down

        self.trim = trim_next
        w = self.smoothing
        away, fade = a - asked, math.exp(-w * dt)
        slope = a_rate + w * away
        self.smooth = asked + (away + slope * dt) * fade
        self.smooth_rate = (a_rate - w * slope * dt) * fade
        return torque
