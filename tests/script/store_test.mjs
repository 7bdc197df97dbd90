// What the device keeps of the lures beside the bench.

import assert from "node:assert/strict";
import { test } from "node:test";
import { lureOf, makeDevice } from "./support/page_modules.mjs";

const sessionOf = (lure) => JSON.stringify({ session: 1, document: lure });

test("a lure thrown away on a full device is found among the kept ones all the same", () => {
  const device = makeDevice();
  const store = device.open("a");
  store.shelve(sessionOf("thrown".repeat(90)));
  device.fill(10);
  store.drop(store.lures()[0].id);
  assert.deepEqual(store.lures(), []);
  assert.equal(lureOf(store.kept()[0].session), "thrown".repeat(90));
});

test("a lure that cannot be kept when it is thrown away stays on the shelf", () => {
  const device = makeDevice();
  const store = device.open("a");
  store.shelve(sessionOf("thrown"));
  store.keep = () => false;
  store.drop(store.lures()[0].id);
  assert.equal(lureOf(store.lures()[0].session), "thrown");
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
