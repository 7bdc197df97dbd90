// When to save: half a second after the last change, and at once when the page may be closed.

import { canHold } from "./tabs.js";

const delayMs = 500;

/**
 * `core` is the bench, `store` the device's storage. `onFailure` and `onSuccess` report a save, `onLeave` whether another
 * lure may be opened (not where this one would be lost), `onElsewhere` that another tab has saved.
 */
export function createAutosave({ core, store, onFailure, onSuccess, onLeave, onElsewhere }) {
  let timer = 0;
  let dirty = false;
  let lost = false; // the last save failed: the work exists only on the bench
  let copy = null; // document text of a lure opened from a link, which is not saved until it changes
  let pristine = null; // document text of a lure as it was opened: unchanged, it need not be kept beside others
  let coming = false; // another lure is being opened
  let owed = false; // the device has saved something else than this work: it must be put away before it is overwritten
  let disputed = false; // another tab has the bench, or has saved, and the user has not yet decided whose work counts
  let atYield = null; // document text when the bench went to another tab
  let aside = null; // this tab's session, stored among the kept lures

  function tell(kept) {
    lost = !kept;
    if (lost) onFailure();
    else onSuccess();
    return kept;
  }

  // Puts away what the device has saved where it is not this work: another version of the same lure goes to the
  // kept ones, another lure to the shelf. True when it is safe to overwrite.
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
    // Neither side may lose work: this tab's session is stored among the kept lures.
    const session = core.sessionJson();
    if (tell(store.keep(session, aside))) aside = session;
  }

  function flush() {
    if (coming) came();
    if (copy !== null && core.documentJson() === copy) dirty = false;
    else if (dirty || lost) write();
  }

  // Whether another lure may be opened: only when nothing is lost by it.
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

  // The user has decided whose work counts.
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
    /** True when there is work on the bench that the device cannot save. Tries to save it first. */
    unsaved() {
      flush();
      return lost;
    },
    /** The current document came from a link (call flush before it is opened): it is saved once it differs from this. */
    holdBack() {
      dirty = lost = false;
      clearTimeout(timer);
      copy = core.documentJson();
      owed = true;
    },
    /** The demo on the bench is unchanged. */
    untouched() {
      pristine = core.documentJson();
    },
    /** The builder's decision: the work on the bench need not be saved. */
    letGo() {
      letGo();
      pristine = core.documentJson();
    },
    /**
     * `open()` opens another lure, the one with `id` if it has one, or returns the reason of a refusal, which is passed on.
     * The present lure goes onto the shelf, unless it is unchanged; where that fails, it stays, and nothing is opened.
     */
    another(open, id) {
      const refusal = leave() ? open() : "";
      if (refusal) coming = false;
      else came(id);
      return refusal;
    },
    /** Save the work on the bench now, whatever its origin. */
    keepNow() {
      if (disputed) {
        // From now on this is another lure than the one in the other tab.
        store.adopt(null);
        copy = atYield = null;
      }
      write();
      pristine = null;
    },
    /** Another tab holds the bench: changes made here are stored among the kept lures. */
    yieldBench() {
      disputed = true;
      flush();
      atYield = lost ? null : core.documentJson();
    },
    /**
     * This tab holds the bench again. What was changed or opened here since stays, and the other tab's save is put away;
     * without changes here, `open(session)` opens the other tab's lure, or returns the reason of a refusal.
     */
    resumeBench(open) {
      if (!disputed) return;
      const now = core.documentJson();
      const theirs = now === atYield && now !== copy;
      resolve();
      if (theirs) take(store.newest(), open);
      else if (now !== copy) write();
    },
    /** Answer to onElsewhere: keep this tab's work. */
    keepMine() {
      resolve();
      write();
    },
    /** Answer to onElsewhere: `open(session)` opens the other tab's work; this tab's own is kept aside. */
    takeTheirs(open) {
      if (!tell(store.keep(core.sessionJson(), aside))) return onElsewhere();
      resolve();
      take(store.newest(), open);
    },
  };
}
