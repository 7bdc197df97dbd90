#!/usr/bin/env bash
# Another program finds the installed core, is built against it, and says what the program says.
. "$(dirname "$0")/support.sh"

cmake --install "$EVENFALL_BUILD" --prefix "$work/prefix" >"$work/log" 2>&1 || fail "not installed: $(tail -n 5 "$work/log")"
{ cmake -S "$EVENFALL_SOURCE/tests/example" -B "$work/example" -DCMAKE_PREFIX_PATH="$work/prefix" &&
    cmake --build "$work/example"; } >"$work/log" 2>&1 || fail "not built: $(tail -n 20 "$work/log")"

expect_status 0 weigh "$presets/millrace-170.json" --json
said="$("$work/example/weigh" "$presets/millrace-170.json")"
/usr/bin/python3 - "$work/out" "$said" <<'PYTHON' || fail "the example says: $said"
import json, sys
d = json.load(open(sys.argv[1]))
wanted = f'{d["name"]}: {d["mass_g"]:.2f} g, in water {d["in_water_g"]:.2f} g, falls at {d["fall_mm_s"]:.0f} mm/s.'
sys.exit(sys.argv[2] != wanted and f"not: {wanted}")
PYTHON
"$work/example/weigh" /nowhere >"$work/out" && fail "a file that is not there is no refusal"
expect_in out "JSON"
finish
