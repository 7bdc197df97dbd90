#!/bin/bash
# Every C++ file stands as .clang-format lays it out. Versions of the tool differ in details: another one than the
# project's is no judge, and the test is skipped (status 77).
#
#   tests/static/format.sh          names each file that differs
#   tests/static/format.sh --mend   lays them out
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)"
cd "$root"
tool="$(command -v clang-format-14 || command -v clang-format || true)"
[[ "$("${tool:-false}" --version 2>/dev/null)" == *"version 14."* ]] || { echo "clang-format 14 is not here"; exit 77; }
files() { find core shell tests -name '*.cpp' -o -name '*.hpp' -o -name '*.h'; }
if [ "${1:-}" = --mend ]; then
    files | xargs -P 2 -n 20 "$tool" -i
else
    files | xargs -P 2 -n 20 "$tool" --dry-run -Werror
fi
