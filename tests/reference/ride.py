"""How do whole rides go: sampled controller, late rider, pack and plant together, noise off?

Reads cases.json, writes rides.json; every equation of motion comes from equations.py, nothing from the TypeScript.

    /usr/bin/python3 ride.py [name...]            writes the file (all cases; with names only prints those)
    /usr/bin/python3 ride.py --check [name...]    rides again; exits 1 when anything stored has drifted (drift.py)

A row stands for a tick, after everything of the tick but the integration to the next one; every column of the
program's own tape is there. A ride that falls has no row for the tick at which it is found fallen.
"""

import json
import math
import sys
import time
from collections import deque
from pathlib import Path

sys.dont_write_bytecode = True  # leave no cache beside the sources

import drift
from balance import Balance
from controller import Estimator, Law
from electrics import CEILINGS, NONE, Electrics
from ending import Ending
from equations import GRAVITY
from plant import Plant, rig_numbers
from road import Road
from start import begin

HERE = Path(__file__).parent
CASES, RIDES = HERE / "cases.json", HERE / "rides.json"
ROW_S = 0.02
DRIFT = 1e-9
DIGITS = 12  # significant ones in the rows: far more than any comparison asks for
COLUMNS = (
    "timeS pitchRad pitchRateRadPerS leanRad leanRateRadPerS legLengthM positionM axleHeightM speedMPerS "
    "wheelRateRadPerS estimatedPitchRad setPointRad askedCurrentA requestedCurrentA currentA upperCeilingA "
    "lowerCeilingA bindingCeiling headroomShare packV packCurrentA chargeShare riderTorqueNm riderTorqueLimitNm "
    "feetAccelerationMPerS2 wheelLoadN treadForceN integralA"
).split()


def speed_at(points, time_s):
    """Speed wanted then [m/s]: straight between the points, constant outside."""
    before = points[0]
    for after in points:
        if time_s < after["atS"]:
            if after is before:
                break
            part = (time_s - before["atS"]) / (after["atS"] - before["atS"])
            return (before["speedKmPerH"] + part * (after["speedKmPerH"] - before["speedKmPerH"])) / 3.6
        before = after
    return before["speedKmPerH"] / 3.6


def active(spell, time_s):
    return spell["atS"] - 1e-9 <= time_s < spell["atS"] + spell["forS"] - 1e-9


def shove_at(shoves, time_s):
    return float(sum(s["forwardN"] for s in shoves if active(s, time_s)))


def nose_down_at(shifts, time_s):
    """Torque with which the script pushes the nose down [Nm]."""
    total = 0.0
    for shift in shifts:
        if active(shift, time_s):
            turn = 2 * math.pi * shift["frequencyHz"] * (time_s - shift["atS"])
            total += shift["noseDownNm"] * (math.sin(turn) if shift["frequencyHz"] > 0 else 1.0)
    return total


