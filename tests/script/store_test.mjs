// What the device keeps of the lures beside the bench.

import assert from "node:assert/strict";
import { test } from "node:test";
import { lureOf, makeDevice, openTab, pageModule, shelve } from "./support/page_modules.mjs";

const sessionOf = (lure) => JSON.stringify({ session: 1, document: lure });

test("a lure thrown away on a full device is in the bin all the same, and comes back from there as it was", () => {
  const device = makeDevice();
  const store = device.open("a");
  shelve(store, sessionOf("thrown".repeat(90)));
  device.fill(10);
  const { id } = store.lures()[0];
  assert.ok(store.drop(id));
  assert.deepEqual(store.lures(), []);
  assert.equal(lureOf(store.binned()[0].session), "thrown".repeat(90));
  assert.ok(store.known().has(id), "its picture is not tidied away");
  assert.ok(store.takeBack(id));
  assert.deepEqual(store.binned(), []);
  assert.deepEqual(store.lures().map((lure) => [lure.id, lureOf(lure.session)]), [[id, "thrown".repeat(90)]]);
});

test("a lure that cannot be put into the bin stays on the shelf, and one that is not there is none", () => {
  const device = makeDevice();
  const store = device.open("a");
  shelve(store, sessionOf("thrown"), "one");
  device.refuses = (key) => key.startsWith("evenfall.bin.");
  assert.equal(store.drop("one"), false);
  assert.equal(lureOf(store.lures()[0].session), "thrown");
  assert.equal(store.drop("two"), false);
  assert.equal(store.takeBack("two"), false);
});

test("the bin lists what was thrown away last first, and is empty once it was emptied, the shelf untouched", () => {
  const store = makeDevice().open("a");
  for (const lure of ["one", "two", "stays"]) shelve(store, sessionOf(lure), lure);
  store.drop("one");
  store.drop("two");
  assert.deepEqual(store.binned().map(({ id }) => id), ["two", "one"]);
  store.emptyBin();
  assert.deepEqual(store.binned(), []);
  assert.deepEqual(store.lures().map(({ id }) => id), ["stays"]);
});

test("where there is no room the bin gives way, the oldest first, and only for what then fits", () => {
  const device = makeDevice();
  const store = device.open("a");
  for (const lure of ["old", "new"]) {
    shelve(store, sessionOf(lure.repeat(100)), lure);
    store.drop(lure);
  }
  device.fill(0);
  assert.ok(shelve(store, sessionOf("s"), "small"));
  assert.deepEqual(store.binned().map(({ id }) => id), ["new"]);
  assert.equal(shelve(store, sessionOf("large".repeat(1000)), "large"), false);
  assert.deepEqual(store.binned().map(({ id }) => id), ["new"], "nothing goes in vain");
});

const fromFile = {
  lures: [{ id: "", session: sessionOf("one"), time: 5 }, { id: "far", session: sessionOf("two"), time: 6 }],
  bin: [{ id: "gone", session: sessionOf("thrown"), time: 4 }],
  away: ["mine"],
  drawer: "the drawer",
};

test("what a file holds is taken in whole: lures with their times, the bin, the drawer, and what goes away is in the bin", () => {
  const device = makeDevice();
  const store = device.open("a");
  shelve(store, sessionOf("mine"), "mine");
  shelve(store, sessionOf("stays"), "stays");
  const became = store.takeAll(fromFile);
  assert.deepEqual([...became.keys()], ["", "far", "gone"]);
  assert.equal(lureOf(store.shelf(became.get("far")).session), "two", "where a photo of that lure belongs");
  assert.deepEqual(store.lures().map(({ time, session }) => [lureOf(session), time]).slice(0, 2), [["two", 6], ["one", 5]]);
  assert.deepEqual(store.lures().map(({ session }) => lureOf(session)).sort(), ["one", "stays", "two"]);
  assert.deepEqual(store.binned().map(({ session }) => lureOf(session)).sort(), ["mine", "thrown"]);
  assert.equal(store.drawer(), "the drawer");
});

test("what a file holds is taken in not at all where there is no room for all of it, wherever it ends", () => {
  const size = () => {
    const device = makeDevice();
    shelve(device.open("a"), sessionOf("mine"), "mine");
    return device;
  };
  let refused = 0;
  for (let more = 0; more < 900; more += 7) {
    const device = size();
    const store = device.open("a");
    store.keepDrawer("the old one, which is longer");
    const before = [...device.held].sort();
    device.fill(more);
    if (store.takeAll(fromFile)) continue;
    refused++;
    assert.deepEqual([...device.held].sort(), before, `with room for ${more}`);
  }
  assert.ok(refused > 10 && refused < 900 / 7, "some are refused and some are not");
});

