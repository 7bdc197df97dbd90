#!/bin/bash
# Makes README's pictures anew (make.mjs); the builds of tests/run.sh have to be there.
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/../../.." && pwd)"
. "$root/web/setup/common.sh"
install_packages webp poppler-utils
export EVENFALL_PROGRAM="$root/build/native/shell/evenfall" EVENFALL_PRESETS="$root/presets" EVENFALL_SOURCE="$root" \
    EVENFALL_PAGE_DIR="$root/build/web/page" EVENFALL_CHROMIUM="$(command -v chromium)" EVENFALL_SHOTS="$(mktemp -d)"
key="$(sha256sum "$root/tests/browser/package-lock.json" | cut -c1-16)"
export EVENFALL_NODE_MODULES="$cache/browser-driver-$key/node_modules"
exec node --test "$root/tests/browser/pictures/make.mjs"
