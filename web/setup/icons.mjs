// Draws the page's icon: a lure of three segments with its lead, sinking nose first under a level waterline.
//
//   node web/setup/icons.mjs web/assets     writes mark.svg and the PNG icons again, after a change here
//
// The SVG and PNG files are made from one list of shapes in a 512-unit square, so that they cannot differ.

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { deflateSync } from "node:zlib";

const paper = "#fffdf8";
const ink = "#22302e";
const wood = "#e6cc9f";
const lead = "#59636e";
const water = "#2c6e8a";

const length = 372;
const tilt = (9 * Math.PI) / 180;

// Half height of the body at a share of its length from the nose: an elliptic nose, then a cosine taper.
function halfHeight(share) {
  if (share < 0.35) return 66 * Math.sqrt(Math.max(0, 1 - (1 - share / 0.35) ** 2));
  return 13 + 53 * (0.5 + 0.5 * Math.cos((Math.PI * (share - 0.35)) / 0.65));
}

function place([x, y]) {
  const fromMiddle = x - length / 2;
  return [256 + fromMiddle * Math.cos(tilt) + y * Math.sin(tilt), 292 + y * Math.cos(tilt) - fromMiddle * Math.sin(tilt)];
}

function segment(from, to) {
  // Points are closer together at the front, where the nose is most curved.
  const shares = Array.from({ length: 25 }, (_, i) => from + (to - from) * (i / 24) ** 2);
  const back = shares.map((share) => [share * length, -halfHeight(share)]);
  const belly = shares.map((share) => [share * length, halfHeight(share)]).reverse();
  return { points: [...back, ...belly].map(place), fill: wood, stroke: ink, width: 11 };
}

// A fill of lead that starts a little inside the belly.
function ballast(share, depth) {
  const x = share * length;
  const skin = halfHeight(share) - 17;
  const box = [[x - 12, skin], [x - 12, skin - depth], [x + 12, skin - depth], [x + 12, skin]];
  return { points: box.map(place), fill: lead };
}

const waterLine = { points: [[76, 128], [436, 128], [436, 142], [76, 142]], fill: water };
const shapes = [
  waterLine,
  segment(0, 0.4), segment(0.445, 0.72), segment(0.765, 1),
  ballast(0.17, 52), ballast(0.29, 62), ballast(0.53, 40),
];

function svg() {
  const polygons = shapes.map(({ points, fill, stroke, width }) => {
    const list = points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ");
    const outline = stroke ? ` stroke="${stroke}" stroke-width="${width}" stroke-linejoin="round"` : "";
    return `  <polygon points="${list}" fill="${fill}"${outline}/>`;
  });
  return [
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512">',
    `  <rect width="512" height="512" rx="104" fill="${paper}"/>`,
    ...polygons, "</svg>", "",
  ].join("\n");
}

const rgb = Object.fromEntries(
  [paper, ink, wood, lead, water].map((name) => [name, [1, 3, 5].map((at) => parseInt(name.slice(at, at + 2), 16))]),
);

function insidePolygon(points, x, y) {
  let inside = false;
  for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
    const [xi, yi] = points[i];
    const [xj, yj] = points[j];
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}

function nearOutline(points, x, y, reach) {
  for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
    const [xi, yi] = points[i];
    const dx = points[j][0] - xi;
    const dy = points[j][1] - yi;
    if (Math.abs(x - xi - dx / 2) > Math.abs(dx / 2) + reach || Math.abs(y - yi - dy / 2) > Math.abs(dy / 2) + reach) continue;
    const along = Math.min(1, Math.max(0, ((x - xi) * dx + (y - yi) * dy) / (dx * dx + dy * dy)));
    if ((x - xi - along * dx) ** 2 + (y - yi - along * dy) ** 2 <= reach * reach) return true;
  }
  return false;
}

function insideCorners(x, y, radius) {
  const dx = Math.max(radius - x, x - (512 - radius), 0);
  const dy = Math.max(radius - y, y - (512 - radius), 0);
  return dx * dx + dy * dy <= radius * radius;
}

const boxes = shapes.map(({ points, width = 0 }) => {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return [Math.min(...xs) - width, Math.max(...xs) + width, Math.min(...ys) - width, Math.max(...ys) + width];
});

