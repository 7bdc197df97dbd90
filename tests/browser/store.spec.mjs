// The store's own laws, with a storage that can be made to fail. The code under test is the page's own file.

import assert from "node:assert/strict";
import { test } from "node:test";
import { workshop } from "./support/bench.mjs";

const shop = await workshop();
const page = await (await shop.device()).newPage();
await page.goto(shop.server.address);
await page.evaluate(async () => {
  const { createStore, unseal } = await import("./js/store.js");
  const { sealed } = await import("./js/storage.js");
  // A storage in memory; `room` is how many characters fit, `broken` makes every access throw.
  globalThis.makeStorage = () => {
    const held = new Map();
    const state = { room: Infinity, broken: false, held };
    const storage = () => {
      if (state.broken) throw new DOMException("denied", "SecurityError");
      return {
        getItem: (key) => held.get(key) ?? null,
        setItem(key, text) {
          const others = [...held].filter(([k]) => k !== key).reduce((sum, [, t]) => sum + t.length, 0);
          if (others + text.length > state.room) throw new DOMException("full", "QuotaExceededError");
          held.set(key, text);
        },
        removeItem: (key) => held.delete(key),
      };
    };
    const open = (tab) => {
      const store = createStore({ storage, tab, now: () => 1 });
      const save = (session) => store.keep([["bench", sealed((store.bench()?.rev ?? 0) + 1, 1, tab, session)]]);
      return { ...store, save, session: () => store.load().save?.session ?? null };
    };
    return { state, open };
  };
  globalThis.unseal = unseal;
});

const law = (title, body, expected) => test(title, async () => assert.deepEqual(await page.evaluate(body), expected));

law("nothing kept gives nothing", () => makeStorage().open("t").load(), { save: null, damaged: null, laid: true });

law("the newest save comes back", () => {
  const { open } = makeStorage();
  const store = open("t");
  for (const text of ["one", "two", "three"]) store.save(text);
  return open("u").session();
}, "three");

law("saves take turns in two slots, so that the one before the last is whole while the last is written", () => {
  const { open, state } = makeStorage();
  const store = open("t");
  const seen = [];
  for (const text of ["one", "two", "three"]) {
    store.save(text);
    seen.push(["a", "b"].map((slot) => unseal(state.held.get(`evenfall.slot.${slot}`) ?? "")?.session ?? null));
  }
  return seen;
}, [["one", null], ["one", "two"], ["three", "two"]]);

law("a damaged newest save goes onto the shelf and the one before it comes back", () => {
  const { open, state } = makeStorage();
  const store = open("t");
  store.save("one");
  store.save("two");
  const hurt = state.held.get("evenfall.slot.b").replace("two", "twx");
  state.held.set("evenfall.slot.b", hurt);
  const found = open("t");
  const { save, damaged, laid } = found.load();
  const shelved = [...state.held].filter(([key, text]) => key.startsWith("evenfall.lure.") && text === hurt).length;
  return { session: save.session, damaged: damaged === hurt, laid, shelved, again: found.load().damaged };
}, { session: "one", damaged: true, laid: true, shelved: 1, again: null });

law("every cut of a save is noticed", () => {
  const { open, state } = makeStorage();
  open("t").save("a session of some length");
  const whole = state.held.get("evenfall.slot.a");
  let taken = 0;
  for (let size = 0; size < whole.length; size++) taken += unseal(whole.slice(0, size)) === null ? 0 : 1;
  return { taken, whole: unseal(whole).session };
}, { taken: 0, whole: "a session of some length" });

law("a storage that throws is told, not thrown", () => {
  const { open, state } = makeStorage();
  const store = open("t");
  state.broken = true;
  return [store.load(), store.save("x"), store.lures(), store.binned(), store.known(), store.bench(), store.shelf("x"), store.drop("x")];
}, [{ save: null, damaged: null, laid: true }, false, [], [], null, null, null, false]);

law("a full storage is told, and the save before it stays", () => {
  const { open, state } = makeStorage();
  const store = open("t");
  store.save("small");
  state.room = 200;
  return [store.save("x".repeat(500)), store.session()];
}, [false, "small"]);

law("a save by another tab is told apart from an own one and from noise", () => {
  const { open, state } = makeStorage();
  open("other").save("theirs");
  const mine = open("mine");
  const newValue = state.held.get("evenfall.slot.a");
  return [
    mine.fromElsewhere({ key: "evenfall.slot.a", newValue }),
    open("other").fromElsewhere({ key: "evenfall.slot.a", newValue }),
    mine.fromElsewhere({ key: "another.key", newValue }),
    mine.fromElsewhere({ key: "evenfall.slot.a", newValue: null }),
    mine.fromElsewhere({ key: "evenfall.slot.a", newValue: "noise" }),
  ];
}, [true, false, false, false, false]);

law("the checksum is CRC-32: for the digits 1 to 9 it gives what zlib gives", async () => {
  const { crc32 } = await import("./js/checksum.js");
  return crc32("123456789");
}, 0xcbf43926);
