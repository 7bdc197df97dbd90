#!/usr/bin/python3
"""Are the core's sums held by its tests? Changes one sign, operator or constant of core/ at a time and runs the unit tests.

A change that no test notices (a survivor) is either a hole in the tests or changes no answer; survivors.md says which.
On demand only: it takes a while. The native build must be there (tests/run.sh makes it). Nothing in core/ is written to: each
changed file is compiled from a copy and linked in front of the core's library.

    tests/mutation/run.py                     160 changes, seed 1
    tests/mutation/run.py --count 40 --seed 7 --only core/plan core/wire
    tests/mutation/run.py --again             the survivors of the last run once more, and nothing else
"""
import argparse
import json
import random
import re
import resource
import shlex
import subprocess
import sys
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
FOLDERS = ["ledger", "body", "materials", "water", "bench", "workshop"]

# What stands in the text, and what takes its place. Blanks round an operator tell it from templates and pointers.
SWAPS = {
    " + ": " - ", " - ": " + ", " * ": " / ", " / ": " * ", " += ": " -= ", " -= ": " += ",
    " < ": " <= ", " <= ": " < ", " > ": " >= ", " >= ": " > ", " && ": " || ", " || ": " && ",
    "std::min(": "std::max(", "std::max(": "std::min(", "std::sin(": "std::cos(", "std::cos(": "std::sin(",
    "(-": "(", "= -": "= ", "return -": "return ",
}
SWAP = re.compile("|".join(re.escape(s) for s in SWAPS))
CONSTANT = re.compile(r"(?<![\w.])(\d+\.\d+(?:e-?\d+)?|\d+e-?\d+)(?![\w.])")
NOT_CODE = re.compile(r'//[^\n]*|/\*.*?\*/|"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])*\'|^[ \t]*#[^\n]*', re.S | re.M)


def changes(path):
    """All single changes of one file: (offset, old, new)."""
    text = path.read_text()
    code = NOT_CODE.sub(lambda m: re.sub(r"[^\n]", " ", m.group()), text)
    # The bounds of a plain loop are noticed by anything that runs.
    code = re.sub(r"\bfor \([^;\n]*;[^\n]*", lambda m: " " * len(m.group()), code)
    for m in SWAP.finditer(code):
        yield m.start(), m.group(), SWAPS[m.group()]
    for m in CONSTANT.finditer(code):
        if float(m.group()) > 1e-5:  # below that, a tolerance
            yield m.start(), m.group(), f"({m.group()} * 1.01)"


def sample(only, count, seed):
    """Every folder gets its share by the root of its size, so that small ones are looked at too."""
    by_folder = {}
    for file in sorted((ROOT / "core").rglob("*.cpp")):
        name = file.relative_to(ROOT).as_posix()
        if any(name.startswith(o.rstrip("/") + "/") or name == o for o in only):
            by_folder.setdefault(file.parent.name, []).extend((name, *c) for c in changes(file))
    rng = random.Random(seed)
    weight = {folder: len(all_) ** 0.5 for folder, all_ in by_folder.items()}
    total = sum(weight.values())
    chosen = []
    for folder, all_ in by_folder.items():
        chosen += rng.sample(all_, min(len(all_), max(1, round(count * weight[folder] / total))))
    rng.shuffle(chosen)
    return chosen


