#!/bin/bash
# Looks through core and shell without running them: clang-tidy (checks and what is left out of them: .clang-tidy) and
# cppcheck (cppcheck.sh, which every test run has too). Says what it found and ends with an error if that was anything.
# clang-tidy takes some seconds of one processor for each of 250 files, so that it is asked for, not part of tests/run.sh.
#
#   tests/static/run.sh                 everything
#   tests/static/run.sh core/fall ...   clang-tidy only over files whose path holds one of these words
#
# EVENFALL_JOBS   how many files at once (default: one for each processor)
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)"
. "$root/web/setup/common.sh"
install_packages clang-tidy cppcheck cmake:cmake ninja:ninja-build libsdl2-dev libgl-dev pkg-config g++

list="$("$root/web/setup/libs.sh" native)"
build="$root/build/static"
[ -f "$build/build.ninja" ] || cmake -S "$root" -B "$build" -G Ninja -C "$list" -DCMAKE_BUILD_TYPE=Release -DEVENFALL_SHELL=ON \
    -DEVENFALL_TESTS=OFF >"$cache/log/configure-static.log" 2>&1 || die "the build could not be configured: $cache/log/configure-static.log"
# Sources that the build writes itself are named by includes of others.
cmake --build "$build" --target evenfall_typeface >/dev/null

# The compiler's list without outside sources and without warnings that only GCC knows.
python3 - "$build/compile_commands.json" "$root" "$@" >"$build/files" <<'PY'
import json, os, sys
words = sys.argv[3:]
for entry in json.load(open(sys.argv[1])):
    path = os.path.relpath(entry["file"], sys.argv[2])
    if path.startswith(("core/", "shell/")) and (not words or any(word in path for word in words)):
        print(path)
PY
sort -u -o "$build/files" "$build/files"
[ -s "$build/files" ] || die "no file of core or shell has that in its path."
cd "$root"
found=0

say "clang-tidy over $(wc -l <"$build/files") files"
xargs -P "$jobs" -n 1 clang-tidy --quiet -p "$build" <"$build/files" >"$build/tidy.log" 2>"$build/tidy.err" || [ $? -eq 123 ] || found=1
# (123: some found something; they are looked at below.)
# A fault in a header is told once for every file that includes it. The analyzer follows calls into the libraries as well; what it
# thinks of those is theirs to answer; a file that does not compile is ours, wherever the compiler stopped.
if grep -hE '(warning|error):' "$build/tidy.log" "$build/tidy.err" | grep -E "^($root/|error)|clang-diagnostic-error" | sort -u; then found=1; fi

say "cppcheck"
EVENFALL_JOBS="$jobs" "$root/tests/static/cppcheck.sh" || found=1

[ $found -eq 0 ] && say "Nothing found."
exit $found
