// When to save: half a second after the last change, and at once when the page may be about to go.
// What is decided stands in `steps`, which are pure and are tested without a page; createAutosave carries it out.

import { canHold } from "./tabs.js";

const delayMs = 500;

/** What is known of the work on the bench. */
export const atRest = {
  dirty: false,    // changed since it was last kept
  lost: false,     // the last save failed: the work exists only on the bench
  copy: null,      // document text of a lure opened from a link, which is not saved until it changes
  pristine: null,  // document text of a lure as it was opened: unchanged, it need not be kept beside others
  coming: false,   // another lure is being opened
  owed: false,     // the device has saved something else than this work: it must be put away before it is overwritten
  disputed: false, // another tab has the bench, or has saved, and the user has not yet decided whose work counts
  atYield: null,   // document text when the bench went to another tab
  aside: null,     // this tab's session, stored among the kept lures
};

function* tell(state, kept) {
  yield [kept ? "onSuccess" : "onFailure"];
  return { ...state, lost: !kept };
}

// Where there is no room for a lure with its history, the lure alone is kept.
function* keepBench(act, ...where) {
  return (yield [act, yield ["session"], ...where]) || (yield [act, yield ["bareSession"], ...where]);
}

function* letGo(state) {
  if (state.copy !== null || (yield ["overtaken"])) yield ["adopt", null];
  return { ...state, pristine: state.copy ?? state.pristine, copy: null, owed: false };
}

// Puts away what the device keeps, if it is not what lies here: another version of the same lure among the kept ones,
// another lure onto the shelf. Returns the state, and whether it is safe.
function* settle(state) {
  if (!state.owed) return [state, true];
  const theirs = yield ["newest"];
  const same = state.copy === null && theirs?.lure === (yield ["lureId"]);
  if (theirs && !(yield same ? ["keep", theirs.session] : ["shelve", theirs.session, theirs.lure])) return [state, false];
  return [yield* letGo(state), true];
}

function* write(state) {
  if (state.disputed) {
    // Neither side may lose work: this tab's session is stored among the kept lures.
    const session = yield ["session"];
    const kept = yield ["keep", session, state.aside];
    return yield* tell({ ...state, dirty: false, aside: kept ? session : state.aside }, kept);
  }
  const [settled, safe] = yield* settle({ ...state, dirty: false });
  return yield* tell(settled, safe && (yield* keepBench("save")));
}

// The user has decided whose work counts.
const resolved = (state) => ({ ...state, disputed: false, atYield: null, aside: null, owed: true });

/**
 * One step for each event, (state, …) → state. A step changes nothing itself: it yields what is to be done or told as
 * [name, …arguments] and is given the answer, of the device whether it was kept.
 */
export const steps = {
  *changed(state) {
    return { ...state, dirty: true };
  },

  *flush(state) {
    const now = state.coming ? yield* steps.came(state) : state;
    if (now.copy !== null && (yield ["document"]) === now.copy) return { ...now, dirty: false };
    return now.dirty || now.lost ? yield* write(now) : now;
  },

  // Whether another lure may be opened: only when nothing is lost by it.
  *leave(state) {
    const asItCame = [state.copy, state.pristine, state.atYield].includes(yield ["document"]);
    const [settled, safe] = state.disputed ? [state, true] : yield* settle(state);
    const coming = safe && (asItCame || (yield* keepBench("shelve", state.disputed ? null : yield ["lureId"])));
    yield ["onLeave", coming];
    return { ...settled, coming };
  },

  *came(state, id) {
    if (!state.coming) return state;
    yield ["adopt", id];
    return { ...state, coming: false, lost: false, pristine: yield ["document"], copy: null };
  },

  // What was to come was refused.
  *stays(state) {
    return { ...state, coming: false };
  },

  *holdBack(state) {
    return { ...state, dirty: false, lost: false, copy: yield ["document"], owed: true };
  },

  *untouched(state) {
    return { ...state, pristine: yield ["document"] };
  },

  *letGo(state) {
    return yield* steps.untouched(yield* letGo(state));
  },

  *keepNow(state) {
    // Where another tab keeps the bench, it is from now on another lure than the one kept there.
    if (state.disputed) yield ["adopt", null];
    const written = yield* write(state.disputed ? { ...state, copy: null, atYield: null } : state);
    return { ...written, pristine: null };
  },

  *elsewhere(state) {
    yield ["onElsewhere"];
    return { ...state, disputed: true };
  },

  *yieldBench(state) {
    const kept = yield* steps.flush({ ...state, disputed: true });
    return { ...kept, atYield: kept.lost ? null : yield ["document"] };
  },

  *resumeBench(state) {
    if (!state.disputed) return state;
    const now = yield ["document"];
    if (now === state.copy) return resolved(state);
    if (now !== state.atYield) return yield* write(resolved(state));
    yield ["offer", yield ["newest"]];
    return resolved(state);
  },

  *keepMine(state) {
    return yield* write(resolved(state));
  },

  *takeTheirs(state) {
    const told = yield* tell(state, yield ["keep", yield ["session"], state.aside]);
    if (told.lost) {
      yield ["onElsewhere"];
      return told;
    }
    yield ["offer", yield ["newest"]];
    return resolved(told);
  },

  // The other tab's lure lies on the bench.
  *took(state, lure) {
    yield ["adopt", lure];
    return { ...state, copy: null, owed: false };
  },
};

