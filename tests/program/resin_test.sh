#!/usr/bin/env bash
# "evenfall resin": grams by surface, the mix and what is refused.
. "$(dirname "$0")/support.sh"

# The ratio is the label's: without it no answer.
expect_status 2 resin "$presets/millrace-170.json"
expect_in err "as your label has them"
expect_in err "/ratio"
label="--resin 2 --hardener 1"
expect_status 0 resin "$presets/millrace-170.json" $label --lures 2 --json
expect_json 'all(abs(c["skin_g"] + c["faces_g"] + c["pockets_g"] - c["together_g"]) < 1e-5 for c in d["coats"])'
expect_json 'abs(d["all"]["mixed_g"] * 0.65 - 2 * d["coats"][d["mixed_for_coat"] - 1]["together_g"]) < 1e-4'
expect_json 'abs(d["all"]["resin_g"] - 2 * d["all"]["hardener_g"]) < 1e-5'
expect_status 0 resin "$presets/millrace-170.json" $label --lures 3 --by-volume 1
expect_in out "rate rule"
expect_in out "The label comes first"
# At the label's own temperature the window is the label's.
expect_status 0 resin "$presets/millrace-170.json" $label --recoat-from 5 --recoat-to 9 --room 23C --json
expect_json 'abs(d["recoat_from_min"] - 300) < 1e-6 and abs(d["recoat_to_min"] - 540) < 1e-6'
expect_status 2 resin "$presets/millrace-170.json" $label --recoat-from 9 --recoat-to 5
expect_in err "/label/recoat_to_min"
expect_status 2 resin "$presets/millrace-170.json" $label --loss 95%
expect_in err "/loss"
expect_status 2 resin "$presets/millrace-170.json" $label --lures 1.5
expect_in err "[--lures]"
for coat in 0 99 -1; do
    expect_status 2 resin "$presets/millrace-170.json" $label --coat $coat
    expect_in err "The lure has no such coat"
    expect_in err "/coat"
done
expect_status 2 resin "$presets/millrace-170.json" --colour 3
expect_in err "“resin” has no option --colour"
finish
