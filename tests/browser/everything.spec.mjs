// Undo that lives on, everything in one file and back, and what the page says of its storage.

import assert from "node:assert/strict";
import { writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { addPhoto, lookAtShelf, names, openAlbum, openPreset, takeFromShelf, warmWater } from "./support/ways.mjs";

const shop = await workshop();

test("undo and redo go on after a reload and after a visit to another lure", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const states = [await bench.document()];
  for (let n = 0; n < 3; n++) {
    await warmWater(bench);
    states.push(await bench.document());
  }
  await bench.tap("undo");
  await bench.keptSoon();
  await bench.page.reload();
  await bench.ready();
  assert.deepEqual(await bench.document(), states[2]);
  await bench.tap("redo");
  assert.deepEqual(await bench.document(), states[3]);
  await openPreset(bench, "quarry-230");
  await warmWater(bench);
  await takeFromShelf(bench);
  for (const expected of [2, 1, 0]) {
    await bench.tap("undo");
    assert.deepEqual(await bench.document(), states[expected]);
  }
  assert.equal(await bench.has("undo"), false);
  bench.noFaults();
  await device.close();
});

test("a damaged history costs nothing but the history", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await warmWater(bench);
  await bench.keptSoon();
  const own = await bench.document();
  await bench.page.evaluate(async () => {
    const { createStore } = await import("./js/store.js");
    const store = createStore({ storage: () => localStorage, tab: "t", now: Date.now });
    const { save } = store.load();
    const damaged = save.session.replace(/"of":\d+/, '"of":1');
    if (damaged === save.session) throw new Error("there is no history to damage");
    // Leaving the page may save once more; the damage has to be the last word.
    const { sealed } = await import("./js/storage.js");
    window.addEventListener("pagehide", () => store.keep([["bench", { ...save, ...sealed(store.bench().rev + 1, 1, "t", damaged) }]]));
  });
  await bench.page.reload();
  await bench.ready();
  assert.deepEqual(await bench.document(), own);
  assert.equal(await bench.has("undo"), false);
  assert.equal(await bench.page.locator(".notice").count(), 0);
  await device.close();
});

/** Saves everything to a file by touch, and returns its text. */
async function saveEverything(bench) {
  await lookAtShelf(bench);
  await bench.tap("shelf.everything");
  const arrives = bench.page.waitForEvent("download");
  await bench.page.locator("#dialog-save-file").tap();
  const file = await arrives;
  assert.match(file.suggestedFilename(), /^evenfall-everything-\d{4}-\d\d-\d\d\.json$/);
  const chunks = [];
  for await (const chunk of await file.createReadStream()) chunks.push(chunk);
  await bench.page.locator("#dialog-save").waitFor({ state: "hidden" });
  await bench.settled();
  return Buffer.concat(chunks).toString();
}

/** Opens a file of that text by touch. */
async function openFile(bench, text) {
  const path = join(tmpdir(), `evenfall-everything-${process.pid}.json`);
  await writeFile(path, text);
  await bench.open("file");
  await bench.page.locator("#dialog-open-file").setInputFiles(path);
  await bench.page.waitForTimeout(200);
  await bench.settled();
}

/** Names on the shelf and in the bin, as the device has them. */
const kept = (bench, place) => bench.page.evaluate((beginning) =>
  Object.keys(localStorage).filter((key) => key.startsWith(beginning))
    .map((key) => JSON.parse(JSON.parse(localStorage[key]).session).document.name).sort(), `evenfall.${place}.`);

/** The texts in the album of the lure on the bench, each with whether there is a photo; leaves it closed. */
async function albumOf(bench) {
  await openAlbum(bench);
  await bench.page.waitForTimeout(200); // the list comes from the browser's database
  const entries = await bench.page.locator("#dialog-album-list li").evaluateAll((all) =>
    all.map((entry) => [entry.querySelector("p").textContent, entry.querySelector("img") !== null]));
  await bench.page.locator("#dialog-album").getByRole("button", { name: "Close" }).tap();
  return entries;
}

async function answer(bench, id) {
  await bench.tap(id);
  await bench.page.waitForTimeout(100);
  await bench.settled();
}

