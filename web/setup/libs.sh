#!/bin/bash
# Compiles the outside libraries once into the cache and prints, on standard output, the CMake initial-cache file
# that names everything (sources, headers, compiled libraries). What is compiled already is used as it is.
#
#   web/setup/libs.sh native     for this machine's compiler
#   web/setup/libs.sh web        for the page, with Emscripten
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)"
. "$root/web/setup/common.sh"

flavour="${1:-}"
settings=(-DCMAKE_BUILD_TYPE=Release)
case "$flavour" in
    native) version="$("${CXX:-c++}" --version | head -n 1)" ;;
    web)
        emscripten="$("$root/web/setup/emscripten.sh")"
        version="$emscripten $(cat "$emscripten/emscripten-version.txt")"
        settings+=("-DCMAKE_TOOLCHAIN_FILE=$root/web/setup/emscripten.cmake" "-DEVENFALL_EMSCRIPTEN=$emscripten")
        EM_COMPILER_WRAPPER="$(command -v ccache || true)"
        export EM_COMPILER_WRAPPER
        ;;
    *) die "say \"native\" or \"web\": web/setup/libs.sh native" ;;
esac

sources="$("$root/web/setup/fetch.sh")"

key="$({ cat "$root/web/setup/pins.txt" "$root/web/setup/libs/CMakeLists.txt" "$root/web/setup/emscripten.cmake"
    printf '%s\n' "$version"; } | sha256sum | cut -c1-16)"
prefix="$cache/libs/$flavour-$key"
list="$(dirname "$sources")/$flavour-$key.cmake"

exec 9>"$cache/lock-$flavour"
flock 9
if [ ! -d "$prefix" ]; then
    say "Compiling the outside libraries ($flavour), once"
    rm -rf "$cache/work-$flavour".* # left by an interrupted run
    work="$(mktemp -d "$cache/work-$flavour.XXXXXX")"
    log="$cache/log/libs-$flavour.log"
    if ! {
        cmake -S "$root/web/setup/libs" -B "$work/build" -G Ninja -C "$sources" "${settings[@]}" \
            -DCMAKE_INSTALL_PREFIX="$work/prefix" &&
            cmake --build "$work/build" -j "$jobs" && cmake --install "$work/build"
    } >"$log" 2>&1; then
        tail -n 40 "$log" >&2
        die "the outside libraries could not be compiled (the whole record: $log)."
    fi
    mkdir -p "$cache/libs"
    mv "$work/prefix" "$prefix"
    rm -rf "$work"
fi
if [ ! -f "$list" ]; then
    {
        cat "$sources"
        printf 'set(EVENFALL_LIBS "%s" CACHE PATH "compiled outside libraries")\n' "$prefix"
        printf 'set(EVENFALL_CCACHE_DIR "%s" CACHE PATH "folder of the compiler cache")\n' "${CCACHE_DIR:-}"
        [ "$flavour" = native ] || printf 'set(EVENFALL_EMSCRIPTEN "%s" CACHE PATH "folder of Emscripten")\n' "$emscripten"
    } >"$list.new"
    mv "$list.new" "$list"
fi
# A copy for CMakePresets.json, which cannot call this script.
mkdir -p "$root/build"
cmp -s "$list" "$root/build/outside-$flavour.cmake" || cp "$list" "$root/build/outside-$flavour.cmake"
printf '%s\n' "$list"
