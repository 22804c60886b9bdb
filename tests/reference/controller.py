"""What does the board's controller think and ask for at a tick?

Complementary filter, then P, D and I in amperes per degree with everything a profile may shape.
"""

import math

from electrics import NONE


class Estimator:
    """Pitch and pitch rate as the controller knows them [rad, rad/s]."""

    def __init__(self, shaping, dt, pitch):
        self.dt = dt
        self.alpha = shaping["blendTimeS"] / (shaping["blendTimeS"] + dt)
        corner = shaping.get("gyroLowPassHz")
        self.share = 1.0 if corner is None else 1 - math.exp(-2 * math.pi * corner * dt)
        self.pitch, self.rate = pitch, 0.0

    def step(self, gyro, forward, upward):
        """Takes one reading: gyro [rad/s], specific force along and off the deck [m/s2]."""
        leaning = -math.atan2(forward, upward)
        self.pitch = self.alpha * (self.pitch + gyro * self.dt) + (1 - self.alpha) * leaning
        self.rate += self.share * (gyro - self.rate)


class Law:
    """The control law of a profile with its memory; requests in amperes."""

    def __init__(self, profile, dt):
        gains, shaping = profile["gains"], profile["shaping"]
        self.dt = dt
        self.p, self.d, self.i = (gains[k] for k in ("proportionalAPerDeg", "rateAPerDegPerS", "integralAPerDegS"))
        self.progressive = shaping["progressiveStiffnessPerDeg"]
        self.limit = shaping["integralLimitA"]
        self.slew = shaping.get("slewLimitAPerS")
        self.trim = -math.radians(shaping["restTrimNoseUpDeg"])
        feed = shaping.get("loadFeedForward")
        self.load_share = 1 - math.exp(-dt / feed["filterTimeS"]) if feed else 0.0
        self.current_share = feed["currentShare"] if feed else 0.0
        self.up_per_ampere = math.radians(feed["noseUpDegPerA"]) if feed else 0.0
        self.lifting = shaping.get("headroomLift")
        self.load = self.integral = self.lift = self.request = self.wanted = 0.0
        self.headroom = 1.0
        self.set_point = self.trim

    def lift_goal(self, headroom):
        """Where the headroom lift wants to be [rad]."""
        if not self.lifting:
            return 0.0
        missing = 1 - headroom / (self.lifting["belowPercent"] / 100)
        return math.radians(self.lifting["upToDeg"]) * min(1.0, max(0.0, missing))

    def settle(self, current, headroom):
        """Sets the memory to rolling steadily at this current; returns the pitch that belongs to it [rad]."""
        self.load = self.request = current
        self.headroom = headroom
        self.lift = self.lift_goal(headroom)
        needed = current - self.current_share * current
        if self.i > 0:
            self.integral = min(self.limit, max(-self.limit, needed))
            needed -= self.integral
        self.set_point = self.trim - self.up_per_ampere * self.load - self.lift
        return self.set_point + math.radians(self.error_for(needed))

    def error_for(self, amperes):
        """Pitch error [deg] at which P, with progressive stiffness, asks for so much."""
        if amperes == 0:
            return 0.0
        plain = abs(amperes) / self.p
        s = self.progressive
        size = (math.sqrt(1 + 4 * s * plain) - 1) / (2 * s) if s > 0 else plain
        return math.copysign(size, amperes)

    def step(self, pitch, rate, limits):
        """The clamped request at this tick and the ceiling that cut it."""
        self.load += self.load_share * (self.request - self.load)
        if self.lifting:
            most = math.radians(self.lifting["rateDegPerS"]) * self.dt
            self.lift += min(most, max(-most, self.lift_goal(self.headroom) - self.lift))
        self.set_point = self.trim - self.up_per_ampere * self.load - self.lift
        error = math.degrees(pitch - self.set_point)
        asked = self.p * error * (1 + self.progressive * abs(error)) + self.d * math.degrees(rate) + self.integral
        asked += self.current_share * self.load
        wanted = asked
        if self.slew is not None:
            most = self.slew * self.dt
            wanted = min(self.request + most, max(self.request - most, asked))
        self.wanted = wanted
        (upper, upper_cause), (lower, lower_cause), _, _ = limits
        cause = upper_cause if wanted > upper else lower_cause if wanted < lower else NONE
        self.request = min(upper, max(lower, wanted))
        if not (asked - self.request) * error > 0:
            grown = self.integral + self.i * error * self.dt
            self.integral = min(self.limit, max(-self.limit, grown))
        return self.request, cause
