#!/usr/bin/python3
"""The build sheet measured from outside: rendered by poppler (PDF) and librsvg (SVG), printed by a browser (HTML), its text read
back. Lengths come from pixels at 600 dots per inch; what they ought to be comes from the preset, with SciPy's own monotone cubic
(PchipInterpolator) between its stations."""

import json
import os
import re
import shutil
import subprocess
import sys
import tempfile

import numpy as np
from scipy.interpolate import PchipInterpolator

DPI = 600
PX = DPI / 25.4
WITHIN = 0.1  # mm: what the sheet promises
OUTLINE = 0.35  # mm, width of an outline
program = os.environ["EVENFALL_PROGRAM"]
presets = os.environ["EVENFALL_PRESETS"]
PAPERS = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}  # ISO 216; 8.5 × 11 in
failures = 0


def check(so, what):
    global failures
    if not so:
        failures += 1
        print("FAILED:", what)


def near(value, wanted, what, within=WITHIN):
    check(abs(value - wanted) <= within, f"{what}: {value:.3f}, not {wanted:.3f} ± {within}")


def run(*words):
    return subprocess.run(words, check=True, capture_output=True).stdout


def grey(path):
    """A binary grey map as an array."""
    data = open(path, "rb").read()
    head = re.match(rb"P5\s+(\d+)\s+(\d+)\s+255\s", data)
    w, h = int(head[1]), int(head[2])
    return np.frombuffer(data, np.uint8, w * h, head.end()).reshape(h, w)


def words_of(pdf):
    """[page][(left, top, right, bottom, word)] in mm, and the pages' sizes."""
    text = run("pdftotext", "-bbox", pdf, "-").decode()
    pages, sizes = [], []
    for page in re.finditer(r'<page width="([\d.]+)" height="([\d.]+)">(.*?)</page>', text, re.S):
        sizes.append((float(page[1]) / 72 * 25.4, float(page[2]) / 72 * 25.4))
        pages.append([tuple(float(v) / 72 * 25.4 for v in w.groups()[:4]) + (w[5],) for w in
                      re.finditer(r'<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)</word>', page[3])])
    return pages, sizes


def place(words, *sequence):
    """Upper edge of the first place where these words follow one another."""
    names = [w[4] for w in words]
    for k in range(len(names)):
        if names[k:k + len(sequence)] == list(sequence):
            return words[k]
    raise LookupError(sequence)


def middle(dark):
    at = np.flatnonzero(dark)
    return (at.min() + at.max() + 1) / 2 / PX


def measure_bars(image, words, what):
    """From the middle of the first tick to the middle of the last, in the rows above the words under the bar."""
    for sequence, length in ((("100", "mm", "exactly"), 100.0), (("4", "in", "exactly"), 101.6)):
        word = place(words, *sequence)
        # Ticks stand up to 2.6 mm above the bar; the bar lies about 3 mm above the words' baseline.
        rows = image[int((word[1] - 3.2) * PX):int((word[1] - 1.6) * PX), int(8 * PX):int(122 * PX)]
        ticks = np.flatnonzero((rows < 110).mean(axis=0) > 0.5)
        near((ticks.max() - ticks.min() + 1) / PX - 0.25, length, f"{what}: bar of {' '.join(sequence)}")


def curve(points):
    x, y = np.array(points, float).T
    if len(x) == 2:
        return lambda at: np.interp(at, x, y)
    return PchipInterpolator(x, y)


def measure_board(image, words, preset, what):
    """Length and heights of the saw line from the side, breadths from above."""
    shape = preset["shape"]
    top, bottom, half = curve(shape["back_mm"]), curve(shape["belly_mm"]), curve(shape["half_width_mm"])
    length = shape["back_mm"][-1][0]
    side = place(words, "From", "the", "side")[3] + 0.8
    above = place(words, "From", "above")
    tall = max(p[1] for p in shape["back_mm"]) - min(p[1] for p in shape["belly_mm"])
    wide = 2 * max(p[1] for p in shape["half_width_mm"])
    for name, y0, extent, upper, lower in (("side", side, tall, top, bottom), ("above", above[3] + 0.8, wide, half, lambda x: -half(x))):
        rows = image[int((y0 + 3.2) * PX):int((y0 + extent + 9.0) * PX), :] < 70  # the board's edge and the datum are paler
        columns = np.flatnonzero(rows.any(axis=0))
        left, right = columns.min() / PX + OUTLINE / 2, (columns.max() + 1) / PX - OUTLINE / 2
        near(right - left, length, f"{what}: length from {name}")
        joints = [j["at_mm"] for j in preset.get("joints", [])]
        measured = 0
        for x in np.arange(0.06, 0.96, 0.045) * length:
            if any(abs(x - j) < 8 for j in joints):
                continue
            at = np.flatnonzero(rows[:, int(round((left + x) * PX))])
            # The outline's upper and lower line stand as thick across a slope as the slope makes them.
            slope = lambda f: OUTLINE / 2 * np.hypot(1, (f(x + 0.1) - f(x - 0.1)) / 0.2)
            height = (at.max() - at.min() + 1) / PX - slope(upper) - slope(lower)
            near(height, upper(x) - lower(x), f"{what}: {name} at {x:.1f} mm")
            measured += 1
        check(measured >= 8, f"{what}: only {measured} stations of {name} measured")


