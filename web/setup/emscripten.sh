#!/bin/bash
# Prints the folder of the Emscripten that builds the page: the one named by EVENFALL_EMSCRIPTEN, or whose em++ is in
# PATH, or the distribution's package, which is installed where missing. It must be 3.1.6 or newer.
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)"
. "$root/web/setup/common.sh"

chosen="${EVENFALL_EMSCRIPTEN:-}"
if [ -z "$chosen" ] && command -v em++ >/dev/null; then
    chosen="$(dirname "$(readlink -f "$(command -v em++)")")"
fi
if [ -z "$chosen" ]; then
    install_packages emscripten
    chosen=/usr/share/emscripten
fi

version="$(tr -d '"' <"$chosen/emscripten-version.txt" 2>/dev/null)" || die "$chosen is no folder of Emscripten."
[ "$(printf '%s\n' 3.1.6 "$version" | sort -V | head -n 1)" = 3.1.6 ] ||
    die "the Emscripten in $chosen is $version; the page wants 3.1.6 or newer."
printf '%s\n' "$chosen"
