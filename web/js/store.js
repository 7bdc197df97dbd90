// Saves the work on this device. The bench's lure is written to two slots in turn, each with a revision and a checksum,
// so that an interrupted write never damages the one before; further lures are on a shelf, each under its own id, and
// those that were thrown away in a bin.

import { createStorage, isId, newId, sealed, unseal } from "./storage.js";

export { unseal };

const slots = ["evenfall.slot.a", "evenfall.slot.b"];
const asideKey = "evenfall.aside"; // damaged saves, unchanged
const keptKey = "evenfall.kept"; // whole sessions that were replaced by another
const shelfKey = "evenfall.lure."; // + id: a lure that is not on the bench
const binKey = "evenfall.bin."; // + id: a lure that was thrown away
const sinceKey = "evenfall.since"; // what was changed since everything was last saved to a file
export const drawerKey = "evenfall.drawer"; // the builder's own pieces
const keepAtMost = 5;

/**
 * `storage()` returns the browser's storage or throws; `tab` identifies this tab; `now()` returns ms.
 * No function of the store throws.
 */
export function createStore({ storage, tab, now }) {
  const { read, put, remove, json, idsOf } = createStorage(storage);
  const saveUnder = (key) => unseal(read(key) ?? "");
  // Where there is no room, the bin makes some: the lures that have been in it longest go first.
  const write = (key, text) => {
    if (put(key, text)) return true;
    const thrown = (idsOf(binKey) ?? []).map((id) => binKey + id).filter((other) => other !== key);
    const oldestFirst = thrown.map((other) => ({ other, time: saveUnder(other)?.time ?? 0, text: read(other) })).sort((a, b) => a.time - b.time);
    const made = oldestFirst.some(({ other }) => {
      remove(other);
      return put(key, text);
    });
    if (!made) for (const { other, text: thrownAway } of oldestFirst) put(other, thrownAway);
    return made;
  };
  const list = (key) => {
    const found = json(key, []);
    return Array.isArray(found) ? found : [];
  };
  const remember = (key, entry, stays = () => true) => {
    const all = [entry, ...list(key).filter(stays)];
    for (let count = keepAtMost; count > 0; count--) {
      // With little space the oldest are dropped first.
      if (write(key, JSON.stringify(all.slice(0, count)))) return true;
    }
    return false;
  };

  const whole = () =>
    slots.map((key) => ({ key, save: saveUnder(key) })).filter(({ save }) => save).sort((a, b) => b.save.rev - a.save.rev);
  const newest = () => whole()[0]?.save ?? null;
  let lure = newId(); // the one on the bench
  let since = now(); // when it was opened
  const shelved = (id) => saveUnder(shelfKey + id);
  const sealedAs = (id, session, time = now()) => JSON.stringify({ ...sealed(0, time, tab, session), lure: id });

  /** Stores an unusable text elsewhere, so that the next save does not overwrite it. True when it is safe. */
  const setAside = (text) => remember(asideKey, { time: now(), text }, (entry) => entry?.text !== text);

  /** The lures behind such keys, the last one first. Damaged ones are set aside. */
  const listed = (beginning) => {
    const found = [];
    for (const id of idsOf(beginning) ?? []) {
      const text = read(beginning + id);
      const save = unseal(text ?? "");
      if (save !== null) found.push({ id, time: save.time, session: save.session });
      else if (text !== null && setAside(text)) remove(beginning + id);
    }
    return found.sort((a, b) => b.time - a.time);
  };

  /** Moves a lure from one place to the other; it stays where it is when that fails. */
  const move = (from, to, id) => {
    const text = read(from + id);
    const session = unseal(text ?? "")?.session;
    if (session === undefined) return false;
    remove(from + id); // first: it may take the space that it needs there
    if (write(to + id, sealedAs(id, session))) return true;
    put(from + id, text);
    return false;
  };

  return {
    /** The newest complete save, and the text of a damaged one where there is one; that is set aside where there is space. */
    load() {
      let damaged = null;
      for (const key of slots) {
        const text = read(key);
        if (text === null || unseal(text)) continue;
        damaged = text;
        if (setAside(text)) remove(key);
      }
      const found = newest();
      lure = found?.lure ?? lure;
      return { session: found?.session ?? null, damaged };
    },

    /** True when the session was saved. Overwrites the older slot. */
    save(session) {
      const saves = whole();
      const rev = (saves[0]?.save.rev ?? 0) + 1;
      const key = saves.length === 0 ? slots[0] : slots.find((slot) => slot !== saves[0].key);
      return write(key, JSON.stringify({ ...sealed(rev, now(), tab, session), lure }));
    },

    /** Puts a session onto the shelf, under this id or a new one. True when it is safe there. */
    shelve(session, id) {
      const place = id ?? newId();
      return write(shelfKey + place, sealedAs(place, session));
    },
    /** Makes the lure on the bench the one with this id; a new one for null. */
    adopt(id) {
      lure = isId(id) ? id : newId();
      since = now();
    },
    /** True when another tab has put this lure onto the shelf since it was opened here: that version is newer. */
    overtaken() {
      const there = shelved(lure);
      return there !== null && there.tab !== tab && there.time >= since;
    },
    /** The lures on the shelf except the one on the bench, the last used first. */
    lures: () => listed(shelfKey).filter(({ id }) => id !== lure),
    /** Those that were thrown away, the last one first. */
    binned: () => listed(binKey),
    onShelf: (id) => shelved(id)?.session ?? null,
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
      const before = new Map();
      const change = (key, text) => {
        if (!before.has(key)) before.set(key, read(key));
        if (text !== null) return put(key, text);
        remove(key);
        return true;
      };
      const became = new Map();
      const lay = (beginning) => ({ id: there, session, time }) => {
        const id = newId();
        became.set(there, id);
        return change(beginning + id, sealedAs(id, session, time));
      };
      const throwAway = (id) => {
        const session = shelved(id)?.session;
        return session === undefined || (change(shelfKey + id, null) && change(binKey + id, sealedAs(id, session)));
      };
      if (change(drawerKey, drawer) && away.every(throwAway) && lures.every(lay(shelfKey)) && bin.every(lay(binKey))) return became;
      for (const [key, text] of before) if (text === null) remove(key);
      for (const [key, text] of before) if (text !== null) put(key, text);
      return null;
    },
    /** Ids of all lures on the device, in the bin too, and of the one on the bench; null where nothing can be read. */
    known() {
      const shelf = idsOf(shelfKey);
      return shelf && new Set([lure, ...shelf, ...(idsOf(binKey) ?? [])]);
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
      write(key, "yes");
      return true;
    },

    lureId: () => lure,
    drawer: () => read(drawerKey),
    keepDrawer: (text) => write(drawerKey, text),

    newest,
    setAside,
    asides: () => list(asideKey),

    /** Keeps a session that is about to be replaced, among the last few; it replaces the one that it continues. */
    keep: (session, before) =>
      remember(keptKey, { time: now(), session }, (entry) => entry?.session !== session && entry?.session !== before),
    kept: () => list(keptKey).filter((entry) => typeof entry?.session === "string" && Number.isFinite(entry?.time)),

    /** True for a storage event of a save by another tab. */
    fromElsewhere({ key, newValue }) {
      if (!slots.includes(key) || newValue === null) return false;
      const save = unseal(newValue);
      return save !== null && save.tab !== tab;
    },
  };
}
