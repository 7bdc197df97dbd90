#!/bin/bash
# Every word that is seen on the page stands in shell/look, shell/help, web/js/words.js or web/html, so that another language can take
# their place: no capitalised word or sentence in quotes anywhere else. Programs for the shell speak for themselves.
set -euo pipefail
top="${EVENFALL_SOURCE:?the top of the project}"

found() { # FILES... : quoted texts that begin with a capital and go on in small letters
    # Comments speak to whoever reads the code.
    awk '{ text = $0; sub(/(^|[ ;,{])\/\/.*/, "", text); print FILENAME ":" FNR ":" text }' "$@" |
        grep -E "[\"\`][A-Z][a-z]+[ a-z,.][^\"\`]*[\"\`]|\"[A-Z][a-z]{2,}\"" | grep -vE ':[0-9]+:import ' || true
}
shell="$(find "$top/shell" -name '*.cpp' -o -name '*.hpp' | grep -vE '/(look|help|cli)/|_desktop')"
# Names of keys and events that browsers give are no words of ours.
strays="$(found $shell; found "$top"/web/js/*.js | grep -vE 'words\.js:|"(Tab|Enter|Escape|Event|SecurityError|AbortError)"' || true)"

# The search itself: it finds what stands in the words.
[ -n "$(found "$top/shell/look/words.hpp")" ] && [ -n "$(found "$top/web/js/words.js")" ] || { echo "the search finds nothing at all"; exit 1; }
[ -z "$strays" ] || { printf 'words outside their place:\n%s\n' "$strays"; exit 1; }
echo "ok: visible words stand in one place"
