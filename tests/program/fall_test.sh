#!/usr/bin/env bash
# "evenfall fall": ways of falling and floating, and the way down from rest.
. "$(dirname "$0")/support.sh"

expect_status 0 fall "$presets/millrace-170.json" --depth 2m
expect_empty err
expect_in out "the usual one"
expect_in out "From rest"
expect_status 0 fall "$presets/millrace-170.json" --depth 2m --json
# The usual fall is the one that "weigh" gives, and the track ends at the depth asked for, at about that speed.
expect_json 'len([f for f in d["falls"] if f["main"]]) == 1 and all(f["stable"] for f in d["falls"] if f["main"])'
expect_json 'abs(d["track"]["points"][-1][1] - 2000) < 0.01 and d["track"]["points"][-1][0] == d["track"]["reached_s"]'
expect_json 'abs(d["track"]["vertical_mm_s"] / next(f["vertical_mm_s"] for f in d["falls"] if f["main"]) - 1) < 0.01'
expect_json 'd["track"]["reached_s"] > 2000 / d["track"]["vertical_mm_s"]'
expect_json 'not d["afloat"]["floats"] and d["afloat"]["rests"] == []'
expect_json 'len(d["hinges"]["joints"]) == 2 and len(d["hinges"]["segments"]) == 3'
main=$(/usr/bin/python3 -c 'import json,sys; print(next(f["vertical_mm_s"] for f in json.load(open(sys.argv[1]))["falls"] if f["main"]))' "$work/out")
expect_status 0 weigh "$presets/millrace-170.json" --json
expect_json "abs(d['fall_mm_s'] - $main) < 1e-5"

# Deeper takes longer.
expect_status 0 fall "$presets/millrace-170.json" --depth 6ft --json
expect_json 'abs(d["track"]["points"][-1][1] - 1828.8) < 0.01'

# A floater floats, upright, and its mass is that of the water it pushes aside (Archimedes, by the share that shows).
expect_status 0 fall "$presets/reedline-120.json" --json
expect_json 'd["afloat"]["floats"] and d["afloat"]["rests"][0]["posture"] == "upright"'
shown=$(/usr/bin/python3 -c 'import json,sys; print(json.load(open(sys.argv[1]))["afloat"]["rests"][0]["volume_out_percent"])' "$work/out")
expect_status 0 weigh "$presets/reedline-120.json" --json
expect_json "abs(d['mass_g'] / (d['displaced_cm3'] * d['water_kg_m3'] / 1000) - (1 - $shown / 100)) < 1e-5"

# What hangs still at 8 °C falls at 20 °C.
expect_status 0 fall "$presets/quarry-230.json" --json
expect_json 'd["falls"] == [] and any(abs(c - 8) < 0.2 for c in d["sweep"]["still_at_C"])'
expect_json 'next(p for p in d["sweep"]["by_temperature"] if abs(p["temperature_C"] - 20) < 0.01)["in_water_g"] > 0.1'
expect_status 0 fall "$presets/quarry-230.json"
expect_in out "suspends"

# A spindle of round wood with a lead of so many grams at a place, in mm from the nose and over the middle.
spindle() {  # GRAMS X Z
    cat >"$work/spindle.json" <<JSON
{"evenfall":2,"name":"Spindle","wood":{"species":"basswood","density_kg_m3":500},"water":{"temperature_C":15,"salinity_g_kg":0},
"tub":{"temperature_C":15,"salinity_g_kg":0},"shape":{"back_mm":[[0,1],[20,12],[60,15],[100,10],[120,2]],
"belly_mm":[[0,-1],[20,-12],[60,-15],[100,-10],[120,-2]],"half_width_mm":[[0,1],[20,8],[60,10],[100,6],[120,1]],
"section":{"kind":"rounded","exponent":2.0}},"segments":["A"],"joints":[],"holes":[],"pockets":[],"coats":[],
"parts":[{"name":"lead","stage":"hardware","material":"lead","mass_g":$1,"x_mm":$2,"y_mm":0,"z_mm":$3,"embedded_percent":100}],
"targets":{"fall_mm_s":100,"pitch_deg":0}}
JSON
}

# What sinks is never said to hang still, whether it finds a steady way or not; what hangs still to the bench does so here too.
for place in "19.5 101 0.04" "22 100 -0.05" "30 20 -0.2" "20 57 -5"; do
    spindle $place
    expect_status 0 fall "$work/spindle.json"
    grep -q "suspends" "$work/out" && fail "a lure that sinks suspends: $place"
    expect_in out "From rest"
done
# Less than a twentieth of a gram still sinks, at a speed that is seen.
spindle 18.475 57 -5
expect_status 0 weigh "$work/spindle.json" --json
expect_json '0 < d["in_water_g"] < 0.05 and d["behaviour"] == "falls" and d["fall_mm_s"] > 10'
expect_status 0 weigh "$work/spindle.json"
expect_in out "Near neutral. Chances: rises"

# Slower than 10 mm/s it hangs still, and the drift is told.
expect_status 0 weigh "$work/spindle.json" --json
lead_for() {  # GRAMS-IN-WATER: the lead that is embedded takes the place of wood
    /usr/bin/python3 -c 'import json,sys; print(18.475 + (float(sys.argv[2]) - json.load(open(sys.argv[1]))["in_water_g"]) / (1 - 500 / 11340))' "$work/out" "$1"
}
still=$(lead_for 0.002)
rising=$(lead_for -0.04)
spindle "$still" 57 -5
expect_status 0 weigh "$work/spindle.json" --json
expect_json 'd["behaviour"] == "suspends" and d["fall_mm_s"] is None and 0 < d["under_water_mm_s"] < 10'
expect_status 0 fall "$work/spindle.json"
expect_in out "It suspends."
spindle "$rising" 57 -5
expect_status 0 weigh "$work/spindle.json" --json
expect_json 'd["behaviour"] == "floats" and d["fall_mm_s"] is None and -60 < d["under_water_mm_s"] < -10'

spindle 19.5 101 0.04
expect_status 0 fall "$work/spindle.json"
expect_in out "It sinks, but finds no steady way of falling."

# With G over B there is no way of hanging, and it starts level.
spindle 20 56.9 3
expect_status 0 fall "$work/spindle.json"
expect_in out "Held still under water it rolls over."
expect_in out "From rest, level"

# The start from rest takes time, or nothing is said of it.
spindle 30 20 -0.2
expect_status 0 fall "$work/spindle.json" --json
expect_json 'd["track"]["start_up_percent"] is None or d["track"]["start_up_percent"] >= 0'

expect_status 2 fall "$presets/millrace-170.json" --depth=-1m
expect_in err "depth"
expect_status 2 fall "$presets/millrace-170.json" --depth 3g
expect_status 2 fall "$presets/millrace-170.json" --write x
expect_status 2 fall
finish
