#!/usr/bin/env python3
"""One word for one thing: holds what page, program, sheet and schema say to the table of words in DEVELOPERS.md.

    tests/static/terms.py           the whole tree; status 1 and a line for each word that has another in its place

Read are the quoted texts of core/ and shell/, the page's words.js and index.html, and the schema's descriptions. A text of one word
in lower case is a name of a file, a key or an option, and is not read – but in shell/look, where all are seen.
"""
import json
import re
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
TOKEN = re.compile(r'//[^\n]*|/\*.*?\*/|#include[^\n]*|\'(?:[^\'\\\n]|\\.)*\'|("(?:[^"\\\n]|\\.)*"(?:\s*"(?:[^"\\\n]|\\.)*")*)', re.S)
SCRIPT = re.compile(r'//[^\n]*|/\*.*?\*/|("(?:[^"\\\n]|\\.)*"(?:\s*\+\s*"(?:[^"\\\n]|\\.)*")*|`[^`]*`)', re.S)


def banned(book: str) -> list[tuple[re.Pattern, str, str]]:
    """Of each row of the table: what is not said, as a pattern, and the word to keep."""
    table = book.split("<!-- words -->")[1].split("<!-- words: end -->")[0]
    out = []
    for row in re.findall(r"^\| (.+) \|$", table, re.M)[2:]:
        keep, _, others = (cell.strip() for cell in row.split(" | "))
        for word in filter(None, (w.strip() for w in others.split(","))):
            out.append((re.compile(r"(?<![\w-])" + re.escape(word) + r"(?![\w-])", re.I), word, keep))
    return out


def quoted(path: Path, token: re.Pattern):
    """(line, text) of each quoted text; neighbours that the language joins are one."""
    source = path.read_text()
    for found in token.finditer(source):
        if found.group(1):
            text = re.sub(r'["`]\s*\+?\s*["`]', "", found.group(1)) if token is SCRIPT else re.sub(r'"\s*"', "", found.group(1))
            yield source.count("\n", 0, found.start()) + 1, text[1:-1]


def described(node):
    if isinstance(node, dict):
        for key, value in node.items():
            if key in ("title", "description") and isinstance(value, str):
                yield value
            else:
                yield from described(value)
    elif isinstance(node, list):
        for value in node:
            yield from described(value)


def texts(root: Path):
    for folder in ("core", "shell"):
        for path in sorted((root / folder).rglob("*.[hc]pp")):
            for line, text in quoted(path, TOKEN):
                if "/look/" in str(path) or re.search(r"[ A-Z]", text):
                    yield path, line, text
    for path in [root / "web/js/words.js"]:
        for line, text in quoted(path, SCRIPT):
            yield path, line, text
    page = root / "web/html/index.html"
    for n, line in enumerate(page.read_text().split("\n"), 1):
        yield page, n, re.sub(r"<[^>]*>", " ", line)
    schema = root / "presets/schema/preset.schema.json"
    for text in described(json.loads(schema.read_text())):
        yield schema, 0, text


def main() -> int:
    table = banned((ROOT / "DEVELOPERS.md").read_text())
    strays, read = [], 0
    for path, line, text in texts(ROOT):
        read += 1
        for pattern, word, keep in table:
            if pattern.search(text):
                strays.append(f'{path.relative_to(ROOT)}:{line}: "{word}" – say {keep}: {text[:100]!r}')
    # The search itself: it reads a fair number of texts, and finds a word that is not said.
    if read < 2000 or not any(pattern.search("It HANGS STILL.") for pattern, _, _ in table):
        print("the search reads too little or finds nothing")
        return 1
    print("\n".join(strays) or f"ok: {read} texts keep to {len(table)} words")
    return 1 if strays else 0


if __name__ == "__main__":
    sys.exit(main())
