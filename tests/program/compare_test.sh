#!/usr/bin/env bash
# "evenfall woods" and "evenfall metals": the lure's own wood and metal ask there for what its own plan asks.
. "$(dirname "$0")/support.sh"

for file in millrace-170 reedline-120 quarry-230 estuary-150; do
    expect_status 0 woods "$presets/$file.json" --json
    cp "$work/out" "$work/woods.json"
    expect_status 0 metals "$presets/$file.json" --json
    cp "$work/out" "$work/metals.json"
    "$program" lead "$presets/$file.json" --json >"$work/lead.json" || true
    "$program" lead "$presets/$file.json" --write "$work/planned.json" >/dev/null || true
    /usr/bin/python3 - "$presets/$file.json" "$work" <<'PY' || fail "$file: the tables and the plan do not agree"
import json, os, sys
lure, work = json.load(open(sys.argv[1])), sys.argv[2]
woods = {row["id"]: row for row in json.load(open(f"{work}/woods.json"))}
metals = {row["id"]: row for row in json.load(open(f"{work}/metals.json"))}
own = woods[lure["wood"]["species"]]
weighed = "density_g_cm3" in lure["wood"] or "density_kg_m3" in lure["wood"]
if os.path.exists(f"{work}/planned.json") and not weighed and not lure.get("log"):
    planned = json.load(open(f"{work}/planned.json"))
    fills = sum(h["fill"]["mass_g"] for h in planned["holes"] if h.get("use") != "fixed" and h.get("fill") and "mass_g" in h["fill"])
    assert own["met"] and abs(own["fill_g"] - fills) < 0.01, (own, fills)
    os.remove(f"{work}/planned.json")
densities = [row["density_kg_m3"] for row in woods.values()]
bare = [row["bare_in_water_g"] for row in woods.values()]
# The denser the wood, the less the bare lure floats.
pairs = sorted(zip(densities, bare))
assert all(a[1] <= b[1] + 1e-9 for a, b in zip(pairs, pairs[1:])), pairs
assert {"lead", "tungsten", "bismuth", "tin", "brass"} <= set(metals), set(metals)
for row in list(woods.values()) + list(metals.values()):
    assert row["met"] == (row["why"] == ""), row
PY
done
expect_status 0 woods "$presets/millrace-170.json"
expect_in out "Basswood"
# What is read is rounded, not cut off.
"$program" woods "$presets/millrace-170.json" --json >"$work/woods.json"
/usr/bin/python3 - "$work/woods.json" "$work/out" <<'PY' || fail "the text does not round as the numbers do"
import json, sys
from decimal import Decimal, ROUND_HALF_UP
text = open(sys.argv[2]).read().splitlines()
two = lambda v, places: str(Decimal(v).quantize(Decimal(places), ROUND_HALF_UP))
seen = 0
for row in json.load(open(sys.argv[1])):
    line = next(l for l in text if l.startswith(row["name"]))
    words = line[len(row["name"]):].split()
    if row["fill_g"] is not None:
        assert two(row["fill_g"], "0.01") in words, (row, line)
        seen += 1
    if row["side_hardness_n"] is not None:
        assert two(row["side_hardness_n"], "1") in words, (row, line)
assert seen > 5
PY
expect_status 2 woods "$presets/none.json"
expect_status 2 metals "$presets/millrace-170.json" --fall 1
expect_in err "has no option --fall"
finish
