"""Which single states of which rigs are worth a vector, and what are their rates?

Seeded random states on every side of every corner of the force laws: tyre on the road and off it, tread gripping and
sliding, legs carrying and slack, both feet down and one light, uphill and downhill.
"""

import random

import mpmath as mp

import equations as eq
import newton
from precise import derive, exact, inputs_of

# Invented rigs are drawn between these. (low, high, decimals)
RIG_RANGES = {
    "wheelRadiusM": (0.11, 0.19, 3),
    "wheelInertiaKgM2": (0.03, 0.2, 3),
    "verticalStiffnessNPerM": (45e3, 120e3, 0),
    "verticalDampingNSPerM": (150, 700, 0),
    "treadStiffnessNPerM": (30e3, 90e3, 0),
    "treadDampingNSPerM": (100, 500, 0),
    "wheelMassKg": (4, 11, 2),
    "deckMassKg": (5, 17, 2),
    "deckInertiaKgM2": (0.25, 1.3, 3),
    "deckForwardM": (-0.05, 0.05, 3),
    "deckAboveAxleM": (-0.06, 0.05, 3),
    "ankleAboveAxleM": (-0.02, 0.09, 3),
    "riderMassKg": (45, 110, 1),
    "riderInertiaKgM2": (7, 20, 2),
    "legLengthM": (0.78, 1.08, 3),
    "halfDragAreaKgPerM": (0.1, 0.45, 3),
    "legStiffnessNPerM": (9e3, 42e3, 0),
    "legDampingNSPerM": (500, 1500, 0),
    "halfStanceM": (0.18, 0.32, 3),
    "passiveStiffnessNmPerRad": (30, 250, 0),
    "passiveDampingNmSPerRad": (3, 20, 1),
}

# kind -> (how many, changes to what is drawn). `tread`, `feet`: share of the limit; `squash`, `stretch` in m.
KINDS = {
    "rolls": (14, {}),
    "slides": (12, {"tread": (1.2, 4)}),
    "in-the-air": (10, {"squash": (-0.3, -0.002)}),
    "rebounds": (5, {"squash": (0.001, 0.002), "off": (1.5, 3)}),
    "legs-slack": (9, {"stretch": (0.08, 0.2), "stretching": (0.1, 1)}),
    "foot-light": (10, {"feet": (1.2, 3)}),
    "slides-foot-light": (5, {"tread": (1.2, 3), "feet": (1.2, 2)}),
    "air-legs-slack": (3, {"squash": (-0.1, -0.01), "stretch": (0.08, 0.2), "stretching": (0.1, 1)}),
    "far-over": (4, {"theta": (-1.4, 1.4), "phi": (-1.5, 1.5)}),
}
USUAL = {
    "squash": (0.005, 0.02),
    "off": (-0.3, 0.3),
    "tread": (-0.8, 0.8),
    "feet": (-0.8, 0.8),
    "stretch": (-0.06, 0.015),
    "stretching": (-0.4, 0.4),
    "theta": (-0.6, 0.6),
    "phi": (-0.6, 0.6),
}



def draw(rng, kind):
    """One random rig, road, input and state that should be of this kind; plain decimals throughout."""
    wanted = {**USUAL, **KINDS[kind][1]}

    def between(low, high, decimals=6):
        value = round(rng.uniform(low, high), decimals)
        return value if decimals else float(value)

    def share(name):
        """A share of a limit; beyond the limit on either side."""
        value = between(*wanted[name], 3)
        return value if wanted[name][0] < 0 else value * rng.choice((-1, 1))

    rig = {name: between(*limits) for name, limits in RIG_RANGES.items()}
    steep = rng.choice((0.0, 1.0, -1.0, 1.0, -1.0)) * between(0.01, 0.35, 3)
    road = {"slope": steep, "heightM": between(-0.5, 0.5, 3)}
    root = (1 + road["slope"] ** 2) ** 0.5
    r, mu = rig["wheelRadiusM"], between(0.05, 1.2, 3)
    x, xd, slip = between(-5, 5), between(-3, 10), between(-0.3, 0.3)
    squash, off = between(*wanted["squash"]), between(*wanted["off"])
    zd = round(road["slope"] * xd + off * root, 6)
    psid = round(((xd + road["slope"] * zd) / root + slip) / r, 6)
    theta, phi = between(*wanted["theta"]), between(*wanted["phi"])
    thetad, phid = between(-4, 4), between(-2, 2)
    stretch, ld = between(*wanted["stretch"]), between(*wanted["stretching"])
    length = round(rig["legLengthM"] + stretch, 6)
    z = round(road["heightM"] + road["slope"] * x + r * root - squash * root, 6)

    load = max(0.0, rig["verticalStiffnessNPerM"] * squash - rig["verticalDampingNSPerM"] * off)
    shear = (share("tread") * mu * load - rig["treadDampingNSPerM"] * slip) / rig["treadStiffnessNPerM"]
    legs = rig["riderMassKg"] * eq.GRAVITY - rig["legStiffnessNPerM"] * stretch - rig["legDampingNSPerM"] * ld
    passive = -rig["passiveStiffnessNmPerRad"] * (phi - theta) - rig["passiveDampingNmSPerRad"] * (phid - thetad)
    inputs = {
        "motorTorqueNm": between(-60, 60, 3),
        "riderTorqueNm": round(share("feet") * max(0.0, legs) * rig["halfStanceM"] - passive, 3),
        "shoveN": between(-200, 200, 2),
        "gripRatio": mu,
        "rollingResistanceRatio": between(0, 0.1, 4),
    }
    state = [x, z, between(-50, 50), theta, phi, length, xd, zd, psid, thetad, phid, ld, round(shear, 8)]
    return {"kind": kind, "rig": rig, "road": road, "inputs": inputs, "state": state}


