// Nothing that was done to a lure is lost when another one comes onto the bench, be the device full or the bench another tab's.

import assert from "node:assert/strict";
import { test } from "node:test";
import { makeDevice, nextVisit, openTab } from "./support/page_modules.mjs";

const long = (name) => name + "-".repeat(300);

test("where the device has no room for it beside another, the lure on the bench stays, and stays kept", () => {
  const device = makeDevice();
  const tab = openTab(device, "a");
  tab.work(long("mine 1"));
  tab.work(long("mine 2"));
  const id = tab.autosave.lureId();
  device.fill(60);
  assert.equal(tab.opens("another"), "");
  assert.equal(tab.autosave.leave(), false, "a demo is told before it is opened");
  assert.equal(tab.told.at(-1), "stays");
  assert.equal(tab.lure(), long("mine 2"));
  assert.equal(tab.autosave.lureId(), id);
  tab.work(long("mine 3"));
  assert.equal(nextVisit(device), long("mine 3"));
});

test("where there is no room for a lure with its history it is kept without, on the bench and on the shelf", () => {
  const device = makeDevice();
  const tab = openTab(device, "a");
  tab.work("mine 1");
  tab.work("mine 2");
  tab.history("step ".repeat(600));
  device.fill(600);
  tab.work("mine 3");
  assert.equal(tab.told.at(-1), "kept");
  assert.equal(nextVisit(device), "mine 3");
  tab.opens("another");
  assert.deepEqual(tab.shelf(), ["mine 3"]);
  assert.ok(!device.has("step"));
  device.room = Infinity;
  tab.work("another 2");
  assert.ok(device.has("step"), "and with it as soon as there is");
});

test("a builder who lets the lure go gets the other one, and only that time", () => {
  const device = makeDevice();
  const tab = openTab(device, "a");
  tab.work(long("mine"));
  device.fill(60);
  tab.opens("another");
  tab.autosave.letGo();
  tab.opens("another");
  assert.equal(tab.lure(), "another");
  tab.work(long("other"));
  tab.opens("a third");
  assert.equal(tab.lure(), long("other"));
});

test("a link over a lure that cannot be put onto the shelf is not kept in its place", () => {
  const device = makeDevice();
  const tab = openTab(device, "a");
  tab.work(long("mine 1"));
  tab.work(long("mine 2"));
  device.fill(60);
  tab.link("link");
  tab.work("link 2");
  tab.work("link 3");
  assert.equal(tab.told.at(-1), "not kept");
  assert.ok(tab.autosave.unsaved());
  assert.equal(nextVisit(device), long("mine 2"));
  device.room = Infinity;
  assert.ok(!tab.autosave.unsaved(), "tried again once it is asked for");
  assert.equal(nextVisit(device), "link 3");
  assert.deepEqual(tab.shelf(), [long("mine 2")]);
});

test("the lure before a link goes onto the shelf, whether the link was changed or not before another one came", () => {
  for (const change of [false, true]) {
    const device = makeDevice();
    const tab = openTab(device, "a");
    tab.work("mine");
    tab.link("link");
    if (change) tab.touch("link 2");
    tab.opens("another");
    tab.work("another 2");
    tab.work("another 3");
    assert.deepEqual(tab.shelf(), change ? ["link 2", "mine"] : ["mine"]);
  }
});

test("what is refused is no other lure: the one on the bench keeps its place, and its next change is no lure as it came", () => {
  const device = makeDevice();
  const tab = openTab(device, "a");
  tab.work("mine");
  const id = tab.autosave.lureId();
  assert.equal(tab.autosave.another(() => "no lure"), "no lure");
  assert.equal(tab.autosave.lureId(), id);
  assert.deepEqual(tab.shelf(), []);
  tab.work("one change");
  tab.opens("another");
  assert.deepEqual(tab.shelf(), ["one change"]);
});

test("a link that nobody changed is no lure of the shelf, be something refused over it", () => {
  const device = makeDevice();
  const tab = openTab(device, "a");
  tab.work("mine");
  tab.link("link");
  tab.autosave.another(() => "no lure");
  tab.opens("another");
  tab.autosave.flush();
  assert.deepEqual(tab.shelf(), ["mine"]);
});

test("a page that goes in the moment another lure comes keeps the two apart", () => {
  const device = makeDevice();
  const tab = openTab(device, "a");
  tab.work("mine");
  tab.autosave.leave();
  tab.work("another");
  const next = openTab(device, "b");
  assert.equal(next.lure(), "another");
  assert.deepEqual(next.shelf(), ["mine"]);
});

test("a lure just opened, from a link or else, is no unsaved work, whatever became of the one before", () => {
  for (const how of ["link", "another"]) {
    const device = makeDevice();
    const tab = openTab(device, "a");
    device.room = 0;
    tab.work("mine");
    if (how === "link") tab.link("link");
    device.room = Infinity;
    if (how === "another") tab.autosave.another(() => "");
    device.room = 0;
    assert.equal(tab.autosave.unsaved(), false, how);
  }
});

