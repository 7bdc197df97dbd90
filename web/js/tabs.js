// One tab or window at a time keeps the work on the bench: whoever holds the browser's lock. Another one may take it over.

const name = "evenfall.bench";

/** Can this browser say which tab holds the bench? */
export const canHold = () => Boolean(navigator.locks);

// Holds until the tab goes or another takes over; `onLost` is called when it is, or has been, somebody else's.
function hold(options, onHeld, onLost) {
  const held = navigator.locks.request(name, options, (lock) => {
    if (!lock) return onLost();
    onHeld();
    return new Promise(() => {});
  });
  held.catch(onLost);
}

export const holdBench = (onHeld, onLost) => hold({ ifAvailable: true }, onHeld, onLost);
export const takeOverBench = (onHeld, onLost) => hold({ steal: true }, onHeld, onLost);
