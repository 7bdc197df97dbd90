#!/usr/bin/python3
"""Runs the benchmarks, native, by mesh and in the page, and writes what they say into DEVELOPERS.md, between two marks
(a section of its own, which it begins where there is none yet).

    tests/bench/table.py            everything (the builds of tests/run.sh have to be there); run it when the machine is idle
    tests/bench/table.py --print    to the screen only

Times are this machine's and say little elsewhere; ratios travel better, and stand first.
"""
import argparse
import os
import re
import subprocess
import sys
import xml.etree.ElementTree as ElementTree
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
NATIVE = ROOT / "build" / "native"
BEGIN, END = "<!-- speed: written by tests/bench/table.py -->", "<!-- speed: end -->"
LURE = "millrace-170"


def catch_times(program, tests, quick):
    """Least of the mean times of several runs in µs, by name: what others take of the machine only ever adds."""
    least = {}
    for _ in range(1 if quick else 5):
        run = subprocess.run([str(NATIVE / "tests" / program), tests, "--reporter", "xml", "--benchmark-samples", "2" if quick else "8"],
                             capture_output=True, text=True, check=True)
        for b in ElementTree.fromstring(run.stdout).iter("BenchmarkResults"):
            us = float(b.find("mean").get("value")) / 1000.0
            least[b.get("name")] = min(us, least.get(b.get("name"), us))
    return least


def page_lines():
    """What tests/browser/bench.spec.mjs prints, or None where no page is built."""
    page = ROOT / "build" / "web" / "page"
    if not page.exists():
        return None
    environment = dict(os.environ, EVENFALL_PROGRAM=str(NATIVE / "shell" / "evenfall"), EVENFALL_PRESETS=str(ROOT / "presets"),
                       EVENFALL_SOURCE=str(ROOT), EVENFALL_PAGE_DIR=str(page), EVENFALL_BENCH=str(NATIVE / "tests" / "evenfall_bench"))
    environment.setdefault("EVENFALL_CHROMIUM", "/usr/bin/chromium")
    if "EVENFALL_NODE_MODULES" not in environment:
        sys.exit("Set EVENFALL_NODE_MODULES to the folder that holds playwright-core (ctest -V shows it).")
    run = subprocess.run(["node", "--test", str(ROOT / "tests" / "browser" / "bench.spec.mjs")],
                         capture_output=True, text=True, env=environment)
    if run.returncode != 0:
        sys.exit(run.stdout)
    return run.stdout


def machine(loads):
    """The processor, the browser and how busy the machine was: no names of hosts or places."""
    info = dict(re.findall(r"^([^:\n]+):\s*(.+)$", subprocess.run(["lscpu"], capture_output=True, text=True,
                                                                 env=dict(os.environ, LC_ALL="C")).stdout, re.M))
    chromium = os.environ.get("EVENFALL_CHROMIUM", "/usr/bin/chromium")
    version = subprocess.run([chromium, "--version"], capture_output=True, text=True).stdout
    browser = re.search(r"Chromium [\d.]+", version)
    cores = int(info["CPU(s)"])
    busy = max(loads)
    words = f"{info['Model name']}, {cores} cores, {browser.group() if browser else 'no browser'}"
    # Our own run is one of the load.
    if busy > 1.5:
        words += (f". **The machine was not idle**: a load of {min(loads):.1f} to {busy:.1f} while this was measured; "
                  "times are too long by as much as others took, ratios suffer less")
    return words + "."


def shown(us):
    return f"{us:.0f} µs" if us < 1000 else f"{us / 1000:.1f} ms" if us < 1e6 else f"{us / 1e6:.1f} s"


def ratio(value):
    return f"{value:.2g}" if value < 10 else f"{value:,.0f}"