/**
 * `core` is the bench, `store` the device's storage. `onFailure` and `onSuccess` report a save, `onLeave` whether another
 * lure may be opened (not where this one would be lost), `onElsewhere` that another tab has saved.
 */
export function createAutosave({ core, store, onFailure, onSuccess, onLeave, onElsewhere }) {
  let state = atRest;
  let timer = 0;
  let offered = null; // the other tab's save that is to come onto the bench

  const acts = {
    ...store,
    document: core.documentJson,
    session: () => core.sessionJson(true),
    bareSession: () => core.sessionJson(false),
    offer: (save) => { offered = save; },
    onFailure, onSuccess, onLeave, onElsewhere,
  };

  function run(name, ...given) {
    const step = steps[name](state, ...given);
    let { value, done } = step.next();
    while (!done) {
      const [act, ...words] = value;
      ({ value, done } = step.next(acts[act](...words)));
    }
    state = value;
    if (!state.dirty) clearTimeout(timer);
  }

  function changed() {
    run("changed");
    clearTimeout(timer);
    timer = setTimeout(flush, delayMs);
  }

  const flush = () => run("flush");

  function leave() {
    run("leave");
    return state.coming;
  }

  function take(open) {
    const theirs = offered;
    offered = null;
    if (theirs && !open(theirs.session)) run("took", theirs.lure);
  }

  function watch() {
    document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && flush());
    for (const event of ["pagehide", "freeze"]) window.addEventListener(event, flush);
    document.addEventListener("freeze", flush);
    window.addEventListener("storage", (event) => {
      if (!canHold() && store.fromElsewhere(event)) run("elsewhere");
    });
  }

  return {
    changed,
    flush,
    watch,
    leave,
    came: (id) => run("came", id),
    notKept: onFailure,
    /** True when there is work on the bench that the device cannot save. Tries to save it first. */
    unsaved() {
      flush();
      return state.lost;
    },
    /** The current document came from a link (call flush before it is opened): it is saved once it differs from this. */
    holdBack: () => run("holdBack"),
    /** The demo on the bench is unchanged. */
    untouched: () => run("untouched"),
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
    /** Another tab holds the bench: changes made here are stored among the kept lures. */
    yieldBench: () => run("yieldBench"),
    /**
     * This tab holds the bench again. What was changed or opened here since stays, and the other tab's save is put away;
     * without changes here, `open(session)` opens the other tab's lure, or returns the reason of a refusal.
     */
    resumeBench(open) {
      run("resumeBench");
      take(open);
    },
    /** Answer to onElsewhere: keep this tab's work. */
    keepMine: () => run("keepMine"),
    /** Answer to onElsewhere: `open(session)` opens the other tab's work; this tab's own is kept aside. */
    takeTheirs(open) {
      run("takeTheirs");
      take(open);
    },
  };
}
