// Runs the native and the page's table of answers and holds them against each other, number by number.
// Both use their platform's own mathematical functions, whose last bits may differ: 1e-9 of the value is asked.
import { execFileSync } from "node:child_process";

const [native, node, page] = process.argv.slice(2);
const read = (program, args) =>
  execFileSync(program, args, { encoding: "utf8", maxBuffer: 1 << 24 })
    .split("\n")
    .map((line) => line.trim().split(/\s+(?=\S+$)/))
    .filter((cells) => cells.length === 2 && Number.isFinite(Number(cells[1])) && /^\S+-\d+ /.test(cells[0]));

// A weight in water is a small difference of two large ones: near nothing it is held to 1e-9 of a milligram, not of itself.
const floor = 1e-6; // kg, m, m³, m/s, rad

const left = read(native, []);
const right = new Map(read(node, ["--no-experimental-fetch", page]));
let worst = 0;
let failed = left.length === right.size && left.length > 100 ? 0 : 1;
if (failed) console.log(`rows: native ${left.length}, page ${right.size}`);
for (const [key, text] of left) {
  const a = Number(text);
  const b = Number(right.get(key));
  const off = Math.abs(a - b) / Math.max(Math.abs(a), floor);
  worst = Math.max(worst, off);
  if (!(off <= 1e-9)) {
    failed = 1;
    console.log(`${key}: native ${text}, page ${right.get(key)}`);
  }
}
console.log(`${left.length} numbers, worst relative difference ${worst.toExponential(1)}`);
process.exit(failed);
