// The screen that stays on while one hole after the other is drilled.

import assert from "node:assert/strict";
import { test } from "node:test";
import { setImmediate as turn } from "node:timers/promises";
import { pageModule } from "./support/page_modules.mjs";

let realms = 0;
/** A page whose browser has such a lock, has none (null), or refuses it. */
async function openPage(wakeLock) {
  const listeners = {};
  const page = { visibilityState: "visible", addEventListener: (name, act) => (listeners[name] = act) };
  Object.defineProperty(globalThis, "document", { value: page, configurable: true });
  Object.defineProperty(globalThis, "navigator", { value: wakeLock ? { wakeLock } : {}, configurable: true });
  const { keepAwake } = await pageModule("wake.js", `wake${realms++}`);
  const come = async (state) => {
    page.visibilityState = state;
    listeners.visibilitychange();
    await turn();
  };
  return { keepAwake, come };
}

function locks() {
  const held = [];
  return {
    held,
    async request() {
      const told = [];
      const lock = { addEventListener: (_, act) => told.push(act), drop() { held.splice(held.indexOf(lock), 1); told.forEach((act) => act()); } };
      lock.release = async () => lock.drop();
      held.push(lock);
      return lock;
    },
  };
}

test("the screen is kept on while it is wanted, and asked for again when the page comes back", async () => {
  const api = locks();
  const page = await openPage(api);
  page.keepAwake(true);
  await turn();
  assert.equal(api.held.length, 1);
  api.held[0].drop(); // as a browser does with a hidden page
  await page.come("hidden");
  assert.equal(api.held.length, 0);
  await page.come("visible");
  assert.equal(api.held.length, 1);
  page.keepAwake(false);
  await turn();
  assert.equal(api.held.length, 0);
  await page.come("visible");
  assert.equal(api.held.length, 0);
});

test("a browser without such a lock, or one that refuses it, is no error", async () => {
  for (const api of [null, { request: () => Promise.reject(new Error("low battery")) }]) {
    const page = await openPage(api);
    page.keepAwake(true);
    await turn();
    page.keepAwake(false);
    await page.come("visible");
  }
});
