"""When is a ride over before its time?

A tip of the deck below the bare road, the nose asked first; a rider who leans past his limit, whose feet have left the
deck or whose legs have buckled.
"""

import math

from equations import GRAVITY

FEET_CLEAR_M = 0.05  # legs longer than without load by so much have left the deck
BUCKLED_SHARE = 0.6  # legs shorter than this share of their length have buckled


class Ending:
    """The ends that a rig can meet."""

    def __init__(self, deck, rig, lean_limit):
        self.reach, self.below, self.lean_limit = deck["reachM"], deck["tipBelowAxleM"], lean_limit
        unloaded = rig["legLengthM"] + rig["riderMassKg"] * GRAVITY / rig["legStiffnessNPerM"]
        self.longest, self.shortest = unloaded + FEET_CLEAR_M, BUCKLED_SHARE * rig["legLengthM"]

    def clearance(self, state, road, side):
        """Height [m] of the nose (side 1) or the tail (side -1) above the bare road."""
        x, z, theta = state[0], state[1], state[3]
        along, down = side * self.reach, self.below
        tip_x = x + along * math.cos(theta) - down * math.sin(theta)
        tip_z = z - along * math.sin(theta) - down * math.cos(theta)
        return tip_z - road.bare_height(tip_x)

    def of(self, state, road):
        """(how it has just ended or None, height of the lower tip above the road [m])."""
        nose, tail = self.clearance(state, road, 1), self.clearance(state, road, -1)
        lean, leg = state[4], state[5]
        off = abs(lean) > self.lean_limit or not self.shortest <= leg <= self.longest
        end = "nose strike" if nose < 0 else "tail strike" if tail < 0 else "rider off" if off else None
        return end, min(nose, tail)
