#!/usr/bin/env bash
# "evenfall tail": volume, pull on the trim, mould and plastic, and what is refused.
. "$(dirname "$0")/support.sh"

# The demo's weighed tail becomes one by its shape, in the slot that is there.
tailed() {  # REPLACEMENTS...: Python that changes t, the tail
    /usr/bin/python3 - "$presets/millrace-170.json" "$work/tailed.json" "$1" <<'PYTHON'
import json, sys
d = json.load(open(sys.argv[1]))
d["parts"] = [p for p in d["parts"] if p["name"] != "Soft tail"]
t = {"x_mm": 170, "back_mm": [[0, 6], [25, 9], [34, 7]], "belly_mm": [[0, -6], [25, -8], [34, -5]],
     "half_thickness_mm": [[0, 2.5], [34, 0.6]], "tenon": {"length_mm": 12, "thickness_mm": 1.8, "height_mm": 8}}
exec(sys.argv[3])
d["tail"] = t
json.dump(d, open(sys.argv[2], "w"))
PYTHON
}

tailed ""
expect_status 0 weigh "$work/tailed.json" --json
cp "$work/out" "$work/weighed"
expect_status 0 tail "$work/tailed.json" --tails 3 --old 30 --fresh 60 --softener 10 --json
expect_json 'abs(d["tenon_cm3"] - 1.2 * 0.18 * 0.8) < 1e-9'
expect_json 'abs(d["mass_g"] - d["volume_cm3"] * d["density_kg_m3"] / 1000) < 1e-5'
expect_json 'abs(d["with"]["mass_g"] - d["without"]["mass_g"] - d["mass_g"]) < 1e-5'
expect_json 'abs(d["pull"]["in_water_g"] - d["in_water_g"]) < 1e-5'
expect_json 'abs(d["with"]["pitch_deg"] - d["without"]["pitch_deg"] - d["pull"]["pitch_deg"]) < 1e-5'
expect_json 'abs(d["plastic"]["heated_g"] * 0.9 * 0.85 - 3 * d["mass_g"]) < 1e-4'
expect_json 'abs(sum(b["mass_g"] for b in d["plastic"]["blend"]) - d["plastic"]["heated_g"]) < 1e-4'
expect_json 'abs(d["mould"]["box_mm"][0] * d["mould"]["box_mm"][1] * d["mould"]["box_mm"][2] / 1000 - d["mould"]["cavity_cm3"] - d["mould"]["rubber_cm3"]) < 1e-3'
expect_json 'abs(json.load(open(sys.argv[1].replace("/out", "/weighed")))["mass_g"] - d["with"]["mass_g"]) < 1e-5'
expect_status 0 tail "$work/tailed.json"
expect_in out "without"
expect_in out "Follow the label"
tailed 't["material"] = "silicone"'
expect_status 0 tail "$work/tailed.json"
expect_in out "to mix"
expect_status 0 open "$("$program" link "$work/tailed.json")"
expect_in out '"tenon"'

expect_status 2 tail "$presets/millrace-170.json"
expect_in err "/tail"
tailed 't["tenon"]["thickness_mm"] = 2.2'
expect_status 2 tail "$work/tailed.json"
expect_in err "/tail/tenon/thickness_mm"
tailed 't["x_mm"] = 150'
expect_status 2 weigh "$work/tailed.json"
expect_in err "/tail/x_mm"
tailed 't["colour"] = "red"'
expect_status 2 tail "$work/tailed.json"
expect_in err "/tail/colour"
tailed 'del t["back_mm"]'
expect_status 2 tail "$work/tailed.json"
expect_in err "/tail/back_mm"
tailed ""
expect_status 2 tail "$work/tailed.json" --loss 95%
expect_in err "/loss"
expect_status 2 tail "$work/tailed.json" --tails 1.5
expect_in err "[--tails]"
expect_status 2 tail "$work/tailed.json" --fresh 0
expect_in err "/blend"
expect_status 2 tail "$work/tailed.json" --flavour 3
expect_in err "--flavour"
finish
