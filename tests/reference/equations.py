"""Which equations of motion follow from the picture of wheel, deck and rider?

Derived here once with SymPy (Lagrange, no small angles) from the places of axle, deck and rider, and from the
force laws; nothing is taken from the TypeScript. vectors.py evaluates them with many digits, ride.py compiles them
for its integrator.

Frame: X forward, Z up, angles grow when rolling forward (nose down, leaning forward).
State, 13 numbers: x, z, psi, theta, phi, l, their rates, u (shear of the tread).
Run it alone (/usr/bin/python3 equations.py) to print what it derived.
"""

import sympy as sp

# --- symbols -------------------------------------------------------------------------------------------------------

x, z, psi, theta, phi, l = q = sp.symbols("x z psi theta phi l", real=True)
xd, zd, psid, thetad, phid, ld = qd = sp.symbols("xd zd psid thetad phid ld", real=True)
u = sp.Symbol("u", real=True)
state = q + qd + (u,)

# Name in the files -> symbol. The order is the order of arguments everywhere below.
rig = {
    "wheelRadiusM": sp.Symbol("r", positive=True),
    "wheelInertiaKgM2": sp.Symbol("I_w", positive=True),
    "verticalStiffnessNPerM": sp.Symbol("k_t", positive=True),
    "verticalDampingNSPerM": sp.Symbol("c_t", positive=True),
    "treadStiffnessNPerM": sp.Symbol("k_x", positive=True),
    "treadDampingNSPerM": sp.Symbol("c_x", positive=True),
    "wheelMassKg": sp.Symbol("m_w", positive=True),
    "deckMassKg": sp.Symbol("m_d", positive=True),
    "deckInertiaKgM2": sp.Symbol("I_d", positive=True),
    "deckForwardM": sp.Symbol("a", real=True),
    "deckAboveAxleM": sp.Symbol("b", real=True),
    "ankleAboveAxleM": sp.Symbol("h_f", real=True),
    "riderMassKg": sp.Symbol("m", positive=True),
    "riderInertiaKgM2": sp.Symbol("I_r", positive=True),
    "legLengthM": sp.Symbol("L", positive=True),
    "halfDragAreaKgPerM": sp.Symbol("k_air", positive=True),
    "legStiffnessNPerM": sp.Symbol("k_l", positive=True),
    "legDampingNSPerM": sp.Symbol("c_l", positive=True),
    "halfStanceM": sp.Symbol("half_stance", positive=True),
    "passiveStiffnessNmPerRad": sp.Symbol("k_p", positive=True),
    "passiveDampingNmSPerRad": sp.Symbol("c_p", positive=True),
}
g = sp.Symbol("g", positive=True)
GRAVITY = 9.80665  # m/s2, standard gravity (ISO 80000-3)

# Inputs held from outside.
tau, tau_rider, shove, mu, c_rr = inputs = sp.symbols("tau tau_rider shove mu c_rr", real=True)
INPUT_NAMES = ("motorTorqueNm", "riderTorqueNm", "shoveN", "gripRatio", "rollingResistanceRatio")

# The road under the wheel: height of the path enveloped by the wheel's disc, and its slope.
h_c, slope = road = sp.symbols("h_c slope", real=True)

# Forces that have a corner in their law; `limited` below turns the smooth part of each law into these.
N, T, F_l, tau_c = limited_symbols = sp.symbols("N T F_l tau_c", real=True)

r, I_w, k_t, c_t, k_x, c_x = list(rig.values())[:6]
m_w, m_d, I_d, a, b, h_f, m, I_r, L, k_air, k_l, c_l, half_stance, k_p, c_p = list(rig.values())[6:]

# --- the picture, written down once --------------------------------------------------------------------------------


def up(angle):
    """Unit vector up along a body that leans by `angle`."""
    return sp.Matrix([sp.sin(angle), sp.cos(angle)])


def ahead(angle):
    """Unit vector forward of a body that leans by `angle`."""
    return sp.Matrix([sp.cos(angle), -sp.sin(angle)])


axle = sp.Matrix([x, z])
deck = axle + a * ahead(theta) + b * up(theta)
ankle = axle + h_f * up(theta)
rider = ankle + l * up(phi)


