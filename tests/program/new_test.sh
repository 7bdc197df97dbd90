#!/usr/bin/env bash
# "evenfall new": a whole lure from a few choices, or the choice that forbids it.
. "$(dirname "$0")/support.sh"

expect_status 0 new --length 6.25in --segments 4 --wood red_alder --hooks 2 --fall slow --name "Alder 4" --write "$work/new.json"
expect_in out "4 segments"
expect_status 0 lead "$work/new.json" --json
expect_json 'd["met"] is True and abs(d["fall_mm_s"] - 120) < 1'
expect_status 0 sheet "$work/new.json" -o "$work/new.pdf"
# An inch a fraction, a rate as the trade counts it, a word where one is asked.
expect_status 0 new --length "5 1/2in" --fall 1.5s/ft --json
expect_json 'd["targets"]["fall_mm_s"] - 203.2 < 0.1 and d["shape"]["back_mm"][-1][0] - 139.7 < 0.05'
expect_status 2 new --segments 9
expect_in err "/segments"
expect_status 2 new --form fish
expect_in err "full, slender, deep, round"
expect_status 2 new --wood driftwood
expect_in err "driftwood"
finish
