// What the device keeps of the lures beside the bench.

import assert from "node:assert/strict";
import { test } from "node:test";
import { lureOf, makeDevice } from "./support/page_modules.mjs";

const sessionOf = (lure) => JSON.stringify({ session: 1, document: lure });

test("a lure thrown away on a full device is in the bin all the same, and comes back from there as it was", () => {
  const device = makeDevice();
  const store = device.open("a");
  store.shelve(sessionOf("thrown".repeat(90)));
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
  store.shelve(sessionOf("thrown"), "one");
  device.refuses = (key) => key.startsWith("evenfall.bin.");
  assert.equal(store.drop("one"), false);
  assert.equal(lureOf(store.lures()[0].session), "thrown");
  assert.equal(store.drop("two"), false);
  assert.equal(store.takeBack("two"), false);
});

test("the bin lists what was thrown away last first, and is empty once it was emptied, the shelf untouched", () => {
  const store = makeDevice().open("a");
  for (const lure of ["one", "two", "stays"]) store.shelve(sessionOf(lure), lure);
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
    store.shelve(sessionOf(lure.repeat(100)), lure);
    store.drop(lure);
  }
  device.fill(0);
  assert.ok(store.shelve(sessionOf("s"), "small"));
  assert.deepEqual(store.binned().map(({ id }) => id), ["new"]);
  assert.equal(store.shelve(sessionOf("large".repeat(1000)), "large"), false);
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
  store.shelve(sessionOf("mine"), "mine");
  store.shelve(sessionOf("stays"), "stays");
  const became = store.takeAll(fromFile);
  assert.deepEqual([...became.keys()], ["", "far", "gone"]);
  assert.equal(lureOf(store.onShelf(became.get("far"))), "two", "where a photo of that lure belongs");
  assert.deepEqual(store.lures().map(({ time, session }) => [lureOf(session), time]).slice(0, 2), [["two", 6], ["one", 5]]);
  assert.deepEqual(store.lures().map(({ session }) => lureOf(session)).sort(), ["one", "stays", "two"]);
  assert.deepEqual(store.binned().map(({ session }) => lureOf(session)).sort(), ["mine", "thrown"]);
  assert.equal(store.drawer(), "the drawer");
});

test("what a file holds is taken in not at all where there is no room for all of it, wherever it ends", () => {
  const size = () => {
    const device = makeDevice();
    device.open("a").shelve(sessionOf("mine"), "mine");
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
  store.shelve(sessionOf("one"), "one");
  store.shelve(sessionOf("two"), "two");
  assert.deepEqual([...store.known()].sort(), ["one", "two", store.lureId()].sort());
  device.broken = true;
  assert.equal(store.known(), null);
});

test("a damaged save is given as it was found, be there room to set it aside or not", () => {
  const device = makeDevice();
  const store = device.open("a");
  store.save(sessionOf("mine"));
  const hurt = device.held.get("evenfall.slot.a").replace("mine", "mime");
  device.held.set("evenfall.slot.a", hurt);
  device.fill(0);
  assert.equal(store.load().damaged, hurt);
  assert.deepEqual(store.asides(), []);
  device.room = Infinity;
  assert.equal(store.load().damaged, hurt);
  assert.deepEqual(store.asides().map(({ text }) => text), [hurt]);
  assert.equal(store.load().damaged, null);
});

test("the same damage is set aside once, so that it takes no other's place", () => {
  const store = makeDevice().open("a");
  for (const text of ["one", "two", "two", "one", "one"]) store.setAside(text);
  assert.deepEqual(store.asides().map(({ text }) => text), ["one", "two"]);
});

test("of the lures that lost their place each is kept once, and one that goes on from another takes its place", () => {
  const store = makeDevice().open("a");
  for (const lure of ["1", "2", "3", "1"]) store.keep(sessionOf(lure));
  store.keep(sessionOf("3 b"), sessionOf("3"));
  assert.deepEqual(store.kept().map(({ session }) => lureOf(session)), ["3 b", "1", "2"]);
});

test("a lure on the bench is overtaken when another tab puts it onto the shelf after it came, and by nothing else", () => {
  const device = makeDevice();
  const [store, other] = [device.open("a"), device.open("b")];
  other.shelve(sessionOf("before"), "lure");
  store.adopt("lure");
  assert.equal(store.overtaken(), false);
  store.shelve(sessionOf("own"), "lure");
  assert.equal(store.overtaken(), false);
  other.shelve(sessionOf("after"), "lure");
  assert.equal(store.overtaken(), true);
});
