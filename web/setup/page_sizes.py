#!/usr/bin/python3
"""Says what the page weighs.

usage: page_sizes.py PAGE-FOLDER             a table of its files, as they are and gzipped (what a server sends)
       page_sizes.py --functions FILE.wasm   what the compiled code is made of: its sections, and its functions by family
                                             (needs a file linked with --profiling-funcs)

kB are 1000 bytes. The page's total is held against the limit the project has set itself; this script only prints.
"""

import argparse
import collections
import gzip
import pathlib
import re
import subprocess

LIMIT_KB = 500
SECTIONS = ["custom", "type", "import", "function", "table", "memory", "global", "export", "start", "element", "code",
            "data", "data count", "tag"]
# The first pattern that is found in a function's name names its family.
FAMILIES = [
    ("application", r"evenfall::shell"),
    ("JSON", r"nlohmann"),
    ("core", r"evenfall::"),
    ("Boost", r"boost::"),
    ("Eigen", r"Eigen::"),
    ("Dear ImGui", r"ImGui|\bIm[A-Z]|^Im|stbtt|stbrp|stbte"),
    ("SDL2", r"SDL|Emscripten_|BlendNxN|Blit|^GL(ES2)?_|^SW_"),
    ("zlib", r"inflate|deflate|crc32|adler|_tr_|longest_match|fill_window|compress_"),
    ("C++ library", r"std::|__cxa|operator|__cxxabi|typeinfo"),
]


def packed(data):
    return len(gzip.compress(data, 9, mtime=0))


def print_table(rows, heads):
    print(f"{heads[0]:44}" + "".join(f"{head:>12}" for head in heads[1:]))
    for name, *numbers in rows:
        print(f"{name:44}" + "".join(f"{number / 1000:12.1f}" for number in numbers))


def print_page(folder):
    groups = collections.defaultdict(lambda: [0, 0])
    for path in sorted(folder.rglob("*")):
        if not path.is_file():
            continue
        name = path.relative_to(folder).as_posix()
        group = name.split("/")[0] + "/" if "/" in name else name
        data = path.read_bytes()
        groups[group][0] += len(data)
        groups[group][1] += packed(data)
    rows = sorted(([name, *sizes] for name, sizes in groups.items()), key=lambda row: -row[2])
    total = [sum(row[1] for row in rows), sum(row[2] for row in rows)]
    print_table([*rows, ["the whole page", *total]], ["kB", "as it is", "gzipped"])
    over = total[1] / 1000 - LIMIT_KB
    print(f"limit {LIMIT_KB} kB gzipped: " + (f"{over:.1f} kB over" if over > 0 else f"{-over:.1f} kB to spare"))


def leb(data, at):
    value = shift = 0
    while True:
        byte = data[at]
        at += 1
        value |= (byte & 0x7F) << shift
        shift += 7
        if byte < 0x80:
            return value, at


def sections(data):
    at = 8
    while at < len(data):
        kind = data[at]
        size, start = leb(data, at + 1)
        yield kind, data[start : start + size]
        at = start + size


def function_names(body):
    names = {}
    length, at = leb(body, 0)
    at += length  # the section's own name
    while at < len(body):
        kind = body[at]
        size, at = leb(body, at + 1)
        end = at + size
        if kind == 1:
            count, at = leb(body, at)
            for _ in range(count):
                index, at = leb(body, at)
                length, at = leb(body, at)
                names[index] = body[at : at + length].decode("utf-8", "replace")
                at += length
        at = end
    return names


def imported_functions(body):
    count, at = leb(body, 0)
    found = 0
    for _ in range(count):
        for _ in range(2):
            length, at = leb(body, at)
            at += length
        kind = body[at]
        at += 1
        if kind == 0:
            found += 1
            _, at = leb(body, at)
        elif kind == 1:
            flags, at = leb(body, at + 1)
            for _ in range(1 + (flags & 1)):
                _, at = leb(body, at)
        elif kind == 2:
            flags, at = leb(body, at)
            for _ in range(1 + (flags & 1)):
                _, at = leb(body, at)
        elif kind == 3:
            at += 2
        elif kind == 4:
            _, at = leb(body, at + 1)
    return found


def print_functions(path, most):
    data = path.read_bytes()
    parts = list(sections(data))
    print_table([[SECTIONS[kind], len(body), packed(body)] for kind, body in parts], ["section, kB", "as it is", "gzipped"])
    names = {}
    first = 0
    for kind, body in parts:
        if kind == 0 and body[1:5] == b"name":
            names = function_names(body)
        if kind == 2:
            first = imported_functions(body)
    code = next(body for kind, body in parts if kind == 10)
    count, at = leb(code, 0)
    plain = [names.get(first + i, "?") for i in range(count)]
    plain = subprocess.run(["c++filt"], input="\n".join(plain), capture_output=True, text=True, check=False).stdout.split("\n")
    sizes = []
    families = collections.defaultdict(list)
    for i in range(count):
        size, at = leb(code, at)
        family = next((name for name, pattern in FAMILIES if re.search(pattern, plain[i])), "others")
        sizes.append((size, plain[i]))
        families[family].append(code[at : at + size])
        at += size
    print()
    rows = [[name, sum(map(len, bodies)), packed(b"".join(bodies))] for name, bodies in families.items()]
    print_table(sorted(rows, key=lambda row: -row[1]), ["functions by family, kB", "as they are", "gzipped"])
    print()
    for size, name in sorted(sizes, reverse=True)[:most]:
        print(f"{size:8} {name[:140]}")


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("folder", nargs="?")
    parser.add_argument("--functions")
    parser.add_argument("--most", type=int, default=60)
    arguments = parser.parse_args()
    if arguments.folder:
        print_page(pathlib.Path(arguments.folder))
    if arguments.functions:
        print_functions(pathlib.Path(arguments.functions), arguments.most)


if __name__ == "__main__":
    main()
