#!/usr/bin/env bash
# "evenfall glue": glue round the eyes and soda for the caps.
. "$(dirname "$0")/support.sh"

expect_status 0 glue "$presets/millrace-170.json" --json
expect_json 'len(d["eyes"]) == 3 and [e["joint"] for e in d["eyes"]] == [1, 2, None]'
# The line tie and two hook hangers.
expect_json 'd["eyes"][2]["eyes"] == 3 and all(e["gap_ml"] > 0 and e["in_lure_g"] > 0 for e in d["eyes"])'
expect_json 'abs(sum(t["ml"] for t in d["take"]) * 0.5 - sum(e["eyes"] * e["gap_ml"] for e in d["eyes"]) - sum(c["ca_ml"] for c in d["caps"])) < 1e-5'
expect_status 0 glue "$presets/millrace-170.json" --lures 4 --loss 0% --hangers 0
expect_in out "eyes covered"
expect_in out "common practice"
expect_status 0 glue "$presets/millrace-170.json" --fitting 2 --json
expect_json 'd["eyes"][2]["glue"] != "epoxy" and d["eyes"][2]["width_mm"] <= 0.3'
# A joint that names its glue keeps it.
expect_json 'd["eyes"][0]["glue"] == "epoxy"'
expect_status 2 glue "$presets/millrace-170.json" --loss 95%
expect_in err "/loss"
expect_status 2 glue "$presets/millrace-170.json" --hangers 1.5
expect_in err "[--hangers]"
expect_status 2 glue "$presets/millrace-170.json" --bit 0.5mm
expect_in err "/bit_mm"
expect_status 2 glue "$presets/millrace-170.json" --colour 3
expect_in err "--colour"

# Named in the document, the glue is weighed: a little more than the water that stands there otherwise.
sed 's/"glue": "epoxy", "temper"/"glue": "none", "temper"/' "$presets/millrace-170.json" >"$work/dry.json"
expect_status 0 weigh "$work/dry.json" --json
dry="$(python3 -c 'import json,sys; print(json.load(open(sys.argv[1]))["mass_g"])' "$work/out")"
expect_status 0 weigh "$presets/millrace-170.json" --json
expect_json "0.01 < d['mass_g'] - $dry < 0.5"
finish
