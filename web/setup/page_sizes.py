#!/usr/bin/python3
"""Prints the sizes of the page's files, plain and gzipped, in kB of 1000 bytes.

usage: page_sizes.py PAGE-FOLDER

The sum leaves out the plain compiled code, which a browser loads only where it cannot use the gzipped one.
"""

import gzip
import pathlib
import sys

PLAIN_CODE = "evenfall.wasm"


def main():
    folder = pathlib.Path(sys.argv[1])
    sizes = {} # of a file at the top, or of a folder: [plain, gzipped]
    for path in folder.rglob("*"):
        if path.is_file():
            data = path.read_bytes()
            held = sizes.setdefault(path.relative_to(folder).parts[0], [0, 0])
            held[0] += len(data)
            held[1] += len(data if path.suffix == ".gz" else gzip.compress(data, 9, mtime=0))
    rows = sorted(sizes.items(), key=lambda row: -row[1][1])
    taken = [size for name, size in rows if name != PLAIN_CODE]
    rows.append(("what a device takes", [sum(column) for column in zip(*taken)]))
    print(f"{'kB':32}{'as it is':>12}{'gzipped':>12}")
    for name, (plain, gzipped) in rows:
        print(f"{name:32}{plain / 1000:12.1f}{gzipped / 1000:12.1f}")


if __name__ == "__main__":
    main()
