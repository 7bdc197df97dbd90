#!/usr/bin/env bash
# "evenfall trace": a drawn ellipse of known size comes back as lines of that size; what is no picture is refused.
. "$(dirname "$0")/support.sh"
pictures="$(dirname "$0")/pictures"

# 800 by 400 pixels, 0.25 mm each: a pencilled ellipse 150 mm long and 40 mm high, turned by 3 degrees.
/usr/bin/python3 - "$work" "$pictures" <<'PYTHON'
import math, random, struct, sys, zlib
folder = sys.argv[1]

def chunk(name, data):
    return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))

def png(width, height, channels, packed):
    colour = {1: 0, 3: 2, 4: 6}[channels]
    return (b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, colour, 0, 0, 0))
            + chunk(b"IDAT", packed) + chunk(b"IEND", b""))

def rows(width, channels, samples):
    line = width * channels
    return zlib.compress(b"".join(b"\0" + samples[i:i + line] for i in range(0, len(samples), line)))

def write(name, data):
    open(folder + "/" + name, "wb").write(data)

random.seed(5)
w, h = 800, 400
c, s = math.cos(math.radians(3)), math.sin(math.radians(3))
grey = bytearray()
for y in range(h):
    for x in range(w):
        u, v = x + 0.5 - 400, y + 0.5 - 200
        p, q = (u * c + v * s) / 300, (-u * s + v * c) / 80
        f = p * p + q * q - 1
        off = f / (2 * math.hypot(p / 300, q / 80) + 1e-9)
        ink = max(0.0, min(1.0, 2.0 - abs(off)))
        grey.append(max(0, min(255, int((225 - 0.08 * x) * (1 - 0.5 * ink) + random.gauss(0, 3)))))
sketch = png(w, h, 1, rows(w, 1, grey))
write("sketch.png", sketch)
write("colour.png", png(w, h, 3, rows(w, 3, bytes(v for g in grey for v in (g, g, g)))))
# The same line as the cover of black on nothing: what is transparent counts as white paper.
write("clear.png", png(w, h, 4, rows(w, 4, bytes(v for g in grey for v in (0, 0, 0, 255 - g)))))
write("plain.png", png(200, 100, 1, rows(200, 1, bytes([220]) * 20000)))
write("cut.png", sketch[:len(sketch) // 2])
write("damaged.png", sketch[:2000] + bytes(400) + sketch[2400:])
write("small.png", png(20, 200, 1, rows(20, 1, bytes(4000))))
write("vast.png", png(30000, 30000, 1, zlib.compress(b"")))
# A hundred by a hundred pixels by its head, 600 MB when unpacked.
deflate = zlib.compressobj(1)
write("bomb.png", png(100, 100, 1, b"".join(deflate.compress(bytes(10**7)) for _ in range(60)) + deflate.flush()))
jpeg = open(sys.argv[2] + "/oval.jpg", "rb").read()
write("cut.jpg", jpeg[:len(jpeg) // 2])
PYTHON

scale=(--scale 100mm --between 100,390,500,390)
expect_status 0 trace "$work/sketch.png" "${scale[@]}" --write "$work/lure.json"
expect_in out "A drawn line was followed"
expect_status 0 trace "$work/sketch.png" "${scale[@]}" --write -
expect_json 'abs(d["shape"]["back_mm"][-1][0] - 150.0) < 0.4'
expect_json 'abs(max(p[1] for p in d["shape"]["back_mm"]) - 20.0) < 0.2'
expect_json 'abs(min(p[1] for p in d["shape"]["belly_mm"]) + 20.0) < 0.2'
expect_json 'abs(d["shape"]["back_mm"][0][1] - d["shape"]["belly_mm"][0][1]) < 4.0'
cmp -s "$work/out" "$work/lure.json" || fail "the written file differs from what standard output gives"
expect_status 0 weigh "$work/lure.json"
expect_status 0 trace "$work/sketch.png" "${scale[@]}" --into "$presets/reedline-120.json" --write -
expect_json 'len(d["joints"]) > 0'
expect_json 'abs(d["shape"]["back_mm"][-1][0] - 150.0) < 0.4'
# In colour, as ink on a clear sheet, and as the two kinds of JPEG (drawn at half as many pixels): the same lure.
for picture in "$work/colour.png" "$work/clear.png"; do
    expect_status 0 trace "$picture" "${scale[@]}" --write -
    expect_json 'abs(d["shape"]["back_mm"][-1][0] - 150.0) < 0.4'
done
for picture in "$pictures/oval.jpg" "$pictures/oval-progressive.jpg"; do
    expect_status 0 trace "$picture" --scale 100mm --between 50,195,250,195 --write -
    expect_json 'abs(d["shape"]["back_mm"][-1][0] - 150.0) < 0.4'
    expect_json 'abs(max(p[1] for p in d["shape"]["back_mm"]) - 20.0) < 0.2'
done
# The same in a part of the picture, its corners given either way round.
expect_status 0 trace "$work/sketch.png" "${scale[@]}" --part 760.5,340,40,60.3 --write -
expect_json 'abs(d["shape"]["back_mm"][-1][0] - 150.0) < 0.4'
expect_json 'abs(max(p[1] for p in d["shape"]["back_mm"]) - 20.0) < 0.2'
# Twice the scale, twice the lure.
expect_status 0 trace "$work/sketch.png" --scale 200mm --between 100,390,500,390 --within 0.6mm --write -
expect_json 'abs(d["shape"]["back_mm"][-1][0] - 300.0) < 0.8'

expect_status 1 trace "$work/plain.png" "${scale[@]}" --write "$work/none.json"
expect_in err "No closed outline was found"
[ ! -e "$work/none.json" ] || fail "a lure was written although there is no outline"
for broken in cut.png cut.jpg damaged.png bomb.png; do
    expect_status 2 trace "$work/$broken" "${scale[@]}"
    expect_in err "cut off or damaged"
done
expect_status 2 trace "$work/small.png" "${scale[@]}"
expect_in err "too small"
expect_status 2 trace "$work/vast.png" "${scale[@]}"
expect_in err "too large"
expect_status 2 trace "$presets/reedline-120.json" "${scale[@]}"
expect_in err "JPEG or PNG"
expect_status 2 trace - "${scale[@]}" </dev/null
expect_in err "JPEG or PNG"
expect_status 2 trace "$work/sketch.png"
expect_in err "--between"
expect_status 2 trace "$work/sketch.png" --scale 100mm --between 1,2,3
expect_in err "X,Y,X,Y"
expect_status 2 trace "$work/sketch.png" --scale 5m --between 100,390,500,390
expect_status 2 trace
expect_in err "a JPEG or PNG file"
finish
