// Runs the native and the page's table of answers and holds them against each other, number by number.
// Both use their platform's own mathematical functions, whose last bits may differ: 1e-9 of the value is asked.
import { execFileSync } from "node:child_process";

const [native, node, page] = process.argv.slice(2);
const lines = (program, args) => execFileSync(program, args, { encoding: "utf8", maxBuffer: 1 << 28 }).split("\n");
const left = lines(native, []);
const right = lines(node, ["--no-experimental-fetch", page]);

// A weight in water is a small difference of two large ones: near nothing it is held to 1e-9 of a milligram, not of itself.
const floor = 1e-6; // kg, m, m³, m/s, rad

// Of lures drawn by chance some numbers stand nearer to nothing, or to a graze, than a demo lure's. What they are held to instead:
const floors = {
  // The pitch of a steady fall is a root found to 1e-10 rad (core/water/fall/descent.hpp), and the glide goes with it.
  fall: 0.1, // rad, m/s
  plan_fall: 0.1,
  // A hole's column is what the other holes leave over: 1e-9 of the ten grams, or the centimetre, that they take together.
  plan_hole: 1e-2, // kg, m
  // Where a corner just grazes an edge its direction goes with the root of their overlap: a rounding of 1e-16 of the joint's
  // size becomes some 1e-8 rad, and that at the few millimetres of a pocket's mouth 1e-10 m.
  swing: 100, // rad: 1e-7
  wrap: 100,
  mouth: 1, // m: 1e-9
};

let failed = 0;
let worst = 0;
const tell = (text) => {
  failed += 1;
  if (failed <= 40) console.log(text);
};
const hold = (where, a, b, least = floor) => {
  if (a === b) return;
  const off = Math.abs(Number(a) - Number(b)) / Math.max(Math.abs(Number(a)), least);
  worst = Math.max(worst, Number.isFinite(off) ? off : 0);
  if (!(off <= 1e-9)) tell(`${where}: native ${a}, page ${b}`);
};

// --- the demo lures: "PRESET KEY NUMBER" ---
const named = (all) =>
  all
    .map((line) => line.trim().split(/\s+(?=\S+$)/))
    .filter((cells) => cells.length === 2 && Number.isFinite(Number(cells[1])) && /^\S+-\d+ /.test(cells[0]));
const presets = named(left);
const others = new Map(named(right));
if (presets.length !== others.size || presets.length < 100) tell(`rows: native ${presets.length}, page ${others.size}`);
for (const [key, text] of presets) hold(key, text, others.get(key));
console.log(`demo lures: ${presets.length} numbers, worst relative difference ${worst.toExponential(1)}`);

// --- lures drawn by chance: "random DRAW TEXT KEY=NUMBERS …" ---
const drawn = (all) => all.filter((line) => line.startsWith("random ")).map((line) => line.trim().split(" "));
const ours = drawn(left);
const theirs = drawn(right);
const built = ours.filter((cells) => cells[3] !== "refused").length;
if (ours.length !== theirs.length || built !== 1000) tell(`lures: native ${ours.length}, page ${theirs.length}, ${built} built`);
let numbers = 0;
worst = 0;
ours.forEach((cells, n) => {
  const other = theirs[n] ?? [];
  const lure = `draw ${cells[1]}`;
  if (cells[2] !== other[2]) return tell(`${lure}: two documents, ${cells[2]} and ${other[2]}`);
  if (cells.length !== other.length) return tell(`${lure}: ${cells.length} cells and ${other.length}`);
  cells.slice(3).forEach((cell, at) => {
    const [key, values] = cell.split("=");
    const [otherKey, otherValues] = other[at + 3].split("=");
    if (key !== otherKey) return tell(`${lure}: ${key} and ${otherKey}`);
    const list = values?.split(",") ?? [];
    const otherList = otherValues?.split(",") ?? [];
    if (list.length !== otherList.length) return tell(`${lure} ${key}: ${list.length} numbers and ${otherList.length}`);
    numbers += list.length;
    list.forEach((value, k) => hold(`${lure} ${key}[${k}]`, value, otherList[k], floors[key]));
  });
});
if (numbers < 100000) tell(`only ${numbers} numbers`);
console.log(`${built} lures drawn by chance: ${numbers} numbers, worst relative difference ${worst.toExponential(1)}, ${failed} off`);
process.exit(failed ? 1 : 0);
