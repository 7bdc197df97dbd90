#!/usr/bin/env python3
"""Holds the layering: who may include whom.

Inside core/ the rooms and what each may use stand in core/CMakeLists.txt (evenfall_room); the compiler holds them as well, but
does not say which rule was broken. shell/ may include of core/ only the public headers, those at its top level.

    tests/static/layers.py            the whole tree; status 1 and a line for each forbidden include
    tests/static/layers.py --rooms    prints the rooms with what they use
"""
import re
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
INCLUDE = re.compile(r'^\s*#include "([^"]+)"', re.M)


def rooms_of(cmake: str) -> dict[str, set[str]]:
    """Each room with every room that it may use: those named and those that they may use."""
    rooms: dict[str, set[str]] = {}
    for room, uses in re.findall(r"^evenfall_room\((\w+)(?: USES ([a-z ]+))?.*\)", cmake, re.M):
        rooms[room] = {room}.union(*({u} | rooms[u] for u in uses.split()))
    return rooms


def includes(folder: Path):
    for file in sorted(folder.rglob("*")):
        if file.suffix in (".cpp", ".hpp"):
            for name in INCLUDE.findall(file.read_text()):
                yield file, name


def forbidden(root: Path) -> list[str]:
    core, shell = root / "core", root / "shell"
    rooms = rooms_of((core / "CMakeLists.txt").read_text())
    out = []
    for file, name in includes(core):
        room, used = file.relative_to(core).parts[0], name.split("/")[0]
        where = file.relative_to(root)
        if file.parent == core:
            continue  # the public headers collect what the rooms offer
        if room not in rooms:
            out.append(f"{where}: the folder {room} is no room of core/CMakeLists.txt")
        elif "/" not in name:
            out.append(f'{where}: "{name}" is included without its room ("{room}/{name}")')
        elif used not in rooms[room]:
            out.append(f'{where}: room {room} includes "{name}" of room {used}, which it may not use')
    for file, name in includes(shell):
        if (core / name).exists() and "/" in name:
            out.append(f'{file.relative_to(root)}: shell includes "{name}" of room {name.split("/")[0]}; '
                       "it may use the public headers at the top of core/ only")
    return out


if __name__ == "__main__":
    if sys.argv[1:] == ["--rooms"]:
        for room, uses in rooms_of((ROOT / "core/CMakeLists.txt").read_text()).items():
            print(room, "←", " ".join(sorted(uses - {room})))
        sys.exit(0)
    found = forbidden(ROOT)
    print("\n".join(found) if found else "every include follows the flow")
    sys.exit(1 if found else 0)
