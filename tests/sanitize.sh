#!/bin/bash
# Builds everything native with clang under the address, leak and undefined-behaviour sanitizers (the build of the fuzzers, preset
# "fuzz") and runs its tests: unit, published, properties, regression, application, mesh, program, reference, corpora.
#
#   tests/sanitize.sh               everything
#   tests/sanitize.sh -R WORDS      further words go to ctest
#
# EVENFALL_JOBS   how many compilers and tests run at once (default: one for each processor)
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)"
. "$root/web/setup/common.sh"
install_packages xvfb libgl1-mesa-dri python3-numpy python3-scipy python3-gsw python3-iapws libcgal-dev qpdf poppler-utils \
    librsvg2-bin zbar-tools
"$root/tests/fuzz/build.sh" all
cd "$root/build/fuzz"
exec ctest --output-on-failure --no-tests=error -j "$jobs" "$@" </dev/null