class Ride:
    """One case, ticked to its end."""

    def __init__(self, case):
        self.scenario, board, profile = case["scenario"], case["board"], case["profile"]
        self.rate_hz = board["controller"]["loopRateHz"]
        self.dt = 1 / self.rate_hz
        self.rig = rig_numbers(board, case["rider"])
        self.road = Road(self.scenario["road"], self.rig["wheelRadiusM"])
        self.plant = Plant(self.rig, self.road)
        self.electrics = Electrics(board, profile["shaping"])
        self.law = Law(profile, self.dt)
        self.balance = Balance(case["rider"], self.rig, self.dt)
        parts = {"electrics": self.electrics, "law": self.law, "balance": self.balance}
        self.state, self.current, self.held = begin(case, self.rig, self.road, parts)
        self.first_state = list(self.state)
        self.charge = self.scenario["chargePercent"] / 100
        self.estimator = Estimator(profile["shaping"], self.dt, self.state[3])
        self.queue = deque([self.current] * board["controller"]["delayTicks"])
        self.ending = Ending(board["deck"], self.rig, math.radians(case["rider"]["balance"]["leanLimitDeg"]))
        self.rows, self.least_load, self.air_ticks, self.longest_air = [], math.inf, 0, 0
        self.cuts = [[NONE, 0]]  # which ceiling cut, and from which tick on
        self.grip_ticks, self.least_clearance = 0, math.inf

    def sense(self):
        """Rates and forces now, inputs as held up to now; brings the shear back to what grip can hold."""
        torque = self.electrics.torque_constant * self.current
        rates, forces = self.plant.derive(self.state, torque, self.held)
        most = self.held[2] * forces[0] / self.rig["treadStiffnessNPerM"]
        if abs(self.state[12]) > most:
            self.state[12] = math.copysign(most, self.state[12])
            self.grip_ticks += 1
            rates, forces = self.plant.derive(self.state, torque, self.held)
        return rates, forces

    def tick(self, k, last):
        """One turn of the loop, and the integration to the next tick unless it is the last one."""
        now, row_ticks = k / self.rate_hz, round(ROW_S * self.rate_hz)
        rates, (load, tread, legs, feet) = self.sense()
        x, z, _, theta, phi, leg, speed, _, psi_d, theta_d, phi_d, _, _ = self.state
        ankle = self.rig["ankleAboveAxleM"]
        upward = rates[7] + GRAVITY
        self.estimator.step(
            theta_d,
            rates[6] * math.cos(theta) - upward * math.sin(theta),
            rates[6] * math.sin(theta) + upward * math.cos(theta),
        )
        wheel_rate = psi_d - theta_d
        open_volts = self.electrics.open_circuit(self.charge)
        pack_current, pack_volts = self.electrics.load(open_volts, self.current, wheel_rate)
        limits = self.electrics.ceilings(open_volts, wheel_rate)
        request, cause = self.law.step(self.estimator.pitch, self.estimator.rate, limits)
        self.law.headroom = self.electrics.headroom(request, limits)
        self.queue.append(request)
        followed = self.queue.popleft()
        rider_torque = self.balance.step(
            (phi, phi_d, speed),
            speed_at(self.scenario["speeds"], now),
            nose_down_at(self.scenario["shifts"], now),
        )
        self.held = (rider_torque, shove_at(self.scenario["shoves"], now)) + self.road.surface(x)
        if k % row_ticks == 0:
            estimate, law, ((upper, _), (lower, _), _, _) = self.estimator, self.law, limits
            row = [now, theta, theta_d, phi, phi_d, leg, x, z, speed, psi_d, estimate.pitch, law.set_point]
            row += [law.wanted, request, self.current, upper, lower, cause, law.headroom, pack_volts, pack_current]
            row += [self.charge, feet, legs * self.plant.half_stance]
            row += [rates[7] - ankle * (rates[9] * math.sin(theta) + theta_d**2 * math.cos(theta))]
            row += [load, tread, law.integral]
            self.rows.append([float(f"{value:.{DIGITS}g}") for value in row])
        self.watch(load, cause, k)
        if not last:
            self.move(followed, pack_current)

    def move(self, followed, pack_current):
        """Integrates to the next tick; the current follows its request exactly."""
        gap, lag, constant = self.current - followed, self.electrics.lag, self.electrics.torque_constant

        def current_at(since):
            return followed + (gap * math.exp(-since / lag) if lag > 0 else 0.0)

        self.state = self.plant.advance(self.state, self.dt, lambda since: constant * current_at(since), self.held)
        self.current = current_at(self.dt)
        self.charge -= pack_current * self.dt / self.electrics.capacity

    def watch(self, load, cause, k):
        """Keeps what the summary of the ride is made of."""
        self.least_load = min(self.least_load, load)
        if cause != self.cuts[-1][0]:
            self.cuts.append([cause, k])
        self.air_ticks = self.air_ticks + 1 if load == 0 else 0
        self.longest_air = max(self.longest_air, self.air_ticks)

    def run(self):
        """Rides to the end of the scenario or to a fall: how it ended, and the tick at which that was seen."""
        ticks = round(self.scenario["durationS"] * self.rate_hz)
        for k in range(ticks + 1):
            self.tick(k, k == ticks)
            end, clearance = self.ending.of(self.state, self.road)
            self.least_clearance = min(self.least_clearance, clearance)
            if end is not None and k < ticks:
                return end, k + 1
        return "upright", ticks


def ride(case):
    """The stored form of a case's ride."""
    began = time.perf_counter()
    one = Ride(case)
    end, tick = one.run()
    result = {
        "name": case["name"],
        "end": end,
        "endTick": tick,
        "leastWheelLoadN": one.least_load,
        "longestInTheAirS": one.longest_air * one.dt,
        "ticksShearBroughtBack": one.grip_ticks,
        "leastTipClearanceM": one.least_clearance,
        "cutsFromTick": one.cuts,
        "firstState": one.first_state,
        "rows": one.rows,
    }
    print(f"{case['name']}: {end} at tick {tick}, {time.perf_counter() - began:.1f} s", flush=True)
    return result


def whole(rides):
    """What the file holds, for these rides."""
    what = "Whole rides, noise off, made from cases.json by ride.py; do not edit"
    return {"what": what, "columns": list(COLUMNS), "ceilings": list(CEILINGS), "rides": rides}


def main():
    names = [word for word in sys.argv[1:] if not word.startswith("-")]
    cases = json.loads(CASES.read_text(encoding="utf-8"))["cases"]
    unknown = set(names) - {case["name"] for case in cases}
    if unknown:
        print(f"no case of the name {', '.join(sorted(unknown))}")
        return 1
    rides = [ride(case) for case in cases if not names or case["name"] in names]
    if names and "--check" not in sys.argv[1:]:
        return 0
    return drift.write_or_check(RIDES, whole(rides), DRIFT, lambda stored: only(stored, names))


def only(stored, names):
    """What is stored, of the named rides alone where there are names."""
    return {**stored, "rides": [one for one in stored["rides"] if not names or one["name"] in names]}


if __name__ == "__main__":
    sys.exit(main())
