#!/bin/bash
# Builds the page and, when asked, the programs that run the core under Node. Everything has to be installed.
#
#   web/setup/page.sh [TARGET...]      (default: evenfall_page)
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)"
. "$root/web/setup/common.sh"
export EM_COMPILER_WRAPPER="$(command -v ccache || true)"

targets=("$@")
[ ${#targets[@]} -gt 0 ] || targets=(evenfall_page)
list="$("$root/web/setup/libs.sh" web)"
build="$root/build/web"
# Configured anew only when the outside libraries are others; the build itself notices everything else.
if ! [ -f "$build/build.ninja" ] || ! cmp -s "$list" "$build/outside.cmake"; then
    say "Configuring the page"
    mkdir -p "$build" "$cache/log"
    cmake --fresh -S "$root" -B "$build" -G Ninja -C "$list" -DCMAKE_BUILD_TYPE=Release \
        -DCMAKE_TOOLCHAIN_FILE="$root/web/setup/emscripten.cmake" >"$cache/log/configure-web.log" 2>&1 ||
        { cat "$cache/log/configure-web.log" >&2; die "the page could not be configured."; }
    cp "$list" "$build/outside.cmake"
fi
cmake --build "$build" -j "$jobs" --target "${targets[@]}" >&2
printf '%s\n' "$build/page"
