// The law of keeping, by a walk at random over three tabs: every edit that the device once kept is on its bench, on its shelf or in its
// bin, or it was replaced by a later edit that goes on from it, or given up by the user's own answer. What is not kept is told.

import assert from "node:assert/strict";
import { test } from "node:test";
import { lureOf, makeDevice, openTab } from "./support/page_modules.mjs";

/** Mulberry32: numbers from 0 to 1 that are the same in every run of a seed. */
function chance(seed) {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

class Walk {
  constructor(seed, { locks, full }) {
    this.random = chance(seed);
    this.locks = locks; // the browser tells which tab has the bench
    this.full = full;   // the device has no room at times
    this.device = makeDevice();
    this.tabs = [null, null, null];
    this.holder = null; // the tab that has the bench
    this.count = 0;
    this.kept = new Set();      // edits that the device has had
    this.answered = new Set();  // those that the user gave up
    this.replaced = new Map();  // edit → later edits that go on from it
    this.done = [];
  }
  pick(list) { return list[Math.floor(this.random() * list.length)]; }
  text(what) { return `${what}${++this.count}`; }

  /** What a visitor would find on the device. */
  places() {
    const store = this.device.open("reader");
    const sessions = [store.bench()?.session, ...store.lures().map(({ session }) => session), ...store.binned().map(({ session }) => session)];
    return new Set(sessions.filter(Boolean).map(lureOf));
  }

  open(i) {
    const handle = openTab(this.device, `tab ${++this.count}`);
    this.tabs[i] = { handle, owns: true };
    if (!this.locks) return;
    if (this.holder === null) this.holder = i;
    else this.wait(i);
  }
  wait(i) {
    const tab = this.tabs[i];
    tab.handle.autosave.yieldBench();
    tab.waits = true;
    // A copy of what another tab works on: what is made of it replaces nothing.
    if (!tab.made) tab.owns = false;
  }
  resume(i) {
    const tab = this.tabs[i];
    const before = tab.handle.lure();
    const theirs = lureOf(this.device.open("reader").bench()?.session);
    tab.handle.autosave.resumeBench((session) => tab.handle.load(session));
    tab.waits = false;
    if (tab.handle.lure() !== before || theirs === before) tab.owns = true;
  }
  // A tab that is looked at asks whether the bench is free.
  ask(i) {
    if (!this.locks || this.holder !== null) return;
    this.holder = i;
    this.resume(i);
  }
  lay(tab, lure) {
    const before = tab.handle.lure();
    tab.handle.touch(lure);
    if (tab.owns) this.replaced.set(before, [...(this.replaced.get(before) ?? []), lure]);
    Object.assign(tab, { owns: true, made: true });
  }
  edit(i) {
    this.ask(i);
    const tab = this.tabs[i];
    this.lay(tab, this.text("edit "));
    if (this.random() < 0.6) this.flush(i);
  }
  flush(i) {
    const { handle } = this.tabs[i];
    handle.autosave.flush();
    this.hear(i);
    if (handle.told.at(-1) === "kept" && this.made(handle.lure())) assert.ok(this.places().has(handle.lure()), "what is told kept is kept");
  }
  keepNow(i) {
    const { handle } = this.tabs[i];
    handle.told.length = 0;
    handle.autosave.keepNow();
    if (handle.told.at(-1) === "kept") {
      this.kept.add(handle.lure());
      Object.assign(this.tabs[i], { owns: true, made: true });
    } else assert.equal(handle.told.at(-1), "not kept");
    this.hear(i);
  }
  made(lure) { return lure.startsWith("edit "); }
  // Without locks, the other tabs hear of a save.
  hear(saver) {
    if (this.locks || this.device.open("reader").bench()?.tab !== this.tabs[saver]?.handle.store.tab) return;
    this.tabs.forEach((tab, i) => tab && i !== saver && this.random() < 0.8 && !tab.waits && this.wait(i));
  }
  takeOver(i) {
    if (!this.locks) {
      if (!this.tabs[i].waits) return;
      if (this.random() < 0.5) {
        const before = this.tabs[i].handle.lure();
        this.tabs[i].handle.autosave.takeTheirs((session) => this.tabs[i].handle.load(session));
        if (this.tabs[i].handle.lure() !== before) this.tabs[i].owns = true;
      } else {
        this.tabs[i].handle.autosave.keepMine();
      }
      this.tabs[i].waits = false;
      return this.hear(i);
    }
    const [before, first] = [this.holder, this.random() < 0.5];
    if (before === i) return;
    this.holder = i;
    // The two tabs hear of it in either order, and the one that loses may be worked on before it hears.
    if (first) this.resume(i);
    if (before !== null) {
      if (this.random() < 0.3) this.lay(this.tabs[before], this.text("edit "));
      this.wait(before);
    }
    if (!first) this.resume(i);
  }
  another(i, how) {
    this.ask(i);
    const tab = this.tabs[i];
    const [lure, id] = how();
    if (lure === undefined) return;
    const before = tab.handle.lure();
    tab.handle.opens(lure, id);
    if (tab.handle.lure() === before && tab.handle.told.at(-1) === "stays") {
      if (this.random() < 0.5) return;
      tab.handle.autosave.letGo();
      this.answered.add(before);
      tab.handle.opens(lure, id);
    }
    if (tab.handle.lure() === lure) Object.assign(tab, { owns: id !== undefined, made: true });
    if (this.random() < 0.7) this.flush(i);
  }
  link(i) {
    const tab = this.tabs[i];
    const before = tab.handle.lure();
    if (tab.handle.autosave.unsaved()) this.answered.add(before);
    tab.handle.link(this.text("link "));
    Object.assign(tab, { owns: false, made: true });
  }
  answer(i) {
    const { handle } = this.tabs[i];
    const shelved = handle.store.lures(handle.autosave.lureId());
    this.pick([
      () => this.takeOver(i),
      () => this.takeOver(i),
      () => this.keepNow(i),
      () => handle.autosave.copy(),
      () => this.another(i, () => [this.text("demo ")]),
      () => this.another(i, () => { const row = this.pick(shelved); return row ? [lureOf(row.session), row.id] : []; }),
      () => this.another(i, () => { const row = this.pick(shelved); return row ? [lureOf(row.session), row.id] : []; }),
      () => this.link(i),
      () => shelved.length > 0 && handle.store.drop(this.pick(shelved).id),
      () => {
        for (const { session } of handle.store.binned()) this.answered.add(lureOf(session));
        handle.store.emptyBin();
      },
    ])();
  }
  close(i) {
    this.tabs[i].handle.autosave.flush();
    this.crash(i);
  }
  crash(i) {
    this.tabs[i] = null;
    if (this.holder === i) this.holder = null;
  }
  // Killed in the middle of what it writes.
  killed(i) {
    this.device.writes = Math.floor(this.random() * 3);
    this.pick([() => this.edit(i), () => this.answer(i), () => this.close(i)])();
    this.device.writes = Infinity;
    this.crash(i);
  }
  step() {
    const i = Math.floor(this.random() * 3);
    if (this.full && this.random() < 0.1) {
      if (this.random() < 0.5) this.device.fill(Math.floor(this.random() * 800));
      else this.device.room = Infinity;
    }
    const what = this.tabs[i] === null ? "open"
      : this.pick(["edit", "edit", "edit", "edit", "edit", "answer", "answer", "answer", "answer", "close", "crash", "reload", "killed"]);
    this.done.push(`${what} ${i}`);
    if (what === "reload") {
      this.close(i);
      this.open(i);
    } else {
      this[what](i);
    }
    this.check();
  }
  check() {
    const here = this.places();
    for (const text of this.device.letGo.splice(0)) this.answered.add(lureOf(JSON.parse(text).session));
    for (const lure of here) if (this.made(lure)) this.kept.add(lure);
    const safe = (lure, seen = new Set()) => {
      if (here.has(lure) || this.answered.has(lure)) return true;
      if (seen.has(lure)) return false;
      seen.add(lure);
      return (this.replaced.get(lure) ?? []).some((later) => safe(later, seen));
    };
    for (const lure of this.kept) {
      if (!safe(lure)) assert.fail(`${lure} is lost after ${this.done.length} steps: … ${this.done.slice(-12).join(", ")}`);
    }
  }
}

for (const [name, how] of Object.entries({
  "with locks": { locks: true }, "without locks": {}, "with locks on a device that is full at times": { locks: true, full: true },
})) {
  test(`in 5,000 steps of three tabs ${name}, no edit is lost`, () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const walk = new Walk(seed, how);
      for (let n = 0; n < 1000; n++) walk.step();
      assert.ok(walk.kept.size > 100, `${walk.kept.size} edits were kept`);
    }
  });
}
