// Keeps the session in the browser's own storage. Two slots are written in turn, each with a revision and a checksum, so
// that a write cut short never costs the one before it. Every access may fail (no storage, no room, private windows).

import { crc32 } from "./checksum.js";

const slots = ["evenfall.slot.a", "evenfall.slot.b"];
const asideKey = "evenfall.aside";     // damaged saves, as they were found
const keptKey = "evenfall.kept";       // whole sessions that another one took the place of
const keepAtMost = 5;

const sealed = (rev, time, tab, session) => ({ rev, time, tab, session, crc: crc32(`${rev} ${time} ${tab} ${session}`) });

/** A slot's text → {rev, time, tab, session}, or null when it is not one whole save. */
export function unseal(text) {
  try {
    const { rev, time, tab, session, crc } = JSON.parse(text);
    const whole = Number.isSafeInteger(rev) && typeof session === "string" && crc === sealed(rev, time, tab, session).crc;
    return whole ? { rev, time, tab, session } : null;
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
      return { session: newest()?.session ?? null, damaged };
    },

    /** True when the session is on the device. Overwrites the older slot. */
    save(session) {
      const saves = whole();
      const rev = (saves[0]?.save.rev ?? 0) + 1;
      const key = saves.length === 0 ? slots[0] : slots.find((slot) => slot !== saves[0].key);
      return write(key, JSON.stringify(sealed(rev, now(), tab, session)));
    },

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
