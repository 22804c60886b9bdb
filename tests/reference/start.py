"""In what state does a ride begin: rolling steadily, the rider balanced, the controller settled?"""

import math

from equations import GRAVITY


def rolling(rig, road, speed, surface):
    """(axle height, wheel rate, slope, tread shear, motor torque, air) of rolling steadily at this speed."""
    height, slope = road.under(0.0)
    _, rolling_ratio = surface
    r, root = rig["wheelRadiusM"], math.sqrt(1 + slope**2)
    weight = GRAVITY * (rig["wheelMassKg"] + rig["deckMassKg"] + rig["riderMassKg"])
    air = -rig["halfDragAreaKgPerM"] * speed * abs(speed)
    tread = (weight * slope - air) / root
    load = (weight + air * slope) / root
    wheel_rate = speed * root / r
    torque = tread * r + rolling_ratio * load * r * math.tanh(wheel_rate / 0.5)
    axle = height + r - root * load / rig["verticalStiffnessNPerM"]
    return axle, wheel_rate, slope, tread / rig["treadStiffnessNPerM"], torque, air


def stance(rig, pitch, torque, air):
    """(lean, leg length, foot torque) of a rider at rest on a deck at rest with this pitch and motor torque."""
    weight = rig["riderMassKg"] * GRAVITY
    a, b, ankle = rig["deckForwardM"], rig["deckAboveAxleM"], rig["ankleAboveAxleM"]
    sin, cos = math.sin(pitch), math.cos(pitch)
    feet = rig["deckMassKg"] * GRAVITY * (a * cos + b * sin) + ankle * (air * cos + weight * sin) - torque
    # About the ankle: leg (weight sin(lean) + air cos(lean)) + feet = 0. Weight and air pull together, obliquely.
    pull, oblique = math.hypot(weight, air), math.atan2(air, weight)
    length = rig["legLengthM"]
    for _ in range(200):
        lean = math.asin(-feet / (length * pull)) - oblique
        legs = weight * math.cos(lean) - air * math.sin(lean)
        before, length = length, rig["legLengthM"] + (weight - legs) / rig["legStiffnessNPerM"]
        if abs(length - before) < 1e-16:
            break
    return lean, length, feet


def begin(case, rig, road, parts):
    """(state, current, held inputs) at the start; settles `law` and the rider's `balance` of `parts`."""
    wish = case["scenario"]["start"]
    speed = wish["speedKmPerH"] / 3.6
    surface = road.surface(0.0)
    axle, wheel_rate, slope, shear, torque, air = rolling(rig, road, speed, surface)
    electrics, law, balance = parts["electrics"], parts["law"], parts["balance"]
    current = torque / electrics.torque_constant
    open_volts = electrics.open_circuit(case["scenario"]["chargePercent"] / 100)
    limits = electrics.ceilings(open_volts, wheel_rate)
    pitch = law.settle(current, electrics.headroom(current, limits))
    if "noseUpDeg" in wish:
        pitch = -math.radians(wish["noseUpDeg"])
        lean, length, active, trim = 0.0, rig["legLengthM"], 0.0, 0.0
    else:
        lean, length, feet = stance(rig, pitch, torque, air)
        active = feet + rig["passiveStiffnessNmPerRad"] * (lean - pitch)
        trim = lean + active / balance.stiffness
    balance.begin(lean, speed, trim)
    place = [0.0, axle, 0.0, pitch, lean, length]
    return place + [speed, speed * slope, wheel_rate, 0.0, 0.0, 0.0, shear], current, (active, 0.0) + surface
