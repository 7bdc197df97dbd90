// Work is kept: over a reload, over damage, beside another tab, and told when it cannot be.

import assert from "node:assert/strict";
import { test } from "node:test";
import { workshop } from "./support/bench.mjs";
import { lookAtShelf, openPreset, takeFromShelf, warmWater } from "./support/ways.mjs";

const shop = await workshop();
const slots = ["evenfall.slot.a", "evenfall.slot.b"];

test("a change is there after a reload", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const before = await bench.document();
  await warmWater(bench);
  await bench.keptSoon();
  const changed = await bench.document();
  assert.notDeepEqual(changed, before);
  await bench.page.reload();
  await bench.ready();
  assert.deepEqual(await bench.document(), changed);
  bench.noFaults();
  await device.close();
});

test("a change is kept at once when the page is left before the half second is over", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await warmWater(bench);
  await bench.keptSoon();
  await bench.open("undo");
  const changed = await bench.document();
  await bench.page.reload(); // a reload says pagehide and hidden
  await bench.ready();
  assert.deepEqual(await bench.document(), changed);
  await device.close();
});

test("the dark look, chosen by touch, goes over the whole page and is there after a reload", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const look = () => bench.page.evaluate(() => document.documentElement.dataset.look);
  assert.equal(await look(), "light");
  await bench.tap("shelf.open");
  await bench.tap("shelf.theme.1");
  await bench.tap("shelf.close");
  await bench.page.waitForFunction(() => document.documentElement.dataset.look === "dark");
  await bench.keptSoon();
  await bench.shot("dark");
  await bench.page.reload();
  await bench.ready();
  assert.equal(await look(), "dark");
  await device.close();
});

test("a damaged save is told and waits on the shelf, and the one before it opens", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await warmWater(bench);
  await bench.keptSoon();
  const before = await bench.document();
  await warmWater(bench);
  await bench.keptSoon();
  await bench.page.evaluate((names) => {
    const newest = names.map((name) => [name, JSON.parse(localStorage.getItem(name) ?? '{"rev":0}').rev]).sort((a, b) => b[1] - a[1])[0][0];
    const damaged = localStorage.getItem(newest).replace("salinity", "saXinity");
    // Leaving the page may save once more; the damage has to be the last word.
    window.addEventListener("pagehide", () => localStorage.setItem(newest, damaged));
    localStorage.setItem(newest, damaged);
  }, slots);
  await bench.page.reload();
  await bench.ready();
  await bench.page.locator('.notice[data-kind="damaged"]').waitFor();
  assert.deepEqual(await bench.document(), before);
  const shelf = await bench.page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("evenfall.lure.")).map((key) => localStorage[key]));
  assert.equal(shelf.length, 1);
  assert.match(shelf[0], /saXinity/);
  const arrives = bench.page.waitForEvent("download");
  await bench.page.getByRole("button", { name: "Save it as a file" }).tap();
  assert.match((await arrives).suggestedFilename(), /damaged/);
  await device.close();
});

test("a save that is whole but cannot be built is on the shelf too, and its lure there stays as it is beside the demo that opens", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.page.evaluate(async () => {
    const { createStore } = await import("./js/store.js");
    const { sealed } = await import("./js/storage.js");
    const store = createStore({ storage: () => localStorage, tab: "t", now: Date.now });
    store.keep([
      ["shelf", { ...sealed(0, 1, "t", globalThis.EvenfallHooks.sessionJson()), lure: "older" }],
      ["bench", { ...sealed(1, 2, "t", '{"session": 99, "document": {}}'), lure: "older" }],
    ]);
  });
  await bench.page.reload();
  await bench.ready();
  await bench.page.locator('.notice[data-kind="damaged"]').waitFor();
  assert.ok((await bench.document()).name);
  const rows = await lookAtShelf(bench);
  assert.equal(rows.length, 2);
  assert.ok(rows.includes("shelf.lure.older"));
  const arrives = bench.page.waitForEvent("download");
  await bench.tap(rows.find((row) => row !== "shelf.lure.older"));
  await bench.page.locator('.notice[data-kind="unread"]').getByRole("button", { name: "Save it as a file" }).tap();
  const chunks = [];
  for await (const chunk of await (await arrives).createReadStream()) chunks.push(chunk);
  assert.equal(JSON.parse(Buffer.concat(chunks)).session, '{"session": 99, "document": {}}');
  await device.close();
});

