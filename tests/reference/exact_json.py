"""How are the witnesses' numbers written, so that a file is the same text on every machine?

Each double as the shortest text that reads back to the same double; the layout is the one the project's formatter
makes of it, so that formatting never touches a witness's file.
"""

import json
import re

WIDTH = 110


def number(value):
    """Text of a number: whole ones plain, others as short as reads back to the same double."""
    if float(value).is_integer() and abs(value) < 1e15:
        return str(int(value))
    return re.sub(r"e([+-])0*", lambda e: "e" + e[1].replace("+", ""), repr(float(value)))


def is_number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def scalar(value):
    if is_number(value):
        return number(value)
    return json.dumps(value, ensure_ascii=False)


def filled(items, indent):
    """Numbers in a list, as many on a line as fit."""
    pad = " " * indent
    lines, line = [], pad
    for place, item in enumerate(items):
        word = number(item) + ("," if place < len(items) - 1 else "")
        if line != pad and len(line) + 1 + len(word) > WIDTH:
            lines.append(line)
            line = pad
        line += ("" if line == pad else " ") + word
    return lines + [line]


def many(value):
    """True for a list or an object of more than one entry."""
    return isinstance(value, (list, dict)) and len(value) > 1


def lay_out(value, indent, room):
    """Text of a value whose first character stands where `room` characters are left on the line."""
    if isinstance(value, dict):
        pad = " " * (indent + 2)
        rows = []
        for key, entry in value.items():
            head = f"{pad}{json.dumps(key)}: "
            rows.append(head + lay_out(entry, indent + 2, WIDTH - len(head) - 1))
        return "{\n" + ",\n".join(rows) + "\n" + " " * indent + "}" if rows else "{}"
    if not isinstance(value, list):
        return scalar(value)
    if not any(isinstance(v, dict) for v in value) and not (len(value) > 1 and all(many(v) for v in value)):
        flat = "[" + ", ".join(lay_out(v, 0, WIDTH) for v in value) + "]"
        if "\n" not in flat and len(flat) <= room:
            return flat
    if all(is_number(v) for v in value):
        body = "\n".join(filled(value, indent + 2))
    else:
        pad = " " * (indent + 2)
        body = ",\n".join(pad + lay_out(v, indent + 2, WIDTH - indent - 3) for v in value)
    return "[\n" + body + "\n" + " " * indent + "]"


def text(value):
    """The whole file as text."""
    return lay_out(value, 0, WIDTH) + "\n"
