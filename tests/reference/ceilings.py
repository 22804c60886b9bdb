"""Which ceilings on motor current, and which pack currents, belong to given rigs?

Draws rigs by a seed, finds their limits as halving.py does, and writes them, rounded to doubles, to ceilings.json.

    /usr/bin/python3 ceilings.py            writes ceilings.json
    /usr/bin/python3 ceilings.py --check    computes it again; exits 1 and lists what differs
"""

import math
import random
import sys
from collections import Counter
from pathlib import Path

sys.dont_write_bytecode = True  # leave no cache beside the sources

import mpmath as mp

from drift import write_or_check
from halving import Rig

FILE = Path(__file__).with_name("ceilings.json")
ORDER = (
    "torqueConstantNmPerA motorOhm packOhm openV modulationRatio dischargeCurrentA chargeCurrentA "
    "driveCurrentA brakeCurrentA motorSpeedRadPerS"
).split()
PACK_ORDER = "torqueConstantNmPerA motorOhm packOhm openV motorSpeedRadPerS motorCurrentA".split()


def digits(value, count=5):
    """A number with few digits, so that the file shows just what was computed with."""
    return float(f"{value:.{count}g}")


def between(chance, low, high):
    """Evenly on a logarithmic scale."""
    return digits(low * (high / low) ** chance.random())


def drawn(chance, kind, way):
    """One rig; `way` is which way the motor turns."""
    ohm = between(chance, 0.02, 0.8)
    volts = between(chance, 20, 130)
    rig = {
        "torqueConstantNmPerA": between(chance, 0.1, 2.5),
        "motorOhm": ohm,
        "packOhm": between(chance, 0.01, 0.4),
        "openV": volts,
        "modulationRatio": digits(0.8 + 0.2 * chance.random()),
        "dischargeCurrentA": between(chance, 10, 120),
        "chargeCurrentA": between(chance, 2, 40),
        "driveCurrentA": between(chance, 30, 200),
        "brakeCurrentA": between(chance, 20, 150),
    }
    share = 0.05 + 0.9 * chance.random()
    if kind == "standing":
        share = 0
    if kind == "weak pack":
        rig |= {"packOhm": digits(ohm * between(chance, 2, 60)), "driveCurrentA": 900, "brakeCurrentA": 900}
    if kind == "matched pack":
        # A duty of sqrt(R_m / R) or more below full modulation, and a pack whose rating is past its matched load.
        weak = digits(ohm * between(chance, 8, 60))
        rig |= {"packOhm": weak, "driveCurrentA": 5000, "brakeCurrentA": 5000}
        rig["dischargeCurrentA"] = digits(volts / weak * (0.6 + chance.random()))
        share = 0.3 * chance.random()
    if kind == "little charging":
        rig["chargeCurrentA"] = chance.choice([0, 0.001, between(chance, 0.001, 1)])
    if kind == "fast":
        share = 0.9 + 0.09 * chance.random()
        rig |= {"dischargeCurrentA": between(chance, 60, 400), "chargeCurrentA": between(chance, 1, 400)}
    if kind == "above no-load":
        share = 1.02 + 1.5 * chance.random() ** 2
        rig["chargeCurrentA"] = between(chance, 0.5, 400)
    if kind == "open ceilings":
        rig |= {"driveCurrentA": 5000, "brakeCurrentA": 5000, "dischargeCurrentA": 900, "chargeCurrentA": 900}
        rig["packOhm"] = digits(ohm * between(chance, 0.01, 0.5))
    no_load = rig["modulationRatio"] * rig["openV"] / rig["torqueConstantNmPerA"]
    return rig | {"motorSpeedRadPerS": digits(way * share * no_load) if share else 0}


KINDS = {
    "usual": 40,
    "standing": 20,
    "weak pack": 40,
    "matched pack": 20,
    "little charging": 40,
    "fast": 40,
    "above no-load": 40,
    "open ceilings": 40,
}
# Ties whose every step is exact in binary: brake and drive with pack out at 80 A, pack out with voltage at 20 A.
TIES = ([1, 0.25, 0.5, 90, 0.95, 20, 10, 80, 80, 0], [1, 1, 4, 80, 0.75, 40, 10, 500, 500, 0])
PACKS = (
    [0.6, 0.1, 0.12, 60, 55, 40],
    [0.6, 0.1, 0.12, 60, 55, -40],
    [0.6, 0.1, 0.12, 60, -55, -12.5],
    [0.6, 0.1, 0.12, 60, -55, 300],
    [0.45, 0.2, 1.5, 48, 10, 24],
    [1.1, 0.05, 0.3, 100, 30, 0.25],
    [1.1, 0.05, 0.3, 100, 0, -70],
)


def pack_case(given):
    rig = Rig(dict(zip(PACK_ORDER, given)))
    current = rig.pack_current(rig.power(mp.mpf(float(given[-1]))))
    return {"given": given, "packCurrentA": float(current), "packV": float(rig.open - current * rig.pack_ohm)}


def case(kind, rig):
    (upper, above), (lower, below) = Rig(rig).limits()
    assert math.isfinite(upper) and math.isfinite(lower)
    return {
        "kind": kind,
        "given": [rig[name] for name in ORDER],
        "limitsA": [float(upper), float(lower)],
        "upperNames": above,
        "lowerNames": below,
    }


def everything():
    chance = random.Random(20)
    cases = [
        case(kind, drawn(chance, kind, 1 if k % 2 else -1)) for kind, count in KINDS.items() for k in range(count)
    ]
    cases += [case("tie in binary", dict(zip(ORDER, given))) for given in TIES]
    for side in ("upperNames", "lowerNames"):
        print(side, dict(Counter(" = ".join(c[side]) for c in cases)))
    return {
        "what": "Ceilings on motor current, and pack currents; made by ceilings.py, do not edit",
        "givenOrder": ORDER,
        "cases": cases,
        "packGivenOrder": PACK_ORDER,
        "packs": [pack_case(list(given)) for given in PACKS],
    }


if __name__ == "__main__":
    sys.exit(write_or_check(FILE, everything()))
