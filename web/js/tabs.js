// One tab or window at a time keeps the work on the bench: whoever holds the browser's lock. Another one may take it over.

const name = "evenfall.bench";
let usable = Boolean(globalThis.navigator?.locks);

/** Can this browser say which tab holds the bench? */
export const canHold = () => usable;

/**
 * The bench as this tab has it: `ask()` takes it where it is free, and may be called again and again; `takeOver()` takes it
 * from whoever has it. `onHeld` is called when it is this tab's, `onLost` when it is, or has become, somebody else's.
 */
export function createHold(onHeld, onLost) {
  let held = null; // not known before the first answer
  let asking = false;
  let last = 0;

  function request(options) {
    const mine = ++last; // an older request of this tab's own is no other tab
    const lose = () => {
      if (mine !== last || held === false) return;
      held = false;
      onLost();
    };
    asking = true;
    navigator.locks.request(name, options, (lock) => {
      asking = false;
      if (!lock) return lose();
      held = true;
      onHeld();
      return new Promise(() => {});
    }).catch((fault) => {
      if (fault.name === "AbortError") lose();
      else if (fault instanceof DOMException) usable = false; // no other tab: the browser gives us no locks
      else throw fault;
    });
  }
  return {
    ask: () => usable && !held && !asking && request({ ifAvailable: true }),
    takeOver: () => request({ steal: true }),
  };
}