def measure_holes(image, words, preset, what):
    """Crosses of the holes in the view from above, from the outline's own nose."""
    from_above = place(words, "From", "above:")
    wide = 2 * max(p[1] for p in preset["shape"]["half_width_mm"])
    y0 = from_above[3]
    rows = image[int((y0 + 3.5) * PX):int((y0 + wide + 7.6) * PX), :]
    columns = np.flatnonzero((rows < 70).any(axis=0))
    left = columns.min() / PX + OUTLINE / 2
    inked = np.flatnonzero((rows < 70).any(axis=1))
    # Middle line of the view: where the outline's own upper and lower edge have their middle.
    centre = (inked.min() + inked.max() + 1) / 2
    for hole in preset.get("holes", []):
        x = left + hole["x_mm"]
        y = centre - hole.get("y_mm", 0.0) * PX
        window = rows[int(y - 1.0 * PX):int(y + 1.0 * PX), int((x - 2.5) * PX):int((x + 2.5) * PX)] < 110
        upright = window.mean(axis=0) > 0.85
        check(upright.any(), f"{what}: no cross near hole {hole['name']}")
        if upright.any():
            near(middle(upright) + int((x - 2.5) * PX) / PX - left, hole["x_mm"], f"{what}: hole {hole['name']}")


        level = rows[int(y - 1.2 * PX):int(y + 1.2 * PX), int((x - 0.9) * PX):int((x + 0.9) * PX)] < 110
        across = level.mean(axis=1) > 0.85
        check(across.any(), f"{what}: no level arm near hole {hole['name']}")
        if across.any():
            near((centre - int(y - 1.2 * PX)) / PX - middle(across), hole.get("y_mm", 0.0), f"{what}: hole {hole['name']} across")


def measure_seams(image, words, preset, what):
    """A drawing in two stretches: the mark to glue on stands at one station in both, and the outline above it at one height."""
    shape = preset["shape"]
    top, bottom = curve(shape["back_mm"]), curve(shape["belly_mm"])
    tall = max(p[1] for p in shape["back_mm"]) - min(p[1] for p in shape["belly_mm"])
    # Rows of numbers below the stretches: what they say and where their middles stand.
    rows = {}
    for left, y0, right, y1, word in words:
        if re.fullmatch(r"\d+0|0", word) and y1 - y0 < 3.2:
            rows.setdefault(round(y0, 1), []).append((float(word), (left + right) / 2))
    scales = [(y, sorted(row)) for y, row in sorted(rows.items()) if len(row) > 5][:2]
    check(len(scales) == 2 and scales[0][1][0][0] == 0 and scales[1][1][0][0] > 0, f"{what}: two stretches of one drawing")
    seen = []
    for y, row in scales:
        station, paper = np.array(row).T
        near((paper[-1] - paper[0]), station[-1] - station[0], f"{what}: scale of a stretch")
        to_paper = lambda s: paper[0] + s - station[0]
        y0, y1 = y - 3.0 - tall - 10.0, y - 3.0
        part = image[int(y0 * PX):int(y1 * PX), :]
        marks = np.flatnonzero(((part > 75) & (part < 118)).mean(axis=0) > 0.25)
        check(len(marks) > 0, f"{what}: no mark to glue on")
        at = (marks.min() + marks.max() + 1) / 2 / PX - paper[0] + station[0]
        heights = []
        for s in at + np.arange(-7.0, 7.5, 1.0):
            if any(abs(s - j["at_mm"]) < 4 for j in preset["joints"]) or abs(s - at) < 0.5:
                continue
            ink = np.flatnonzero(part[:, int(round(to_paper(s) * PX))] < 70)
            near((ink.max() - ink.min() + 1) / PX - OUTLINE, top(s) - bottom(s), f"{what}: height at {s:.1f}")
            heights.append((ink.min() + ink.max() + 1) / 2 / PX + y0 - y)
        seen.append((at, np.array(heights)))
    near(seen[0][0], seen[1][0], f"{what}: the mark in both stretches")
    check(len(seen[0][1]) == len(seen[1][1]) >= 4, f"{what}: {len(seen[0][1])} stations of the seam measured")
    for one, two in zip(seen[0][1], seen[1][1]):
        near(one, two, f"{what}: the outline on both sides of the seam")