test("everything in one file is taken to another device, merged twice without a double, and put in the place of what is there", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await names(bench, "First");
  await openAlbum(bench);
  await addPhoto(bench, "In the tub");
  await bench.page.locator("#dialog-album").getByRole("button", { name: "Close" }).tap();
  await openPreset(bench, "quarry-230");
  await names(bench, "Second");
  await openPreset(bench, "estuary-150");
  await names(bench, "Third");
  const [newest] = await lookAtShelf(bench);
  await bench.tap(newest.replace("lure", "drop"));
  await bench.tap("shelf.close");
  const text = await saveEverything(bench);
  const file = JSON.parse(text);
  assert.deepEqual(file.lures.map(({ document }) => document.name), ["Third", "First"]);
  assert.deepEqual(file.bin.map(({ document }) => document.name), ["Second"]);
  assert.deepEqual(file.photos.map(({ lure, text: said }) => [lure, said]), [[file.lures[1].id, "In the tub"]]);
  assert.equal(await bench.page.evaluate(() => localStorage["evenfall.since"]), undefined, "the count begins anew");
  bench.noFaults();
  await device.close();

  const other = await shop.device();
  const there = await shop.open(other);
  await names(there, "Own");
  await openPreset(there, "reedline-120");
  const own = await there.document();
  await openFile(there, text);
  await there.shot("everything-offer");
  await answer(there, "offer.leave");
  assert.deepEqual(await kept(there, "lure"), ["Own"]);
  for (let n = 0; n < 2; n++) {
    await openFile(there, text);
    await answer(there, "offer.merge");
    assert.deepEqual(await kept(there, "lure"), ["First", "Own", "Third"]);
    assert.deepEqual(await kept(there, "bin"), ["Second"]);
  }
  await openFile(there, text);
  await answer(there, "offer.replace");
  assert.deepEqual(await kept(there, "lure"), ["First", "Third"]);
  assert.deepEqual(await kept(there, "bin"), ["Own", "Second"]);
  assert.deepEqual(await there.document(), own, "the lure on the bench stays");
  assert.deepEqual(await albumOf(there), []);
  const first = await there.page.evaluate(() => Object.keys(localStorage)
    .find((key) => key.startsWith("evenfall.lure.") && JSON.parse(JSON.parse(localStorage[key]).session).document.name === "First"));
  await there.tap("shelf.open");
  await there.tap(first.replace("evenfall.", "shelf."));
  await there.page.waitForTimeout(100);
  await there.settled();
  assert.deepEqual(await albumOf(there), [["In the tub", true]]);
  await openPreset(there, "reedline-120");
  await lookAtShelf(there);
  await there.shot("shelf-after-everything");
  there.noFaults();
  await other.close();
});

test("a file of everything that cannot be read is refused with a sentence, and one that finds no room changes nothing", async () => {
  const device = await shop.device({ size: sizes.phone });
  const bench = await shop.open(device);
  await names(bench, "Own");
  const text = await saveEverything(bench);
  await openFile(bench, text.replace('"wood"', '"wooden"'));
  const said = bench.page.locator("#dialog-message-text");
  assert.match(await said.textContent(), /^Lure 1: /);
  await bench.page.locator("#dialog-message").getByRole("button").tap();

  await openFile(bench, text.replace('"Own"', '"Other"'));
  await bench.shot("everything-offer-phone");
  const before = await bench.page.evaluate(() => {
    Storage.prototype.setItem = function setItem(key) {
      if (key.startsWith("evenfall.lure.")) throw new DOMException("full", "QuotaExceededError");
    };
    return JSON.stringify({ ...localStorage });
  });
  await answer(bench, "offer.merge");
  assert.equal(await bench.page.evaluate(() => JSON.stringify({ ...localStorage })), before);
  await device.close();
});

test("the page reminds of a file once there is much that is in none, on its shelf and once beside the drawing", async () => {
  const device = await shop.device();
  await device.addInitScript(() => localStorage.setItem("evenfall.since", JSON.stringify({ changes: 84, from: Date.now() - 3 * 864e5 })));
  const bench = await shop.open(device);
  assert.ok(await bench.find("toast"));
  await bench.shot("reminder");
  await warmWater(bench);
  await bench.keptSoon();
  assert.equal(await bench.page.evaluate(() => JSON.parse(localStorage["evenfall.since"]).changes), 85);
  await bench.tap("shelf.open");
  await bench.bringIntoSight("shelf.everything");
  await bench.shot("shelf-reminder");
  await device.close();
});
