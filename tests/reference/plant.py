"""How does the rig move between two ticks?

The equations of equations.py as plain functions, integrated with SciPy's DOP853 at 1e-12, started anew at each tick.
Where the road bends it is started anew at each knot of the road as well, and runs on that stretch's own cubic: the
bend of the path jumps at the knots, and a step that spans such a jump errs by a thousand times its tolerance.
"""

import numpy as np
from scipy.integrate import DOP853

import equations as eq

TOLERANCE = 1e-12
NEAR_M = 1e-13
AIR_DENSITY = 1.2  # kg/m3
LAWS, MOTION = eq.compiled("math")


def rig_numbers(board, rider):
    """The rig of equations.py from a board and a rider."""
    wheel, tyre, deck = board["wheel"], board["tyre"], board["deck"]
    body, stance = rider["body"], rider["stance"]
    return {
        "wheelRadiusM": wheel["radiusM"],
        "wheelInertiaKgM2": wheel["inertiaKgM2"],
        "verticalStiffnessNPerM": tyre["verticalStiffnessNPerM"],
        "verticalDampingNSPerM": tyre["verticalDampingNSPerM"],
        "treadStiffnessNPerM": tyre["longitudinalStiffnessNPerM"],
        "treadDampingNSPerM": tyre["longitudinalDampingNSPerM"],
        "wheelMassKg": wheel["massKg"],
        "deckMassKg": deck["massKg"],
        "deckInertiaKgM2": deck["inertiaKgM2"],
        "deckForwardM": deck["centreForwardM"],
        "deckAboveAxleM": deck["centreAboveAxleM"],
        "ankleAboveAxleM": deck["ankleLineAboveAxleM"],
        "riderMassKg": body["massKg"],
        "riderInertiaKgM2": body["inertiaKgM2"],
        "legLengthM": body["centreAboveAnkleM"],
        "halfDragAreaKgPerM": AIR_DENSITY * body["dragAreaM2"] / 2,
        "legStiffnessNPerM": stance["legStiffnessNPerM"],
        "legDampingNSPerM": stance["legDampingNSPerM"],
        "halfStanceM": stance["widthM"] / 2,
        "passiveStiffnessNmPerRad": stance["passiveStiffnessNmPerRad"],
        "passiveDampingNmSPerRad": stance["passiveDampingNmSPerRad"],
    }


class Plant:
    """One rig on one road."""

    def __init__(self, rig, road):
        self.road = road
        self.half_stance = rig["halfStanceM"]
        self.constants = tuple(rig[name] for name in eq.rig) + (eq.GRAVITY,)
        self.evaluations = 0

    def derive(self, state, torque, held, cell=None):
        """(13 rates, (N, T, F_l, tau_c)) with a motor torque and the held (rider torque, shove, grip, rolling)."""
        self.evaluations += 1
        under = self.road.under(state[0], cell)
        inputs = (torque,) + held
        forces = eq.limited(LAWS(state, under, inputs, self.constants), held[2], self.half_stance)
        out = MOTION(state, under, inputs, forces, self.constants)
        accelerations = np.linalg.solve(np.array(out[:36]).reshape(6, 6), np.array(out[36:42]))
        rates = np.empty(13)
        rates[:6] = state[6:12]
        rates[6:12] = accelerations
        rates[12] = out[42]
        return rates, forces

    def advance(self, state, dt, torque_at, held):
        """The state after dt; torque_at(time since the tick) is the motor torque."""
        since, cell = 0.0, self.road.cell(state[0])

        def go(begin, end):
            """The state at `end` from the present one at `begin`."""
            if end <= begin:
                return state

            def rates(time, here):
                return self.derive(here.tolist(), torque_at(time), held, cell)[0]

            solver = DOP853(rates, begin, np.array(state), end, rtol=TOLERANCE, atol=TOLERANCE)
            while solver.status == "running":
                failed = solver.step()
                if failed:
                    raise RuntimeError(failed)
            return solver.y.tolist()

        while True:
            end = go(since, dt)
            reached = self.road.cell(end[0])
            if reached == cell or self.road.straight(cell, reached):
                return end
            onward = 1 if reached > cell else -1
            knot = self.road.edge(cell + (onward > 0))
            since, state = self.meet(knot, go, (since, dt), (state, end))
            cell += onward

    @staticmethod
    def meet(knot, go, span, ends):
        """(time, state) at which the axle is above a knot between the two ends of a span: Newton's method."""
        (begin, stop), (state, end) = span, ends
        time = begin + (stop - begin) * (knot - state[0]) / (end[0] - state[0])
        for _ in range(20):
            there = go(begin, min(stop, max(begin, time)))
            miss = knot - there[0]
            if abs(miss) < NEAR_M:
                break
            time += miss / there[6]
        return min(stop, max(begin, time)), there
