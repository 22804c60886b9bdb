"""How do the rates change about two operating points: standing on the level, cruising up a grade?

The balance is found with many digits and rounded to doubles; A and B are the symbolic derivatives of equations.py,
force laws away from their corners, at just those doubles. They are held against central differences as well.
"""

import mpmath as mp
import sympy as sp

import equations as eq
from precise import constants_of, derive, exact

STEADY_RIG = {
    "wheelRadiusM": 0.14,
    "wheelInertiaKgM2": 0.055,
    "verticalStiffnessNPerM": 70000.0,
    "verticalDampingNSPerM": 350.0,
    "treadStiffnessNPerM": 60000.0,
    "treadDampingNSPerM": 300.0,
    "wheelMassKg": 6.0,
    "deckMassKg": 8.0,
    "deckInertiaKgM2": 0.42,
    "deckForwardM": 0.015,
    "deckAboveAxleM": -0.02,
    "ankleAboveAxleM": 0.03,
    "riderMassKg": 78.0,
    "riderInertiaKgM2": 12.5,
    "legLengthM": 0.94,
    "halfDragAreaKgPerM": 0.3,
    "legStiffnessNPerM": 14000.0,
    "legDampingNSPerM": 900.0,
    "halfStanceM": 0.25,
    "passiveStiffnessNmPerRad": 120.0,
    "passiveDampingNmSPerRad": 8.0,
}
LEVEL = {"slope": 0.0, "heightM": 0.0}
GRADE = {"slope": 0.05, "heightM": 0.0}
STEADY = {
    "standing": {"speed": 0.0, "theta": 0.0, "road": LEVEL, "grip": 0.65, "rolling": 0.015},
    "cruising": {"speed": 6.0, "theta": -0.02, "road": GRADE, "grip": 0.65, "rolling": 0.015},
}


def jacobians():
    """Function (state, inputs, constants, slope, height, accelerations) -> rows of d rates / d (state, torques)."""
    height = sp.Symbol("height", real=True)
    accelerations = sp.Matrix(sp.symbols("a:6", real=True))
    forces = dict(zip(eq.limited_symbols, list(eq.smooth.values())[1:]))
    enveloped = {eq.h_c: height + eq.slope * eq.x + eq.r * (sp.sqrt(1 + eq.slope**2) - 1)}
    push = eq.push.subs(forces).subs(enveloped)
    by = list(eq.state) + [eq.tau, eq.tau_rider]
    # mass * qdd = push, so mass * d qdd = d push - (d mass) * qdd
    right = push.jacobian(by) - sp.Matrix.hstack(*[eq.mass.diff(v) * accelerations for v in by])
    slip = sp.Matrix([eq.slip]).jacobian(by)
    arguments = [eq.state, eq.inputs, eq.CONSTANTS, (eq.slope, height), list(accelerations)]
    return sp.lambdify(arguments, [list(eq.mass), list(right), list(slip)], "mpmath", cse=True)


def operating_point(name, jacobian):
    """Balance found with many digits, rounded to doubles; A and B about those doubles."""
    wish, rig = STEADY[name], STEADY_RIG
    slope = mp.mpf(wish["road"]["slope"])
    root = mp.sqrt(1 + slope**2)
    speed = mp.mpf(wish["speed"])
    total = sum(rig[part] for part in ("wheelMassKg", "deckMassKg", "riderMassKg")) * mp.mpf(eq.GRAVITY)

    def state_of(z, phi, length, shear):
        still = [mp.mpf(0)] * 3
        wheel_rate = speed * root / mp.mpf(rig["wheelRadiusM"])
        place = [mp.mpf(0), z, mp.mpf(0), mp.mpf(wish["theta"]), phi, length]
        return place + [speed, slope * speed, wheel_rate, *still, shear]

    def given(motor, rider):
        return [motor, rider, mp.mpf(0), mp.mpf(wish["grip"]), mp.mpf(wish["rolling"])]

    def unrest(z, phi, length, shear, motor, rider):
        rates, _, _ = derive(rig, wish["road"], given(motor, rider), state_of(z, phi, length, shear), clamp=False)
        return rates[6:12]

    pull = total * slope
    first = (
        rig["wheelRadiusM"] - total / rig["verticalStiffnessNPerM"],
        mp.mpf(0),
        mp.mpf(rig["legLengthM"]),
        pull / rig["treadStiffnessNPerM"],
        pull * rig["wheelRadiusM"],
        mp.mpf(0),
    )
    balance = mp.findroot(unrest, first, tol=1e-60, maxsteps=60)
    found = [mp.mpf(float(mp.chop(v, 1e-30))) for v in balance]
    # The rate of the wheel is rounded too, so that the file holds just what A and B were made from.
    state, inputs = exact(state_of(*found[:4])), given(*found[4:])
    rates, forces, laws = derive(rig, wish["road"], inputs, state)
    assert forces == tuple(laws[1:]), f"{name}: a force is at a corner of its law"
    assert max(abs(v) for v in rates[6:]) < 1e-9, f"{name}: not at rest"
    mass, right, slip = jacobian(state, inputs, constants_of(rig), exact([slope, 0]), rates[6:12])
    mass = mp.matrix([mass[6 * i : 6 * i + 6] for i in range(6)])
    turned = mp.inverse(mass) * mp.matrix([right[15 * i : 15 * i + 15] for i in range(6)])
    rows = [[mp.mpf(j == i + 6) for j in range(15)] for i in range(6)]
    rows += [[turned[i, j] for j in range(15)] for i in range(6)] + [slip]
    differ = against_differences(rig, wish["road"], inputs, state, rows)
    assert differ < 1e-15, f"{name}: A and B differ from central differences by {mp.nstr(differ, 3)}"
    return {
        "name": name,
        "rig": rig,
        "road": wish["road"],
        "inputs": dict(zip(eq.INPUT_NAMES, [float(v) for v in inputs])),
        "state": [float(v) for v in state],
        "derivative": [float(v) for v in rates],
        "A": [[float(v) for v in row[:13]] for row in rows],
        "B": [[float(v) for v in row[13:]] for row in rows],
    }, differ


def against_differences(rig, road, inputs, state, rows):
    """Largest difference of A, B from central differences with 50 digits, relative to the largest entry of the row."""
    step, worst = mp.mpf("1e-12"), mp.mpf(0)
    for column in range(15):
        sides = []
        for sign in (1, -1):
            here, given = list(state), list(inputs)
            if column < 13:
                here[column] += sign * step
            else:
                given[column - 13] += sign * step
            sides.append(derive(rig, road, given, here, clamp=False)[0])
        for row in range(13):
            slope = (sides[0][row] - sides[1][row]) / (2 * step)
            worst = max(worst, abs(slope - rows[row][column]) / max(abs(v) for v in rows[row]))
    return worst