def main():
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("--print", action="store_true", dest="only_print")
    ask.add_argument("--quick", action="store_true", help="one short run without the page, to see whether it works")
    a = ask.parse_args()
    loads = [os.getloadavg()[0]]
    native = catch_times("evenfall_bench", "evaluate,sheet,joints,growth,float,limits", a.quick)
    loads.append(os.getloadavg()[0])
    mesh = catch_times("evenfall_mesh_tests", "segments by mesh and by the core", a.quick)
    page = None if a.quick else page_lines()
    loads.append(os.getloadavg()[0])

    rows = []
    if page:
        for name, here, there in re.findall(r"# (.+): native ([\d.]+) µs, page ([\d.]+) µs", page):
            rows.append((f"{name}: the page over the native program", float(there) / float(here),
                         f"{shown(float(there))} over {shown(float(here))}"))
    core = mesh["segments by the core"]
    for what in ("made, cut and measured", "measured alone"):
        by_mesh = mesh[f"segments by mesh, {what}"]
        rows.append((f"volume and centroid of three segments: a mesh of 240 rings, {what} (CGAL), over the core", by_mesh / core,
                     f"{shown(by_mesh)} over {shown(core)}"))
    for few, many in (("evaluate 6 stations", "evaluate 60 stations"), ("evaluate 1 segment", "evaluate 10 segments"),
                      ("evaluate 4 holes", "evaluate 40 holes"), ("draw 1000 samples", "draw 10000 samples")):
        rows.append((f"tenfold: {many} over {few.split(' ', 1)[1]}", native[many] / native[few],
                     f"{shown(native[many])} over {shown(native[few])}"))
    text = [BEGIN, "", "| what | ratio | times |", "|---|---|---|"]
    text += [f"| {what} | {ratio(r)} | {times} |" for what, r, times in rows]
    alone = [("an evaluation", f"evaluate {LURE}"), ("the same after an edit of lead", f"edit of lead {LURE}"), ("a plan of the lead", f"plan {LURE}"), ("its joints", f"joints {LURE}"),
             ("a link written", f"write link {LURE}"), ("a link read", f"read link {LURE}"), ("a build sheet as PDF", f"sheet {LURE}"),
             ("all answers afloat, lead out", f"all float answers {LURE}")]
    text += ["", f"*Millrace 170*, natively, on one core: " +
             ", ".join(f"{what} {shown(native[name])}" for what, name in alone) + "."]
    worst = [("an evaluation", "evaluate at the limits"), ("a plan", "plan at the limits"), ("its joints", "joints at the limits"),
             ("how sure it is", "uncertainty at the limits")]
    counts = (10, 25, 50, 100, 200)
    logs = [(kind, [native[f"uncertainty, {n} {kind} at odds"] for n in counts]) for kind in ("weighings", "falls", "waterlines")]
    text += ["", "The largest document there may be, twelve segments with every list full, natively: " +
             ", ".join(f"{what} {shown(native[name])}" for what, name in worst) +
             ". How sure a demo lure is with 10, 25, 50, 100 and 200 readings far at odds with each other: " +
             "; ".join(f"{kind} " + ", ".join(shown(us) for us in times) for kind, times in logs) + "."]
    if page and (first := re.search(r"first frame, [^:]*: ([\d, ]+) ms", page)):
        times = sorted(int(ms) for ms in first.group(1).split(","))
        text += ["", f"First frame of the page that can be touched, from the same machine, nothing kept: {times[len(times) // 2]} ms "
                     f"({times[0]} to {times[-1]}), drawn without a graphics card."]
    text += ["", f"Measured on: {machine(loads)}", "", END]
    if a.only_print:
        print("\n".join(text))
        return
    book = ROOT / "DEVELOPERS.md"
    old = book.read_text()
    if BEGIN not in old:
        old = old.rstrip() + f"\n\n## How fast it is\n\n{BEGIN}\n{END}\n"
    at, to = old.index(BEGIN), old.index(END) + len(END)
    book.write_text(old[:at] + "\n".join(text) + old[to:])


main()
