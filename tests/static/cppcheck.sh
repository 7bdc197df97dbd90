#!/bin/bash
# cppcheck over core and shell: warnings, performance, portability. What it says wrongly is in cppcheck.txt beside this file, argued.
# Files that have not changed are not looked at again (build/static/cppcheck).
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)"
cd "$root"
mkdir -p build/static/cppcheck
exec cppcheck --quiet -j "${EVENFALL_JOBS:-1}" --cppcheck-build-dir=build/static/cppcheck --std=c++20 --language=c++ --library=std \
    --enable=warning,performance,portability --error-exitcode=1 --suppressions-list=tests/static/cppcheck.txt \
    --template='{file}:{line}: {severity}: {message} [{id}]' -I core -I shell core shell
