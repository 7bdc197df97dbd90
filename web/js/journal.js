// A journal of what is written to the browser's storage, in its database: that is asked to have it on the disk before it says so,
// while the storage itself reaches the disk some seconds late. What a killed browser has lost of it is put back from here.

const journal = "journal"; // key of the storage → { n, text }, text null for what was removed; n numbers the writes
const countKey = "evenfall.count"; // of the storage: the number of its last write; of the journal, likewise
const patienceMs = 5000; // a database that takes longer hangs

/** `storage()` returns the browser's storage or throws, `onStore` is the database's; `onHang` hears that it does not answer. */
export function createJournal({ storage, onStore, now, onHang }) {
  const last = () => Number(storage().getItem(countKey)) || 0;
  const ask = (mode, work) => {
    const hangs = setTimeout(onHang, patienceMs);
    return onStore(journal, mode, work).finally(() => clearTimeout(hangs));
  };
  let waiting = new Map();
  let writing = false;

  async function write() {
    if (writing) return;
    writing = true;
    for (let kept = true; kept && waiting.size > 0;) {
      const batch = waiting;
      waiting = new Map();
      const n = Math.max(...[...batch.values()].map((entry) => entry.n));
      kept = (await ask("readwrite", (store) => {
        for (const [key, entry] of batch) store.put(entry, key);
        return store.put({ n, text: null }, countKey);
      })) !== undefined;
      if (!kept) waiting = new Map([...batch, ...waiting]); // with the next write
    }
    writing = false;
  }

  return {
    /** A text was written under a key of the storage, null where it was removed. */
    wrote(key, text) {
      const n = Math.max(now(), last() + 1);
      storage().setItem(countKey, n);
      waiting.set(key, { n, text });
      write();
    },
    /** Puts back what the storage has lost. To be called before it is read, and only where no other tab works with it. */
    async recover() {
      try {
        const known = last();
        const count = await ask("readonly", (store) => store.get(countKey));
        if (!(count?.n > known)) return;
        const keys = await ask("readonly", (store) => store.getAllKeys());
        const entries = await ask("readonly", (store) => store.getAll());
        if (last() !== known) return; // another tab was quicker
        entries.forEach(({ n, text }, i) => {
          if (n < known || keys[i] === countKey) return;
          if (text === null) storage().removeItem(keys[i]);
          else storage().setItem(keys[i], text);
        });
        storage().setItem(countKey, count.n);
      } catch {
        // Without a storage there is nothing to put back; where it is full, the rest of it stays as it is.
      }
    },
  };
}
