"""What are the rates of a state on a plane road, with 50 digits?

Evaluates equations.py with mpmath from the exact binary values of what it is given.

The plane road has height `heightM` at x = 0; the path enveloped by a round tyre on it is
h_c(x) = heightM + slope x + r (sqrt(1 + slope^2) - 1). The rate of u is r psi' - v_t, on the road and in the air.
"""

import mpmath as mp

import equations as eq

mp.mp.dps = 50
LAWS, MOTION = eq.compiled("mpmath")


def exact(values):
    """Doubles as mpmath numbers, bit for bit."""
    return [mp.mpf(float(v)) for v in values]


def constants_of(rig):
    return exact([rig[name] for name in eq.rig] + [eq.GRAVITY])


def plane(rig, road, x):
    """(height of the enveloped path at x, slope), exact."""
    slope, height = exact([road["slope"], road["heightM"]])
    return height + slope * x + mp.mpf(float(rig["wheelRadiusM"])) * (mp.sqrt(1 + slope**2) - 1), slope


def derive(rig, road, inputs, state, clamp=True):
    """(13 rates, the four limited forces, the five smooth laws) with many digits."""
    here, given, numbers = list(state), list(inputs), constants_of(rig)
    under = plane(rig, road, here[0])
    laws = LAWS(here, under, given, numbers)
    forces = eq.limited(laws, given[3], numbers[18]) if clamp else tuple(laws[1:])
    out = MOTION(here, under, given, forces, numbers)
    accelerations = mp.lu_solve(mp.matrix(6, 6) + mp.matrix([out[6 * i : 6 * i + 6] for i in range(6)]), out[36:42])
    return here[6:12] + list(accelerations) + [out[42]], forces, laws


def inputs_of(named):
    return exact([named[name] for name in eq.INPUT_NAMES])
