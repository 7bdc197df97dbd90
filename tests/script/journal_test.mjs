// What a killed browser has lost of its storage is put back from the journal.

import assert from "node:assert/strict";
import { test } from "node:test";
import { setImmediate as turn } from "node:timers/promises";
import { pageModule } from "./support/page_modules.mjs";

const { createJournal } = await pageModule("journal.js");
const { createStorage } = await pageModule("storage.js");

/** A storage whose state after each write is on record, and a database in memory. */
function makeDisk() {
  const disk = { held: new Map(), record: [], kept: new Map(), answers: true, clock: 0 };
  const written = (change) => {
    change();
    disk.record.push(new Map(disk.held));
  };
  const storage = () => ({
    getItem: (key) => disk.held.get(key) ?? null,
    setItem: (key, text) => written(() => disk.held.set(key, String(text))),
    removeItem: (key) => written(() => disk.held.delete(key)),
  });
  const base = {
    get: (key) => disk.kept.get(key), put: (value, key) => disk.kept.set(key, value) && key,
    getAll: () => [...disk.kept.values()], getAllKeys: () => [...disk.kept.keys()],
  };
  const onStore = async (name, mode, work) => (disk.answers ? work(base) : undefined);
  disk.hangs = 0;
  disk.visit = () => {
    const journal = createJournal({ storage, onStore, now: () => disk.clock, onHang: () => (disk.hangs += 1) });
    return { journal, ...createStorage(storage, journal) };
  };
  return disk;
}
const contents = (disk) => Object.fromEntries([...disk.held].filter(([key]) => key !== "evenfall.count"));

test("wherever the storage stood when the browser was killed, the next visit has all that the journal was told", async () => {
  const writes = 12;
  for (let stood = 0; stood <= 2 * writes; stood++) {
    const disk = makeDisk();
    disk.record.push(new Map());
    const first = disk.visit();
    for (let n = 0; n < writes; n++) {
      if (n % 5 === 4) first.remove(`key ${n % 3}`);
      else first.put(`key ${n % 3}`, `text ${n}`);
      await turn();
    }
    const last = contents(disk);
    disk.held = new Map(disk.record[stood]);
    const second = disk.visit();
    await second.journal.recover();
    assert.deepEqual(contents(disk), last, `of ${writes} writes, ${stood} half ones were there`);
    second.put("key 0", "later");
    await turn();
    await disk.visit().journal.recover();
    assert.deepEqual(contents(disk), { ...last, "key 0": "later" });
  }
});

test("a journal that is behind the storage changes nothing in it", async () => {
  const disk = makeDisk();
  const first = disk.visit();
  first.put("key", "one");
  await turn();
  disk.answers = false;
  first.put("key", "two");
  await turn();
  disk.answers = true;
  await disk.visit().journal.recover();
  assert.deepEqual(contents(disk), { key: "two" });
});

test("what the database did not take goes in with the next write", async () => {
  const disk = makeDisk();
  const first = disk.visit();
  disk.answers = false;
  first.put("one", "1");
  await turn();
  disk.answers = true;
  first.put("two", "2");
  await turn();
  disk.held = new Map();
  await disk.visit().journal.recover();
  assert.deepEqual(contents(disk), { one: "1", two: "2" });
});