def measure_cards(image, words, preset, what):
    """Every section card: how wide and how high the hole is that is cut out of it."""
    shape = preset["shape"]
    top, bottom, half = curve(shape["back_mm"]), curve(shape["belly_mm"]), curve(shape["half_width_mm"])
    begin = next((k for k in range(len(words)) if [w[4] for w in words[k:k + 2]] == ["Section", "cards,"]), 0)
    measured = 0
    for word, unit, after in zip(words[begin:], words[begin + 1:], words[begin + 2:]):
        if after[4] == "exactly" or unit[4] != "mm" or not re.fullmatch(r"\d+", word[4]) or abs(unit[1] - word[1]) > 0.1:
            continue
        at = float(word[4])
        wide, high = 2 * half(at), top(at) - bottom(at)
        frame = max(wide + 8.0, 27.0)
        y1 = word[1] - 0.2  # the frame's lower edge lies a little above the number
        x0 = word[0] + 0.5
        part = image[int((y1 - high - 7.0) * PX):int(y1 * PX), int(x0 * PX):int((x0 + frame - 1.0) * PX)] < 70
        rows, columns = np.flatnonzero(part.any(axis=1)), np.flatnonzero(part.any(axis=0))
        near((columns.max() - columns.min() + 1) / PX - OUTLINE, wide, f"{what}: card {at:.0f}, width")
        near((rows.max() - rows.min() + 1) / PX - OUTLINE, high, f"{what}: card {at:.0f}, height")
        measured += 1
    return measured


def measure_reliefs(image, words, preset, what):
    """The faces of a joint from above: their distance on and off the middle line."""
    half = curve(preset["shape"]["half_width_mm"])
    labels = [w for w, n in zip(words, words[1:]) if w[4] == "Joint" and re.fullmatch(r"\d+:", n[4])]
    check(len(labels) == len(preset["joints"]), f"{what}: every joint has its card")
    wide = 2 * max(p[1] for p in preset["shape"]["half_width_mm"])
    for joint, label in zip(preset["joints"], labels):
        y1 = label[1] - 0.1
        part = image[int((y1 - wide - 3.5) * PX):int(y1 * PX), int((label[0] + 0.4) * PX):int((label[0] + 39.6) * PX)] < 70
        rows = np.flatnonzero(part.any(axis=1))
        centre = (rows.min() + rows.max() + 1) / 2
        fore, aft = (np.tan(np.radians(joint[f"relief_{side}_deg"])) for side in ("fore", "aft"))
        faces = []
        for off in (-0.7, -0.45, 0.45, 0.7):
            y = off * half(joint["at_mm"])
            row = np.flatnonzero(part[int(round(centre + y * PX)), :])
            left = [p for p in row if p < 20.0 * PX - 0.4 * PX]
            right = [p for p in row if p > 20.0 * PX - 0.4 * PX]
            # The edge of the line nearest the gap, and half of the line's thickness, measured level.
            x0 = (max(left) + 1) / PX - OUTLINE / 2 * np.hypot(1, fore)
            x1 = min(right) / PX + OUTLINE / 2 * np.hypot(1, aft)
            near(x1 - x0, joint["gap_mm"] + abs(y) * (fore + aft), f"{what}: joint at {joint['at_mm']}, gap {y:.1f} mm off the middle")
            faces.append((abs(y), x0, x1))
        for near_, far_ in ((faces[1], faces[0]), (faces[2], faces[3])):
            out = far_[0] - near_[0]
            near(near_[1] - far_[1], out * fore, f"{what}: joint at {joint['at_mm']}, fore relief")
            near(far_[2] - near_[2], out * aft, f"{what}: joint at {joint['at_mm']}, aft relief")


