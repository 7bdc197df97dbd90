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
expect_in out "play from stop to stop"
sed 's/"eyes_on": "fore"/"eyes_on": "fore", "upper_z_mm": 4/g' "$presets/millrace-170.json" >"$work/one.json"
expect_status 0 joints "$work/one.json"
expect_in out "hangs on one eye"

# A turn to either side has its own radius; a pocket open below leaves out how far its eye may rise.
sed 's/"eyes_on": "fore"/"eyes_on": "fore", "pin_off_mm": -2, "lower_z_mm": -7.5, "upper_z_mm": 6.5/; s/"z_from_mm": -9, //' "$presets/reedline-120.json" >"$work/off.json"
expect_status 0 joints "$work/off.json" --json
expect_json 'd["turn_radius_mm"]["port"] != d["turn_radius_mm"]["starboard"]'
expect_json '["up_down_mm" in eye for eye in d["joints"][0]["eyes"]] == [False, True]'
expect_status 0 joints "$work/off.json"
grep -q 'tightest even turn [0-9]* / [0-9]* mm radius' "$work/out" || fail "both ways' turns in: $(head -c 900 "$work/out")"

# A tail by its shape is no part: what fouls it has no number.
sed 's/"parts": \[/"tail": {"x_mm": 120, "z_mm": 0, "back_mm": [[0, 4], [30, 0.5]], "belly_mm": [[0, -4], [30, -0.5]], "half_thickness_mm": [[0, 2], [30, 0.5]]},\n  "parts": [{"name": "Trailing", "stage": "rigged", "material": "steel", "mass_g": 2, "x_mm": 130, "z_mm": 0, "reach_mm": 20},/' "$presets/reedline-120.json" >"$work/tail.json"
expect_status 0 joints "$work/tail.json" --json
expect_json '[h["other"] for h in d["hooks"] if h["fouls"] == "tail" and h["part"] == 1] == [None]'

sed 's/"wire_mm": 0.8/"wire_mm": 8/' "$presets/millrace-170.json" >"$work/thick.json"
expect_status 2 joints "$work/thick.json"
expect_in err "/joints/0/hinge/wire_mm"
finish