test("when the device refuses to keep anything the page says so and hands out a copy", async () => {
  const device = await shop.device();
  await device.addInitScript(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
  });
  const bench = await shop.open(device);
  await warmWater(bench);
  const line = bench.page.locator('.notice[data-kind="storage"]');
  await line.waitFor();
  assert.match(await line.textContent(), /Not saved on this device/);
  await bench.settled();
  await bench.shot("notice-not-saved");
  const arrives = bench.page.waitForEvent("download");
  await line.getByRole("button", { name: "Save a copy" }).tap();
  const chunks = [];
  for await (const chunk of await (await arrives).createReadStream()) chunks.push(chunk);
  assert.deepEqual(JSON.parse(Buffer.concat(chunks)), await bench.document());
  await device.close();
});

test("where the device has no room for another lure, the one on the bench stays until its builder lets it go", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await warmWater(bench);
  await bench.keptSoon();
  const own = await bench.document();
  await bench.page.evaluate(() => {
    const given = Storage.prototype.setItem;
    Storage.prototype.setItem = function setItem(key, text) {
      if (key.startsWith("evenfall.lure.")) throw new DOMException("full", "QuotaExceededError");
      given.call(this, key, text);
    };
  });
  const said = bench.page.locator('.notice[data-kind="another"]');
  await openPreset(bench, "quarry-230");
  await said.filter({ hasText: "would be gone" }).waitFor();
  assert.deepEqual(await bench.document(), own);
  await bench.shot("notice-another");
  await bench.meanwhile(1000);
  const arrives = bench.page.waitForEvent("download");
  await said.getByRole("button", { name: "Save a copy" }).tap();
  const chunks = [];
  for await (const chunk of await (await arrives).createReadStream()) chunks.push(chunk);
  assert.deepEqual(JSON.parse(Buffer.concat(chunks)), own);
  await openPreset(bench, "quarry-230");
  await said.getByRole("button", { name: "Discard mine" }).tap();
  await openPreset(bench, "quarry-230");
  assert.notDeepEqual(await bench.document(), own);
  await bench.keptSoon();
  bench.noFaults();
  await device.close();
});

test("a tab that waits has the bench once the other one is closed and it is worked on, and both lures are still there", async () => {
  const device = await shop.device();
  const first = await shop.open(device);
  await warmWater(first);
  await first.keptSoon();
  const second = await shop.open(device);
  const line = second.page.locator('.notice[data-kind="tabs"]');
  await line.waitFor();
  await first.page.close();
  await second.page.bringToFront();
  await warmWater(second);
  await line.waitFor({ state: "detached" });
  await second.keptSoon();
  const own = await second.document();
  await second.page.reload();
  await second.ready();
  assert.deepEqual(await second.document(), own);
  second.noFaults();
  await device.close();
});

test("without any storage the bench works all the same", async () => {
  const device = await shop.device();
  await device.addInitScript(() => {
    Object.defineProperty(window, "localStorage", { get() { throw new DOMException("denied", "SecurityError"); } });
  });
  const bench = await shop.open(device);
  await warmWater(bench);
  await bench.page.locator('.notice[data-kind="storage"]').waitFor();
  bench.noFaults();
  await device.close();
});

test("a second tab says that the bench is open elsewhere, and works on it once it is told to; the first then stops keeping", async () => {
  const device = await shop.device();
  const first = await shop.open(device);
  await warmWater(first);
  await first.keptSoon();
  const kept = await first.document();
  const second = await shop.open(device);
  const line = (bench) => bench.page.locator('.notice[data-kind="tabs"]');
  await line(second).filter({ hasText: "another tab" }).waitFor();
  assert.equal(await line(first).count(), 0);

  // What is changed in the second tab does not reach the first one's place.
  await warmWater(second);
  await second.meanwhile(1000);
  const aside = await second.document();
  assert.notDeepEqual(aside, kept);
  const third = await shop.open(device);
  assert.deepEqual(await third.document(), kept);
  await third.page.close();

  await second.page.bringToFront();
  await line(second).getByRole("button", { name: "Work here instead" }).tap();
  await line(first).filter({ hasText: "another tab" }).waitFor();
  assert.equal(await line(second).count(), 0);
  const fourth = await shop.open(device);
  assert.deepEqual(await fourth.document(), aside, "what was changed in the second tab counts");
  second.noFaults();
  first.noFaults();
  await device.close();
});

