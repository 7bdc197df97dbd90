#!/usr/bin/env bash
# "evenfall weigh": words for a carver, JSON for a machine, the same sums.
. "$(dirname "$0")/support.sh"

for file in millrace-170 reedline-120 quarry-230 estuary-150; do
    expect_status 0 weigh "$presets/$file.json"
    expect_empty err
    expect_in out "In water"
    expect_in out "clear coated"
    expect_status 0 weigh "$presets/$file.json" --json
    expect_json '{"mass_g","displaced_cm3","in_water_g","fall_mm_s","pitch_deg","g_mm","b_mm","segments","stages"} <= set(d)'
    expect_json 'len(d["stages"]) == 8 and len(d["g_mm"]) == 3 and len(d["b_mm"]) == 3'
    expect_json 'all({"name","volume_cm3","mass_g","in_water_g"} <= set(s) for s in d["segments"])'
    # The whole is the sum of its segments, and the last stage is the finished lure.
    expect_json 'abs(sum(s["mass_g"] for s in d["segments"]) - d["mass_g"]) < 1e-4'
    expect_json 'abs(sum(s["in_water_g"] for s in d["segments"]) - d["in_water_g"]) < 1e-4'
    expect_json 'abs(d["stages"][7]["mass_g"] - d["mass_g"]) < 1e-5'
    # In-water mass is mass less displaced water.
    expect_json 'abs(d["mass_g"] - d["displaced_cm3"] * d["water_kg_m3"] / 1000 - d["in_water_g"]) < 1e-4'
done

expect_status 0 weigh "$presets/reedline-120.json" --json
expect_json 'd["fall_mm_s"] is None and d["behaviour"] == "floats" and d["in_water_g"] < 0'
expect_status 0 weigh "$presets/quarry-230.json" --json
expect_json 'd["behaviour"] == "suspends"'
expect_status 0 weigh "$presets/estuary-150.json" --json
expect_json 'd["fall_mm_s"] > 250 and len(d["segments"]) == 1'

# What sinks without a steady way of falling does not float.
python3 -c 'import json,sys; d=json.load(open(sys.argv[1])); d["parts"].append({"name":"nose weight","stage":"hardware","material":"tungsten","mass_g":80,"x_mm":2,"y_mm":0,"z_mm":0,"embedded_percent":0}); json.dump(d,open(sys.argv[2],"w"))' "$presets/estuary-150.json" "$work/nose.json"
expect_status 0 weigh "$work/nose.json" --json
expect_json 'd["in_water_g"] > 50 and d["fall_mm_s"] is None and d["behaviour"] == "falls"'
expect_status 0 weigh "$work/nose.json"
expect_in out "sinks, but finds no steady way of falling"
expect_status 0 weigh "$presets/quarry-230.json"
expect_in out "suspends"
expect_status 0 weigh "$presets/reedline-120.json"
expect_in out "floats"

# Standard input.
"$program" weigh - --json <"$presets/millrace-170.json" >"$work/piped" 2>&1 || fail "weigh - does not read standard input"
expect_status 0 weigh --json "$presets/millrace-170.json"
cmp -s "$work/piped" "$work/out" || fail "a preset by pipe weighs other than by name"
finish
