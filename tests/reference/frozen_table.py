"""Tables of numbers from reference libraries, frozen as rows that a C++ array can include.

A table is a text file: comment lines with what it holds and which versions made it, then rows "{a, b, c},".
"""

import pathlib
import re
import sys

FOLDER = pathlib.Path(__file__).resolve().parent


def write(name, says, rows, formats):
    """Writes FOLDER/name; `formats` holds one format per column."""
    lines = [f"// {line}" for line in says]
    lines += ["{" + ", ".join(f.format(v) for f, v in zip(formats, row)) + "}," for row in rows]
    (FOLDER / name).write_text("\n".join(lines) + "\n", encoding="utf-8")


def read(name):
    """The rows of FOLDER/name as tuples of floats."""
    text = (FOLDER / name).read_text(encoding="utf-8")
    return [tuple(float(v) for v in row.split(",")) for row in re.findall(r"^\{(.*)\},$", text, re.M)]


def differences(name, rows, tolerances):
    """Sentences about every row of FOLDER/name that is not among freshly made `rows`, none if all agree."""
    frozen = read(name)
    if len(frozen) != len(rows):
        return [f"{name}: {len(frozen)} rows frozen, {len(rows)} made"]
    return [
        f"{name}: frozen {old}, made {new}"
        for old, new in zip(frozen, rows)
        if len(old) != len(new) or any(not abs(a - b) <= t for a, b, t in zip(old, new, tolerances))
    ]


def check(what, got, published, tolerance):
    """Stops unless the library gives a published value: the reference is checked before it is trusted."""
    if not abs(got - published) <= tolerance:
        sys.exit(f"{what}: the library gives {got}, published is {published}")


def report(problems):
    """Prints the problems and ends with 1 if there are any."""
    for problem in problems[:20]:
        print(problem)
    sys.exit(1 if problems else 0)