test("a second tab without a change of its own takes over what the first has kept, and a copy goes onto the shelf", async () => {
  const device = await shop.device();
  const first = await shop.open(device);
  const second = await shop.open(device);
  const line = second.page.locator('.notice[data-kind="tabs"]');
  await line.waitFor();
  await line.getByRole("button", { name: "Put a copy on the shelf" }).tap();
  const copies = () => second.page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("evenfall.lure.")).length);
  assert.equal(await copies(), 1);
  await first.page.bringToFront();
  await warmWater(first);
  await first.keptSoon();
  const kept = await first.document();
  await second.page.bringToFront();
  await line.getByRole("button", { name: "Work here instead" }).tap();
  await line.waitFor({ state: "detached" });
  await second.settled();
  assert.deepEqual(await second.document(), kept);
  await device.close();
});

test("when the first tab is loaded anew or closed, the next one holds the bench", async () => {
  const device = await shop.device();
  const first = await shop.open(device);
  await first.page.reload();
  await first.ready();
  assert.equal(await first.page.locator('.notice[data-kind="tabs"]').count(), 0);
  await first.page.close();
  const second = await shop.open(device);
  await second.meanwhile(300);
  assert.equal(await second.page.locator('.notice[data-kind="tabs"]').count(), 0);
  await device.close();
});

// A browser that cannot say which tab holds the bench.
async function twoTabs() {
  const device = await shop.device();
  await device.addInitScript(() => Object.defineProperty(Navigator.prototype, "locks", { value: undefined }));
  const mine = await shop.open(device);
  const theirs = await shop.open(device);
  await warmWater(theirs);
  await theirs.keptSoon();
  await mine.page.locator('.notice[data-kind="tabs"]').waitFor();
  return { device, mine, theirs };
}

test("a change in another tab is told, and that one can be loaded", async () => {
  const { device, mine, theirs } = await twoTabs();
  await mine.page.getByRole("button", { name: "Load that one" }).tap();
  await mine.settled();
  assert.deepEqual(await mine.document(), await theirs.document());
  await device.close();
});

test("a change in another tab is told, and mine can be kept", async () => {
  const { device, mine } = await twoTabs();
  const own = await mine.document();
  await mine.page.getByRole("button", { name: "Keep mine" }).tap();
  const third = await shop.open(device);
  assert.deepEqual(await third.document(), own);
  await device.close();
});

test("until it is said whose work counts, neither tab's is lost", async () => {
  const { device, mine, theirs } = await twoTabs();
  await mine.page.bringToFront(); // browsers let pages in the background draw rarely
  await warmWater(mine);
  await warmWater(mine);
  const own = await mine.document();
  await mine.meanwhile(1000);
  const third = await shop.open(device);
  assert.deepEqual(await third.document(), await theirs.document());
  await takeFromShelf(third);
  assert.deepEqual(await third.document(), own);
  await device.close();
});

test("where the device refuses to keep the lure, a link asks before it takes the bench", async () => {
  const device = await shop.device();
  const giver = await shop.open(device);
  const link = await giver.hook("link");
  await giver.page.close();
  await device.addInitScript(() => {
    Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };
  });
  const bench = await shop.open(device);
  await warmWater(bench);
  const own = await bench.document();
  await bench.page.evaluate((text) => { location.hash = text; }, link);
  const asked = bench.page.locator('.notice[data-kind="link"]');
  await asked.filter({ hasText: "would be gone" }).waitFor();
  assert.deepEqual(await bench.document(), own);
  await asked.getByRole("button", { name: "Leave it" }).tap();
  assert.deepEqual(await bench.document(), own);
  await bench.page.evaluate((text) => { location.hash = text; }, link);
  await asked.getByRole("button", { name: "Open the link" }).tap();
  await bench.settled();
  assert.notDeepEqual(await bench.document(), own);
  await device.close();
});
