#!/usr/bin/env bash
# "evenfall lead": the plan meets its targets, is written on request, and says what stops it when it cannot.
. "$(dirname "$0")/support.sh"
millrace=$presets/millrace-170.json

expect_status 0 lead "$millrace"
expect_in out "deep mm"
expect_in out "Wash your hands after lead"
expect_in out "In the tub"

expect_status 0 lead "$millrace" --json
expect_json 'd["met"] is True and len(d["fills"]) == 6 and d["shortfalls"] == []'
expect_json 'all({"hole","material","mass_g","depth_mm","column_mm"} <= set(f) for f in d["fills"])'
expect_json 'abs(d["fall_mm_s"] - 160) < 1 and abs(d["pitch_deg"] + 3) < 0.05'

# The demo presets stand as planned for their own targets.
for file in millrace-170 reedline-120 quarry-230 estuary-150; do
    expect_status 0 lead "$presets/$file.json" --json
    expect_json 'd["met"] and abs(d["before"]["in_water_g"] - d["in_water_g"]) < 0.01 and abs(d["before"]["pitch_deg"] - d["pitch_deg"]) < 0.05'
done

# Asked on the command line; what is written weighs as promised (0.01 g and 0.05 degrees).
expect_status 0 lead "$millrace" --in-water 2.5g --pitch -3deg --write "$work/heavy.json"
expect_status 0 weigh "$work/heavy.json" --json
expect_json 'abs(d["in_water_g"] - 2.5) < 0.01 and abs(d["pitch_deg"] + 3) < 0.05'
expect_status 0 lead "$millrace" --fall 1.2s/ft --write "$work/fast.json"
expect_status 0 weigh "$work/fast.json" --json
expect_json 'abs(d["fall_mm_s"] - 304.8 / 1.2) < 2'
expect_status 0 lead "$millrace" --fall=270mm/s --json
expect_json 'abs(d["fall_mm_s"] - 270) < 2'
expect_status 0 weigh "$millrace" --json
expect_json 'abs(d["fall_mm_s"] - 160) < 1'

# Each cap with its caution, and none for what is not there.
sed 's/"material": *"ca_soda"/"material": "ca"/' "$millrace" >"$work/ca.json"
expect_status 0 lead "$work/ca.json"
expect_in out "CA bonds skin"
grep -q "baking soda" "$work/out" && fail "baking soda is spoken of where there is none"
expect_status 0 lead "$millrace"
expect_in out "baking soda"

# They stand ahead of the table of holes, and tungsten asks for none of lead's.
line_of() { grep -n -m 1 -- "$1" "$work/out" | cut -d: -f1; }
for caution in "Clamp the segment" "Wash your hands after lead" "CA glue on baking soda"; do
    [ "$(line_of "$caution")" -lt "$(line_of "deep mm")" ] || fail "“$caution” comes after the holes"
done
[ "$(line_of "Hooks catch")" -lt "$(line_of "In the tub")" ] || fail "hooks are spoken of after the tub"
sed 's/"material": *"lead"/"material": "tungsten"/' "$millrace" >"$work/tungsten.json"
expect_status 0 stock "$work/tungsten.json" --rod 5mm
grep -q "Wash your hands after lead" "$work/out" && fail "tungsten is warned of as lead"

# What no filling reaches: status 1, the reason on standard error, nothing written.
expect_status 1 lead "$millrace" --in-water 60g --write "$work/none.json"
expect_in err "evenfall: "
expect_in err "nothing was written"
[ ! -e "$work/none.json" ] || fail "a plan that misses was written"
expect_status 1 lead "$millrace" --in-water 60g --json
expect_json 'd["met"] is False and len(d["shortfalls"]) >= 1'
# The nearest by the bands then: both misses, the limits that stop it, and what matters more.
expect_status 1 lead "$millrace" --fall 450mm/s
expect_in err "450.0 mm/s is asked"
expect_in err "times its band"
expect_in err " is full at "
expect_in err "−3.0° is asked"
expect_status 1 lead "$millrace" --fall 450mm/s --json
expect_json 'len(d["shortfalls"]) == 2 and d["misses"]["weight"] is None'
expect_json 'abs(d["misses"]["fall"]["mm_s"] - (d["fall_mm_s"] - 450)) < 1e-3 and abs(d["misses"]["hang"]["deg"] - (d["pitch_deg"] + 3)) < 1e-3'
expect_json 'abs(d["misses"]["fall"]["bands"] - d["misses"]["fall"]["mm_s"] / 45) < 1e-4'
expect_json 'any(f["limit"] == "full" for f in d["fills"])'
expect_status 1 lead "$millrace" --fall 450mm/s --matters hang --json
expect_json 'abs(d["pitch_deg"] + 3) < 0.1'
expect_status 2 lead "$millrace" --matters colour
expect_in err "both_alike, fall, hang"
finish
