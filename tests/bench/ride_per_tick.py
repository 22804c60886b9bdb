"""How fast does a ride go when SciPy's `solve_ivp` carries it from tick to tick?

The ride is the one of tests/reference/ride.py, equations, controller and rider included; only the integration between
two ticks is exchanged: `solve_ivp` with DOP853 at 1e-12, begun anew at every tick and at no knot of the road.

    python3 ride_per_tick.py CASE.json    a case as in tests/reference/cases.json; prints one object of JSON
"""

import json
import sys
import time
from pathlib import Path

sys.dont_write_bytecode = True  # leave no cache beside the sources
sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "reference"))

from plant import TOLERANCE, Plant
from ride import Ride
from scipy.integrate import solve_ivp


class PerTick(Plant):
    """A rig whose every tick is one call of `solve_ivp`."""

    def advance(self, state, dt, torque_at, held):
        """The state after dt; torque_at(time since the tick) is the motor torque."""

        def rates(since, here):
            return self.derive(here.tolist(), torque_at(since), held)[0]

        solved = solve_ivp(rates, (0.0, dt), state, method="DOP853", rtol=TOLERANCE, atol=TOLERANCE)
        if not solved.success:
            raise RuntimeError(solved.message)
        return solved.y[:, -1].tolist()


def main():
    case = json.loads(Path(sys.argv[1]).read_text(encoding="utf-8"))
    one = Ride(case)
    one.plant = PerTick(one.rig, one.road)
    began = time.process_time()
    end, tick = one.run()
    seconds = time.process_time() - began
    print(json.dumps({"end": end, "ticks": tick, "rideS": seconds, "state": one.state}))


if __name__ == "__main__":
    main()
