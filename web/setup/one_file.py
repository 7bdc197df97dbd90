#!/usr/bin/python3
"""Makes one file of the assembled page: it contains everything, loads nothing, and opens from a disk by a double click.

usage: one_file.py PAGE-FOLDER FILE.html

It contains the compiled code gzipped, in base64, the scripts and styles inline and listed by their hashes in the page's
security policy, and the third-party licences as a block of text. Left out is what does not work in a page opened from a
disk: the service worker and the manifest.
"""

import base64
import hashlib
import pathlib
import re
import sys


def once(text, pattern, made):
    text, count = re.subn(pattern, lambda match: made, text)
    if count != 1:
        sys.exit(f"index.html has changed: {count} places fit {pattern}, and it has to be one")
    return text


def of_hash(text):
    return "'sha256-" + base64.b64encode(hashlib.sha256(text.encode()).digest()).decode() + "'"


def data_address(kind, data):
    return f"data:{kind};base64," + base64.b64encode(data).decode()


def block(kind, name, text):
    # Inside a script element "</script" would end it; no such text is in these blocks, and this is checked.
    if "</script" in text.lower() or "<!--" in text:
        sys.exit(f"{name} cannot stand inside the page: it holds the sign of the element's end")
    return f'<script type="{kind}" id="{name}">{text}</script>'


def main():
    folder, target = map(pathlib.Path, sys.argv[1:3])
    read = lambda name: (folder / name).read_text("utf-8")
    page = read("index.html")
    script = read("evenfall.js").replace("</script", "<\\/script").replace("<!--", "<\\!--")
    style = read("evenfall.css")
    mark = data_address("image/svg+xml", (folder / "assets/mark.svg").read_bytes())
    code = base64.b64encode((folder / "evenfall.wasm.gz").read_bytes()).decode()

    policy = (f"default-src 'none'; script-src {of_hash(script)} 'wasm-unsafe-eval'; style-src {of_hash(style)}; "
              "img-src data: blob:; base-uri 'none'; form-action 'none'")
    page = once(page, r'(?<=http-equiv="Content-Security-Policy" content=")[^"]*', policy)
    page = once(page, r'<link rel="icon" type="image/svg[^>]*>', f'<link rel="icon" href="{mark}">')
    for gone in (r'<link rel="icon" type="image/png"[^>]*>', r'<link rel="apple-touch-icon"[^>]*>',
                 r'<link rel="manifest"[^>]*>', r'<link rel="preload"[^>]*>', r'<script type="module"[^>]*></script>'):
        page = once(page, rf" *{gone}\n", "")
    page = once(page, r'<link rel="stylesheet"[^>]*>', f"<style>{style}</style>")
    page = once(page, r'(?<=<img src=")assets/mark\.svg', mark)
    blocks = [block("application/octet-stream", "compiled-code", code), block("text/plain", "terms", read("licences.txt")),
              f'<script type="module">{script}</script>']
    page = once(page, "</body>", "\n".join(blocks) + "\n</body>")
    target.parent.mkdir(parents=True, exist_ok=True)
    if not target.is_file() or target.read_text("utf-8") != page:
        target.write_text(page, "utf-8")


if __name__ == "__main__":
    main()
