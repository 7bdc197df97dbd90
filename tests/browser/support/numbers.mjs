// Comparing what two builds of the same sums say.

import assert from "node:assert/strict";

// Both builds run the same steps in the same order; they differ in the last digits of a few functions of the C library.
// 1e-9 leaves room for that to grow by a million; an iteration that took another branch would not fit.
const relative = 1e-9;
// Amounts that are nothing but rounding (a symmetrical lure's y of G): in g, mm, mm/s and degrees far below any reading.
const nothing = 1e-12;

/** Same shape, same words, same numbers within 1e-9 of their size. */
export function assertSame(actual, expected, path = "") {
  if (typeof expected === "number") {
    assert.equal(typeof actual, "number", `${path} is a number`);
    const room = relative * Math.max(Math.abs(actual), Math.abs(expected)) + nothing;
    assert.ok(Math.abs(actual - expected) <= room, `${path}: ${actual} and ${expected}`);
  } else if (expected !== null && typeof expected === "object") {
    assert.ok(actual !== null && typeof actual === "object", `${path} is an object or a list`);
    assert.deepEqual(Object.keys(actual), Object.keys(expected), `${path} has the same keys`);
    for (const key of Object.keys(expected)) assertSame(actual[key], expected[key], `${path}/${key}`);
  } else {
    assert.equal(actual, expected, path);
  }
}
