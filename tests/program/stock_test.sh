#!/usr/bin/env bash
# "evenfall stock": rod, shot and sheet for the fills of a preset.
. "$(dirname "$0")/support.sh"

expect_status 0 stock "$presets/millrace-170.json" --rod 6mm --json
expect_json 'abs(sum(h["length_mm"] for h in d["holes"]) - d["length_mm"]) < 1e-4 and d["length_mm"] > 0'
expect_status 0 stock "$presets/millrace-170.json" --shot-number 6 --json
expect_json 'sum(h["count"] for h in d["holes"]) == d["count"] > 0'
expect_status 0 stock "$presets/millrace-170.json" --sheet 1
expect_in out "Lead is poisonous"
expect_status 2 stock "$presets/millrace-170.json" --rod 0
expect_in err "/size_mm"
expect_status 2 stock "$presets/millrace-170.json" --shot-number 40
expect_in err "/shot_number"
expect_status 2 stock "$presets/millrace-170.json"
expect_in err "/size_mm"
finish
