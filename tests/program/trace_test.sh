#!/usr/bin/env bash
# "evenfall trace": an oval of known size, drawn as a filled piece and as a pencil line, comes back as a profile true to size.
. "$(dirname "$0")/support.sh"

/usr/bin/python3 - "$work" <<'PY'
import math, sys
folder = sys.argv[1]
W, H, A, B = 900, 500, 380, 110

def write(name, kind, colour=False):
    rows = bytearray()
    for y in range(H):
        for x in range(W):
            r = math.hypot((x + 0.5 - W / 2) / A, (y + 0.5 - H / 2) / B)
            # Distance to the oval, good enough near it.
            off = (r - 1) * math.hypot((x + 0.5 - W / 2), (y + 0.5 - H / 2)) / max(r, 1e-9)
            dark = off < 0 if kind == "piece" else abs(off) < 2.5
            light = 235 - 60 * x // W
            value = 80 if dark else light
            rows += bytes([value] * (3 if colour else 1))
    with open(f"{folder}/{name}", "wb") as f:
        f.write(f"{'P6' if colour else 'P5'}\n# drawn by the test\n{W} {H}\n255\n".encode() + rows)

write("piece.pgm", "piece")
write("line.ppm", "line", colour=True)
PY

for picture in piece.pgm line.ppm; do
    expect_status 0 trace "$work/$picture" --length 152mm --write "$work/traced.json"
    cp "$work/out" "$work/printed"
    expect_status 0 weigh "$work/traced.json" --json
    /usr/bin/python3 - "$work/traced.json" "$work/printed" <<'PY' || fail "$picture: the profile is not the oval"
import json, math, sys
lure = json.load(open(sys.argv[1]))
top, bottom = lure["shape"]["top_mm"], lure["shape"]["bottom_mm"]
assert abs(top[-1][0] - 152) < 0.5, top[-1]
# Half axes 76 and 22 mm: every point of both lines lies on the oval within a pencil's width.
for line, sign in ((top, 1), (bottom, -1)):
    for x, z in line[1:-1]:
        u = (x - 76) / 76
        wanted = sign * 22 * math.sqrt(max(0.0, 1 - u * u))
        # Towards the ends the oval is steep: there the way along x counts.
        across = abs(math.hypot(u, z / 22) - 1) * math.hypot(x - 76, z) if x not in (0, 152) else 0
        assert min(abs(z - wanted), across) < 0.6, (x, z, wanted)
text = open(sys.argv[2]).read()
assert "Back, mm" in text and "Belly, mm" in text and f"{top[3][0]:10.2f} {top[3][1]:8.2f}" in text
PY
done
grep -q "^A drawn line" "$work/printed" || fail "the pencil line is not seen as one"

expect_status 2 trace "$work/piece.pgm"
expect_in err "needs the true length"
head -c 5000 "$work/piece.pgm" >"$work/cut.pgm"
expect_status 2 trace "$work/cut.pgm" --length 100mm
expect_in err "cut off"
expect_status 2 trace "$presets/millrace-170.json" --length 100mm
expect_in err "no plain picture"
{ printf 'P5 200 100 255\n'; head -c 20000 /dev/zero; } >"$work/black.pgm"
expect_status 2 trace "$work/black.pgm" --length 100mm --write "$work/none.json"
expect_in err "No closed outline was found"
[ ! -e "$work/none.json" ] || fail "a picture without an outline leaves a file"
printf 'P5 99999 99999 255\n' >"$work/huge.pgm"
expect_status 2 trace "$work/huge.pgm" --length 100mm
finish