test("changes are counted from the first one after everything was saved, over visits", () => {
  const device = makeDevice();
  const store = device.open("a");
  assert.equal(store.since().changes, 0);
  store.countChange();
  const { from } = store.since();
  store.countChange();
  assert.deepEqual(device.open("b").since(), { changes: 2, from });
  store.everythingSaved();
  assert.equal(store.since().changes, 0);
  store.countChange();
  assert.ok(store.since().from > from);
  device.held.set("evenfall.since", "null");
  assert.equal(store.since().changes, 0);
});

test("where nothing can be read no lure is known to be gone; else every one of the shelf and the bench is known", () => {
  const device = makeDevice();
  const store = device.open("a");
  shelve(store, sessionOf("one"), "one");
  shelve(store, sessionOf("two"), "two");
  openTab(device, "b").work("mine");
  assert.deepEqual([...store.known()].sort(), ["one", "two", store.bench().lure].sort());
  device.broken = true;
  assert.equal(store.known(), null);
});

test("a damaged save is given as it was found, and is laid onto the shelf where there is room", () => {
  const device = makeDevice();
  const store = device.open("a");
  openTab(device, "b").work("mine");
  const hurt = device.held.get("evenfall.slot.a").replace("mine", "mime");
  device.held.set("evenfall.slot.a", hurt);
  device.fill(0);
  assert.deepEqual(store.load(), { save: null, damaged: hurt, laid: false });
  assert.deepEqual(store.lures(), []);
  device.room = Infinity;
  assert.deepEqual(store.load(), { save: null, damaged: hurt, laid: true });
  assert.deepEqual(store.lures().map(({ id }) => store.textOf(id)), [hurt]);
  assert.deepEqual(store.load(), { save: null, damaged: null, laid: true });
});

test("what earlier versions kept in two rings is on the shelf: lures that lost their place, and damaged saves as they were", () => {
  const device = makeDevice();
  device.held.set("evenfall.kept", JSON.stringify([{ time: 7, session: sessionOf("lost its place") }, { time: 8, text: 5 }, null]));
  device.held.set("evenfall.aside", JSON.stringify([{ time: 9, text: "damaged" }]));
  const store = device.open("a");
  store.load();
  const [first, second] = store.lures();
  assert.deepEqual([lureOf(first.session), first.time, second.session, store.textOf(second.id)], ["lost its place", 7, null, "damaged"]);
  assert.ok(!device.held.has("evenfall.kept") && !device.held.has("evenfall.aside"));
});

test("what cannot be read is on the shelf, goes into the bin and comes back as it was, and is not written over", () => {
  const device = makeDevice();
  const store = device.open("a");
  device.held.set("evenfall.lure.hurt", "damaged");
  assert.deepEqual(store.lures().map(({ id, session }) => [id, session]), [["hurt", null]]);
  assert.ok(store.drop("hurt"));
  assert.deepEqual(store.binned().map(({ id, session }) => [id, session]), [["hurt", null]]);
  assert.ok(store.takeBack("hurt"));
  assert.equal(store.textOf("hurt"), "damaged");
  const tab = openTab(device, "b");
  tab.work("mine");
  const { bench } = JSON.parse(JSON.stringify({ bench: tab.store.bench() }));
  device.held.set(`evenfall.lure.${bench.lure}`, "damaged, too");
  tab.opens("another");
  assert.equal(store.textOf(bench.lure), "damaged, too");
  assert.ok(store.lures().some(({ session }) => lureOf(session) === "mine"));
});

test("a lure that the bin has to let go for want of room is told", () => {
  const device = makeDevice();
  const store = device.open("a");
  shelve(store, sessionOf("thrown".repeat(100)), "one");
  store.drop("one");
  device.fill(0);
  assert.ok(shelve(store, sessionOf("s"), "two"));
  assert.deepEqual(device.letGo.map((text) => lureOf(JSON.parse(text).session)), ["thrown".repeat(100)]);
});

test("the largest number of a save is not the end of saving", async () => {
  const { sealed } = await pageModule("storage.js");
  const device = makeDevice();
  const most = { ...sealed(Number.MAX_SAFE_INTEGER, 1, "old", sessionOf("before")), lure: "one" };
  device.held.set("evenfall.slot.a", JSON.stringify(most));
  const tab = openTab(device, "a");
  for (const lure of ["edit 1", "edit 2", "edit 3"]) {
    tab.work(lure);
    assert.equal(lureOf(device.open("next").load().save.session), lure);
    assert.equal(device.open("next").load().damaged, null);
  }
});
