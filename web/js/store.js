// Saves the session in the browser's storage. Two slots are written in turn, each with a revision and a checksum,
// so that an interrupted write never damages the one before; further lures are on a shelf, each under its own id.
// Every access may fail (no storage, no space, private windows).

import { crc32 } from "./checksum.js";

const slots = ["evenfall.slot.a", "evenfall.slot.b"];
const asideKey = "evenfall.aside"; // damaged saves, unchanged
const keptKey = "evenfall.kept"; // whole sessions that were replaced by another
const shelfKey = "evenfall.lure."; // + id: a lure that is not on the bench
export const drawerKey = "evenfall.drawer"; // the builder's own pieces
const keepAtMost = 5;
const isId = (id) => typeof id === "string" && /^[a-z0-9-]{1,40}$/.test(id);
const newId = () => `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 8)}`;

const sealed = (rev, time, tab, session) => ({ rev, time, tab, session, crc: crc32(`${rev} ${time} ${tab} ${session}`) });

/** A save's text → {rev, time, tab, lure, session}, or null where it is incomplete or damaged; `lure` is the lure's id. */
export function unseal(text) {
  try {
    const { rev, time, tab, lure, session, crc } = JSON.parse(text);
    const whole = Number.isSafeInteger(rev) && typeof session === "string" && crc === sealed(rev, time, tab, session).crc;
    return whole ? { rev, time, tab, lure: isId(lure) ? lure : null, session } : null;
  } catch {
    return null;
  }
}

/**
 * `storage()` returns the browser's storage or throws; `tab` identifies this tab; `now()` returns ms.
 * No function of the store throws.
 */
export function createStore({ storage, tab, now }) {
  const read = (key) => {
    try {
      return storage().getItem(key);
    } catch {
      return null;
    }
  };
  const write = (key, text) => {
    try {
      storage().setItem(key, text);
      return storage().getItem(key) === text;
    } catch {
      return false;
    }
  };
  const remove = (key) => {
    try {
      storage().removeItem(key);
    } catch {
      // What cannot be removed will be overwritten.
    }
  };
  const list = (key) => {
    try {
      const found = JSON.parse(read(key) ?? "[]");
      return Array.isArray(found) ? found : [];
    } catch {
      return [];
    }
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
    slots.map((key) => ({ key, save: unseal(read(key)) })).filter(({ save }) => save).sort((a, b) => b.save.rev - a.save.rev);
  const newest = () => whole()[0]?.save ?? null;
  const keysOnShelf = () => {
    try {
      return Object.keys(storage()).filter((key) => key.startsWith(shelfKey) && isId(key.slice(shelfKey.length)));
    } catch {
      return [];
    }
  };
  let lure = newId(); // the one on the bench
  let since = now(); // when it was opened
  const shelved = (id) => unseal(read(shelfKey + id) ?? "");

  /** Stores an unusable text elsewhere, so that the next save does not overwrite it. True when it is safe. */
  const setAside = (text) => remember(asideKey, { time: now(), text }, (entry) => entry?.text !== text);

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
      return write(shelfKey + place, JSON.stringify({ ...sealed(0, now(), tab, session), lure: place }));
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
    /** The lures on the shelf except the one on the bench, the last used first. Damaged ones are set aside. */
    lures() {
      const found = [];
      for (const key of keysOnShelf()) {
        const id = key.slice(shelfKey.length);
        const text = read(key);
        const save = unseal(text ?? "");
        if (save === null && text !== null && setAside(text)) remove(key);
        if (save !== null && id !== lure) found.push({ id, time: save.time, session: save.session });
      }
      return found.sort((a, b) => b.time - a.time);
    },
    onShelf: (id) => shelved(id)?.session ?? null,
    /** Deletes a lure from the shelf; it stays among the kept ones for a while. */
    drop(id) {
      const text = read(shelfKey + id);
      const session = shelved(id)?.session;
      remove(shelfKey + id); // first: it may take the space that the kept one needs
      if (session !== undefined && !this.keep(session)) write(shelfKey + id, text);
    },
    /** Ids of all lures on the device and of the one on the bench; null where nothing can be read. */
    known() {
      try {
        const keys = Object.keys(storage());
        return new Set([lure, ...keys.filter((key) => key.startsWith(shelfKey)).map((key) => key.slice(shelfKey.length))]);
      } catch {
        return null;
      }
    },

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
