#!/usr/bin/python3
"""Prints the parts of a Debian copyright file (DEP-5) that concern the files in use, with the licences they name.

usage: terms.py COPYRIGHT [FILE...]

FILE is a path in the source package, or a folder's path that ends in a slash, which means the files directly inside it.
By the format, a file's terms are those of the last "Files" paragraph that matches it. Without FILE, or where the
copyright file is not in that format, it is printed whole.
"""

import fnmatch
import pathlib
import re
import sys


def fields(paragraph):
    return {name.lower(): value.strip() for name, value in
            re.findall(r"^([A-Za-z-]+):(.*(?:\n[ \t].*)*)", paragraph, re.MULTILINE)}


def main():
    copyright_file, *used = sys.argv[1:]
    text = pathlib.Path(copyright_file).read_text("utf-8")
    paragraphs = [part for part in re.split(r"\n[ \t]*\n(?=\S)", text) if part.strip()]
    if not used or not text.lstrip().lower().startswith("format:"):
        print(text)
        return
    files = [(part, fields(part)) for part in paragraphs if "files" in fields(part)]
    kept = set()
    names = ""
    for path in used:
        fitting = [part for part, said in files if any(
            fnmatch.fnmatch(path + "x" * path.endswith("/"), pattern) or pattern.startswith(path) and path.endswith("/")
            and "/" not in pattern[len(path):] for pattern in said["files"].split())]
        # A folder's files may have their own terms beside the folder's: all of them are kept.
        for part in fitting if path.endswith("/") else fitting[-1:]:
            kept.add(part)
            names += " " + fields(part).get("license", "").split("\n")[0]
    for part in paragraphs:
        said = fields(part)
        licence = said.get("license", "").split("\n")[0].strip()
        if "files" in said and part not in kept:
            continue
        if "files" not in said and "format" not in said and licence and not re.search(
                rf"(?<![\w.+-]){re.escape(licence)}(?![\w+-])", names):
            continue
        if "format" in said:
            part = "\n".join(line for line in part.split("\n") if not re.match(r"Files-Excluded|Comment|Disclaimer| ", line))
        print(part.rstrip() + "\n")


if __name__ == "__main__":
    main()
