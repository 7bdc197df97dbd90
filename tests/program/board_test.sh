#!/usr/bin/env bash
# "evenfall board": a measured board against its species, and into the preset.
. "$(dirname "$0")/support.sh"

expect_status 0 board "$presets/millrace-170.json" --size 200x50x40 --mass 165.76g --species basswood --to 8 --json
# 165.76 g on 400 cm³: 0.4144, which is what the table gives basswood at 12 %.
expect_json 'abs(d["density_kg_m3"] - 414.4) < 1e-3 and abs(d["sigmas"]) < 1e-6 and d["says"] == "usual"'
expect_json 'd["density_then_kg_m3"] < d["density_kg_m3"] and abs(d["would_explain_percent"] - 12) < 1e-3'
expect_status 0 board "$presets/millrace-170.json" --size 200x50x40 --mass 240g --species basswood
expect_in out "Heavier than usual"
expect_in out "wetter"
expect_status 0 board "$presets/millrace-170.json" --size 200x50x40 --mass 170g --to 10 --species basswood --write "$work/new.json"
expect_status 0 weigh "$work/new.json"
[ "$(python3 -c 'import json,sys; w=json.load(open(sys.argv[1]))["wood"]; print(w["moisture_percent"], 400 < w["density_kg_m3"] < 425)' "$work/new.json")" = "10 True" ] || fail "the board's density is in the preset"
expect_status 2 board "$presets/millrace-170.json" --size 200x50 --mass 170g
expect_in err "--size"
expect_status 2 board "$presets/millrace-170.json" --size 200x50x40
expect_in err "/mass_g"
expect_status 2 board "$presets/millrace-170.json" --size 200x50x40 --mass 170g --species elm
expect_in err "--species"
expect_status 2 board "$presets/millrace-170.json" --size 200x50x40 --mass 170g --moisture 45
expect_in err "/from_percent"
expect_status 2 board "$presets/millrace-170.json" --size 200x50x40 --mass 170g --to -5
expect_in err "/to_percent"
# What an older board taught does not multiply a board that was weighed.
python3 -c 'import json,sys; d=json.load(open(sys.argv[1])); d["corrections"]=[{"of":"wood_density","item":1,"factor":1.2},{"of":"moisture","item":1,"factor":1.1},{"of":"part_mass","item":1,"factor":1.01}]; d["wood"]["density_spread_percent"]=20; json.dump(d,open(sys.argv[2],"w"))' "$presets/millrace-170.json" "$work/taught.json"
expect_status 0 board "$work/taught.json" --size 200x50x40 --mass 170g --to 12 --write "$work/weighed.json"
expect_status 0 weigh "$work/weighed.json" --json
expect_json 'abs(d["stages"][0]["mass_g"] / sum(s["volume_cm3"] for s in d["segments"]) - 0.425) < 1e-3'
[ "$(python3 -c 'import json,sys; d=json.load(open(sys.argv[1])); print([c["of"] for c in d["corrections"]], "density_spread_percent" in d["wood"])' "$work/weighed.json")" = "['part_mass'] False" ] || fail "corrections of the wood go, others stay"
finish