def velocity(place):
    """Rate of change of a place: its gradient times the rates of the coordinates."""
    return place.jacobian(q) * sp.Matrix(qd)


def squared(vector):
    return (vector.T * vector)[0]


kinetic = (
    m_w * squared(velocity(axle)) / 2
    + I_w * psid**2 / 2
    + m_d * squared(velocity(deck)) / 2
    + I_d * thetad**2 / 2
    + m * squared(velocity(rider)) / 2
    + I_r * phid**2 / 2
)
weight_energy = g * (m_w * axle[1] + m_d * deck[1] + m * rider[1])

# --- forces --------------------------------------------------------------------------------------------------------

root = sp.sqrt(1 + slope**2)
normal = sp.Matrix([-slope, 1]) / root
along = sp.Matrix([1, slope]) / root

speed_along = velocity(axle).dot(along)
speed_off = velocity(axle).dot(normal)
slip = r * psid - speed_along  # v_s, which is also the rate of u
squash = (h_c + r - z) / root
air = -k_air * velocity(rider)[0] * sp.Abs(velocity(rider)[0])
rolling = -c_rr * N * r * sp.tanh(2 * psid)  # 2 = 1 / (0.5 rad/s)

# What each force with a corner is while it is away from its corner.
smooth = {
    "squash": squash,
    "normal": k_t * squash - c_t * speed_off,
    "tread": k_x * u + c_x * slip,
    "legs": k_l * (L - l) - c_l * ld + m * g,
    "feet": tau_rider - k_p * (phi - theta) - c_p * (phid - thetad),
}


def work(place, force):
    """Generalised forces of a force that acts at a place."""
    return place.jacobian(q).T * force


def couple(angle, moment):
    """Generalised forces of a moment that acts on the body with this angle."""
    return sp.Matrix([moment * sp.diff(angle, c) for c in q])


generalised = (
    work(axle, N * normal + T * along)
    + couple(psi, -r * T + rolling)
    + couple(psi - theta, tau)  # motor: + wheel, - deck
    + couple(phi - theta, tau_c)  # feet: + rider, - deck
    + couple(l, F_l)  # legs: along l
    + work(rider, sp.Matrix([shove + air, 0]))
)

# --- Lagrange: mass * qdd + bias = generalised ---------------------------------------------------------------------

momentum = sp.Matrix([sp.diff(kinetic, c) for c in qd])
mass = momentum.jacobian(qd)
bias = (
    momentum.jacobian(q) * sp.Matrix(qd)
    - sp.Matrix([sp.diff(kinetic, c) for c in q])
    + sp.Matrix([sp.diff(weight_energy, c) for c in q])
)
push = generalised - bias  # mass * qdd = push

# --- turning them into numbers -------------------------------------------------------------------------------------

CONSTANTS = tuple(rig.values()) + (g,)


def compiled(modules):
    """(smooth laws, mass and push, slip) as plain functions; `modules` as SymPy's lambdify takes it.

    laws(state, road, inputs, constants) -> the five smooth laws in the order of `smooth`
    motion(state, road, inputs, limited forces, constants) -> mass (36, by rows), push (6), rate of u
    """
    laws = sp.lambdify([state, road, inputs, CONSTANTS], list(smooth.values()), modules, cse=True)
    wanted = list(mass) + list(push) + [slip]
    motion = sp.lambdify([state, road, inputs, limited_symbols, CONSTANTS], wanted, modules, cse=True)
    return laws, motion


def limited(laws, grip, half_stance_m):
    """(N, T, F_l, tau_c) from the smooth laws: tyre only pushes, grip, legs only push, feet within the stance."""
    squashed, normal_force, tread, legs, feet = laws
    zero = abs(0 * normal_force)
    load = max(zero, normal_force) if squashed > 0 else zero
    grip_force = grip * load
    legs = max(zero, legs)
    feet_limit = legs * half_stance_m
    return (
        load,
        min(max(tread, -grip_force), grip_force),
        legs,
        min(max(feet, -feet_limit), feet_limit),
    )


if __name__ == "__main__":
    print("mass matrix:")
    sp.pprint(sp.simplify(mass), wrap_line=False)
    print("push (mass * qdd = push):")
    sp.pprint(sp.simplify(push), wrap_line=False)
