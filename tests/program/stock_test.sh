#!/usr/bin/env bash
# "evenfall stock": rod, shot and sheet for the fills of a preset.
. "$(dirname "$0")/support.sh"

expect_status 0 stock "$presets/millrace-170.json" --rod 6mm --json
expect_json 'abs(sum(h["length_mm"] for h in d["holes"]) - d["length_mm"]) < 1e-4 and d["length_mm"] > 0'
expect_status 0 stock "$presets/millrace-170.json" --shot-number 6 --json
expect_json 'sum(h["count"] for h in d["holes"]) == d["count"] > 0'
expect_status 0 stock "$presets/millrace-170.json" --sheet 1
expect_in out "Wash your hands after lead"
# AWG 10 is 0.1019 in (ASTM B258): 2.588 mm of rod.
expect_status 0 stock "$presets/millrace-170.json" --awg 10 --json
gauge="$(python3 -c 'import json,sys; print(json.load(open(sys.argv[1]))["length_mm"])' "$work/out")"
expect_status 0 stock "$presets/millrace-170.json" --rod 2.588mm --json
expect_json "abs(d['length_mm'] / $gauge - 1) < 3e-4"
# The same grams of a denser metal are shorter by the ratio of densities (lead 11.34, tungsten alloy 17.75).
lead="$(python3 -c 'import json,sys; print(json.load(open(sys.argv[1]))["length_mm"])' "$work/out")"
expect_status 0 stock "$presets/millrace-170.json" --rod 2.588mm --material tungsten_alloy --json
expect_json "abs(d['length_mm'] / $lead - 11.34 / 17.75) < 1e-6"
expect_status 2 stock "$presets/millrace-170.json" --rod 2mm --material cheese
expect_in err "/material"
expect_status 2 stock "$presets/millrace-170.json" --awg 10.5
expect_in err "/awg"
expect_status 2 stock "$presets/millrace-170.json" --rod 0
expect_in err "/size_mm"
expect_status 2 stock "$presets/millrace-170.json" --shot-number 40
expect_in err "/shot_number"
expect_status 2 stock "$presets/millrace-170.json"
expect_in err "/size_mm"
finish
