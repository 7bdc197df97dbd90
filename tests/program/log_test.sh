#!/usr/bin/env bash
# "evenfall log" and "evenfall chance": readings go into the file whole or not at all, and change what is said.
. "$(dirname "$0")/support.sh"
file=$work/lure.json
cp "$presets/millrace-170.json" "$file"

expect_status 0 log "$file"
expect_in out "is empty"
expect_status 0 chance "$file" --json
expect_json 'd["has_readings"] is False and 0 < d["chance_now"]["both"] < 0.5'
before=$(/usr/bin/python3 -c 'import json,sys; print(json.load(open(sys.argv[1]))["in_water_g"]["sigma"])' "$work/out")

expect_status 0 log "$file" add board 119g --size 200x30x45 --date 2026-03-01 --note "board, end of"
expect_status 0 log "$file" add dry_weight 23.4 --stage carved --date 2026-03-02
expect_status 0 log "$file" add held_under 56.4g --stage carved --holder 0.35g --sigma 0.1
expect_status 0 log "$file"
expect_in out "board, end of"
expect_in out "less 0.35 g"
expect_status 0 chance "$file" --json
expect_json "d['has_readings'] and d['in_water_g']['sigma'] < 0.3 * $before and len(d['readings']) == 3"
expect_json 'd["chance_put_right"]["fall"] > 0.5 and len(d["do_now"]["changes"]) > 0 and d["do_now"]["met"]'
expect_status 0 chance "$file" --draws 2000
expect_in out "of 2000 drawn"
expect_in out "Do now:"

# Struck out, and in again; the file is otherwise what it was.
cp "$file" "$work/kept.json"
expect_status 0 log "$file" exclude 3
expect_status 0 chance "$file" --json
expect_json 'd["readings"][2]["used"] is False and d["readings"][1]["used"] is True'
expect_status 0 log "$file" exclude 3
cmp -s "$file" "$work/kept.json" || fail "striking a reading twice changed the file"

# Advice that is followed leaves the log, and nothing to do after it.
expect_status 0 log "$file" done --write "$work/followed.json"
expect_status 0 chance "$work/followed.json" --json
expect_json "len(d['readings']) == 3 and all(r['used'] for r in d['readings']) and not d['do_now']['changes']"
expect_status 2 log "$work/followed.json" done
expect_status 2 log "$file" done --hole 99

# A reading that does not fit is named, with what would make it fit.
expect_status 0 chance "$file" --json
slipped=$(/usr/bin/python3 -c 'import json,sys; print(round(json.load(open(sys.argv[1]))["stages"][3]["mass_g"]["value"] / 10, 2))' "$work/out")
expect_status 0 log "$file" add dry_weight "$slipped" --stage leaded --write "$work/typo.json"
cmp -s "$file" "$work/kept.json" || fail "--write changed the first file"
expect_status 0 log "$work/typo.json"
expect_in out "does not fit"
expect_in out "slipped decimal point"

# Refused: nothing is written.
for bad in "add dry_weight -3 --stage sealed" "add dry_weight 30 --stage baked" "add guess 30 --stage sealed" "add tub_fall 4.2s --stage rigged" \
           "add dry_weight 30 --stage sealed --date tomorrow" "add dry_weight 30 --stage sealed --date 2026-02-29" "exclude 1e30" "add dry_weight 30 --stage sealed --lure -1e30" "add dry_weight 30 --stage sealed --segment 9" "strike 44" "strike" "add dry_weight" \
           "add suspends 1g --stage sealed" "erase 1"; do
    # shellcheck disable=SC2086
    expect_status 2 log "$file" $bad
    expect_in err "evenfall: "
    cmp -s "$file" "$work/kept.json" || fail "the file was changed by: log $bad"
done
[ ! -e "$file.new" ] || fail "a half-written file was left"

