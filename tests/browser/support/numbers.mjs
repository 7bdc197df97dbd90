// Comparing what two builds of the same sums say.

import assert from "node:assert/strict";

// Both builds run the same steps in the same order; they differ in the last digits of a few functions of the C library.
// 1e-9 leaves room for that to grow by a million; an iteration that took another branch would not fit.
const relative = 1e-9;
// JSON answers are written to six decimals. Two numbers closer than `relative` may still fall to either side of a
// rounding edge, one step apart. That is rare where they truly agree: at most one number in a hundred may.
const step = 1.000001e-6;
const rareShare = 0.01;

/** Same shape, same words, same numbers: equal within 1e-9 of their size, but for rare ones on a rounding edge. */
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
