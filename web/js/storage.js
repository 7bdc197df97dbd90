// The browser's storage as a place of texts under keys. No function throws: every access may fail (no storage, no space,
// private windows).

import { crc32 } from "./checksum.js";

export const isId = (id) => typeof id === "string" && /^[a-z0-9-]{1,40}$/.test(id);
export const newId = () => `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 8)}`;

/** A save with its checksum; `rev` counts the saves of the bench, and begins again after the largest number. */
export const sealed = (rev, time, tab, session) => ({ rev, time, tab, session, crc: crc32(`${rev} ${time} ${tab} ${session}`) });
export const revAfter = (rev) => (rev < Number.MAX_SAFE_INTEGER ? rev + 1 : 1);

/**
 * A save's text → {rev, time, tab, session, crc, lure, shelf}, or null where it is incomplete or damaged; `lure` is the lure's id,
 * `shelf` the checksum of the version on the shelf that it goes on from, null where that is not known.
 */
export function unseal(text) {
  try {
    const { rev, time, tab, lure, shelf, session, crc } = JSON.parse(text);
    const whole = Number.isSafeInteger(rev) && typeof session === "string" && crc === sealed(rev, time, tab, session).crc;
    return whole ? { rev, time, tab, session, crc, lure: isId(lure) ? lure : null, shelf: Number.isInteger(shelf) ? shelf : null } : null;
  } catch {
    return null;
  }
}

/** `storage()` returns the browser's storage or throws; `journal` hears of all that is written. */
export function createStorage(storage, journal) {
  const read = (key) => {
    try {
      return storage().getItem(key);
    } catch {
      return null;
    }
  };
  return {
    read,
    put(key, text) {
      try {
        storage().setItem(key, text);
        if (storage().getItem(key) !== text) return false;
        journal?.wrote(key, text);
        return true;
      } catch {
        return false;
      }
    },
    /** True, because what cannot be removed will be overwritten. */
    remove(key) {
      try {
        storage().removeItem(key);
        journal?.wrote(key, null);
      } catch {
        // There is no storage: then nothing is there.
      }
      return true;
    },
    /** The value of a JSON text, or `otherwise` where there is none. */
    json(key, otherwise) {
      try {
        return JSON.parse(read(key)) ?? otherwise;
      } catch {
        return otherwise;
      }
    },
    /** The ids that stand behind this beginning of a key; null where nothing can be read. */
    idsOf(beginning) {
      try {
        const keys = Object.keys(storage()).filter((key) => key.startsWith(beginning));
        return keys.map((key) => key.slice(beginning.length)).filter(isId);
      } catch {
        return null;
      }
    },
  };
}