# What could not be read again is not written: the file grows over the limit by being laid out.
/usr/bin/python3 - "$file" "$work/full.json" <<'PYTHON'
import json, sys
d = json.load(open(sys.argv[1]))
one = {"kind": "suspends", "stage": "clear_coated", "mass_g": 20.5, "sigma_g": 0.055, "temperature_C": 19.5, "clip_material": "steel",
       "date": "2026-03-01", "lure": 1, "note": '"' * 400}
d["log"] = [one] * 199
d["parts"] = [{"name": '"' * 400, "material": "steel", "mass_g": 0.01, "x_mm": 60, "z_mm": -10, "stage": "rigged"}] * 60
open(sys.argv[2], "w").write(json.dumps(d, separators=(",", ":"), ensure_ascii=False))
PYTHON
cp "$work/full.json" "$work/full-kept.json"
expect_status 0 weigh "$work/full.json"
expect_status 2 log "$work/full.json" add dry_weight 30 --stage carved
expect_in err "the limit is 256 kB"
cmp -s "$work/full.json" "$work/full-kept.json" || fail "a file was written that no command reads"

# Behind a symbolic link the file itself is written anew, for whom it was before; a file of another's name stays whole.
mkdir "$work/drawer"
cp "$file" "$work/drawer/real.json"
chmod 640 "$work/drawer/real.json"
ln -s drawer/real.json "$work/link.json"
echo "mine" >"$work/link.json.new"
echo "mine" >"$work/drawer/real.json.new"
expect_status 0 log "$work/link.json" add dry_weight 31.2 --stage sealed
[ -L "$work/link.json" ] || fail "the symbolic link became a file"
grep -q '31.2' "$work/drawer/real.json" || fail "the file behind the symbolic link was not written"
[ "$(stat -c %a "$work/drawer/real.json")" = 640 ] || fail "others may read the file now: $(stat -c %a "$work/drawer/real.json")"
[ "$(cat "$work/link.json.new" "$work/drawer/real.json.new")" = "mine
mine" ] || fail "a file of the user's own was overwritten"
[ "$(ls "$work/drawer" | wc -l)" -eq 2 ] || fail "a half-written file was left"
(umask 027 && "$program" log "$file" next --write "$work/fresh.json")
[ "$(stat -c %a "$work/fresh.json")" = 640 ] || fail "a new file is not as the shell has it set: $(stat -c %a "$work/fresh.json")"
mkfifo "$work/pipe"
timeout 10 cat "$work/pipe" >"$work/through" &
expect_status 0 log "$file" next --write "$work/pipe"
wait
[ -p "$work/pipe" ] || fail "a pipe became a file"
cmp -s "$work/through" "$work/fresh.json" || fail "something else came through a pipe"

# A fall, a clip, a segment and a second lure.
expect_status 0 log "$file" add tub_fall 4.1s --depth 500mm --stage rigged --lure 2
expect_status 0 log "$file" add suspends 2.4g --material lead --stage sealed --lure 2
expect_status 0 log "$file" add hang_angle -4deg --note "[beside the stove]" --stage rigged --lure 2
expect_status 0 log "$file" add dry_weight 9.9 --stage carved --segment 2 --lure 2
grep -qF '"[beside the stove]"' "$file" || fail "a note in brackets is not kept as it was typed"
expect_status 0 chance "$file" --json
expect_json 'd["lure"] == 2 and d["stage"] == "rigged"'
expect_status 0 log "$file" csv
[ "$(head -n 1 "$work/out" | tr -cd ',' | wc -c)" -gt 15 ] || fail "the table has too few columns"
[ "$(wc -l <"$work/out")" -eq 8 ] || fail "the table has $(wc -l <"$work/out") lines, not 8"
/usr/bin/python3 - "$work/out" <<'PYTHON' || fail "a reader of comma-separated values finds other columns"
import csv, sys
rows = list(csv.DictReader(open(sys.argv[1], newline="")))
sys.exit(0 if len(rows) == 7 and rows[0]["note"] == "board, end of" and rows[3]["time_s"] == "4.1" and rows[3]["lure"] == "2" else 1)
PYTHON
expect_status 0 log how held_under
expect_in out "fork alone"
expect_status 2 log how nothing
# A caliper says where it lay and across what.
expect_status 0 log "$file" add caliper 21.4mm --at 60mm --across width --stage carved --write "$work/caliper.json"
expect_status 0 log "$work/caliper.json"
expect_in out "21.40 mm wide at 60 mm"
for bad in "--at 60mm" "--across width" "--at 60mm --across depth"; do
    expect_status 2 log "$file" add caliper 21.4mm --stage carved $bad
done
# Whether the log agrees with what was believed is a number, and a sentence where it does not.
expect_status 0 chance "$work/caliper.json" --json
expect_json '0 <= d["agreement"]["chance"] <= 1 and (d["agreement"]["warning"] != "") == (d["agreement"]["chance"] < 0.01)'
# Beats say over what they were counted.
expect_status 0 log "$file" add beats 14 --over 3m --stage rigged --write "$work/beats.json"
expect_status 0 log "$work/beats.json"
expect_in out "14.0 over 3.00 m"
expect_status 0 log "$file" add beats 14 --during 6s --speed 0.5m/s --stage rigged --write "$work/beats.json"
expect_status 0 log "$work/beats.json"
expect_in out "14.0 in 6.00 s at 500"
for bad in "" "--during 6s" "--over 3m --speed 0.5m/s"; do
    expect_status 2 log "$file" add beats 14 --stage rigged $bad
done
expect_status 2 log "$file" add tub_fall 4.1s --depth 500mm --over 3m --stage rigged
# The next lure: what the readings taught, and an empty log; printed, or written where asked.
expect_status 0 log "$file" next
expect_json '"log" not in d and len(d["corrections"]) > 0'
cp "$work/out" "$work/printed.json"
expect_status 0 log "$file" next --write "$work/next.json"
cmp -s "$work/printed.json" "$work/next.json" || fail "the next lure is printed other than it is written"
# Weighed dry and held under, the first lure's board tells of the second one's; its own readings are still to come.
cp "$presets/millrace-170.json" "$work/first.json"
expect_status 0 log "$work/first.json" add dry_weight 22.9 --stage carved
expect_status 0 log "$work/first.json" add held_under 56.2g --stage carved --holder 0.3g
expect_status 0 log "$work/first.json" next --write "$work/second.json"
expect_status 0 chance "$work/second.json" --json
expect_json "d['has_readings'] is False and d['in_water_g']['sigma'] < $before"


# What floats falls at nothing, and where a weight is asked it is no fall that comes right.
expect_status 0 chance "$presets/quarry-230.json" --draws 500
expect_in out "Chance that the weight in water is right (band ±0."
expect_in out "Right weight in water:"
/usr/bin/python3 - "$presets/reedline-120.json" "$work/light.json" "$work/afloat.json" <<'PYTHON'
import json, sys
d = json.load(open(sys.argv[1]))
json.dump(d, open(sys.argv[2], "w"))
d["log"] = [{"kind": "dry_weight", "stage": "clear_coated", "mass_g": 38.5}, {"kind": "held_under", "stage": "clear_coated", "mass_g": 43.0}]
json.dump(d, open(sys.argv[3], "w"))
PYTHON
expect_status 0 chance "$work/light.json" --draws 500
expect_in out "fall mm/s, where it sinks"
expect_in out "Four in five such lures float, or fall at up to"
expect_status 0 chance "$work/afloat.json" --draws 500
expect_in out "Four in five such lures or more float."
! grep -q "^fall mm/s" "$work/out" || fail "a lure that surely floats is told a fall"
expect_status 0 chance "$presets/millrace-170.json"
expect_in out "Chance that the first fall is right (band ±10 %)"
finish
