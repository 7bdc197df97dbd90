// Keeps the screen on while it is read from a step away. Browsers drop the lock when the page is hidden, so it is
// asked for again when it comes back; where there is no such lock, or it is refused, the screen goes dark as usual.

let wanted = false;
let lock = null;

async function ask() {
  if (!wanted || lock || document.visibilityState !== "visible" || !navigator.wakeLock) return;
  try {
    const held = await navigator.wakeLock.request("screen");
    held.addEventListener("release", () => {
      if (lock === held) lock = null;
    });
    lock = held;
    if (!wanted) release();
  } catch {
    // Refused, as with a low battery: nothing depends on it.
  }
}

function release() {
  lock?.release().catch(() => {});
  lock = null;
}

export function keepAwake(awake) {
  wanted = awake;
  if (awake) ask();
  else release();
}

document.addEventListener("visibilitychange", ask);
