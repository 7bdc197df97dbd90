// Three tabs of one device, walked at random, as tests/script/keeping_test.mjs walks the page's modules: every edit that had a second is
// on the device, or was replaced by a later edit that goes on from it. EVENFALL_WALK=200 goes on for longer.

import assert from "node:assert/strict";
import { test } from "node:test";
import { workshop } from "./support/bench.mjs";
import { lookAtShelf, names, openPreset, warmWater } from "./support/ways.mjs";

const shop = await workshop();
const steps = Number(process.env.EVENFALL_WALK ?? 16);
const seed = Number(process.env.EVENFALL_WALK_SEED ?? 121);

/** Names of all lures that the device keeps: the newest save of the bench, and the shelf. */
const namesKept = (bench) => bench.page.evaluate(() => {
  const save = (key) => JSON.parse(localStorage.getItem(key) ?? "null");
  const slots = ["a", "b"].map((slot) => save(`evenfall.slot.${slot}`)).filter(Boolean).sort((a, b) => b.rev - a.rev);
  const shelf = Object.keys(localStorage).filter((key) => key.startsWith("evenfall.lure.")).map(save);
  return [...slots.slice(0, 1), ...shelf].map(({ session }) => JSON.parse(session).document.name);
});

test(`in ${steps} steps of three tabs in a browser no edit is lost`, async (t) => {
  let state = seed;
  const below = (count) => {
    state = (state * 48271) % 2147483647; // Park and Miller 1988, with the multiplier of 1993
    return state % count;
  };
  const device = await shop.device();
  const tabs = [null, null, null];
  const edits = [];
  const replaced = new Map();
  const done = [];
  const waits = (bench) => bench.page.locator('.notice[data-kind="tabs"]').isVisible();
  const acts = {
    async edit(i) {
      const { bench } = tabs[i];
      const before = (await bench.document()).name;
      // A copy of what another tab works on: what is made of it replaces nothing.
      const goesOn = tabs[i].made || !(await waits(bench));
      const name = `Edit ${edits.length + 1}`;
      await names(bench, name);
      tabs[i].made = true;
      edits.push(name);
      if (goesOn) replaced.set(before, [...(replaced.get(before) ?? []), name]);
      await bench.meanwhile(1000);
    },
    async takeOver(i) {
      const { bench } = tabs[i];
      const button = bench.page.getByRole("button", { name: "Work here instead" });
      if (!(await button.isVisible())) return;
      await button.tap();
      await bench.page.locator('.notice[data-kind="tabs"]').waitFor({ state: "detached" });
      await bench.settled();
    },
    async demo(i) {
      await openPreset(tabs[i].bench, "quarry-230");
      tabs[i].made = true;
      await tabs[i].bench.meanwhile(700);
    },
    async close(i) {
      await tabs[i].bench.page.close({ runBeforeUnload: false });
      tabs[i] = null;
    },
    async crash(i) {
      const { page } = tabs[i].bench;
      const crashed = page.waitForEvent("crash");
      page.goto("chrome://crash").catch(() => {});
      await crashed;
      await page.close();
      tabs[i] = null;
    },
    async reload(i) {
      await tabs[i].bench.page.reload();
      await tabs[i].bench.ready();
      tabs[i].made = false;
    },
  };
  const likely = ["edit", "edit", "edit", "edit", "takeOver", "takeOver", "demo", "close", "crash", "reload"];
  for (let n = 0; n < steps; n++) {
    const i = below(3);
    if (tabs[i] === null) {
      tabs[i] = { bench: await shop.open(device), made: false };
      done.push(`open ${i}`);
    } else {
      const what = likely[below(likely.length)];
      done.push(`${what} ${i}`);
      await tabs[i].bench.page.bringToFront();
      await acts[what](i);
    }
    const reader = tabs.find(Boolean)?.bench;
    if (!reader) continue;
    const kept = await namesKept(reader);
    const safe = (name) => kept.includes(name) || (replaced.get(name) ?? []).some(safe);
    for (const name of edits) assert.ok(safe(name), `${name} is lost after ${done.join(", ")}; kept are ${kept.join(", ")}`);
  }
  t.diagnostic(`${edits.length} edits: ${done.join(", ")}`);
  assert.ok(edits.length > 4);
  await device.close();
});

test("eight links, each opened in a tab of its own beside an open bench and saved by its button, are all on the shelf", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await warmWater(bench);
  await bench.keptSoon();
  const own = await bench.document();
  const giver = await shop.device();
  const other = await shop.open(giver);
  const wanted = [];
  for (let n = 1; n <= 8; n++) {
    await names(other, `Gift ${n}`);
    wanted.push(`Gift ${n}`);
    const tab = await shop.open(device, `${shop.server.address}#${await other.hook("link")}`);
    await tab.page.locator('.notice[data-kind="link"]').getByRole("button", { name: "Save it" }).tap();
    await tab.page.close();
  }
  await bench.page.bringToFront();
  assert.equal((await lookAtShelf(bench)).length, 8);
  assert.deepEqual((await namesKept(bench)).filter((name) => name.startsWith("Gift")).sort(), wanted);
  assert.deepEqual(await bench.document(), own);
  await giver.close();
  await device.close();
});