// The topmost colour at a point of the 512-unit square.
function colourAt(x, y) {
  let found = paper;
  for (const [i, { points, fill, stroke, width }] of shapes.entries()) {
    const [left, right, top, bottom] = boxes[i];
    if (x < left || x > right || y < top || y > bottom) continue;
    if (stroke && nearOutline(points, x, y, width / 2)) found = stroke;
    else if (insidePolygon(points, x, y)) found = fill;
  }
  return rgb[found];
}

// The pixels as [r, g, b, a], each the mean of 3 × 3 samples. `scale` shrinks the mark about the middle; `radius` rounds the
// square.
function raster(size, scale, radius) {
  const pixels = [];
  const samples = 3;
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      const sum = [0, 0, 0, 0];
      for (let s = 0; s < samples * samples; s++) {
        const x = ((column + ((s % samples) + 0.5) / samples) * 512) / size;
        const y = ((row + (Math.floor(s / samples) + 0.5) / samples) * 512) / size;
        if (radius > 0 && !insideCorners(x, y, radius)) continue;
        const colour = colourAt(256 + (x - 256) / scale, 256 + (y - 256) / scale);
        colour.forEach((value, i) => (sum[i] += value));
        sum[3] += 1;
      }
      const mean = (i) => (sum[3] ? Math.round(sum[i] / sum[3]) : 0);
      pixels.push([mean(0), mean(1), mean(2), Math.round((255 * sum[3]) / (samples * samples))]);
    }
  }
  return pixels;
}

// The icon has few colours, and its edges few mixtures of them: the palette has the most common ones, and each of
// the rest uses its nearest.
const paletteSize = 12;
function indexed(pixels) {
  const counts = new Map();
  for (const pixel of pixels) counts.set(pixel.join(), (counts.get(pixel.join()) ?? 0) + 1);
  const palette = [...counts].sort((a, b) => b[1] - a[1]).slice(0, paletteSize).map(([key]) => key.split(",").map(Number));
  const away = (a, b) => a.reduce((sum, value, i) => sum + (value - b[i]) ** 2, 0);
  const places = new Map();
  for (const key of counts.keys()) {
    const pixel = key.split(",").map(Number);
    let best = 0;
    palette.forEach((colour, i) => away(colour, pixel) < away(palette[best], pixel) && (best = i));
    places.set(key, best);
  }
  return { palette, at: pixels.map((pixel) => places.get(pixel.join())) };
}

function crc32(bytes) {
  let crc = ~0;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return ~crc >>> 0;
}

function chunk(type, body) {
  const head = Buffer.alloc(8);
  head.writeUInt32BE(body.length, 0);
  head.write(type, 4, "latin1");
  const tail = Buffer.alloc(4);
  tail.writeUInt32BE(crc32(Buffer.concat([head.subarray(4), body])), 0);
  return Buffer.concat([head, body, tail]);
}

// PNG (ISO/IEC 15948): signature, header (8-bit palette, no interlace), palette and its transparency, one deflated data
// chunk, end.
function png(size, scale, radius) {
  const { palette, at } = indexed(raster(size, scale, radius));
  const rows = Buffer.alloc(size * (1 + size));
  at.forEach((place, i) => (rows[Math.floor(i / size) * (1 + size) + 1 + (i % size)] = place));
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size, 0);
  header.writeUInt32BE(size, 4);
  header.set([8, 3, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", header),
    chunk("PLTE", Buffer.from(palette.flatMap(([r, g, b]) => [r, g, b]))),
    chunk("tRNS", Buffer.from(palette.map(([, , , a]) => a))),
    chunk("IDAT", deflateSync(rows, { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

const folder = process.argv[2];
if (!folder) {
  console.error("Say where to: node web/setup/icons.mjs FOLDER");
  process.exit(2);
}
mkdirSync(folder, { recursive: true });
writeFileSync(join(folder, "mark.svg"), svg());
writeFileSync(join(folder, "icon-192.png"), png(192, 1, 104));
writeFileSync(join(folder, "icon-512.png"), png(512, 1, 104));
// A platform may cut a maskable icon to a circle of four fifths of the square; the mark stays inside it. Opaque and square, it is also
// what a tablet's home screen asks for.
writeFileSync(join(folder, "icon-maskable-512.png"), png(512, 0.76, 0));
