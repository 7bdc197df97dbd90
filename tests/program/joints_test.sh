#!/usr/bin/env bash
# "evenfall joints": swing, wire, bits, walls and strength.
. "$(dirname "$0")/support.sh"

for file in millrace-170 reedline-120 quarry-230 estuary-150; do
    expect_status 0 joints "$presets/$file.json"
    expect_empty err
    expect_status 0 joints "$presets/$file.json" --json
    # A joint swings no farther than its wood and its wire let it; a finished one no farther than a bare one.
    expect_json 'all(j["swing"][w] <= min(j["finished"][w], j["wire"][w]) + 1e-6 and j["finished"][w] <= j["bare"][w] for j in d["joints"] for w in ("port_deg", "starboard_deg"))'
    expect_json 'all(abs(sum(j["swing"][w] for j in d["joints"]) - d["wrap"][w]) < 1e-4 for w in ("port_deg", "starboard_deg"))'
    expect_json 'all(abs(j["strength"]["least_n"] / d["line_n"] - j["strength"]["safety"]) < 1e-4 for j in d["joints"])'
done
expect_status 0 joints "$presets/estuary-150.json"
expect_in out "no joints"
expect_status 0 joints "$presets/millrace-170.json"
expect_in out "pull one hinge of your own"
expect_status 0 joints "$presets/millrace-170.json" --json
expect_json 'len(d["joints"]) == 2 and d["warnings"] == []'

# Linked eyes: slop, and no sag beyond it; eyes that both lean and are tight end the swing.
sed 's/"eyes_on": "fore"/"eyes_on": "fore", "kind": "linked", "lean_deg": 45/g; s/"eye_inside_mm": 1.6/"eye_inside_mm": 0.81/g' "$presets/millrace-170.json" >"$work/linked.json"
expect_status 0 joints "$work/linked.json" --json
expect_json 'all(abs(j["slop"]["fore_aft_mm"] - 0.01) < 1e-6 and j["stopped_by"]["port"] == "eye on eye" and j["swing"]["port_deg"] == j["eyes_meet"]["port_deg"] for j in d["joints"])'
expect_status 0 joints "$work/linked.json"
expect_in out "slop from stop to stop"
sed 's/"eyes_on": "fore"/"eyes_on": "fore", "upper_z_mm": 4/g' "$presets/millrace-170.json" >"$work/one.json"
expect_status 0 joints "$work/one.json"
expect_in out "hangs on one eye"

sed 's/"wire_mm": 0.8/"wire_mm": 8/' "$presets/millrace-170.json" >"$work/thick.json"
expect_status 2 joints "$work/thick.json"
expect_in err "/joints/0/hinge/wire_mm"
finish
