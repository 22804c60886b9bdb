"""Has what was stored changed?

The end of every script here: without --check the answers are written, with it they are compared with the stored ones,
everything of them. Answers made with many digits are compared to the letter; others to a tolerance, of themselves or
of 1, which is far below any tolerance of the tests and above what another processor's rounding does. A number that is
none (NaN) always differs.
"""

import json
import sys

import exact_json

SHOWN = 50


def is_number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def between(stored, fresh, tolerance, place=""):
    """What differs, a line each."""
    if is_number(stored) and is_number(fresh):
        apart = abs(stored - fresh) / max(1.0, abs(stored))
        return [] if apart <= tolerance else [f"{place}: stored {stored}, now {fresh}"]
    if isinstance(stored, dict) and isinstance(fresh, dict) and list(stored) == list(fresh):
        return [line for key in stored for line in between(stored[key], fresh[key], tolerance, f"{place}.{key}")]
    if isinstance(stored, list) and isinstance(fresh, list) and len(stored) == len(fresh):
        pairs = enumerate(zip(stored, fresh))
        return [line for index, (a, b) in pairs for line in between(a, b, tolerance, f"{place}[{index}]")]
    return [] if stored == fresh else [f"{place}: stored {shortly(stored)}, now {shortly(fresh)}"]


def shortly(value):
    text = repr(value)
    return text if len(text) < 80 else f"{text[:77]}..."


def write_or_check(file, answers, tolerance=0.0, narrowed=lambda stored: stored):
    """Writes the answers, or with --check says what has drifted; the exit code. `narrowed` picks what is to be compared."""
    fresh = exact_json.text(answers)
    parsed = json.loads(fresh)  # stops here where a number is none
    if "--check" not in sys.argv[1:]:
        file.write_text(fresh, encoding="utf-8")
        print(f"wrote {file.name}")
        return 0
    text = file.read_text(encoding="utf-8")
    try:
        found = between(narrowed(json.loads(text)), parsed, tolerance)
    except (ValueError, KeyError, TypeError) as broken:
        found = [f"cannot be read: {broken!r}"]
    if tolerance == 0 and text != fresh and not found:
        found = ["the numbers agree, the text does not"]
    print(*([f"{file.name} has drifted:", *found[:SHOWN]] if found else [f"{file.name}: nothing has drifted"]), sep="\n  ")
    return 1 if found else 0
