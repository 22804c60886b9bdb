"""What do motor and pack allow, and what is left of the pack?

The motor as the equivalent direct-current machine, the pack as an open-circuit voltage behind a resistance.
"""

import math

import numpy as np

NONE, DRIVE, BRAKE, VOLTAGE, PACK_OUT, PACK_IN = range(6)
CEILINGS = ("none", "drive", "brake", "voltage", "pack out", "pack in")


class Electrics:
    """Motor and pack of a board, under the ceilings of a profile."""

    def __init__(self, board, shaping):
        motor, pack = board["motor"], board["pack"]
        self.torque_constant = motor["torqueConstantNmPerA"]
        self.motor_ohm = motor["resistanceOhm"]
        self.lag = motor["currentLagMs"] / 1000
        self.drive = min(motor["driveCurrentA"], shaping.get("driveCeilingA", math.inf))
        self.brake = min(motor["brakeCurrentA"], shaping.get("brakeCeilingA", math.inf))
        series, parallel = pack["seriesCells"], pack["parallelCells"]
        self.pack_ohm = pack["cellResistanceMilliohm"] / 1000 * series / parallel
        self.capacity = pack["cellCapacityAh"] * 3600 * parallel
        self.most_out, self.most_in = pack["dischargeCurrentA"], pack["chargeCurrentA"]
        points = pack["openCircuit"]
        self.volts = series * np.interp(
            range(101), [p["chargePercent"] for p in points], [p["cellV"] for p in points]
        )
        self.modulation = board["controller"]["modulationRatio"]

    def open_circuit(self, charge):
        """Pack voltage without load, at a charge of 0 to 1."""
        return float(np.interp(100 * charge, range(101), self.volts))

    def load(self, open_volts, current, wheel_rate):
        """(pack current, terminal voltage) while the motor carries `current`."""
        power = self.torque_constant * current * wheel_rate + current**2 * self.motor_ohm
        root = math.sqrt(max(0.0, open_volts**2 - 4 * self.pack_ohm * power))
        pack_current = (open_volts - root) / (2 * self.pack_ohm)
        return pack_current, open_volts - pack_current * self.pack_ohm

    def ceilings(self, open_volts, wheel_rate):
        """((upper, cause), (lower, cause), full upper, full lower) on the requested motor current."""
        ohm, pack_ohm = self.motor_ohm, self.pack_ohm
        forward = wheel_rate >= 0
        full_up, full_down = (self.drive, self.brake) if forward else (self.brake, self.drive)
        upper = (full_up, DRIVE if forward else BRAKE)
        lower = (-full_down, BRAKE if forward else DRIVE)
        e = self.torque_constant * wheel_rate

        out = min(self.most_out, open_volts / (2 * pack_ohm))
        root = math.sqrt(e * e + 4 * ohm * (open_volts - out * pack_ohm) * out)
        upper = min(upper, ((root - e) / (2 * ohm), PACK_OUT), key=lambda c: c[0])
        lower = max(lower, ((-root - e) / (2 * ohm), PACK_OUT), key=lambda c: c[0])

        inward = (open_volts + self.most_in * pack_ohm) * self.most_in
        if e * e > 4 * ohm * inward:
            root = math.sqrt(e * e - 4 * ohm * inward)
            if e > 0:
                lower = max(lower, ((root - e) / (2 * ohm), PACK_IN), key=lambda c: c[0])
            else:
                upper = min(upper, ((-root - e) / (2 * ohm), PACK_IN), key=lambda c: c[0])

        matched = math.sqrt(e * e + open_volts**2 * ohm / pack_ohm)
        up = min(self.modulation, (matched + e) / open_volts)
        down = min(self.modulation, (matched - e) / open_volts)
        most = (up * open_volts - e) / (ohm + up * up * pack_ohm)
        least = (-down * open_volts - e) / (ohm + down * down * pack_ohm)
        upper = min(upper, (most, VOLTAGE), key=lambda c: c[0])
        lower = max(lower, (least, VOLTAGE), key=lambda c: c[0])
        if lower[0] > upper[0]:
            meet = upper[0] if forward else lower[0]
            upper = lower = (meet, VOLTAGE)
        return upper, lower, full_up, full_down

    def headroom(self, request, limits):
        """What is left below the nearest ceiling, as a share of the full one, 0 to 1."""
        (upper, _), (lower, _), full_up, full_down = limits
        return min(1.0, max(0.0, min((upper - request) / full_up, (request - lower) / full_down)))
