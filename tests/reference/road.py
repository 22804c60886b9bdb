"""What does the tyre of a ride meet: height, slope, grip and rolling resistance along x?

Bare heights on a grid of 5 mm from 10 m before the start to 10 m past the end; the wheel's disc envelopes them; cubic
Hermite between the knots, slopes by central differences.
"""

import math

import numpy as np

STEP_M = 0.005
RUN_UP_M = 10.0


def bump(piece, along):
    """Height of the raised cosines of a piece."""
    height = piece["bumpHeightM"]
    return height / 2 * (1 - math.cos(2 * math.pi * piece["bumpCount"] * along / piece["lengthM"])) if height else 0.0


def climbed(piece, slope_before, along):
    """Height gained since the piece began: integral of a slope that goes linearly to the piece's own and stays."""
    own, ease = piece["gradePercent"] / 100, piece["easeM"]
    if along < ease:
        return slope_before * along + (own - slope_before) * along**2 / (2 * ease)
    return slope_before * ease + (own - slope_before) * ease / 2 + own * (along - ease)


def bare_heights(pieces):
    """Heights of the bare road on the grid, and the x at which each piece begins."""
    starts = [0.0]
    for piece in pieces:
        starts.append(starts[-1] + piece["lengthM"])
    places = [round((RUN_UP_M + s) / STEP_M) for s in starts]
    heights = np.zeros(places[-1] + round(RUN_UP_M / STEP_M) + 1)
    first = pieces[0]
    run_up = 0.0 if first["easeM"] > 0 else first["gradePercent"] / 100
    heights[: places[0]] = run_up * STEP_M * (np.arange(places[0]) - places[0])
    level, slope = 0.0, 0.0
    for piece, begin, end in zip(pieces, places, places[1:]):
        level += piece["stepUpM"]
        for place in range(begin, end):
            along = (place - begin) * STEP_M
            heights[place] = level + climbed(piece, slope, along) + bump(piece, along)
        level += climbed(piece, slope, piece["lengthM"])
        slope = piece["gradePercent"] / 100
    heights[places[-1] :] = level
    return heights, starts


def enveloped(heights, radius):
    """Path of a disc's lowest point that rolls over the grid: max over offsets of h + sqrt(r^2 - s^2) - r."""
    most = int(math.floor(radius / STEP_M + 1e-9))
    padded = np.pad(heights, most, mode="edge")
    best = np.full(len(heights), -np.inf)
    for j in range(-most, most + 1):
        s = j * STEP_M
        cap = math.sqrt(max(0.0, radius * radius - s * s)) - radius
        best = np.maximum(best, padded[most + j : most + j + len(heights)] + cap)
    return best


class Road:
    """The road of a scenario under a tyre of this radius."""

    def __init__(self, pieces, radius):
        self.pieces = pieces
        self.bare, self.starts = bare_heights(pieces)
        path = enveloped(self.bare, radius)
        slopes = np.zeros(len(path))
        slopes[1:-1] = (path[2:] - path[:-2]) / (2 * STEP_M)
        self.path, self.slopes = path.tolist(), slopes.tolist()

    def cell(self, x):
        """Number of the stretch between two knots that x lies in."""
        return math.floor((x + RUN_UP_M) / STEP_M)

    def edge(self, cell):
        """x at which a stretch begins."""
        return cell * STEP_M - RUN_UP_M

    def under(self, x, cell=None):
        """(height of the enveloped path, its slope) at x; with a cell, on that stretch's cubic wherever x is."""
        i = self.cell(x) if cell is None else cell
        s = (x + RUN_UP_M) / STEP_M - i
        h0, h1 = self.path[i], self.path[i + 1]
        d0, d1 = self.slopes[i] * STEP_M, self.slopes[i + 1] * STEP_M
        # h0 + s d0 + s^2 (3 rise - 2 d0 - d1) + s^3 (d0 + d1 - 2 rise)
        rise = h1 - h0
        square, cube = 3 * rise - 2 * d0 - d1, d0 + d1 - 2 * rise
        return h0 + s * (d0 + s * (square + s * cube)), (d0 + s * (2 * square + 3 * s * cube)) / STEP_M

    def straight(self, first, last):
        """True when the path runs straight from one stretch to another, in either order."""
        low, high = min(first, last), max(first, last)
        slopes = self.slopes[low : high + 2]
        rises = [b - a for a, b in zip(self.path[low : high + 2], self.path[low + 1 : high + 2])]
        wanted = slopes[0]
        return all(abs(v - wanted) < 1e-11 for v in slopes) and all(
            abs(v / STEP_M - wanted) < 1e-11 for v in rises
        )

    def bare_height(self, x):
        """Height of the bare road at x, straight between the points of the grid."""
        place = (x + RUN_UP_M) / STEP_M
        i = math.floor(place)
        return float(self.bare[i] + (place - i) * (self.bare[i + 1] - self.bare[i]))

    def surface(self, x):
        """(grip, rolling resistance) of the piece under x; the first before the start, the last past the end."""
        here = self.pieces[0]
        for piece, begin in zip(self.pieces, self.starts):
            if x >= begin:
                here = piece
        return here["gripRatio"], here["rollingResistanceRatio"]