def branches(case, laws, forces):
    """Which side of each corner the state is on, and how far from the nearest corner (relative)."""
    squash, normal, tread, legs, feet = laws
    load, _, pull, _ = forces
    grip = mp.mpf(case["inputs"]["gripRatio"]) * load
    stance = pull * mp.mpf(case["rig"]["halfStanceM"])
    weight = mp.mpf(case["rig"]["riderMassKg"]) * eq.GRAVITY
    away = [abs(squash) / mp.mpf("0.01"), abs(legs) / weight]
    away += [abs(normal) / weight] if squash > 0 else []
    away += [abs(abs(tread) - grip) / grip] if load > 0 else []
    away += [abs(abs(feet) - stance) / stance] if pull > 0 else []
    where = {
        "wheel": "road" if load > 0 else "squashed-without-load" if squash > 0 else "air",
        "tread": ("grips" if abs(tread) <= grip else "slides") if load > 0 else "none",
        "legs": "carry" if pull > 0 else "slack",
        "feet": ("both" if abs(feet) <= stance else "one-light") if pull > 0 else "none",
    }
    return where, min(away)


FITS = {
    "rolls": ("road", "grips", "carry", "both"),
    "slides": ("road", "slides", "carry", "both"),
    "in-the-air": ("air", "none", "carry", "both"),
    "rebounds": ("squashed-without-load", "none", "carry", "both"),
    "legs-slack": ("road", "grips", "slack", "none"),
    "foot-light": ("road", "grips", "carry", "one-light"),
    "slides-foot-light": ("road", "slides", "carry", "one-light"),
    "air-legs-slack": ("air", "none", "slack", "none"),
    "far-over": ("road", "grips", "carry", "both"),
}


def newton_residual(case, rates, forces):
    """Largest left-over of the hand-made second derivation."""
    slope = mp.mpf(case["road"]["slope"])
    root = mp.sqrt(1 + slope**2)
    rig = {name: mp.mpf(value) for name, value in case["rig"].items()}
    state, given = exact(case["state"]), inputs_of(case["inputs"])
    N, T, F_l, tau_c = forces
    v = state[6] + rig["ankleAboveAxleM"] * state[9] * mp.cos(state[3])
    v += state[11] * mp.sin(state[4]) + state[5] * state[10] * mp.cos(state[4])
    acting = {
        "N": N, "T": T, "F_l": F_l, "tau_c": tau_c, "motor": given[0],
        "normal": (-slope / root, 1 / root), "along": (1 / root, slope / root),
        "rolling": -given[4] * N * rig["wheelRadiusM"] * mp.tanh(state[8] / mp.mpf("0.5")),
        "push": given[2] - rig["halfDragAreaKgPerM"] * v * abs(v),
    }  # fmt: skip
    return max(abs(e) for e in newton.residuals(rig, state, rates, acting, mp.mpf(eq.GRAVITY), (mp.sin, mp.cos)))


def single_states():
    """All cases, seeded; each is drawn again until it is of its kind and not near a corner of a law."""
    rng = random.Random(20240611)
    cases, worst = [], mp.mpf(0)
    for kind, (count, _) in KINDS.items():
        made = 0
        while made < count:
            case = draw(rng, kind)
            rates, forces, laws = derive(case["rig"], case["road"], inputs_of(case["inputs"]), exact(case["state"]))
            case["where"], away = branches(case, laws, forces)
            if tuple(case["where"].values()) != FITS[kind] or away < mp.mpf("1e-3"):
                continue
            worst = max(worst, newton_residual(case, rates, forces))
            case["derivative"] = [float(v) for v in rates]
            cases.append(case)
            made += 1
    assert worst < mp.mpf("1e-40"), f"Newton and Lagrange disagree: {mp.nstr(worst, 3)}"
    return cases, worst