class Builder:
    def __init__(self, build):
        self.build = build
        self.work = ROOT / "build" / "mutation"
        self.work.mkdir(parents=True, exist_ok=True)
        self.commands = {c["file"]: c["command"] for c in json.loads((build / "compile_commands.json").read_text())}
        lines = subprocess.run(["ninja", "-C", str(build), "-t", "commands", "-s", "tests/evenfall_tests"],
                               capture_output=True, text=True, check=True).stdout.strip().splitlines()
        link = next(line for line in reversed(lines) if "-o tests/evenfall_tests" in line)
        link = re.search(r": && (.*?) && ", link + " && ").group(1)
        self.link = shlex.split(link)

    def compile(self, name, text):
        """The changed file → object, or None where it does not compile."""
        source = self.work / "changed.cpp"
        source.write_text(text)
        words = [w for w in shlex.split(self.commands[str(ROOT / name)]) if w not in ("-Werror", "-O2", "-O3")]
        words[words.index("-o") + 1] = str(self.work / "changed.o")
        words[words.index("-c") + 1] = str(source)
        return subprocess.run(words + ["-O1", "-w"], cwd=self.build, capture_output=True).returncode == 0

    def program(self):
        words = list(self.link)
        at = words.index("-o")
        words[at + 1] = str(self.work / "tests")
        words.insert(at, str(self.work / "changed.o"))
        subprocess.run(words, cwd=self.build, check=True, capture_output=True)


def seconds_used():
    return resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime


def passes(program, words, limit_s):
    """Does the program end well within so many seconds of its own (not of the clock, which others share)?"""
    run = subprocess.run([str(program), "--abort", *words], capture_output=True,
                         preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_CPU, (limit_s, limit_s)))
    return run.returncode == 0


def nearest_tests(name):
    """Catch2's filter for the files that test this folder, which notice most changes at once."""
    folder = Path(name).parent.name
    files = [*(ROOT / "tests" / "unit" / folder).glob("*.cpp"), *(ROOT / "tests" / "published").glob(f"{folder}*.cpp"),
             *(ROOT / "tests" / "properties").glob(f"{folder}*.cpp")]
    return ",".join(f"[#{file.stem}]" for file in sorted(files))


def verdict(builder, change, limit_s, tests):
    name, offset, old, new = change
    text = (ROOT / name).read_text()
    if text[offset:offset + len(old)] != old:
        return "gone"
    if not builder.compile(name, text[:offset] + new + text[offset + len(old):]):
        return "not built"
    builder.program()
    program = builder.work / "tests"
    near = nearest_tests(name)
    if near and not passes(program, ["-#", near], limit_s):
        return "killed"
    return "survived" if passes(program, tests, limit_s) else "killed"


def told(change):
    name, offset, old, new = change
    text = (ROOT / name).read_text()
    line = text.count("\n", 0, offset) + 1
    at = text.rfind("\n", 0, offset) + 1
    return f"{name}:{line}  `{old.strip()}` → `{new.strip()}`  in  {text[at:text.find(chr(10), offset)].strip()}"


def main():
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("--count", type=int, default=160)
    ask.add_argument("--seed", type=int, default=1)
    ask.add_argument("--only", nargs="+", default=[f"core/{f}" for f in FOLDERS])
    ask.add_argument("--from", type=int, default=1, dest="first", metavar="N", help="go on where a run was cut short")
    ask.add_argument("--again", action="store_true")
    ask.add_argument("--build", type=Path, default=ROOT / "build" / "native")
    ask.add_argument("--tests", nargs="*", default=[], help="filters for the unit tests")
    a = ask.parse_args()
    builder = Builder(a.build.resolve())
    kept = builder.work / "survivors.json"
    chosen = [tuple(c) for c in json.loads(kept.read_text())] if a.again else sample(a.only, a.count, a.seed)

    before = seconds_used()
    whole = subprocess.run([str(a.build / "tests" / "evenfall_tests"), *a.tests], capture_output=True)
    if whole.returncode != 0:
        sys.exit("The tests fail without any change; build and mend them first.")
    limit_s = int(10.0 + 3.0 * (seconds_used() - before))
    counts = Counter()
    survivors = []
    for n, change in enumerate(chosen, 1):
        if n < a.first:
            continue
        what = verdict(builder, change, limit_s, a.tests)
        counts[what] += 1
        if what == "survived":
            survivors.append(change)
            kept.write_text(json.dumps(survivors))
        print(f"{n}/{len(chosen)} {what}: {told(change) if what != 'gone' else change[0]}", flush=True)
    kept.write_text(json.dumps(survivors))
    print(", ".join(f"{count} {what}" for what, count in counts.most_common()))


main()
