// The page's own modules without a browser, and what of one they ask for: a storage with an end, locks, a bench.

import { cpSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const folder = mkdtempSync(join(tmpdir(), "evenfall-modules-"));
cpSync(join(process.env.EVENFALL_SOURCE, "web/js"), folder, { recursive: true });
writeFileSync(join(folder, "package.json"), '{"type":"module"}');
process.on("exit", () => rmSync(folder, { recursive: true }));

/** A module of the page; with another `realm` another tab's own. */
export const pageModule = (name, realm = "") => import(`${pathToFileURL(join(folder, name)).href}${realm && `?${realm}`}`);

/** Locks as the Web Locks standard has them, of one name; `close(tab)` lets go what a tab holds. */
export function makeLocks() {
  let held = null;
  const abort = () => held?.reject(new DOMException("stolen", "AbortError"));
  const of = (tab) => ({
    request(name, { ifAvailable, steal } = {}, act) {
      return new Promise((resolve, reject) => queueMicrotask(() => {
        if (steal) abort();
        else if (held && ifAvailable) return resolve(act(null));
        else if (held) throw new Error("no test waits in line");
        const mine = { tab, reject };
        held = mine;
        Promise.resolve(act({ name })).then((value) => {
          if (held === mine) held = null;
          resolve(value);
        }, reject);
      }));
    },
  });
  return { of, close: (tab) => { if (held?.tab === tab) held = null; } };
}

Object.defineProperty(globalThis, "navigator", { value: { locks: {} }, configurable: true });
const { createStore } = await pageModule("store.js");
const { sealed } = await pageModule("storage.js");
const { createAutosave } = await pageModule("autosave.js");

/** Lays a session onto a device's shelf, as a tab of that store does. */
export const shelve = (store, session, lure = "own", time = 1) => store.keep([["shelf", { ...sealed(0, time, store.tab, session), lure }]]);

/** A device's storage; `room` is how many characters fit, `broken` makes every access throw, `refuses` some writing. */
export function makeDevice() {
  const held = new Map();
  const size = () => [...held].reduce((sum, [key, text]) => sum + key.length + text.length, 0);
  const device = {
    held,
    room: Infinity,
    broken: false,
    refuses: () => false, // of a key: to be written
    letGo: [], // what the bin had to let go
    writes: Infinity, // so many more reach the device: then its page is killed
    /** From now on only `more` further characters fit. */
    fill: (more) => { device.room = size() + more; },
    /** Is this text anywhere on the device? */
    has: (text) => [...held.values()].some((value) => value.includes(text)),
  };
  const storage = new Proxy({
    getItem: (key) => held.get(key) ?? null,
    setItem(key, text) {
      if (device.writes-- <= 0) return;
      const before = held.get(key);
      held.set(key, text);
      if (size() <= device.room && !device.refuses(key)) return;
      if (before === undefined) held.delete(key);
      else held.set(key, before);
      throw new DOMException("full", "QuotaExceededError");
    },
    removeItem: (key) => device.writes-- > 0 && held.delete(key),
  }, {
    ownKeys: () => [...held.keys()],
    getOwnPropertyDescriptor: (_, key) => (held.has(key) ? { value: held.get(key), enumerable: true, configurable: true } : undefined),
  });
  let clock = 0;
  device.now = () => ++clock;
  device.open = (tab) => createStore({
    storage: () => {
      if (device.broken) throw new DOMException("denied", "SecurityError");
      return storage;
    },
    tab,
    now: device.now,
    onLetGo: (text) => device.letGo.push(text),
  });
  return device;
}

const sessionOf = (lure) => JSON.stringify({ session: 1, document: lure });
export const lureOf = (session) => session && JSON.parse(session).document;

/** A tab of the page on a device, with a bench that holds any value as its lure. */
export function openTab(device, tab, first = "demo") {
  const store = device.open(tab);
  const { save } = store.load();
  const bench = { lure: lureOf(save?.session) ?? first };
  const core = {
    documentJson: () => JSON.stringify(bench.lure),
    sessionJson: (withHistory) => JSON.stringify({ ...JSON.parse(sessionOf(bench.lure)), ...(withHistory && bench.history) }),
  };
  const told = [];
  const autosave = createAutosave({
    core,
    store,
    save,
    now: device.now,
    onFailure: () => told.push("not kept"),
    onSuccess: () => told.push("kept"),
    onLeave: (may) => told.push(may ? "leaves" : "stays"),
    onElsewhere: () => told.push("elsewhere"),
  });
  if (save === null) autosave.untouched();
  const lay = (lure) => () => {
    bench.lure = lure;
    autosave.changed();
    return "";
  };
  return {
    store, autosave, told,
    lure: () => bench.lure,
    /** What the lure's session has besides, where there is room for it. */
    history: (steps) => { bench.history = { history: steps }; },
    /** Changes the lure on the bench, and half a second goes by. */
    work(lure) {
      lay(lure)();
      autosave.flush();
    },
    /** Changes it, and no time goes by. */
    touch: (lure) => lay(lure)(),
    opens: (lure, id) => autosave.another(lay(lure), id),
    link(lure) {
      autosave.flush();
      bench.lure = lure;
      autosave.linked();
    },
    load: (session) => lay(lureOf(session))(),
    shelf: () => store.lures(autosave.lureId()).map((lure) => lureOf(lure.session)),
  };
}

/** What the next visit brings. */
export const nextVisit = (device) => lureOf(device.open("next").load().save?.session) ?? null;
