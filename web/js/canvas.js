// The canvas in the page: wakes the bench on whatever happens, tells it of sizes and pixel ratios, lets the keyboard
// leave, and looks after a lost drawing surface.

import { part } from "./dialogs.js";
import { dismiss, notice } from "./notices.js";
import { words } from "./words.js";

const wakingEvents = [
  "pointerdown", "pointermove", "pointerup", "pointercancel", "touchstart", "touchmove", "touchend", "touchcancel", "wheel",
  "keydown", "keyup", "paste", "resize", "focus", "blur", "hashchange", "orientationchange", "pageshow",
];
const lostForMs = 3000;

/** How much larger than usual the reader has letters: the page's own size of them over the usual 16 px. */
export const textScale = () => Math.min(2, Math.max(0.8, parseFloat(getComputedStyle(document.documentElement).fontSize) / 16 || 1));

export function watchCanvas(core) {
  const canvas = part("canvas");
  wakeOnEvents(core);
  watchSize(core, canvas);
  keepKeyboardFree(canvas);
  watchSurface(core, canvas);
}

// In the capture phase, since the bench's own listeners stop some events.
function wakeOnEvents(core) {
  for (const name of wakingEvents) window.addEventListener(name, () => core.wake(), { capture: true, passive: true });
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && core.wake());
}

// The bench looks at its size when the window says "resize", which is not said when only the canvas or the pixel ratio
// changed. No single sign of a new pixel ratio is given by every browser, so that each is a reason to look.
function watchSize(core, canvas) {
  let dpr = window.devicePixelRatio;
  let letters = textScale();
  let telling = false;
  core.setTextScale(letters);
  const look = () => {
    if (telling) return;
    if (letters !== textScale()) {
      letters = textScale();
      core.setTextScale(letters);
    }
    if (dpr !== window.devicePixelRatio) {
      dpr = window.devicePixelRatio;
      core.setDpr(dpr);
    }
    telling = true;
    window.dispatchEvent(new Event("resize"));
    telling = false;
    core.wake();
  };
  const watchRatio = () => {
    matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`).addEventListener("change", () => {
      look();
      watchRatio();
    }, { once: true });
  };
  watchRatio();
  new ResizeObserver(look).observe(canvas);
  for (const name of ["resize", "orientationchange"]) window.addEventListener(name, look);
  window.visualViewport?.addEventListener("resize", look);
}

// Inside the canvas, arrow keys move from field to field. Tab belongs to the page: it reaches what lies outside.
function keepKeyboardFree(canvas) {
  for (const name of ["keydown", "keyup"]) {
    window.addEventListener(name, (event) => {
      if (event.key === "Tab" && event.target === canvas) event.stopPropagation();
    }, { capture: true });
  }
  // Touches that the bench takes for itself no longer give the canvas the focus.
  canvas.addEventListener("pointerdown", () => canvas.focus({ preventScroll: true }), { capture: true });
}

function watchSurface(core, canvas) {
  let timer = 0;
  canvas.addEventListener("webglcontextlost", (event) => {
    event.preventDefault(); // or the browser never gives it back
    const again = [words.stop.reload, () => location.reload()];
    timer = setTimeout(() => notice("surface", words.notices.screenLost, [again], false), lostForMs);
  });
  canvas.addEventListener("webglcontextrestored", () => {
    clearTimeout(timer);
    dismiss("surface");
    core.wake();
  });
}
