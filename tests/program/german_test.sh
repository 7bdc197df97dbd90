#!/usr/bin/env bash
# The program in German, by the locale: every verb on every demo lure, in both systems of units, leaves nothing in English.
. "$(dirname "$0")/support.sh"
unset LC_ALL LC_MESSAGES
export LANG=de_DE.UTF-8 EVENFALL_UNTRANSLATED="$work/untranslated"

for preset in "$presets"/*.json; do
    for units in metric inch; do
        for verb in weigh lead reach fall swim chance joints resin tail glue; do
            "$program" "$verb" "$preset" --units "$units" >>"$work/out" 2>&1
        done
        "$program" log "$preset" --units "$units" >>"$work/out" 2>&1
        "$program" stock "$preset" --rod 6mm --units "$units" >>"$work/out" 2>&1
        "$program" woods "$preset" --units "$units" >>"$work/out" 2>&1
        "$program" metals "$preset" --units "$units" >>"$work/out" 2>&1
        "$program" sheet "$preset" --units "$units" -o "$work/sheet.html" >>"$work/out" 2>&1
    done
done
for verb in new weigh lead reach fall swim log chance joints resin tail stock glue board link open sheet trace woods metals help; do
    "$program" help "$verb" >>"$work/out" 2>&1
done
"$program" --help >>"$work/out" 2>&1

# What is not known does come into that file: a word that nobody translates.
"$program" no-such-verb >>"$work/out" 2>&1
grep -q "no-such-verb" "$EVENFALL_UNTRANSLATED" || fail "nothing is told as untranslated"

# What the lures themselves are called is nobody's to translate.
/usr/bin/python3 - "$work/untranslated" "$presets"/*.json <<'PYTHON' || fail "left in English"
import json, sys
names = set()
def collect(tree):
    if isinstance(tree, str):
        names.update({tree, *tree.split("\n")})
    for value in tree.values() if isinstance(tree, dict) else tree if isinstance(tree, list) else ():
        collect(value)
for path in sys.argv[2:]:
    collect(json.load(open(path)))
names.add("no-such-verb")
left = sorted({line.rstrip("\n") for line in open(sys.argv[1])} - names)
print("\n".join(left))
sys.exit(1 if left else 0)
PYTHON
export -n EVENFALL_UNTRANSLATED

# Things that can be seen: a word, a decimal comma, a date; and files as ever.
expect_status 0 weigh "$presets/millrace-170.json"
expect_in out "Im Wasser"
grep -qE '[0-9],[0-9]' "$work/out" || fail "no decimal comma"
expect_status 0 weigh "$presets/millrace-170.json" --json
expect_json 'd["mass_g"] > 50'
expect_status 2 weigh "$presets/none.json"
finish
