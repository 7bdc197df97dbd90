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
