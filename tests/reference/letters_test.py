#!/usr/bin/python3
"""Names in other writings on the build sheet, read back with poppler: letters that the typeface has are drawn, those that it lacks
are told on the first page, and the text that is searched and copied has them all."""

import json
import os
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as tree

program = os.environ["EVENFALL_PROGRAM"]
presets = os.environ["EVENFALL_PRESETS"]
failures = 0

HAD = ["Łosoś żółty ćęńź", "Příliš žluťoučký kůň", "Gåsö őű Ţţșț", "Λαβράκι ψάρι ό", "Щука і ёрш ґ", "Große Äsche"]
LACKED = ["釣り竿", "سمك", "גדול", "🎣 fish"]


def check(so, what):
    global failures
    if not so:
        failures += 1
        print("FAILED:", what)


def run(*words):
    return subprocess.run(words, check=True, capture_output=True).stdout


def sheet_of(work, names, ending):
    """A lure whose names are these, in all places where a sheet prints one; its sheet."""
    lure = json.load(open(f"{presets}/millrace-170.json"))
    lure["name"] = names[0]
    lure["note"] = " · ".join(names)
    for key in ("holes", "pockets", "parts", "coats", "hangers"):
        for k, entry in enumerate(lure[key]):
            entry["name"] = names[k % len(names)]
    lure["segments"] = [names[k % len(names)] for k in range(3)]
    json.dump(lure, open(f"{work}/lure.json", "w"), ensure_ascii=False)
    out = f"{work}/sheet.{ending}"
    run(program, "sheet", f"{work}/lure.json", "-o", out)
    return out


def text_of(pdf, *more):
    return run("pdftotext", *more, pdf, "-").decode()


def letters(text):
    # Writing from right to left comes back in other runs: the letters count. A line may end within a word.
    return sorted(re.sub(r"[\s\u200e\u200f\u202a-\u202e]", "", text))


def main():
    with tempfile.TemporaryDirectory() as work:
        pdf = sheet_of(work, HAD, "pdf")
        run("qpdf", "--check", pdf)
        text = text_of(pdf)
        for name in HAD:
            check(name in text, f"“{name}” cannot be found in the PDF")
        check("lacks" not in text, "the sheet says that its typeface lacks letters which it has")
        check("�" not in text, "letters of the PDF cannot be read back")
        size = os.path.getsize(pdf)
        check(size < 200_000, f"the PDF has {size} bytes")

        pdf = sheet_of(work, LACKED, "pdf")
        run("qpdf", "--check", pdf)
        text, first = text_of(pdf), text_of(pdf, "-l", "1")
        for name in ("釣り竿", "🎣 fish"):
            check(name in text, f"“{name}” cannot be found in the PDF")
        there = letters(text)
        for name in LACKED:
            for letter in set(letters(name)):
                check(there.count(letter) >= 2, f"“{letter}” of “{name}” is lost from the PDF's text")
        said = " ".join(first.split())
        check("The typeface of this sheet lacks" in said, "the first page does not say that letters are lacking")
        codes = sorted({ord(c) for c in "".join(LACKED)} - set(range(0x20, 0x7F)))
        check(f"U+{codes[0]:04X}" in said and f"and {len(codes) - 6} more" in said, f"the letters lacking are not named: {said[:600]}")
        for title in ("Build sheet", "Drilling and pockets", "Coats and time"):
            check(f"“{title}”" in said, f"the page “{title}” is not named among those with letters lacking")

        svg = tree.parse(sheet_of(work, LACKED, "svg"))
        check(any(LACKED[0] in (element.text or "") for element in svg.iter()), "the SVG lost letters")
    print("all as expected" if failures == 0 else f"{failures} failed")
    sys.exit(failures > 0)


main()