def rendered(pdf, page, work):
    run("pdftoppm", "-r", str(DPI), "-gray", "-f", str(page), "-l", str(page), "-singlefile", pdf, f"{work}/page")
    return grey(f"{work}/page.pgm")


def page_titled(pages, *title):
    for k, words in enumerate(pages):
        if [w[4] for w in words[:len(title)]] == list(title):
            return k
    raise LookupError(title)


def check_text(pdf, name, what):
    """Numbers of the weigh-in card and of the fills against the program's own answers."""
    text = run("pdftotext", "-layout", pdf, "-").decode().replace("−", "-")
    answers = json.loads(run(program, "weigh", f"{presets}/{name}.json", "--json"))
    card = text[text.index("Weigh-in card"):]
    names = ["carved", "drilled", "hardware in", "leaded", "sealed", "painted", "clear coated", "rigged"]
    for row, stage in zip(names, answers["stages"]):
        line = next(line for line in card.splitlines() if line.strip().startswith(row))
        numbers = re.findall(r"[-+]?\d+\.\d+", line)
        for got, wanted in zip(numbers, (stage["mass_g"], stage["mass_sigma_g"], stage["in_tub_g"])):
            near(float(got), wanted, f"{what}: {row}", 0.0051)
        if stage["tub_fall_mm_s"] is None:
            check("floats" in line, f"{what}: {row} floats")
        else:
            near(float(re.search(r"(\d+) mm/s", line)[1]), stage["tub_fall_mm_s"], f"{what}: fall after {row}", 0.51)
    preset = json.load(open(f"{presets}/{name}.json"))
    fills = text[text.index("Lead, wire and parts"):]
    for hole in preset.get("holes", []):
        if hole.get("fill", {}).get("mass_g"):
            line = next(line for line in fills.splitlines() if line.strip().startswith(hole["name"]))
            near(float(re.findall(r"\d+\.\d\d", line)[0]), hole["fill"]["mass_g"], f"{what}: fill of {hole['name']}", 0.0051)
    # The code carries the link (tests/program/code_test.sh reads it back); its letters are not printed.
    link = run(program, "link", f"{presets}/{name}.json").decode().strip()
    check(link[:40] not in re.sub(r"\s", "", text), f"{what}: the link's letters are printed")


def inside(pages, size, what):
    for k, words in enumerate(pages):
        for left, top, right, bottom, word in words:
            if left < 5 or top < 5 or right > size[0] - 5 or bottom > size[1] - 5:
                check(False, f"{what}: “{word}” on page {k + 1} at {left:.1f} {top:.1f}")


def check_printed(html, wanted, size, work, what):
    chromium = os.environ.get("EVENFALL_CHROMIUM") or shutil.which("chromium")
    out = f"{work}/printed.pdf"
    run(chromium, "--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={work}/browser", "--no-pdf-header-footer",
        f"--print-to-pdf={out}", f"file://{html}")
    pages, sizes = words_of(out)
    check(len(pages) == len(wanted), f"{what}: {len(pages)} pages printed, not {len(wanted)}")
    for got in sizes:
        # A browser rounds its page to whole CSS pixels (1/96 in).
        near(got[0], size[0], f"{what}: width of the printed page", 0.3)
        near(got[1], size[1], f"{what}: height of the printed page", 0.3)
    for got, want in zip(pages, wanted):
        check("".join(sorted("".join(w[4] for w in got))) == "".join(sorted("".join(w[4] for w in want))), f"{what}: a page prints other words")
    inside(pages, size, what)
    board = page_titled(pages, "Board:", "saw", "lines")
    measure_bars(rendered(out, board + 1, work), pages[board], what + ", printed")


def check_off_middle(paper, work):
    """No demo has a hole off the middle: a lure whose holes stand alternately to starboard and to port."""
    preset = json.load(open(f"{presets}/millrace-170.json"))
    del preset["holes"][5:]  # the tail is too thin for one off the middle
    for k, hole in enumerate(preset["holes"]):
        hole["y_mm"] = 2.0 if k % 2 == 0 else -2.0
        hole["wall_mm"] = 1.0
    file, pdf = f"{work}/off.json", f"{work}/off.pdf"
    json.dump(preset, open(file, "w"))
    run(program, "sheet", file, "-o", pdf, "--paper", paper)
    pages, _ = words_of(pdf)
    page = page_titled(pages, "Templates:")
    measure_holes(rendered(pdf, page + 1, work), pages[page], preset, f"holes off the middle on {paper}")