test("one change to a demo that was tapped twice is kept like any other", () => {
  const device = makeDevice();
  const tab = openTab(device, "a");
  // The same lure again: the bench tells of no change.
  assert.ok(tab.autosave.leave());
  tab.autosave.came();
  tab.work("one change");
  tab.opens("another");
  assert.deepEqual(tab.shelf(), ["one change"]);
});

test("a lure that was kept by hand, or for its picture, goes onto the shelf as it came", () => {
  const device = makeDevice();
  const tab = openTab(device, "a");
  tab.autosave.keepNow();
  const id = tab.autosave.lureId();
  tab.opens("another");
  assert.deepEqual(tab.shelf(), ["demo"]);
  assert.ok(tab.store.known().has(id));
});

test("a tab that waits puts nothing over what the other one has put onto the shelf", () => {
  const device = makeDevice();
  const first = openTab(device, "a");
  first.work("old");
  const second = openTab(device, "b");
  second.autosave.yieldBench();
  first.work("new");
  first.opens("another");
  assert.deepEqual(first.shelf(), ["new"]);
  second.opens("another");
  assert.deepEqual(first.shelf(), ["new"], "unchanged it is no lure of its own");

  const third = openTab(device, "c");
  third.autosave.yieldBench();
  third.work("changed there");
  third.opens("another");
  assert.deepEqual(first.shelf().sort(), ["changed there", "new"]);

  first.work("another 2");
  const linked = openTab(device, "d");
  linked.link("link");
  linked.autosave.yieldBench();
  linked.opens("another");
  assert.equal(device.open("e").lures().length, 2, "nor what the other one has on its bench");
});

test("a tab that waits writes nothing over the other's work, be it told to keep its own at once", () => {
  const device = makeDevice();
  const first = openTab(device, "a");
  first.work("first");
  const second = openTab(device, "b");
  second.autosave.yieldBench();
  second.link("link");
  second.autosave.keepNow();
  second.autosave.keepNow();
  assert.equal(nextVisit(device), "first");
  assert.deepEqual(first.shelf(), ["link"]);
  assert.notEqual(second.autosave.lureId(), first.autosave.lureId(), "a picture of the one is none of the other's");
  const third = openTab(device, "c");
  third.autosave.yieldBench();
  third.autosave.keepNow();
  first.work("first 2");
  third.autosave.resumeBench(third.load);
  assert.equal(third.lure(), "first", "what was to be kept stays when the bench is this tab's again");
});

test("a tab that waits keeps one lure of its own on the shelf, however often it is changed, and a crash leaves it there", () => {
  const device = makeDevice();
  const first = openTab(device, "a");
  first.work("first");
  const second = openTab(device, "b");
  second.autosave.yieldBench();
  for (let n = 1; n <= 9; n++) second.work(`second ${n}`);
  assert.deepEqual(first.shelf(), ["second 9"]);
  assert.equal(nextVisit(device), "first");
});

test("eight links opened in tabs of their own beside an open bench and each kept by its button are all on the shelf", () => {
  const device = makeDevice();
  const first = openTab(device, "a");
  first.work("first");
  const links = [1, 2, 3, 4, 5, 6, 7, 8].map((n) => `link ${n}`);
  for (const link of links) {
    const tab = openTab(device, link);
    tab.autosave.yieldBench();
    tab.link(link);
    tab.autosave.keepNow();
    assert.equal(tab.told.at(-1), "kept");
  }
  assert.deepEqual(first.shelf().sort(), links);
  assert.equal(nextVisit(device), "first");
});

test("links kept one after the other in the tab that has the bench are on the shelf, the last one on the bench", () => {
  const device = makeDevice();
  const tab = openTab(device, "a");
  tab.work("mine");
  for (const link of ["link 1", "link 2", "link 3"]) {
    tab.link(link);
    tab.autosave.keepNow();
  }
  assert.deepEqual(tab.shelf().sort(), ["link 1", "link 2", "mine"]);
  assert.equal(nextVisit(device), "link 3");
});

test("a link that cannot be kept says so", () => {
  const device = makeDevice();
  const tab = openTab(device, "a");
  tab.work(long("mine"));
  device.fill(20);
  tab.link("link");
  tab.autosave.keepNow();
  assert.equal(tab.told.at(-1), "not kept");
  assert.equal(nextVisit(device), long("mine"));
});

test("a copy goes onto the shelf, and the tab goes on waiting as it was", () => {
  const device = makeDevice();
  const first = openTab(device, "a");
  first.work("first");
  const second = openTab(device, "b");
  second.autosave.yieldBench();
  assert.ok(second.autosave.copy());
  first.work("first 2");
  second.autosave.resumeBench(second.load);
  assert.equal(second.lure(), "first 2");
  assert.deepEqual(second.shelf(), ["first"]);
});

test("work that a waiting tab could not keep is known as not kept", () => {
  const device = makeDevice();
  openTab(device, "a").work("first");
  const second = openTab(device, "b");
  second.autosave.yieldBench();
  device.room = 0;
  second.work("second");
  assert.equal(second.told.at(-1), "not kept");
  assert.ok(second.autosave.unsaved());
});

