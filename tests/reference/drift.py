"""Has what was stored changed?

Everything is compared: texts, whole numbers and lengths to the letter, other numbers to 1e-9 of themselves or of 1,
which is far below any tolerance of the tests and above what another processor's rounding does. A number that is none
(NaN) always differs.
"""

TOLERANCE = 1e-9


def is_number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def between(stored, fresh, place=""):
    """What differs, a line each: where, and the largest difference there."""
    if is_number(stored) and is_number(fresh):
        apart = abs(stored - fresh) / max(1.0, abs(stored))
        return [] if apart <= TOLERANCE else [f"{place}: stored {stored}, now {fresh}"]
    if isinstance(stored, dict) and isinstance(fresh, dict) and list(stored) == list(fresh):
        return [line for key in stored for line in between(stored[key], fresh[key], f"{place}.{key}")]
    if isinstance(stored, list) and isinstance(fresh, list) and len(stored) == len(fresh):
        pairs = enumerate(zip(stored, fresh))
        return [line for index, (a, b) in pairs for line in between(a, b, f"{place}[{index}]")]
    return [] if stored == fresh else [f"{place}: stored {shortly(stored)}, now {shortly(fresh)}"]


def shortly(value):
    text = repr(value)
    return text if len(text) < 80 else f"{text[:77]}..."
