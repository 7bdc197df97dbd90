#!/usr/bin/env bash
# “--units inch|metric”: every verb that tells a quantity takes it, and tells nothing in the other's units; without it the
# locale decides. Numbers of JSON stay metric, as their keys say.
. "$(dirname "$0")/support.sh"

# A torque in N·mm is no length, cm³ no length either.
metric='(^|[^·[:alnum:]])(mm|cm|mm/s)([^[:alnum:]²³]|$)|°C|metre'
none_of_metric() {  # WHAT
    local found
    found=$(grep -E -m 3 -- "$metric" "$work/out" "$work/err") && fail "$1: $found"
}

for file in millrace-170 reedline-120 quarry-230 estuary-150; do
    preset="$presets/$file.json"
    for verb in weigh lead fall log chance joints resin tail glue woods metals; do
        "$program" "$verb" "$preset" --units inch >"$work/out" 2>"$work/err"
        none_of_metric "$verb $file"
        "$program" "$verb" "$preset" >"$work/plain" 2>&1
        "$program" "$verb" "$preset" --units metric >"$work/metric" 2>&1
        cmp -s "$work/plain" "$work/metric" || fail "$verb $file: metric said aloud tells something else"
        # The drill table and the hinges name the bits of every system.
        case "$verb" in lead | joints) inch='°F|(^|[^[:alnum:]])in/s' ;; *) inch='[0-9]/[0-9]+ in([^a-z]|$)|°F|(^|[^[:alnum:]])in/s' ;; esac
        grep -qE "$inch" "$work/metric" && fail "$verb $file: inches in metric"
    done
    "$program" stock "$preset" --rod 1/4in --units inch >"$work/out" 2>"$work/err"
    none_of_metric "stock $file"
done

# Things that can be seen: a bit's own name, a fraction, Fahrenheit, a refusal.
expect_status 0 weigh "$presets/millrace-170.json" --units inch
expect_in out " in/s"
expect_in out "59.0 °F"
expect_status 1 lead "$presets/millrace-170.json" --in-water 500g --units inch
expect_in err " in, "
none_of_metric "a plan that falls short"
expect_status 0 log how tub_fall --units inch
expect_in out "20 inches"
expect_status 0 sheet "$presets/millrace-170.json" -o "$work/inch.html" --units inch
grep -q "size:215.9mm 279.4mm" "$work/inch.html" || fail "a sheet in inches is not on Letter"
grep -qF "lengths in inches unless said" "$work/inch.html" || fail "a sheet in inches does not say so"
expect_status 0 sheet "$presets/millrace-170.json" -o "$work/a4.html" --units inch --paper a4
grep -q "size:210mm 297mm" "$work/a4.html" || fail "paper that was chosen is not taken"
expect_status 2 weigh "$presets/millrace-170.json" --units furlong
expect_in err "inch or metric"

# The locale: LC_ALL before LC_MEASUREMENT before LANG, as everywhere.
units_under() { # ASSIGNMENTS...
    env -u LC_ALL -u LC_MEASUREMENT -u LANG "$@" "$program" weigh "$presets/millrace-170.json" | grep -q ' in/s' &&
        echo inch || echo metric
}
[ "$(units_under LANG=en_US.UTF-8)" = inch ] || fail "LANG=en_US does not mean inches"
[ "$(units_under LANG=en_GB.UTF-8)" = metric ] || fail "LANG=en_GB means inches"
[ "$(units_under A=B)" = metric ] || fail "no locale means inches"
[ "$(units_under LANG=en_US.UTF-8 LC_MEASUREMENT=de_DE.UTF-8)" = metric ] || fail "LC_MEASUREMENT does not go before LANG"
[ "$(units_under LANG=de_DE LC_MEASUREMENT=de_DE LC_ALL=en_US)" = inch ] || fail "LC_ALL does not go first"

# JSON: metric sentences under any locale; inches where they are asked for; numbers the same.
LC_ALL=en_US.UTF-8 "$program" lead "$presets/millrace-170.json" --in-water 500g --json >"$work/locale.json" 2>"$work/err"
"$program" lead "$presets/millrace-170.json" --in-water 500g --json >"$work/plain.json" 2>/dev/null
"$program" lead "$presets/millrace-170.json" --in-water 500g --json --units inch >"$work/inch.json" 2>/dev/null
cmp -s "$work/locale.json" "$work/plain.json" || fail "the locale changes JSON"
/usr/bin/python3 - "$work" <<'PY' || fail "JSON in inches is not the metric one with other sentences"
import json, sys
plain, inch = (json.load(open(f"{sys.argv[1]}/{name}.json")) for name in ("plain", "inch"))
assert " mm" in json.dumps(plain["shortfalls"]) and " mm" not in json.dumps(inch["shortfalls"])
for d in (plain, inch):
    for s in d["shortfalls"]:
        s["sentence"] = s["limit"] = ""
assert plain == inch
PY
finish
