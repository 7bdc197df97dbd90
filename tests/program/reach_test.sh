#!/usr/bin/env bash
# "evenfall reach": ways out where lead alone cannot, each written as a lure that does it; and sizes by hand.
. "$(dirname "$0")/support.sh"

lure="$presets/millrace-170.json"
expect_status 0 reach "$lure"
expect_in out "Lead alone does it"
expect_status 0 reach "$lure" --pitch -3deg --fall 350mm/s --json
expect_json 'not d["met"] and len(d["ways"]) >= 2 and not d["map"]["inside"] and len(d["map"]["border"]) > 20'
expect_json 'all({"change", "cost", "fall_mm_s", "pitch_deg"} <= set(w) for w in d["ways"])'
expect_json '[w["cost"] for w in d["ways"]] == sorted(w["cost"] for w in d["ways"])'
expect_json 'all(abs(w["pitch_deg"] + 3) < 0.05 and abs(w["fall_mm_s"] / 350 - 1) < 0.002 for w in d["ways"])'
cp "$work/out" "$work/ways.json"

# A way that is kept is a lure whose lead does it.
expect_status 0 reach "$lure" --pitch -3deg --fall 350mm/s --take 2 --write "$work/way.json"
expect_status 0 weigh "$work/way.json" --json
expect_json 'abs(d["pitch_deg"] + 3) < 0.05 and abs(d["fall_mm_s"] / 350 - 1) < 0.002'
expect_status 0 reach "$work/way.json"
expect_in out "Lead alone does it"

# Inches where they are asked for.
expect_status 0 reach "$lure" --fall 350mm/s --units inch
expect_in out "in "

# Lead does it, but not surely enough.
expect_status 0 reach "$lure" --fall 300mm/s --chance 18 --json
expect_json 'not d["met"] and d["before"]["chance_percent"] < 18 and d["ways"] and all(w["chance_percent"] >= 18 for w in d["ways"])'

# By hand.
expect_status 0 reach "$lure" --family
expect_in out "suspends"
expect_status 0 reach "$lure" --family --json
expect_json '[m["fall"] for m in d["members"]] == ["floats", "suspends", "slow", "fast"]'
expect_status 0 reach "$lure" --length 120mm --write "$work/small.json"
expect_in out "instead of"
expect_status 0 weigh "$work/small.json" --json
small=$(/usr/bin/python3 -c 'import json,sys; print(json.load(open(sys.argv[1]))["mass_g"])' "$work/out")
expect_status 0 reach "$lure" --length-for 1.25oz --write "$work/light.json"
expect_status 0 weigh "$work/light.json" --json
# A tenth of a millimetre of length is some hundredths of a gram.
expect_json 'abs(d["mass_g"] - 35.437) < 0.1'
/usr/bin/python3 -c 'import sys; sys.exit(not 5 < float(sys.argv[1]) < 40)' "$small" || fail "120 mm weigh $small g"
expect_status 0 reach "$lure" --thickness-for 0.5g

# What cannot be is refused with its range.
expect_status 2 reach "$lure" --fall 3m/s
expect_in err "1500 mm/s"
expect_status 2 reach "$lure" --pitch 60deg
expect_in err "45"
expect_status 2 reach "$lure" --fall 150mm/s --in-water 2g
expect_status 2 reach "$lure" --family --pitch 3deg
expect_status 2 reach "$lure" --write "$work/none.json"
expect_status 2 reach "$lure" --fall 350mm/s --take 99 --write "$work/none.json"
[ ! -e "$work/none.json" ] || fail "something was written all the same"
expect_status 2 reach "$presets/none.json"
finish
