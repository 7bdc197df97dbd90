// Reads the screenshots: 8-bit RGB or RGBA PNG without interlace, which is what the browser writes.

import { inflateSync } from "node:zlib";

/** PNG bytes → {width, height, channels, pixels} */
export function readPng(bytes) {
  const width = bytes.readUInt32BE(16);
  const height = bytes.readUInt32BE(20);
  const channels = { 2: 3, 6: 4 }[bytes[25]];
  if (bytes[24] !== 8 || !channels || bytes[28] !== 0) throw new Error("not a plain 8-bit colour PNG");
  const parts = [];
  for (let at = 8; at < bytes.length; ) {
    const size = bytes.readUInt32BE(at);
    if (bytes.toString("latin1", at + 4, at + 8) === "IDAT") parts.push(bytes.subarray(at + 8, at + 8 + size));
    at += 12 + size;
  }
  const raw = inflateSync(Buffer.concat(parts));
  const stride = width * channels;
  const pixels = Buffer.alloc(stride * height);
  for (let y = 0; y < height; y++) unfilter(raw, y * (stride + 1), pixels, y * stride, stride, channels, y > 0);
  return { width, height, channels, pixels };
}

// The five filters of PNG (ISO/IEC 15948, clause 9).
function unfilter(raw, from, out, to, stride, channels, hasRowAbove) {
  const filter = raw[from];
  for (let i = 0; i < stride; i++) {
    const left = i >= channels ? out[to + i - channels] : 0;
    const up = hasRowAbove ? out[to + i - stride] : 0;
    const corner = hasRowAbove && i >= channels ? out[to + i - stride - channels] : 0;
    const guess = [0, left, up, (left + up) >> 1, paeth(left, up, corner)][filter];
    out[to + i] = raw[from + 1 + i] + guess;
  }
}

function paeth(left, up, corner) {
  const [a, b, c] = [left, up, corner].map((value) => Math.abs(left + up - corner - value));
  if (a <= b && a <= c) return left;
  return b <= c ? up : corner;
}

const pixel = ({ pixels, channels }, i) => (pixels[i * channels] << 16) | (pixels[i * channels + 1] << 8) | pixels[i * channels + 2];

/** Number of colours of a picture, and the share of its most common one. */
export function colours(bytes) {
  const picture = readPng(bytes);
  const counts = new Map();
  const total = picture.width * picture.height;
  for (let i = 0; i < total; i++) {
    const colour = pixel(picture, i);
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  return { count: counts.size, largest: Math.max(...counts.values()) / total };
}

/** The share of pixels in which two pictures of the same size differ. */
export function difference(first, second) {
  const [a, b] = [readPng(first), readPng(second)];
  if (a.width !== b.width || a.height !== b.height) return 1;
  const total = a.width * a.height;
  let differing = 0;
  for (let i = 0; i < total; i++) if (pixel(a, i) !== pixel(b, i)) differing++;
  return differing / total;
}
