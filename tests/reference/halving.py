"""How much motor current do motor, drive stage and pack allow, and what does the pack give for it?

Every limit is looked for numerically, with 40 digits, from the physical statement beside it; no root is written out.
The motor is the equivalent direct-current machine (voltage K_t w + R_m i, power that times i), the pack an open-circuit
voltage U behind a resistance R, the drive stage lossless: a duty d gives the motor d V and takes d i from the pack.
"""

import mpmath as mp

mp.mp.dps = 40
TIE = mp.mpf("1e-30")
GOLDEN = (mp.sqrt(5) - 1) / 2


def edge(holds, inside, outside):
    """The border between a point where `holds` is true and one where it is not, by halving."""
    for _ in range(160):
        middle = (inside + outside) / 2
        inside, outside = (middle, outside) if holds(middle) else (inside, middle)
    return (inside + outside) / 2


def beyond(holds, step):
    """A point so far from zero, the way of `step`, that `holds` is false there."""
    while holds(step):
        step *= 2
    return step


def place_of_most(worth, low, high):
    """Where a function with a single hump between `low` and `high` is largest: golden section."""
    left, right = high - GOLDEN * (high - low), low + GOLDEN * (high - low)
    of_left, of_right = worth(left), worth(right)
    for _ in range(110):
        if of_left < of_right:
            low, left, of_left = left, right, of_right
            right = low + GOLDEN * (high - low)
            of_right = worth(right)
        else:
            high, right, of_right = right, left, of_left
            left = high - GOLDEN * (high - low)
            of_left = worth(left)
    return max((low, left, right, high), key=worth)


class Rig:
    """Motor, stage and pack at one motor speed."""

    def __init__(self, given):
        exact = {name: mp.mpf(float(value)) for name, value in given.items()}
        self.ohm, self.pack_ohm, self.open = exact["motorOhm"], exact["packOhm"], exact["openV"]
        self.back = exact["torqueConstantNmPerA"] * exact["motorSpeedRadPerS"]
        self.exact = exact

    def power(self, current):
        """Electrical power at the motor, W."""
        return (self.back + current * self.ohm) * current

    def given_out(self, pack_current):
        """Power that the pack gives at a current out of it, W; taken in when negative."""
        return (self.open - pack_current * self.pack_ohm) * pack_current

    def most_giving(self):
        """Pack current at which the pack gives its most power."""
        return place_of_most(self.given_out, mp.mpf(0), self.open / self.pack_ohm)

    def pack_current(self, power):
        """Pack current I with (U - I R) I = P: the one on zero's side of the pack's most."""
        most = self.most_giving()
        assert power < self.given_out(most)
        below = lambda current: self.given_out(current) < power
        least = mp.mpf(-1)
        while not below(least):
            least *= 2
        return edge(below, least, most)

    def pack_out(self):
        """(upper, lower): how far the motor's power stays below what the pack may give."""
        limit = self.given_out(min(self.exact["dischargeCurrentA"], self.most_giving()))
        within = lambda current: self.power(current) <= limit
        return tuple(edge(within, mp.mpf(0), beyond(within, mp.mpf(way))) for way in (1, -1))

    def pack_in(self):
        """First current, from zero against the motion, whose power into the pack is the most allowed; or None."""
        if self.back == 0:
            return None
        limit = -self.given_out(-self.exact["chargeCurrentA"])
        against = -mp.sign(self.back)
        into = lambda size: -self.power(against * size)
        # Braking gives power back only until the motor's voltage is nought: from there on the motor burns more.
        standstill = edge(lambda size: self.back * (self.back + against * size * self.ohm) > 0, mp.mpf(0),
                          beyond(lambda size: into(size) > 0, mp.mpf(1)))
        top = place_of_most(into, mp.mpf(0), standstill)
        assert abs(into(top) / limit - 1) > 1e-6 if limit else True, "too near to tangency to be a fair case"
        if into(top) < limit:
            return None
        return against * edge(lambda size: into(size) < limit, mp.mpf(0), top) if limit else mp.mpf(0)

    def at_duty(self, duty):
        """Motor current that a duty makes: the stage's voltage d (U - d i R) is the motor's K_t w + R_m i."""
        gap = lambda i: duty * (self.open - duty * i * self.pack_ohm) - self.back - self.ohm * i
        first, second = mp.mpf(0), mp.mpf(1)
        current = first - gap(first) * (second - first) / (gap(second) - gap(first))  # one secant: a straight line
        assert abs(gap(current)) < mp.mpf("1e-30") * (self.open + abs(self.back))
        return current

    def voltage(self):
        """(upper, lower): most and least current over every duty that the stage can make, each way."""
        most = self.exact["modulationRatio"]
        grid = [most * k / 40 for k in range(-40, 41)]

        def largest(worth):
            best = max(range(81), key=lambda k: worth(grid[k]))
            around = grid[max(best - 1, 0)], grid[min(best + 1, 80)]
            return max(worth(place_of_most(worth, *around)), worth(around[0]), worth(around[1]))

        return largest(self.at_duty), -largest(lambda duty: -self.at_duty(duty))

    def limits(self):
        """[(upper, names), (lower, names)]; the first name is the cause, others tie with it."""
        forward = self.back >= 0
        drive, brake = (self.exact["driveCurrentA"], "drive"), (self.exact["brakeCurrentA"], "brake")
        up, down = (drive, brake) if forward else (brake, drive)
        out, into, volts = self.pack_out(), self.pack_in(), self.voltage()
        uppers = [up, (out[0], "pack out"), (None if forward else into, "pack in"), (volts[0], "voltage")]
        down = (-down[0], down[1])
        lowers = [down, (out[1], "pack out"), (into if forward else None, "pack in"), (volts[1], "voltage")]
        upper, lower = nearest(uppers, min), nearest(lowers, max)
        if lower[0] > upper[0]:
            meet = upper[0] if forward else lower[0]
            return [(meet, ["voltage"])] * 2
        return [upper, lower]


def nearest(candidates, tightest):
    """(limit, names of all that tie for it, in the order given); near misses are no fair cases."""
    known = [(value, name) for value, name in candidates if value is not None]
    limit = tightest(value for value, _ in known)
    tied = [name for value, name in known if abs(value - limit) <= TIE * abs(limit)]
    for value, name in known:
        assert name in tied or abs(value - limit) > 1e-9 * abs(limit), "too near to a tie to be a fair case"
    return limit, tied