test("a link that was changed in a waiting tab takes the bench, and the lure that was there goes onto the shelf under its own id", () => {
  const device = makeDevice();
  const first = openTab(device, "a");
  first.work("own");
  const id = first.autosave.lureId();
  const second = openTab(device, "b");
  second.link("link");
  second.autosave.yieldBench();
  second.work("link 2");
  second.autosave.resumeBench(second.load);
  second.work("link 3");
  assert.equal(nextVisit(device), "link 3");
  assert.deepEqual(second.store.lures(second.autosave.lureId()).map((lure) => [lure.id, JSON.parse(lure.session).document]), [[id, "own"]]);
});

test("what was opened in a waiting tab stays when it takes the bench; only what came from there is taken over", () => {
  const device = makeDevice();
  const first = openTab(device, "a");
  first.work("first");
  const unchanged = openTab(device, "b");
  unchanged.autosave.yieldBench();
  const linked = openTab(device, "c");
  linked.link("link");
  linked.autosave.yieldBench();
  const opened = openTab(device, "d");
  opened.autosave.yieldBench();
  opened.opens("demo");
  first.opens("first");
  first.work("first 2");

  unchanged.autosave.resumeBench(unchanged.load);
  assert.equal(unchanged.lure(), "first 2");
  assert.equal(unchanged.autosave.lureId(), first.autosave.lureId());
  assert.deepEqual(unchanged.shelf(), ["first"]);
  unchanged.work("first 3");
  assert.deepEqual(unchanged.shelf(), ["first"], "it is the same work that goes on");
  assert.equal(nextVisit(device), "first 3");
  first.work("first 2");

  linked.autosave.resumeBench(linked.load);
  assert.equal(linked.lure(), "link");
  assert.equal(nextVisit(device), "first 2", "and a link is not kept before it is changed");

  opened.autosave.resumeBench(opened.load);
  assert.equal(opened.lure(), "demo");
  assert.equal(nextVisit(device), "demo");
  assert.deepEqual(opened.shelf(), ["first 2", "first 3", "first"], "be it that of a tab that did not know");
});

test("of two versions of one lure the one that gives way waits on the shelf, and one that went on to the shelf is not written over", () => {
  const device = makeDevice();
  const first = openTab(device, "a");
  first.work("lure");
  const second = openTab(device, "b");
  second.autosave.yieldBench();
  second.work("second's");
  first.work("first's");
  second.autosave.resumeBench(second.load);
  first.autosave.yieldBench();
  assert.equal(nextVisit(device), "second's");
  assert.deepEqual(second.shelf(), ["first's"]);

  const third = openTab(device, "c");
  third.autosave.yieldBench();
  third.work("third's");
  second.opens("another");
  second.work("another 2");
  third.autosave.resumeBench(third.load);
  third.opens("demo");
  for (const lure of ["third's", "second's", "another 2"]) assert.ok(third.shelf().includes(lure), `${lure} in ${third.shelf()}`);
});

test("without room to keep the other's work, a tab that takes the bench does not write over it", () => {
  const device = makeDevice();
  const first = openTab(device, "a");
  first.work(long("first 1"));
  first.work(long("first 2"));
  const second = openTab(device, "b");
  second.autosave.yieldBench();
  device.fill(20);
  second.work("2");
  second.autosave.resumeBench(second.load);
  for (let n = 3; n < 6; n++) second.work(String(n));
  assert.equal(second.told.at(-1), "not kept");
  assert.equal(nextVisit(device), long("first 2"));
});

test("work that the device refused to keep is not given up for the other tab's", () => {
  const device = makeDevice();
  const first = openTab(device, "a");
  device.room = 0;
  first.work("not kept");
  first.autosave.yieldBench();
  device.room = Infinity;
  openTab(device, "b").work("other");
  first.autosave.resumeBench(first.load);
  assert.equal(first.lure(), "not kept");
  assert.equal(nextVisit(device), "not kept");
  assert.deepEqual(first.shelf(), ["other"]);
});

test("what waited through one time in waiting is not given up for the next", () => {
  const device = makeDevice();
  openTab(device, "a").work("first");
  const second = openTab(device, "b");
  for (const lure of ["once", "twice"]) {
    second.autosave.yieldBench();
    second.work(lure);
    second.autosave.takeTheirs(second.load);
    assert.equal(second.lure(), "first");
  }
  assert.deepEqual(second.shelf(), ["twice", "once"]);
});

test("a tab that has the bench all along writes nothing for being told so", () => {
  const device = makeDevice();
  const tab = openTab(device, "a");
  tab.autosave.resumeBench(tab.load);
  assert.equal(nextVisit(device), null);
});

test("the other tab's lure is not laid over work that there is no room to keep", () => {
  const device = makeDevice();
  openTab(device, "a").work("first");
  const second = openTab(device, "b");
  second.autosave.yieldBench();
  device.room = 0;
  second.work("second");
  second.autosave.takeTheirs(second.load);
  assert.equal(second.lure(), "second");
  assert.equal(second.told.at(-1), "elsewhere", "and it is asked again whose counts");
});
