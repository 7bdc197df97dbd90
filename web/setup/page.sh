#!/bin/bash
# Builds the page and, when asked, the programs that run the core under Node. Everything must be installed.
#
#   web/setup/page.sh [TARGET...]          build/web (default: evenfall_page)
#   web/setup/page.sh --dev [TARGET...]    build/page-dev: rebuilds a small change in seconds
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)"
. "$root/web/setup/common.sh"

preset=web
if [ "${1:-}" = --dev ]; then
    preset=page-dev
    shift
fi
targets=("$@")
[ ${#targets[@]} -gt 0 ] || targets=(evenfall_page)
list="$("$root/web/setup/libs.sh" web)"
build="$root/build/$preset"
# Configured again only when the outside libraries have changed; the build itself notices everything else.
if ! [ -f "$build/build.ninja" ] || ! cmp -s "$list" "$build/outside.cmake"; then
    say "Configuring the page"
    mkdir -p "$build" "$cache/log"
    (cd "$root" && cmake --fresh --preset "$preset" -C "$list") >"$cache/log/configure-web.log" 2>&1 ||
        { cat "$cache/log/configure-web.log" >&2; die "the page could not be configured."; }
    cp "$list" "$build/outside.cmake"
fi
cmake --build "$build" -j "$jobs" --target "${targets[@]}" >&2
printf '%s\n' "$build/page"
