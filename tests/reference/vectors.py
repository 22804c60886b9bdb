"""What accelerations and Jacobians belong to given states of the rig?

Evaluates the equations of equations.py with 50 digits from the exact binary values of the inputs and writes them,
rounded to doubles, to vectors.json: single states on a plane road, and A, B about two operating points.

    /usr/bin/python3 vectors.py            writes the file
    /usr/bin/python3 vectors.py --check    computes it again; exits 1 and lists what differs

The plane road has height `heightM` at x = 0; the path enveloped by a round tyre on it is
h_c(x) = heightM + slope x + r (sqrt(1 + slope^2) - 1). The rate of u is r psi' - v_t, on the road and in the air.
"""

import sys
from collections import Counter
from pathlib import Path

sys.dont_write_bytecode = True  # leave no cache beside the sources

import mpmath as mp

import equations as eq
import operating_points
import states
from drift import write_or_check

FILE = Path(__file__).with_name("vectors.json")
STATE_ORDER = "x z psi theta phi l xRate zRate psiRate thetaRate phiRate lRate u".split()


def everything():
    cases, worst = states.single_states()
    seen = Counter(f"{part} {what}" for case in cases for part, what in case["where"].items())
    print(f"{len(cases)} states, worst left-over of Newton and Euler {mp.nstr(worst, 3)}; {dict(seen)}")
    jacobian = operating_points.jacobians()
    points = []
    for name in operating_points.STEADY:
        point, differ = operating_points.operating_point(name, jacobian)
        print(f"{name}: A, B within {mp.nstr(differ, 3)} of central differences")
        points.append(point)
    return {
        "what": "Rates of the state and Jacobians of the rig on a plane road; made by vectors.py, do not edit",
        "gravityMPerS2": eq.GRAVITY,
        "stateOrder": STATE_ORDER,
        "columnsOfB": ["motorTorqueNm", "riderTorqueNm"],
        "cases": cases,
        "operatingPoints": points,
    }


if __name__ == "__main__":
    sys.exit(write_or_check(FILE, everything()))
