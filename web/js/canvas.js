// The canvas in the page: wakes the bench on events, passes on sizes and pixel ratios, lets the keyboard focus
// leave, and handles a lost drawing context.

import { part } from "./dialogs.js";
import { dismiss, notice } from "./notices.js";
import { words } from "./words.js";

const wakingEvents = [
  "pointerdown", "pointermove", "pointerup", "pointercancel", "touchstart", "touchmove", "touchend", "touchcancel", "wheel",
  "keydown", "keyup", "paste", "resize", "focus", "blur", "hashchange", "orientationchange", "pageshow",
];
const lostForMs = 3000;

/** The user's text size relative to the usual 16 px. */
export const textScale = () => Math.min(2, Math.max(0.8, parseFloat(getComputedStyle(document.documentElement).fontSize) / 16 || 1));

/** Returns the function that looks whether size, pixel ratio or text size have changed. */
export function watchCanvas(core) {
  const canvas = part("canvas");
  wakeOnEvents(core);
  keepKeyboardFree(canvas);
  watchSurface(core, canvas);
  return watchSize(core, canvas);
}

/** Passes on whether the device asks for less motion. */
export function watchMotion(core) {
  const less = matchMedia("(prefers-reduced-motion: reduce)");
  less.addEventListener("change", () => core.setCalm(less.matches));
  core.setCalm(less.matches);
}

// In the capture phase, because the bench's own listeners stop some events.
function wakeOnEvents(core) {
  for (const name of wakingEvents) window.addEventListener(name, () => core.wake(), { capture: true, passive: true });
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && core.wake());
}

// The bench checks its size on "resize", which is not sent when only the canvas or the pixel ratio changed. No
// single event reports a new pixel ratio in every browser, so each of these triggers a check.
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
  return () => letters !== textScale() && look();
}

// Inside the canvas, arrow keys move between fields. Tab belongs to the page and leaves the canvas.
function keepKeyboardFree(canvas) {
  for (const name of ["keydown", "keyup"]) {
    window.addEventListener(name, (event) => {
      if (event.key === "Tab" && event.target === canvas) event.stopPropagation();
    }, { capture: true });
  }
  // Touches that the bench handles do not focus the canvas by themselves.
  canvas.addEventListener("pointerdown", () => canvas.focus({ preventScroll: true }), { capture: true });
}

function watchSurface(core, canvas) {
  let timer = 0;
  canvas.addEventListener("webglcontextlost", (event) => {
    event.preventDefault(); // otherwise the browser never restores it
    const again = [words.stop.reload, () => location.reload()];
    timer = setTimeout(() => notice("surface", words.notices.screenLost, [again], false), lostForMs);
  });
  canvas.addEventListener("webglcontextrestored", () => {
    clearTimeout(timer);
    dismiss("surface");
    core.wake();
  });
}
