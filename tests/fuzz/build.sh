#!/bin/bash
# Builds the fuzzers with clang, libFuzzer and the sanitizers in build/fuzz (preset "fuzz"); the core is compiled once for all of them.
#
#   tests/fuzz/build.sh               all fuzzers
#   tests/fuzz/build.sh TARGET ...    these targets ("all": every native program and test as well)
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)"
. "$root/web/setup/common.sh"
install_packages clang:clang libclang-rt-dev cmake:cmake ninja:ninja-build ccache pkg-config libsdl2-dev libgl-dev python3-fonttools

targets=("$@")
if [ ${#targets[@]} -eq 0 ]; then
    for file in "$root"/tests/fuzz/fuzz_*.cpp; do targets+=("$(basename "$file" .cpp)"); done
fi
list="$("$root/web/setup/libs.sh" native)"
build="$root/build/fuzz"
stamp="$(cat "$list" "$root/CMakePresets.json")"
if ! [ -f "$build/build.ninja" ] || [ "$stamp" != "$(cat "$build/configured" 2>/dev/null)" ]; then
    mkdir -p "$build" "$cache/log"
    (cd "$root" && cmake --fresh --preset fuzz) >"$cache/log/configure-fuzz.log" 2>&1 ||
        { cat "$cache/log/configure-fuzz.log" >&2; die "the fuzzers could not be configured."; }
    printf '%s\n' "$stamp" >"$build/configured"
fi
say "Building with the sanitizers"
cmake --build "$build" -j "$jobs" --target "${targets[@]}" >&2
