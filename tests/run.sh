#!/bin/bash
# Installs what is missing, builds the native programs and the page, and runs every test, browser tests included.
# The last line printed is ctest's summary; the exit status is ctest's.
#
#   tests/run.sh               everything
#   tests/run.sh -R WORDS      further words go to ctest (here: only tests whose names match)
#
# EVENFALL_CACHE  where outside sources and compiled libraries are kept (default ~/.cache/evenfall)
# EVENFALL_SANITIZE_TESTS=1   every native test once more before that, under the sanitizers (tests/sanitize.sh)
# EVENFALL_JOBS   how many compilers and tests run at once (default: one for each processor)
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)"
. "$root/web/setup/common.sh"

install_packages "${page_packages[@]}" g++ pkg-config libsdl2-dev libgl-dev \
    chromium firefox-esr webkit2gtk-driver xvfb libgl1-mesa-dri npm:npm python3-numpy python3-scipy python3-gsw python3-iapws libcgal-dev \
    qpdf poppler-utils librsvg2-bin zbar-tools cppcheck clang-format:clang-format

# What drives the browser: versions and checksums are in tests/browser/package-lock.json.
key="$(sha256sum "$root/tests/browser/package-lock.json" | cut -c1-16)"
driver="$cache/browser-driver-$key"
if [ ! -d "$driver" ]; then
    say "Fetching what drives the browser"
    mkdir -p "$cache/log"
    work="$(mktemp -d "$cache/work-driver.XXXXXX")"
    cp "$root/tests/browser/package.json" "$root/tests/browser/package-lock.json" "$work/"
    (cd "$work" && npm ci --ignore-scripts --no-audit --no-fund) >"$cache/log/npm.log" 2>&1 </dev/null ||
        { rm -rf "$work"; tail -n 15 "$cache/log/npm.log" >&2
          die "npm could not fetch the packages of tests/browser/package-lock.json (see above)."; }
    mv "$work" "$driver"
fi

# The page, and the core's programs for Node.
"$root/web/setup/page.sh" all >/dev/null

list="$("$root/web/setup/libs.sh" native)"
build="$root/build/native"
"$root/tests/fuzz/build.sh"
if [ "${EVENFALL_SANITIZE_TESTS:-}" = 1 ]; then "$root/tests/sanitize.sh"; fi

say "Building the native programs"
settings=(-DCMAKE_BUILD_TYPE=Release -DEVENFALL_SHELL=ON "-DEVENFALL_WEB_BUILD=$root/build/web"
    "-DEVENFALL_NODE_MODULES=$driver/node_modules" "-DEVENFALL_FUZZ_BUILD=$root/build/fuzz")
stamp="$(printf '%s\n' "${settings[@]}"; cat "$list")"
if ! [ -f "$build/build.ninja" ] || [ "$stamp" != "$(cat "$build/configured" 2>/dev/null)" ]; then
    mkdir -p "$build"
    cmake --fresh -S "$root" -B "$build" -G Ninja -C "$list" "${settings[@]}" >"$cache/log/configure-native.log" 2>&1 ||
        { cat "$cache/log/configure-native.log" >&2; die "the native build could not be configured."; }
    printf '%s\n' "$stamp" >"$build/configured"
fi
cmake --build "$build" -j "$jobs"

cd "$build"
exec ctest --output-on-failure --no-tests=error -j "$jobs" "$@" </dev/null
