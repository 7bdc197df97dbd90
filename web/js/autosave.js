// When to keep what lies on the bench: half a second after the first change that is not kept yet, and at once when the page may be
// about to go. What is kept where is decided in keeping.js; this carries it out.

import { begun, step } from "./keeping.js";
import { newId } from "./storage.js";
import { canHold } from "./tabs.js";

const delayMs = 500;

/**
 * `core` is the bench, `store` the device; `save` is what of it lies on the bench, or null. `onFailure` and `onSuccess` report a save,
 * `onLeave` whether another lure may be opened (not where this one would be lost), `onElsewhere` that another tab has saved.
 */
export function createAutosave({ core, store, save, now, onFailure, onSuccess, onLeave, onElsewhere }) {
  let tab = begun(save, { newId }, store);
  let timer = 0;

  /** True when all that was to be kept is kept. */
  function run(name, ...given) {
    let next;
    // Where there is no room for a lure with its history, the lure alone is kept.
    for (const withHistory of [true, false]) {
      const here = {
        get document() { return core.documentJson(); }, session: () => core.sessionJson(withHistory), time: now(), tab: store.tab, newId,
      };
      next = step(name, tab, here, store, ...given);
      if (!store.keep(next.put)) continue;
      tab = next.tab;
      if (next.put.length > 0 && !tab.lost) onSuccess();
      return next;
    }
    tab = next.otherwise;
    if (tab.lost) onFailure();
    return null;
  }

  function changed() {
    run("changed");
    timer ||= setTimeout(flush, delayMs);
  }

  function flush() {
    clearTimeout(timer);
    timer = 0;
    run("flush");
  }

  function leave() {
    const may = run("leave") !== null;
    onLeave(may);
    return may;
  }

  // The device's save comes onto the bench.
  function take(name, open) {
    const done = run(name);
    if (done?.take && !open(done.take.session)) run("took", done.take);
    return done !== null;
  }

  function watch() {
    document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && flush());
    for (const event of ["pagehide", "freeze"]) window.addEventListener(event, flush);
    document.addEventListener("freeze", flush);
    window.addEventListener("storage", (event) => {
      if (canHold() || !store.fromElsewhere(event)) return;
      run("wait");
      onElsewhere();
    });
  }

  return {
    changed,
    flush,
    watch,
    leave,
    lureId: () => tab.lure,
    came: (id) => run("came", id),
    notKept: onFailure,
    /** True when there is work on the bench that the device cannot save. Tries to save it first. */
    unsaved() {
      flush();
      return tab.lost;
    },
    /** The current document came from a link (call flush before it is opened): it is saved once it differs from this. */
    linked: () => run("linked"),
    /** The demo on the bench is unchanged. */
    untouched: () => run("untouched"),
    /** It lies there in place of a save that could not be opened: true when that is safe on the shelf. */
    instead: () => run("instead") !== null,
    /** The builder's decision: the work on the bench need not be saved. */
    letGo: () => run("letGo"),
    /**
     * `open()` opens another lure, the one with `id` if it has one, or returns the reason of a refusal, which is passed on.
     * The present lure goes onto the shelf, unless it is unchanged; where that fails, it stays, and nothing is opened.
     */
    another(open, id) {
      const refusal = leave() ? open() : "";
      if (refusal) run("stays");
      else run("came", id);
      return refusal;
    },
    /** Save the work on the bench now, whatever its origin. */
    keepNow: () => run("keepNow"),
    /** Lay a copy of it onto the shelf; false where there is no room. */
    copy: () => run("copy") !== null,
    /** Another tab holds the bench: changes made here are kept on the shelf. */
    yieldBench: () => run("wait"),
    /**
     * This tab holds the bench again. What was changed or opened here since stays, and the other tab's save goes onto the shelf;
     * without changes here, `open(session)` opens the other tab's lure, or returns the reason of a refusal.
     */
    resumeBench: (open) => take("resume", open),
    /** Answer to onElsewhere: keep this tab's work. */
    keepMine: () => run("keepMine"),
    /** Answer to onElsewhere: `open(session)` opens the other tab's work; this tab's own stays on the shelf. */
    takeTheirs: (open) => take("takeTheirs", open) || onElsewhere(),
  };
}
