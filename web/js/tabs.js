// Only one tab or window at a time saves the work on the bench: the one that holds the browser's lock. Another one
// may take it over.

const name = "evenfall.bench";
let usable = Boolean(globalThis.navigator?.locks);

/** True where the browser can tell which tab holds the bench. */
export const canHold = () => usable;

/** True where a tab is known to hold the bench. */
export async function benchIsHeld() {
  const { held } = (await navigator.locks?.query().catch(() => null)) ?? { held: [] };
  return held.some((lock) => lock.name === name);
}

/**
 * This tab's hold on the bench: `ask()` takes it where it is free, and may be called repeatedly; `takeOver()` takes it from
 * another tab. `onHeld` is called when this tab has it, `onLost` when another tab has it.
 */
export function createHold(onHeld, onLost) {
  let held = null; // unknown before the first answer
  let asking = false;
  let last = 0;

  function request(options) {
    const mine = ++last; // an older request of this tab is not another tab
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
      else if (fault instanceof DOMException) usable = false; // not another tab: the browser gives no locks
      else throw fault;
    });
  }
  return {
    ask: () => usable && !held && !asking && request({ ifAvailable: true }),
    takeOver: () => request({ steal: true }),
  };
}
