#!/usr/bin/env bash
# "evenfall swim": whether a lure swims, how many beats, and what a change does to it.
. "$(dirname "$0")/support.sh"

# A demo lure with joints that open less or more: NAME FORE AFT, in degrees.
with_joints() {
    /usr/bin/python3 - "$presets/millrace-170.json" "$work/$1.json" "$@" <<'PYTHON'
import json, sys
d = json.load(open(sys.argv[1]))
d["name"] = sys.argv[3]
for joint in d["joints"]:
    joint["gap_mm"], joint["relief_fore_deg"], joint["relief_aft_deg"] = 1.5, float(sys.argv[4]), float(sys.argv[5])
json.dump(d, open(sys.argv[2], "w"))
PYTHON
}
with_joints Narrow 6 8
lure="$work/Narrow.json"
expect_status 0 swim "$lure"
expect_empty err
expect_in out "assumptions"
expect_in out "Beats a metre"
expect_in out "Never checked against a real lure"
expect_status 0 swim "$lure" --units inch
expect_in out "Beats in ten feet"

expect_status 0 swim "$lure" --json
expect_json '0 < d["swims"] <= d["of"] and d["of"] >= 12 and isinstance(d["verdict"], str)'
expect_json '0 < d["beats_per_m"]["low"] < d["beats_per_m"]["mid"] < d["beats_per_m"]["high"]'
expect_json 'len(d["joints"]) == 2 and all(0 < j["swing_deg"] < 40 and isinstance(j["at_stop"], bool) for j in d["joints"])'
expect_json 'len(d["lag_deg"]) == 2'
cp "$work/out" "$work/first"
expect_status 0 swim "$lure" --json
cmp -s "$work/first" "$work/out" || fail "the same lure swims otherwise the second time"

# Beats a second are beats a metre at a metre a second, and go with the speed, whatever its unit.
mid=$(/usr/bin/python3 -c 'import json,sys; print("%.1f" % json.load(open(sys.argv[1]))["beats_per_m"]["mid"])' "$work/first")
expect_status 0 swim "$lure" --speed 1m/s
/usr/bin/python3 - "$work/out" "$mid" <<'PYTHON' || fail "at 1 m/s it does not beat $mid a second: $(cat "$work/out")"
import sys
row = next(line.split() for line in open(sys.argv[1]) if line.startswith("as asked"))
sys.exit(0 if row[2:4] == ["1.00", sys.argv[2]] else 1)
PYTHON
cp "$work/out" "$work/metres"
expect_status 0 swim "$lure" --speed 3.6km/h
cmp -s "$work/metres" "$work/out" || fail "3.6 km/h are another speed than 1 m/s"

# Against itself nothing can be told; joints that hardly open beat slower (reference: wider joints beat faster).
expect_status 0 swim "$lure" --against "$lure"
expect_in out "Against Narrow"
expect_in out "Beats: no change that can be told"
expect_in out "Swing: no change that can be told"
with_joints Stiff 4 5
expect_status 0 swim "$work/Stiff.json" --against "$lure"
expect_in out "Beats: fewer"
expect_status 0 swim "$lure" --against "$work/Stiff.json"
expect_in out "Beats: more"
expect_status 0 swim "$lure" --against "$work/Stiff.json" --speed 2m/s --json
expect_json 'd["against"]["beats"] == "more" and d["against"]["beats_ratio"][1] > 1.08'
expect_json 'abs(d["beats_per_s"]["mid"] - 2 * d["beats_per_m"]["mid"]) < 1e-5 and d["speed_m_s"] == 2'

# Joints that open wider than in any comparison are answered with a caution and a wider band, those that open
# wider still are named with their limit.
with_joints Open 18 18
expect_status 0 swim "$work/Open.json"
expect_in out "the band is wider"
with_joints Wide 35 35
expect_status 1 swim "$work/Wide.json"
expect_empty out
expect_in err "joints that swing by 5 to 55°"

# A count narrows the band about itself; what was foretold then is written beside it.
expect_status 0 swim "$lure" --json
count=$(/usr/bin/python3 -c 'import json,sys; print("%.0f" % (110 * json.load(open(sys.argv[1]))["beats_per_m"]["mid"]))' "$work/out")
expect_status 0 log "$lure" add beats "$count" --over 100m --stage rigged --write "$work/counted.json"
cp "$work/counted.json" "$work/out"
expect_json 'd["log"][0]["foretold_per_m"] > 0.1'
expect_status 0 swim "$work/counted.json" --json
expect_json 'd["counts"] == 1 and d["beats_per_m_worked_out"]["mid"] < d["beats_per_m"]["mid"]'
expect_json 'd["beats_per_m"]["high"] / d["beats_per_m"]["low"] < 0.8 * d["beats_per_m_worked_out"]["high"] / d["beats_per_m_worked_out"]["low"]'
expect_status 0 swim "$work/counted.json"
expect_in out "After 1 count; worked out: "
expect_status 0 log "$work/counted.json" next --write "$work/next.json"
expect_status 0 swim "$work/next.json"
expect_in out "As earlier lures of this recipe were counted; worked out: "

# In one piece there is no answer, and the limit that is broken is named.
/usr/bin/python3 - "$lure" "$work/whole.json" <<'PYTHON'
import json, sys
d = json.load(open(sys.argv[1]))
d["segments"], d["joints"], d["pockets"], d["parts"], d["holes"] = ["Body"], [], [], [], []
json.dump(d, open(sys.argv[2], "w"))
PYTHON
expect_status 1 swim "$work/whole.json"
expect_empty out
expect_in err "segments"
expect_status 1 swim "$lure" --against "$work/whole.json"
expect_in err "“$work/whole.json”: "
expect_status 1 swim "$work/whole.json" --against "$lure"
expect_in err "“$work/whole.json”: "

expect_status 2 swim "$lure" --speed 0m/s
expect_in err "--speed"
expect_status 2 swim "$lure" --speed 3g
expect_status 2 swim "$work/none.json"
expect_status 2 swim
finish
