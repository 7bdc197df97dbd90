// Keeps the session in the browser's own storage. Two slots are written in turn, each with a revision and a checksum, so
// that a write cut short never costs the one before it; further lures wait on a shelf, each under its own id. Every access
// may fail (no storage, no room, private windows).

import { crc32 } from "./checksum.js";

const slots = ["evenfall.slot.a", "evenfall.slot.b"];
const asideKey = "evenfall.aside";     // damaged saves, as they were found
const keptKey = "evenfall.kept";       // whole sessions that another one took the place of
const shelfKey = "evenfall.lure."; // + id: a lure that is not on the bench
const drawerKey = "evenfall.drawer";   // the builder's own pieces
const keepAtMost = 5;
const isId = (id) => typeof id === "string" && /^[a-z0-9-]{1,40}$/.test(id);
const newId = () => `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 8)}`;

const sealed = (rev, time, tab, session) => ({ rev, time, tab, session, crc: crc32(`${rev} ${time} ${tab} ${session}`) });

/** A save's text → {rev, time, tab, lure, session}, or null when it is not one whole save; `lure` is the id of the lure. */
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
 * `storage()` gives the browser's storage or throws; `tab` tells this tab from others; `now()` gives ms.
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
  const remember = (key, entry) => {
    for (let count = keepAtMost; count > 0; count--) {
      // With little room the oldest go first.
      if (write(key, JSON.stringify([entry, ...list(key)].slice(0, count)))) return true;
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

  /** Moves a text that could not be used out of the way of the next save. True when it is safe elsewhere. */
  const setAside = (text) => remember(asideKey, { time: now(), text });

  return {
    /** The newest whole save and whether a damaged one was found and set aside. */
    load() {
      let damaged = false;
      for (const key of slots) {
        const text = read(key);
        if (text === null || unseal(text)) continue;
        damaged = true;
        if (setAside(text)) remove(key);
      }
      const found = newest();
      lure = found?.lure ?? lure;
      return { session: found?.session ?? null, damaged };
    },

    /** True when the session is on the device. Overwrites the older slot. */
    save(session) {
      const saves = whole();
      const rev = (saves[0]?.save.rev ?? 0) + 1;
      const key = saves.length === 0 ? slots[0] : slots.find((slot) => slot !== saves[0].key);
      return write(key, JSON.stringify({ ...sealed(rev, now(), tab, session), lure }));
    },

    /** Another lure comes onto the bench; the one that lies there, if given, goes onto the shelf. True when it is safe. */
    begin(session) {
      const before = lure;
      lure = newId();
      return session === null || write(shelfKey + before, JSON.stringify({ ...sealed(0, now(), tab, session), lure: before }));
    },
    /** Puts a copy of a session onto the shelf. True when it is safe there. */
    shelve(session) {
      const id = newId();
      return write(shelfKey + id, JSON.stringify({ ...sealed(0, now(), tab, session), lure: id }));
    },
    /** The lure on the bench is the one of this id. */
    adopt(id) {
      lure = isId(id) ? id : newId();
    },
    /** The lures on the shelf but for the one on the bench, the last used first. Damaged ones are set aside. */
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
    onShelf: (id) => unseal(read(shelfKey + id) ?? "")?.session ?? null,
    /** Takes a lure off the shelf for good; it can still be found among the kept ones for a while. */
    drop(id) {
      const session = unseal(read(shelfKey + id) ?? "")?.session;
      if (session !== undefined) this.keep(session);
      remove(shelfKey + id);
    },

    /** Says once that something has been seen on this device; true the first time. */
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

    /** A whole session that is about to lose its place: kept among the last few. */
    keep(session) {
      const same = list(keptKey)[0]?.session === session;
      return same || remember(keptKey, { time: now(), session });
    },
    kept: () => list(keptKey).filter((entry) => typeof entry?.session === "string" && Number.isFinite(entry?.time)),

    /** Does a storage event tell of a save by another tab? */
    fromElsewhere({ key, newValue }) {
      if (!slots.includes(key) || newValue === null) return false;
      const save = unseal(newValue);
      return save !== null && save.tab !== tab;
    },
  };
}
