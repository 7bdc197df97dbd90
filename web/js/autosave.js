// When to save: half a second after the last change, and at once when the page may be about to go.

import { canHold } from "./tabs.js";

const delayMs = 500;

/**
 * `core` is the bench, `store` the device's storage. `onFailure` and `onSuccess` tell how a save went, `onLeave` whether
 * another lure may come onto the bench (not where this one would be lost), `onElsewhere` that another tab has saved.
 */
export function createAutosave({ core, store, onFailure, onSuccess, onLeave, onElsewhere }) {
  let timer = 0;
  let dirty = false;
  let lost = false;     // the last try to keep the work failed: it stands on the bench alone
  let copy = null;      // document text of a lure that was opened from a link and is not to be kept until it changes
  let pristine = null;  // document text of a lure as it came onto the bench: it need not be kept beside others
  let coming = false;   // another lure is on its way onto the bench
  let owed = false;     // what the device keeps is not what lies here: it is put away before anything is written over it
  let disputed = false; // another tab keeps the bench, or has saved and nobody has said yet whose work counts
  let atYield = null;   // document text when the bench went to another tab
  let aside = null;     // this tab's session that waits among the kept lures

  function tell(kept) {
    lost = !kept;
    if (lost) onFailure();
    else onSuccess();
    return kept;
  }

  // Puts away what the device keeps, if it is not what lies here: another version of the same lure among the kept ones,
  // another lure onto the shelf. True when it is safe.
  function settle() {
    if (!owed) return true;
    const theirs = store.newest();
    const same = copy === null && theirs?.lure === store.lureId();
    if (theirs && !(same ? store.keep(theirs.session) : store.shelve(theirs.session, theirs.lure))) return false;
    letGo();
    return true;
  }

  function letGo() {
    if (copy !== null || store.overtaken()) store.adopt(null);
    pristine = copy ?? pristine;
    copy = null;
    owed = false;
  }

  function write() {
    clearTimeout(timer);
    dirty = false;
    if (!disputed) return tell(settle() && store.save(core.sessionJson()));
    // Neither side may lose: this tab's work waits among the kept lures.
    const session = core.sessionJson();
    if (tell(store.keep(session, aside))) aside = session;
  }

  function flush() {
    if (coming) came();
    if (copy !== null && core.documentJson() === copy) dirty = false;
    else if (dirty || lost) write();
  }

  // May another lure come onto the bench? Then nothing that loses its place is lost.
  function leave() {
    const asItCame = [copy, pristine, atYield].includes(core.documentJson());
    coming = (disputed || settle()) && (asItCame || store.shelve(core.sessionJson(), disputed ? null : store.lureId()));
    onLeave(coming);
    return coming;
  }

  function came(id) {
    if (!coming) return;
    coming = lost = false;
    store.adopt(id);
    pristine = core.documentJson();
    copy = null;
  }

  function changed() {
    dirty = true;
    clearTimeout(timer);
    timer = setTimeout(flush, delayMs);
  }

  // It has been said whose work counts.
  function resolve() {
    disputed = false;
    atYield = aside = null;
    owed = true;
  }

  function take(theirs, open) {
    if (!theirs || open(theirs.session)) return;
    store.adopt(theirs.lure);
    copy = null;
    owed = false;
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
    leave,
    came,
    notKept: onFailure,
    /** Is there work on the bench that the device refuses to keep? Tries to keep it first. */
    unsaved() {
      flush();
      return lost;
    },
    /** The current document came from a link (flush before it is opened): it is kept once it differs from this. */
    holdBack() {
      dirty = lost = false;
      clearTimeout(timer);
      copy = core.documentJson();
      owed = true;
    },
    /** The demo on the bench is as it came. */
    untouched() {
      pristine = core.documentJson();
    },
    /** The builder says so: what lies on the bench need not be kept. */
    letGo() {
      letGo();
      pristine = core.documentJson();
    },
    /**
     * `open()` brings another lure onto the bench, the one of `id` if it has one, or gives why it is refused, which is given on.
     * This one goes onto the shelf, unless nothing was done to it; where it cannot, it stays, and nothing is opened.
     */
    another(open, id) {
      const refusal = leave() ? open() : "";
      if (refusal) coming = false;
      else came(id);
      return refusal;
    },
    /** Keep what is on the bench now, whatever it came from. */
    keepNow() {
      if (disputed) {
        // From now on it is another lure than the one that the other tab keeps.
        store.adopt(null);
        copy = atYield = null;
      }
      write();
      pristine = null;
    },
    /** Another tab holds the bench: what is changed here waits among the kept lures. */
    yieldBench() {
      disputed = true;
      flush();
      atYield = lost ? null : core.documentJson();
    },
    /**
     * This tab holds the bench again. What was changed or opened here since stays, and what the other tab kept is put away;
     * without that `open(session)` brings the other tab's lure onto the bench, or gives why not.
     */
    resumeBench(open) {
      if (!disputed) return;
      const now = core.documentJson();
      const theirs = now === atYield && now !== copy;
      resolve();
      if (theirs) take(store.newest(), open);
      else if (now !== copy) write();
    },
    /** The answer to onElsewhere: this tab's work counts. */
    keepMine() {
      resolve();
      write();
    },
    /** The answer to onElsewhere: `open(session)` brings the other tab's; this tab's own one is kept aside. */
    takeTheirs(open) {
      if (!tell(store.keep(core.sessionJson(), aside))) return onElsewhere();
      resolve();
      take(store.newest(), open);
    },
  };
}
