#!/usr/bin/env bash
# "evenfall link" and "evenfall open": the same lure at both ends.
. "$(dirname "$0")/support.sh"

for file in millrace-170 reedline-120 quarry-230 estuary-150; do
    expect_status 0 link "$presets/$file.json"
    link=$(cat "$work/out")
    expect_status 0 open "$link"
    cp "$work/out" "$work/opened.json"
    expect_status 0 link "$work/opened.json"
    [ "$(cat "$work/out")" = "$link" ] || fail "$file: the link of the opened link differs"
    expect_status 0 open "https://lures.example/page/#$link"
    cmp -s "$work/out" "$work/opened.json" || fail "$file: an address opens other than its bare link"
    "$program" weigh "$presets/$file.json" --json >"$work/a"
    "$program" weigh "$work/opened.json" --json >"$work/b"
    cmp -s "$work/a" "$work/b" || fail "$file: the lure weighs otherwise after its link"
    expect_status 2 open "${link%????}"
    expect_in err "damaged or cut short"
    expect_empty out
done

# Its size is told beside it, and whether a code holds it.
expect_status 0 link "$presets/millrace-170.json"
length=$(($(wc -c <"$work/out") - 1))
expect_in err "evenfall: $length characters; a square code of "
long=$(printf 'a%.0s' {1..2900})
expect_status 0 link "$presets/millrace-170.json" --page "https://$long.example/"
expect_in err "no square code holds them. Some messengers cut so long a link; send the file instead."

# The bench log can be left out.
"$program" open "$("$program" link "$presets/millrace-170.json" 2>/dev/null)" >"$work/plain.json"
cp "$work/plain.json" "$work/weighed.json"
expect_status 0 log "$work/weighed.json" add dry_weight 31.2g --stage carved
expect_status 0 link "$work/weighed.json" --without-log
"$program" open "$(cat "$work/out")" >"$work/opened.json"
cmp -s "$work/opened.json" "$work/plain.json" || fail "a link without the log opens other than the lure without it"

# A link that would not open is not given.
/usr/bin/python3 - "$presets/millrace-170.json" "$work/wordy.json" <<'PYTHON'
import json, random, sys
draw = random.Random(1)
d = json.load(open(sys.argv[1]))
d["log"] = [{"kind": "dry_weight", "stage": "carved", "mass_g": 23, "note": "".join(draw.choices("abcdefghijklmnopqrstuvwxyz ", k=300))} for _ in range(200)]
json.dump(d, open(sys.argv[2], "w"))
PYTHON
expect_status 2 link "$work/wordy.json"
expect_in err "Send the file instead"
expect_empty out
expect_status 2 link "$work/wordy.json" --code "$work/wordy.svg"
[ ! -e "$work/wordy.svg" ] || fail "a code was drawn of a link that does not open"
finish
