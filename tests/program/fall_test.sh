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
expect_in out "hangs still"

expect_status 2 fall "$presets/millrace-170.json" --depth=-1m
expect_in err "depth"
expect_status 2 fall "$presets/millrace-170.json" --depth 3g
expect_status 2 fall "$presets/millrace-170.json" --write x
expect_status 2 fall
finish
