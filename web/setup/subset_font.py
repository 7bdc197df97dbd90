#!/usr/bin/python3
"""Reduces the typeface to the characters that the page uses and writes it as a C++ source file.

usage: subset_font.py --output FILE NAME FONT [NAME FONT ...]

The source defines evenfall::shell::look::font_NAME (bytes) and evenfall::shell::look::font_NAME_size. Fails when the digits
differ in width (columns of figures would not align) or when a required character is missing.
"""

import argparse
import io
import sys

from fontTools import subset
from fontTools.ttLib import TTFont

# What the sheets' readers write names in. The page itself draws few of them (shell/look/fonts.cpp).
LATIN = [*range(0x20, 0x7F), *range(0xA0, 0x180), *range(0x218, 0x21C), 0x1E9E]
GREEK = [*range(0x370, 0x400)]
CYRILLIC = [*range(0x400, 0x460), 0x490, 0x491]
SIGNS = "°±×÷−–—…‘’“”„•≈≠≤≥½¼¾⅛⅜⅝⅞ρθφαΔ′″→←↑↓▲▼✓"


def cut(path):
    options = subset.Options()
    options.layout_features = []  # Dear ImGui places letters only by their widths
    options.hinting = False
    options.desubroutinize = True  # larger uncompressed, smaller when gzipped
    options.drop_tables += ["GDEF", "GPOS", "GSUB", "BASE", "DSIG", "STAT"]
    options.notdef_outline = True
    options.name_IDs = [0, 1, 2, 13, 14]  # the font keeps its copyright and licence notices
    font = subset.load_font(path, options)

    cmap = font.getBestCmap()
    missing = [sign for sign in SIGNS if ord(sign) not in cmap]
    if missing:
        sys.exit(f"{path}: no glyph for {' '.join(missing)}")
    widths = {font["hmtx"][cmap[ord(digit)]][0] for digit in "0123456789"}
    if len(widths) != 1:
        sys.exit(f"{path}: the digits are of different widths: {sorted(widths)}")

    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=LATIN + GREEK + CYRILLIC + [ord(sign) for sign in SIGNS])
    subsetter.subset(font)
    # The same input gives the same bytes at any time.
    font.recalcTimestamp = False
    out = io.BytesIO()
    font.save(out)
    return out.getvalue()


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--output", required=True)
    parser.add_argument("faces", nargs="+")
    arguments = parser.parse_args()

    lines = ["// Written by web/setup/subset_font.py at build time.", "namespace evenfall::shell::look {"]
    for name, path in zip(arguments.faces[::2], arguments.faces[1::2]):
        data = cut(path)
        lines.append(f"extern const unsigned char font_{name}[];")
        lines.append(f"extern const unsigned font_{name}_size;")
        lines.append(f"const unsigned char font_{name}[] = {{")
        for start in range(0, len(data), 32):
            lines.append(",".join(str(byte) for byte in data[start : start + 32]) + ",")
        lines.append("};")
        lines.append(f"const unsigned font_{name}_size = {len(data)};")
    lines.append("}  // namespace evenfall::shell::look")
    with open(arguments.output, "w", encoding="ascii") as file:
        file.write("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
