// Compares the numbers of two builds.

import assert from "node:assert/strict";

// Both builds perform the same steps in the same order; they differ in the last digits of a few functions of the C
// library. 1e-9 lets that grow by a factor of a million; an iteration that took another branch would exceed it.
const relative = 1e-9;
// JSON answers are written with six decimals. Two numbers closer than `relative` may still round to different
// values, one step apart. Where they truly agree, that is rare: at most one number in a hundred.
const step = 1.000001e-6;
const rareShare = 0.01;

/** Same structure, same words, same numbers: equal within 1e-9 of their size, except for a few at a rounding limit. */
export function assertSame(actual, expected) {
  const seen = { numbers: 0, onEdge: [] };
  walk(actual, expected, "", seen);
  const allowed = Math.max(1, Math.floor(rareShare * seen.numbers));
  assert.ok(seen.onEdge.length <= allowed, `too many numbers differ by their last digit: ${seen.onEdge.join("; ")}`);
}

function walk(actual, expected, path, seen) {
  if (typeof expected === "number") {
    assert.equal(typeof actual, "number", `${path} is a number`);
    seen.numbers++;
    const off = Math.abs(actual - expected);
    if (off <= relative * Math.max(Math.abs(actual), Math.abs(expected))) return;
    assert.ok(off <= step, `${path}: ${actual} and ${expected}`);
    seen.onEdge.push(`${path}: ${actual} and ${expected}`);
  } else if (expected !== null && typeof expected === "object") {
    assert.ok(actual !== null && typeof actual === "object", `${path} is an object or a list`);
    assert.deepEqual(Object.keys(actual), Object.keys(expected), `${path} has the same keys`);
    for (const key of Object.keys(expected)) walk(actual[key], expected[key], `${path}/${key}`, seen);
  } else {
    assert.equal(actual, expected, path);
  }
}
