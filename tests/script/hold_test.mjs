// Which tab has the bench.

import assert from "node:assert/strict";
import { test } from "node:test";
import { setImmediate as turn } from "node:timers/promises";
import { makeLocks, pageModule } from "./support/page_modules.mjs";

let realms = 0;
async function openTab(locks) {
  const tab = `tab${realms++}`;
  const module = await pageModule("tabs.js", tab);
  const told = [];
  const hold = module.createHold(() => told.push("held"), () => told.push("lost"));
  const act = async (name) => {
    Object.defineProperty(globalThis, "navigator", { value: { locks: locks.of(tab) }, configurable: true });
    hold[name]();
    await turn();
  };
  await act("ask");
  return { told, canHold: module.canHold, close: () => locks.close(tab), ask: () => act("ask"), takeOver: () => act("takeOver") };
}

test("the first tab has the bench, the second is told once that it has not, and has it when it asks after the first has gone", async () => {
  const locks = makeLocks();
  const first = await openTab(locks);
  const second = await openTab(locks);
  await second.ask();
  assert.deepEqual([first.told, second.told], [["held"], ["lost"]]);
  first.close();
  await second.ask();
  await second.ask();
  assert.deepEqual(second.told, ["lost", "held"]);
});

test("a tab that takes the bench over has it, and the other one is told and may take it back", async () => {
  const locks = makeLocks();
  const first = await openTab(locks);
  const second = await openTab(locks);
  await second.takeOver();
  assert.deepEqual([first.told, second.told], [["held", "lost"], ["lost", "held"]]);
  await first.ask();
  assert.deepEqual(first.told, ["held", "lost"]);
  await first.takeOver();
  assert.deepEqual([first.told, second.told], [["held", "lost", "held"], ["lost", "held", "lost"]]);
});

test("a browser that refuses its locks is no other tab", async () => {
  const refusing = { of: () => ({ request: () => Promise.reject(new DOMException("denied", "SecurityError")) }) };
  const tab = await openTab(refusing);
  assert.deepEqual(tab.told, []);
  assert.equal(tab.canHold(), false);
});
