#!/usr/bin/env bash
# "evenfall trace": a drawn ellipse of known size comes back as lines of that size; what is no picture is refused.
. "$(dirname "$0")/support.sh"

# 800 by 400 pixels, 0.25 mm each: a pencilled ellipse 150 mm long and 40 mm high, turned by 3 degrees.
/usr/bin/python3 - "$work" <<'PYTHON'
import math, random, sys
random.seed(5)
w, h = 800, 400
c, s = math.cos(math.radians(3)), math.sin(math.radians(3))
rows = bytearray()
for y in range(h):
    for x in range(w):
        u, v = x + 0.5 - 400, y + 0.5 - 200
        p, q = (u * c + v * s) / 300, (-u * s + v * c) / 80
        f = p * p + q * q - 1
        off = f / (2 * math.hypot(p / 300, q / 80) + 1e-9)
        ink = max(0.0, min(1.0, 2.0 - abs(off)))
        rows.append(max(0, min(255, int((225 - 0.08 * x) * (1 - 0.5 * ink) + random.gauss(0, 3)))))
open(sys.argv[1] + "/sketch.pgm", "wb").write(b"P5\n%d %d\n255\n" % (w, h) + bytes(rows))
open(sys.argv[1] + "/plain.pgm", "wb").write(b"P5\n200 100\n255\n" + bytes([220]) * 20000)
open(sys.argv[1] + "/cut.pgm", "wb").write(b"P5\n200 100\n255\n" + bytes([220]) * 19999)
PYTHON

scale=(--scale 100mm --between 100,390,500,390)
expect_status 0 trace "$work/sketch.pgm" "${scale[@]}" --write "$work/lure.json"
expect_in out "A drawn line was followed"
expect_status 0 trace "$work/sketch.pgm" "${scale[@]}" --write -
expect_json 'abs(d["shape"]["top_mm"][-1][0] - 150.0) < 0.4'
expect_json 'abs(max(p[1] for p in d["shape"]["top_mm"]) - 20.0) < 0.2'
expect_json 'abs(min(p[1] for p in d["shape"]["bottom_mm"]) + 20.0) < 0.2'
expect_json 'abs(d["shape"]["top_mm"][0][1] - d["shape"]["bottom_mm"][0][1]) < 4.0'
cmp -s "$work/out" "$work/lure.json" || fail "the written file differs from what standard output gives"
expect_status 0 weigh "$work/lure.json"
expect_status 0 trace "$work/sketch.pgm" "${scale[@]}" --into "$presets/reedline-120.json" --write -
expect_json 'len(d["joints"]) > 0'
expect_json 'abs(d["shape"]["top_mm"][-1][0] - 150.0) < 0.4'
# Twice the scale, twice the lure.
expect_status 0 trace "$work/sketch.pgm" --scale 200mm --between 100,390,500,390 --within 0.6mm --write -
expect_json 'abs(d["shape"]["top_mm"][-1][0] - 300.0) < 0.8'

expect_status 1 trace "$work/plain.pgm" "${scale[@]}" --write "$work/none.json"
expect_in err "No closed outline was found"
[ ! -e "$work/none.json" ] || fail "a lure was written although there is no outline"
expect_status 2 trace "$work/cut.pgm" "${scale[@]}"
expect_in err "cut off"
expect_status 2 trace "$presets/reedline-120.json" "${scale[@]}"
expect_in err "PGM or PPM"
expect_status 2 trace "$work/sketch.pgm"
expect_in err "--between"
expect_status 2 trace "$work/sketch.pgm" --scale 100mm --between 1,2,3
expect_in err "X,Y,X,Y"
expect_status 2 trace "$work/sketch.pgm" --scale 5m --between 100,390,500,390
expect_status 2 trace
expect_in err "a picture"
finish