def check_sheet(name, paper, work):
    what = f"{name} on {paper}"
    preset = json.load(open(f"{presets}/{name}.json"))
    size = PAPERS[paper]
    files = {}
    for ending in ("pdf", "html", "svg"):
        files[ending] = f"{work}/{name}-{paper}.{ending}"
        run(program, "sheet", f"{presets}/{name}.json", "-o", files[ending], "--paper", paper)
    pdf = files["pdf"]
    run("qpdf", "--check", pdf)
    fonts = run("pdffonts", pdf).decode().splitlines()[2:]
    check(len(fonts) == 2 and all(re.search(r"yes\s+yes\s+yes", font) for font in fonts), f"{what}: both faces embedded, with Unicode")
    pages, sizes = words_of(pdf)
    for got in sizes:
        near(got[0], size[0], f"{what}: width", 0.01)
        near(got[1], size[1], f"{what}: height", 0.01)
    inside(pages, size, what)
    check_text(pdf, name, what)
    board, templates = page_titled(pages, "Board:", "saw", "lines"), page_titled(pages, "Templates:")
    one_piece = preset["shape"]["back_mm"][-1][0] < size[0] - 34
    # The SVG by its own renderer, which keeps its millimetres; then cut into pages by pixels.
    run("rsvg-convert", "-f", "pdf", "-o", f"{work}/svg.pdf", files["svg"])
    for page in range(len(pages)):
        if page in (board, templates) or page == len(pages) - 1:
            image = rendered(pdf, page + 1, work)
            measure_bars(image, pages[page], f"{what}, page {page + 1}")
            if one_piece and page == board:
                measure_board(image, pages[page], preset, what)
            if one_piece and page == templates:
                measure_holes(image, pages[page], preset, what)
            if not one_piece and page == board:
                measure_seams(image, pages[page], preset, what)
    cards = page_titled(pages, "Joint", "cuts") if preset.get("joints") else None
    if cards is not None:
        measured = 0
        for page in range(cards, len(pages)):
            if [w[4] for w in pages[page][:2]] != ["Joint", "cuts"]:
                break
            image = rendered(pdf, page + 1, work)
            measured += measure_cards(image, pages[page], preset, what)
            if page == cards:
                measure_reliefs(image, pages[page], preset, what)
        length, gaps = preset["shape"]["back_mm"][-1][0], preset["joints"]
        stations = [x for x in range(10, int(np.ceil(length)), 10) if all(abs(x - j["at_mm"]) >= j["gap_mm"] / 2 for j in gaps)]
        check(measured == len(stations), f"{what}: {measured} of {len(stations)} section cards measured")
    height = int(round(size[1] * PX))
    run("pdftoppm", "-r", str(DPI), "-gray", "-y", str(int(round(size[1] * board * PX))), "-H", str(height), "-x", "0", "-W",
        str(int(round(size[0] * PX))), "-singlefile", f"{work}/svg.pdf", f"{work}/svg")
    image = grey(f"{work}/svg.pgm")
    measure_bars(image, pages[board], f"{what}, SVG")
    if one_piece:
        measure_board(image, pages[board], preset, f"{what}, SVG")
    check_printed(files["html"], pages, size, work, what)
    node, script = os.environ.get("EVENFALL_NODE"), os.environ.get("EVENFALL_CLI_NODE")
    if node and script and os.path.exists(script):
        for ending, file in files.items():
            other = f"{work}/node.{ending}"
            run(node, script, "sheet", f"{presets}/{name}.json", "-o", other, "--paper", paper)
            check(open(file, "rb").read() == open(other, "rb").read(), f"{what}: the page's core writes other bytes of {ending}")


def main():
    with tempfile.TemporaryDirectory() as work:
        for name, paper in (("millrace-170", "a4"), ("reedline-120", "letter"), ("estuary-150", "letter"), ("quarry-230", "a4"), ("quarry-230", "letter"), ("millrace-170", "letter")):
            check_sheet(name, paper, work)
        for paper in PAPERS:
            check_off_middle(paper, work)
    print("all as expected" if failures == 0 else f"{failures} failed")
    sys.exit(failures > 0)


main()
