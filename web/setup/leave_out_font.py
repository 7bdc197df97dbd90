#!/usr/bin/python3
"""Copies Dear ImGui's drawing source without the typeface that is built into it: the page always brings its own, and
that one would be a fortieth of the page's weight.

usage: leave_out_font.py imgui_draw.cpp COPY
"""

import pathlib
import re
import sys

source, target = map(pathlib.Path, sys.argv[1:3])
text, count = re.subn(
    r'(proggy_clean_ttf_compressed_data_base85)\[[^\]]*\]\s*=\s*(?:"(?:[^"\\\n]|\\.)*"\s*)+;',
    r'\1[1] = "";',
    source.read_text("utf-8"),
)
if count != 1:
    sys.exit(f"{source}: the built-in typeface was found {count} times, and it has to be once")
target.write_text(text, "utf-8")
