// What lies on this device: the bench's save in two slots in turn, so that an interrupted write never damages the one before; a
// shelf of lures, each under its own id; and a bin of those that were thrown away. What cannot be read is a lure of the shelf, too.

import { createStorage, isId, newId, revAfter, sealed, unseal } from "./storage.js";

export { unseal };

const slots = ["evenfall.slot.a", "evenfall.slot.b"];
const shelfKey = "evenfall.lure."; // + id: a lure that is not on the bench
const binKey = "evenfall.bin."; // + id: a lure that was thrown away
const sinceKey = "evenfall.since"; // what was changed since everything was last saved to a file
const ringKeys = ["evenfall.kept", "evenfall.aside"]; // up to version 1.5: lures that lost their place, and damaged saves
export const drawerKey = "evenfall.drawer"; // the builder's own pieces

const unreadable = Object.freeze({ time: 0, tab: null, session: null, crc: null });

/**
 * `storage()` returns the browser's storage or throws; `tab` identifies this tab; `now()` returns ms; `journal` is told of what is
 * written (journal.js). `onLetGo(text)` hears of a lure that the bin had to let go for want of room. No function of the store throws.
 */
export function createStore({ storage, tab, now, journal, onLetGo = () => {} }) {
  const { read, put, remove, json, idsOf } = createStorage(storage, journal);
  const saveUnder = (key) => {
    const text = read(key);
    return text === null ? null : unseal(text) ?? unreadable;
  };
  const sealedAs = (id, session, time = now()) => JSON.stringify({ ...sealed(0, time, tab, session), lure: id });

  const inTurn = (changes) => {
    const before = changes.map(([key]) => [key, read(key)]);
    if (changes.every(([key, text]) => (text === null ? remove(key) : put(key, text)))) return true;
    for (const [key, text] of before) if (text === null) remove(key);
    for (const [key, text] of before) if (text !== null) put(key, text);
    return false;
  };
  // Changes, [[key, text or null], …], all of them or none. What goes makes room only where it must: the device may stop at any time.
  const tryAll = (changes) => {
    const [goes, comes] = [true, false].map((going) => changes.filter(([, text]) => (text === null) === going));
    return inTurn([...comes, ...goes]) || (goes.length > 0 && inTurn([...goes, ...comes]));
  };
  // Where there is no room, the bin makes some: the lures that have been in it longest go first.
  const apply = (changes) => {
    if (tryAll(changes)) return true;
    const thrown = (idsOf(binKey) ?? []).map((id) => binKey + id).filter((key) => changes.every(([changed]) => changed !== key));
    const gone = [];
    for (const key of thrown.sort((a, b) => saveUnder(a).time - saveUnder(b).time)) {
      gone.push([key, read(key)]);
      remove(key);
      if (!tryAll(changes)) continue;
      for (const [, text] of gone) onLetGo(text);
      return true;
    }
    for (const [key, text] of gone) put(key, text);
    return false;
  };

  const newest = () => {
    const [a, b] = slots.map((key) => ({ key, save: unseal(read(key) ?? "") }));
    if (!a.save || !b.save) return a.save ? a : b;
    if (b.save.rev === revAfter(a.save.rev)) return b;
    return a.save.rev === revAfter(b.save.rev) || a.save.rev > b.save.rev ? a : b;
  };
  const places = {
    bench: () => slots.find((slot) => slot !== newest().key),
    shelf: ({ lure }) => shelfKey + lure,
  };

  /** The lures behind such keys, the last one first; the session is null where it cannot be read. */
  const listed = (beginning) =>
    (idsOf(beginning) ?? []).map((id) => ({ id, ...saveUnder(beginning + id) })).sort((a, b) => b.time - a.time);

  /** Moves a lure from one place to the other, as it is where it cannot be read. */
  const move = (from, to, id) => {
    const text = read(from + id);
    if (text === null) return false;
    const session = unseal(text)?.session;
    return apply([[from + id, null], [to + id, session === undefined ? text : sealedAs(id, session)]]);
  };

  function emptyRings() {
    for (const key of ringKeys) {
      const found = json(key, []);
      const entries = (Array.isArray(found) ? found : []).filter((entry) => typeof (entry?.session ?? entry?.text) === "string");
      const moved = entries.map(({ session, text, time }) => {
        const id = newId();
        return [shelfKey + id, session === undefined ? text : sealedAs(id, session, Number.isFinite(time) ? time : 0)];
      });
      if (read(key) !== null) apply([[key, null], ...moved]);
    }
  }

  return {
    tab,
    /** The newest whole save of the bench, and the saves of the shelf (their session null where it cannot be read); null for none. */
    bench: () => newest().save,
    shelf: (id) => saveUnder(shelfKey + id),
    /** Keeps [["bench" | "shelf", save], …], all of it or nothing; true when it is kept. The bench's older slot is written over. */
    keep: (saves) => saves.length === 0 || apply(saves.map(([where, save]) => [places[where](save), JSON.stringify(save)])),

    /** The newest whole save of the bench, and the text of a damaged one; that is `laid` onto the shelf where there is room. */
    load() {
      emptyRings();
      const damaged = slots.map((key) => ({ key, text: read(key) })).filter(({ text }) => text !== null && !unseal(text));
      const laid = damaged.filter(({ key, text }) => !apply([[key, null], [shelfKey + newId(), text]])).length === 0;
      return { save: newest().save, damaged: damaged[0]?.text ?? null, laid };
    },

    /** The lures on the shelf but this one, the last used first; those in the bin. */
    lures: (but) => listed(shelfKey).filter(({ id }) => id !== but),
    binned: () => listed(binKey),
    /** The text of a lure as it is on the shelf, be it readable or not. */
    textOf: (id) => read(shelfKey + id),
    /** Puts a lure of the shelf into the bin, and takes one back. False where there is none, or no room. */
    drop: (id) => move(shelfKey, binKey, id),
    takeBack: (id) => move(binKey, shelfKey, id),
    emptyBin: () => (idsOf(binKey) ?? []).forEach((id) => remove(binKey + id)),
    /**
     * Takes in what a file held, all of it or nothing: `lures` for the shelf and `bin` for the bin, each {id, session, time};
     * `away` are ids of the shelf that go into the bin, `drawer` is the drawer's text. Returns what the file's ids have become
     * here, a Map, when all is kept; else null.
     */
    takeAll({ lures, bin, away, drawer }) {
      const became = new Map();
      const laid = (beginning) => ({ id: there, session, time }) => {
        const id = newId();
        became.set(there, id);
        return [beginning + id, sealedAs(id, session, time)];
      };
      const thrown = away.map((id) => [id, saveUnder(shelfKey + id)?.session]).filter(([, session]) => typeof session === "string");
      const changes = [
        [drawerKey, drawer], ...thrown.flatMap(([id, session]) => [[shelfKey + id, null], [binKey + id, sealedAs(id, session)]]),
        ...lures.map(laid(shelfKey)), ...bin.map(laid(binKey)),
      ];
      return tryAll(changes) ? became : null;
    },
    /** Ids of all lures on the device, in the bin too; null where nothing can be read. */
    known() {
      const shelf = idsOf(shelfKey);
      return shelf && new Set([newest().save?.lure ?? "", ...shelf, ...(idsOf(binKey) ?? [])]);
    },

    /** {changes, from}: how often work was changed since everything was last saved to a file, and when that began. */
    since() {
      const { changes, from } = json(sinceKey, {});
      return Number.isSafeInteger(changes) && changes > 0 && Number.isFinite(from) ? { changes, from } : { changes: 0, from: now() };
    },
    countChange() {
      const { changes, from } = this.since();
      put(sinceKey, JSON.stringify({ changes: changes + 1, from }));
    },
    everythingSaved: () => remove(sinceKey),

    /** Records that something has been seen on this device; true only the first time. */
    firstTime(what) {
      const key = `evenfall.seen.${what}`;
      if (read(key) !== null) return false;
      put(key, "yes");
      return true;
    },

    drawer: () => read(drawerKey),
    /** The drawer cannot be read: it goes onto the shelf, where it can be saved as a file. */
    drawerUnread: () => apply([[drawerKey, null], [shelfKey + newId(), read(drawerKey)]]),
    keepDrawer: (text) => apply([[drawerKey, text]]),

    /** True for a storage event of a save by another tab. */
    fromElsewhere({ key, newValue }) {
      if (!slots.includes(key) || newValue === null) return false;
      const save = unseal(newValue);
      return save !== null && save.tab !== tab;
    },
  };
}
