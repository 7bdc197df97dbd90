#!/usr/bin/env bash
# "evenfall sheet": a whole file or none, and refusals by name. What is on the paper is measured in tests/reference/sheet_test.py.
. "$(dirname "$0")/support.sh"
preset="$presets/millrace-170.json"

for ending in pdf html svg; do
    expect_status 0 sheet "$preset" -o "$work/lure.$ending"
    expect_empty out
    expect_empty err
    cp "$work/lure.$ending" "$work/first"
    expect_status 0 sheet "$preset" --output "$work/lure.$ending" --paper a4 --lures 1 --station 10mm
    cmp -s "$work/lure.$ending" "$work/first" || fail "$ending: another run, the defaults said aloud, gives other bytes"
    expect_status 0 sheet "$preset" -o "$work/lure.$ending" --paper letter
    cmp -s "$work/lure.$ending" "$work/first" && fail "$ending: the other paper changes nothing"
done

# Six of a recipe take six times its grams.
expect_status 0 sheet "$preset" -o "$work/six.svg" --lures 6 --cure 1,2.5,30
grep -qF "g for 6 lures" "$work/six.svg" || fail "six lures are not named"
grep -qF "33.5 h" "$work/six.svg" || fail "the waits given do not add up to 33.5 h"

# Two recipes: grams of lead are those of both, each as often as it is made.
expect_status 0 sheet "$preset" --lures 3 --also "$presets/reedline-120.json" --lures 2 -o "$work/batch.svg"
wanted=$(/usr/bin/python3 - "$preset" "$presets/reedline-120.json" <<'PYTHON'
import json, sys
one, two = (sum(h["fill"]["mass_g"] for h in json.load(open(f))["holes"] if "fill" in h) for f in sys.argv[1:])
print(f"{3 * one + 2 * two:.1f}")
PYTHON
)
grep -qF ">$wanted<" "$work/batch.svg" || fail "the batch does not want $wanted g of lead"
# Eyes of one wire are one row: three lures with two joints and two with one, two eyes a joint.
/usr/bin/python3 - "$work/batch.svg" <<'PYTHON' || fail "the merged cut list does not count sixteen eyes"
import re, sys
words = re.findall(r">([^<>]+)</text>", open(sys.argv[1]).read())
at = words.index("Eye, soft wire")
sys.exit(words[at + 4] != str(3 * 2 * 2 + 2 * 1 * 2))
PYTHON
grep -qF ">Reedline 120: Clear coat<" "$work/batch.svg" || fail "the time line of the batch lacks a coat"
grep -qF "Batch of 5 lures" "$work/batch.svg" || fail "the batch is not of five"

# The page's address stands before the share text.
expect_status 0 sheet "$preset" -o "$work/there.html" --page https://bench.example/
grep -qF "<p>https://bench.example/#$("$EVENFALL_PROGRAM" link "$preset" 2>/dev/null)</p>" "$work/there.html" || fail "the link does not open at the address given"

# A refusal leaves the old file as it was.
echo old >"$work/kept.pdf"
refused() {  # TEXT ARGUMENTS...
    local text=$1
    shift
    expect_status 2 sheet "$@"
    expect_in err "$text"
    expect_empty out
    [ "$(cat "$work/kept.pdf")" = old ] || fail "the old file is gone after: $*"
}
refused "needs a file to write" "$preset"
refused "must end in .pdf, .html or .svg" "$preset" -o "$work/lure.doc"
refused "without “#”" "$preset" -o "$work/kept.pdf" --page "https://bench.example/#x"
refused "a4 or letter" "$preset" -o "$work/kept.pdf" --paper a3
refused "between 1 and 500" "$preset" -o "$work/kept.pdf" --lures 0
refused "[--lures]" "$preset" -o "$work/kept.pdf" --lures many
refused "between 2 and 100 mm" "$preset" -o "$work/kept.pdf" --station 1mm
refused "Waits are given for 2 coats" "$preset" -o "$work/kept.pdf" --cure 1,2
refused "one recipe only" "$preset" -o "$work/kept.pdf" --also "$preset" --cure 1,2,3
refused "between 1 and 500" "$preset" -o "$work/kept.pdf" --also "$preset" --lures 0
refused "cannot be opened" "$work/none.json" -o "$work/kept.pdf"
echo '{}' >"$work/bad.json"
refused "evenfall:" "$work/bad.json" -o "$work/kept.pdf"
refused "cannot be written" "$preset" -o "$work/no/such/folder.pdf"
ls "$work" | grep -q '\.new$' && fail "a half-written file is left"
finish
