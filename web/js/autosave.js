// When to save: half a second after the last change, and at once when the page may be about to go.

import { canHold } from "./tabs.js";

const delayMs = 500;

/**
 * `core` is the bench, `store` the device's storage. `onFailure` and `onSuccess` tell how a save went, `onElsewhere`
 * that another tab has saved.
 */
export function createAutosave({ core, store, onFailure, onSuccess, onElsewhere }) {
  let timer = 0;
  let dirty = false;
  let copy = null; // document text of a lure that was opened from a link and is not to be kept until it changes
  let pristine = null; // document text of a demo that nobody has changed yet: it need not be kept beside others
  let opening = false; // another lure is on its way onto the bench
  let disputed = false; // another tab keeps the bench, or has saved and nobody has said yet whose work counts
  let atYield = null;   // document text when the bench went to another tab

  let lost = false; // the last try to keep the work failed: it stands on the bench alone

  function write() {
    dirty = false;
    lost = !store.save(core.sessionJson());
    if (lost) onFailure();
    else onSuccess();
  }

  function flush() {
    clearTimeout(timer);
    if (!dirty) return;
    if (copy !== null && core.documentJson() === copy) {
      dirty = false;
      return;
    }
    if (disputed) {
      // Neither side may lose: this tab's work waits among the kept lures.
      dirty = false;
      if (!store.keep(core.sessionJson())) onFailure();
      return;
    }
    if (copy !== null) leaveCopy();
    write();
  }

  // The lure that was here before the link goes onto the shelf.
  function leaveCopy() {
    copy = null;
    const before = store.newest();
    if (!store.begin(before?.session ?? null)) onFailure();
  }

  function changed() {
    if (opening) pristine = core.documentJson();
    opening = false;
    dirty = true;
    clearTimeout(timer);
    timer = setTimeout(flush, delayMs);
  }

  function watch() {
    document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && flush());
    for (const event of ["pagehide", "freeze"]) window.addEventListener(event, flush);
    document.addEventListener("freeze", flush);
    window.addEventListener("storage", (event) => {
      if (canHold() || !store.fromElsewhere(event)) return;
      disputed = true;
      onElsewhere();
    });
  }

  return {
    changed,
    flush,
    watch,
    notKept: onFailure,
    /** Is there work on the bench that the device refuses to keep? Tries to keep it first. */
    unsaved() {
      flush();
      return lost;
    },
    /** The current document came from a link (flush before it is opened): it is kept once it differs from this. */
    holdBack() {
      dirty = false;
      clearTimeout(timer);
      copy = core.documentJson();
    },
    /** The demo on the bench is as it came. */
    untouched() {
      pristine = core.documentJson();
    },
    /** What comes onto the bench next is another lure; this one goes onto the shelf, unless nothing was done to it. */
    another() {
      clearTimeout(timer);
      const asItCame = [copy, pristine].includes(core.documentJson());
      if (!store.begin(asItCame ? null : core.sessionJson())) onFailure();
      dirty = false;
      copy = null;
      opening = true;
    },
    /** Keep what is on the bench now, whatever it came from. */
    keepNow() {
      if (copy !== null) leaveCopy();
      clearTimeout(timer);
      write();
    },
    /** Another tab holds the bench: what is changed here waits among the kept lures. */
    yieldBench() {
      disputed = true;
      flush();
      atYield = core.documentJson();
    },
    /**
     * This tab holds the bench again. What was changed here since counts, and the other tab's work is kept aside; without
     * a change the other tab's session is given.
     */
    resumeBench() {
      const changedHere = core.documentJson() !== atYield;
      if (!changedHere) return this.takeTheirs();
      this.keepMine();
      return null;
    },
    /** The answer to onElsewhere: this tab's work counts. */
    keepMine() {
      disputed = false;
      const theirs = store.newest();
      if (theirs) store.keep(theirs.session);
      write();
    },
    /** The answer to onElsewhere: gives the other tab's session; this tab's own one is kept aside. */
    takeTheirs() {
      disputed = false;
      dirty = false;
      clearTimeout(timer);
      store.keep(core.sessionJson());
      copy = null;
      const theirs = store.newest();
      store.adopt(theirs?.lure);
      return theirs?.session ?? null;
    },
  };
}
