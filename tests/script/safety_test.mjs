// What the page knows of how safe the work is: the browser is asked once, and changes of the lure alone are counted.

import assert from "node:assert/strict";
import { test } from "node:test";
import { makeDevice, pageModule } from "./support/page_modules.mjs";

const { createSafety } = await pageModule("safety.js");
const day = 24 * 3600 * 1000;
const turn = () => new Promise((resolve) => setTimeout(resolve, 0));

function visit(device, { manager, now = () => 0 } = {}) {
  const bench = { lure: "demo", told: [] };
  const core = { documentJson: () => bench.lure, setSafety: (...said) => bench.told.push(said) };
  const store = device.open("a");
  return { bench, store, safety: createSafety({ core, store, manager, now }) };
}

test("the browser is asked to keep the storage at the first save of a visit, once, and the answer is told", async () => {
  for (const answer of [true, false]) {
    let asked = 0;
    const manager = { persisted: async () => false, persist: async () => { asked++; return answer; } };
    const { bench, safety } = visit(makeDevice(), { manager });
    safety.look();
    await turn();
    assert.equal(asked, 0, "not before there is anything to keep");
    safety.kept();
    safety.kept();
    await turn();
    assert.equal(asked, 1);
    assert.equal(bench.told.at(-1)[0], answer);
  }
});

test("a browser that keeps the storage already is not asked; one that cannot say is taken at its least", async () => {
  const never = () => assert.fail("asked");
  const kept = visit(makeDevice(), { manager: { persisted: async () => true, persist: never } });
  kept.safety.look();
  await turn();
  kept.safety.kept();
  assert.equal(kept.bench.told.at(-1)[0], true);
  for (const manager of [undefined, {}, { persisted: () => Promise.reject(new Error()), persist: () => Promise.reject(new Error()) }]) {
    const { bench, safety } = visit(makeDevice(), { manager });
    safety.look();
    safety.kept();
    await turn();
    assert.equal(bench.told.at(-1)[0], false);
  }
});

test("a save counts where the lure has changed, not for another step that is looked at, until all is in a file", () => {
  const { bench, safety } = visit(makeDevice());
  safety.kept();
  assert.deepEqual(bench.told.filter(([, changes]) => changes > 0), []);
  bench.lure = "changed";
  safety.kept();
  safety.kept();
  assert.equal(bench.told.at(-1)[1], 1);
  bench.lure = "changed again";
  safety.kept();
  assert.equal(bench.told.at(-1)[1], 2);
  safety.saved();
  assert.equal(bench.told.at(-1)[1], 0);
});

test("days count from the first change that is in no file", () => {
  const device = makeDevice();
  const first = visit(device);
  first.bench.lure = "changed";
  first.safety.kept();
  const { from } = first.store.since();
  const later = visit(device, { now: () => from + 7.5 * day });
  later.safety.tell();
  assert.deepEqual(later.bench.told.at(-1), [false, 1, 7.5]);
});
