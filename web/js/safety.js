// How safe the work is: whether the browser has promised to keep the storage, and how much was changed since everything
// was last saved to a file. The bench says both on its shelf.

const dayMs = 24 * 3600 * 1000;

/** `core` is the bench, `store` the device's storage, `manager` the browser's (navigator.storage). */
export function createSafety({ core, store, manager, now }) {
  let persisted = false;
  let asked = false;
  let last = core.documentJson(); // the lure as it was last counted

  function tell() {
    const { changes, from } = store.since();
    core.setSafety(persisted, changes, (now() - from) / dayMs);
  }
  async function learn(answer) {
    persisted = (await answer?.catch(() => false)) ?? false;
    tell();
  }
  return {
    tell,
    /** Whether the storage is kept already. */
    look: () => learn(manager?.persisted?.()),
    /** Work has been saved on the device: the first time in a visit, the browser is asked to keep it. */
    kept() {
      if (!asked && !persisted) learn(manager?.persist?.());
      asked = true;
      const document = core.documentJson();
      if (document === last) return;
      last = document;
      store.countChange();
      tell();
    },
    /** Everything has been saved to a file. */
    saved() {
      store.everythingSaved();
      tell();
    },
  };
}
