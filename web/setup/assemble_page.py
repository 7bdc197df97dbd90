#!/usr/bin/python3
"""Assembles the page's folder: copies its files, and fills in the build's hash and those of its files.

usage: assemble_page.py --output FOLDER [--worker TEMPLATE] [--take FOLDER TARGET]... [--code FILE TARGET]
                        [--script ENTRY PROGRAM TARGET] [--presets FOLDER] [--terms FILE FILE TARGET]

--script bundles the page's own modules and Emscripten's loader (PROGRAM, imported as "evenfall-program") into one minified
file; style sheets are minified too. --code adds the compiled code, plain and gzipped (TARGET.gz), so that a host need not
compress it. @EVENFALL_BUILD@ is replaced in index.html and in the service worker by a hash over all files of the page,
@EVENFALL_PRESETS@ in index.html by the demo lures, and @EVENFALL_HASHES@ in the worker by the SHA-256 of each file, as JSON.
Unchanged files are not rewritten, and files that no longer belong to the page are removed.
"""

import argparse
import gzip
import hashlib
import json
import pathlib
import subprocess
import sys

WORKER = "service-worker.js"
TEMPLATES = ("index.html", WORKER)


def take_folder(files, folder, target):
    folder = pathlib.Path(folder)
    if not folder.is_dir():
        return
    for path in sorted(folder.rglob("*")):
        if not path.is_file() or any(part.startswith(".") for part in path.relative_to(folder).parts):
            continue
        name = (pathlib.PurePosixPath(target) / path.relative_to(folder).as_posix()).as_posix()
        if name in files:
            sys.exit(f"two files want to be {name} in the page; the second is {path}")
        files[name] = path.read_bytes()


def small(*words, **more):
    """The output of the distribution's esbuild for scripts and style sheets."""
    run = subprocess.run(["esbuild", *words, "--minify", "--target=es2022", "--log-level=warning", "--charset=utf8"],
                         capture_output=True, check=False, **more)
    if run.returncode != 0:
        sys.exit(run.stderr.decode())
    return run.stdout


def without_long_terms(text):
    """The third-party licences; the Mozilla Public License only by its address, which its section 3.1 asks for; without the terms
    of packaging that is not part of the page."""
    notice = """License: MPL-2
    This work is subject to the terms of the Mozilla Public License, v. 2.0, of which a copy can be had at
    https://mozilla.org/MPL/2.0/ ; its source is that named above, unchanged.
"""
    for start, instead in (("License: MPL-2\n    Mozilla Public License Version 2.0\n", notice), ("The current Debian packaging is ", "")):
        at = text.find(start)
        if at < 0:
            continue
        end = text.find("\n==== ", at)
        text = text[:at] + instead + ("" if end < 0 else "\n" + text[end:])
    return text


def demo_lures(folder):
    """{name: JSON text} as JSON that is safe inside an HTML element."""
    lures = {}
    for path in sorted(pathlib.Path(folder).glob("*.json")):
        lures[path.stem] = json.dumps(json.loads(path.read_text("utf-8")), ensure_ascii=False, separators=(",", ":"))
    return json.dumps(lures, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c").encode()


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--output", required=True)
    parser.add_argument("--worker")
    parser.add_argument("--take", nargs=2, action="append", default=[])
    parser.add_argument("--code", nargs=2)
    parser.add_argument("--script", nargs=3)
    parser.add_argument("--presets")
    parser.add_argument("--terms", nargs=3)
    arguments = parser.parse_args()

    files = {}
    for folder, target in arguments.take:
        take_folder(files, folder, target)
    if arguments.code:
        path, target = arguments.code
        files[target] = pathlib.Path(path).read_bytes()
        files[target + ".gz"] = gzip.compress(files[target], 9, mtime=0)
    for name in files:
        if name.endswith(".css"):
            files[name] = small("--loader=css", input=files[name])
    if arguments.script:
        entry, program, target = arguments.script
        files[target] = small(entry, "--bundle", "--format=esm", f"--alias:evenfall-program={pathlib.Path(program).resolve()}")
    if arguments.terms:
        *sources, target = arguments.terms
        texts = [pathlib.Path(path).read_bytes() for path in sources if path and pathlib.Path(path).is_file()]
        files[target] = without_long_terms(b"\n\n".join(texts).decode()).encode()
    if "index.html" not in files:
        sys.exit("the page has no index.html: web/html/index.html is missing")
    if arguments.worker and pathlib.Path(arguments.worker).is_file():
        files[WORKER] = pathlib.Path(arguments.worker).read_bytes()

    # The hash is computed before anything is filled in, over names and contents, so that it depends on these alone.
    lures = demo_lures(arguments.presets) if arguments.presets else b"{}"
    digest = hashlib.sha256(lures)
    for name in sorted(files):
        digest.update(f"{name}\0{len(files[name])}\0".encode())
        digest.update(files[name])
    build = digest.hexdigest()[:12].encode()
    for name in TEMPLATES:
        if name in files:
            for sign, text in ((b"@EVENFALL_BUILD@", build), (b"@EVENFALL_PRESETS@", lures)):
                files[name] = files[name].replace(sign, text)
    if WORKER in files:
        hashes = {name: hashlib.sha256(files[name]).hexdigest() for name in sorted(files) if name != WORKER}
        files[WORKER] = files[WORKER].replace(b"@EVENFALL_HASHES@", json.dumps(hashes).encode())

    output = pathlib.Path(arguments.output)
    for name, data in files.items():
        path = output / name
        if path.is_file() and path.read_bytes() == data:
            continue
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    for path in sorted(output.rglob("*"), reverse=True):
        if path.is_file() and path.relative_to(output).as_posix() not in files:
            path.unlink()
        elif path.is_dir() and not any(path.iterdir()):
            path.rmdir()


if __name__ == "__main__":
    main()
