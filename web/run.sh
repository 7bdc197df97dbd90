#!/bin/bash
# Installs what is missing, builds the page and serves it on this machine.
#
#   web/run.sh                 build, then serve on http://127.0.0.1:8137/
#   web/run.sh --port N        … on another port
#   web/run.sh --lan           … for a tablet in the same network too: prints its address and a square code of it
#   web/run.sh --build-only    build, and end
#   web/run.sh --dev           the page for whoever works on it: a change is built in seconds, the code is larger and slower
#
# EVENFALL_CACHE  where outside sources and compiled libraries are kept (default ~/.cache/evenfall)
# EVENFALL_JOBS   how many compilers run at once (default: one for each processor)
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)"
. "$root/web/setup/common.sh"

port=8137
serve=1
dev=()
lan=()
while [ $# -gt 0 ]; do
    case "$1" in
        --build-only) serve=0 ;;
        --dev) dev=(--dev) ;;
        --lan) lan=(--lan) ;;
        --port)
            port="${2:-}"
            [[ "$port" =~ ^[0-9]+$ ]] && [ "$port" -le 65535 ] || die "--port wants a number up to 65535."
            shift
            ;;
        *) die "unknown word \"$1\"; known are --build-only, --dev, --lan and --port N." ;;
    esac
    shift
done

install_packages "${page_packages[@]}" ${lan[@]+qrencode}
page="$("$root/web/setup/page.sh" ${dev[@]+"${dev[@]}"})"
say "The page is in $page"
if [ "$serve" = 1 ]; then
    exec /usr/bin/python3 "$root/web/serve/serve.py" "$page" --port "$port" ${lan[@]+"${lan[@]}"}
fi
