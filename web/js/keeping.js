// Where work is kept: a pure state machine. A device has one bench, the save of the tab that holds it, and a shelf of lures under
// their ids. One rule guards both: a save is written over only by a tab that goes on from it. Whatever else stands in the way
// becomes a lure of the shelf first; where a shelf's place is another's, the tab's lure becomes one of its own, under a new id.
//
// `steps` are (tab, now, device) → { tab, put, … }: the tab's next state and what is to be kept for it, all of it or nothing.
//   now     { document, session(), time, tab, newId() }: what lies on the tab's bench, when it is, the tab's name
//   device  { bench(), shelf(id) }: the saves on the device, null where there is none
//   put     [["shelf" | "bench", save], …]; a save's place on the shelf is its lure's id
//   otherwise  the tab's state where `put` cannot be kept

import { revAfter, sealed } from "./storage.js";

const markOf = (save) => save?.crc ?? 0; // 0: there is none

/** A tab as it is opened, with the save that lies on its bench: null for none. */
export function begun(save, { newId }, device) {
  const there = save?.lure ? device.shelf(save.lure) : null;
  // Saves of version 1.4 and before do not say which version of the shelf they go on from: one that is not newer.
  const goesOn = there === null || (save.shelf === null ? there.time <= save.time : there.crc === save.shelf);
  return {
    lure: (goesOn && save?.lure) || newId(), // of the lure on this tab's bench
    bench: markOf(save),  // the device's save that this bench goes on from; null: it is another lure
    shelf: goesOn ? markOf(there) : 0, // the save on the shelf, under the lure's id, that it goes on from
    came: null,           // document text as it came, where nothing is lost with it
    given: false,         // it came by a link: not kept before it differs from that
    waiting: false,       // another tab has the bench: what is changed here is kept on the shelf
    coming: false,        // another lure is being opened
    dirty: false,         // changed since it was last kept
    lost: false,          // the last save failed: the work exists only on this tab's bench
  };
}

/** The id under which this tab's lure may be kept. */
function placeOf(tab, now, device) {
  if (tab.waiting && device.bench()?.lure === tab.lure) return now.newId();
  const there = device.shelf(tab.lure);
  return there === null || there.crc === tab.shelf || there.tab === now.tab ? tab.lure : now.newId();
}

// What is changed while another tab has the bench goes on from nothing there: the other's work is not to be written over by it.
const base = (tab) => (tab.waiting ? null : tab.bench);
const failed = (tab) => ({ ...tab, bench: base(tab), dirty: false, lost: true });
const saved = (tab) => ({ ...tab, bench: base(tab), given: false, dirty: false, lost: false });

function onShelf(tab, now, device) {
  const lure = placeOf(tab, now, device);
  const save = { ...sealed(0, now.time, now.tab, now.session()), lure };
  return { tab: saved({ ...tab, lure, shelf: save.crc }), put: [["shelf", save]], otherwise: failed(tab) };
}

function onBench(tab, now, device) {
  const put = [];
  const lure = placeOf(tab, now, device);
  const theirs = device.bench();
  if (theirs && theirs.crc !== tab.bench) {
    const there = theirs.lure && device.shelf(theirs.lure);
    const free = theirs.lure && theirs.lure !== lure && (there === null || there.crc === theirs.shelf);
    put.push(["shelf", { ...sealed(0, theirs.time, theirs.tab, theirs.session), lure: free ? theirs.lure : now.newId() }]);
  }
  const shelf = markOf(device.shelf(lure));
  const save = { ...sealed(revAfter(theirs?.rev ?? 0), now.time, now.tab, now.session()), lure, shelf };
  put.push(["bench", save]);
  return { tab: saved({ ...tab, lure, shelf, bench: save.crc }), put, otherwise: failed(tab) };
}

const kept = (tab, now, device) => (tab.waiting ? onShelf : onBench)(tab, now, device);
const only = (tab) => ({ tab, put: [] });

export const steps = {
  changed: (tab) => only({ ...tab, dirty: true }),

  flush(tab, now, device) {
    const asItCame = (tab.given || tab.waiting) && now.document === tab.came;
    if (asItCame) return only({ ...tab, dirty: false });
    return tab.dirty || tab.lost ? kept(tab, now, device) : only(tab);
  },

  /** Another lure is to be opened: only where nothing is lost by it. */
  leave(tab, now, device) {
    if (now.document === tab.came) return only({ ...tab, coming: true });
    const shelved = onShelf(tab, now, device);
    return { ...shelved, tab: { ...shelved.tab, coming: true }, otherwise: tab };
  },

  /** The other lure lies on the bench; it has this id, or none yet. */
  came: (tab, now, device, id) => only(!tab.coming ? tab : {
    ...tab, lure: id ?? now.newId(), came: now.document, given: false, coming: false, lost: false,
    bench: tab.waiting ? null : tab.bench, shelf: markOf(id ? device.shelf(id) : null),
  }),

  /** What was to come was refused. */
  stays: (tab) => only({ ...tab, coming: false }),

  /** A link lies on the bench: the device's own lure stays saved until this one changes. */
  linked: (tab, now) => only({
    ...tab, lure: now.newId(), bench: null, shelf: 0, came: now.document, given: true, dirty: false, lost: false,
  }),

  /** A demo lies on the bench that nobody has touched. */
  untouched: (tab, now) => only({ ...tab, came: now.document }),

  /** It lies there in place of a save that could not be opened: that goes onto the shelf. */
  instead: (tab, now, device) => onBench({ ...tab, lure: now.newId(), bench: null, shelf: 0, came: now.document }, now, device),

  /** The builder's answer: what lies here may go. */
  letGo: (tab, now) => only({ ...tab, came: now.document, given: false }),

  /** The builder's answer: keep what lies here, whatever it came from. */
  keepNow: (tab, now, device) => kept({ ...tab, came: null, given: false }, now, device),

  /** A copy of what lies here onto the shelf. */
  copy: (tab, now) => ({ tab, put: [["shelf", { ...sealed(0, now.time, now.tab, now.session()), lure: now.newId() }]], otherwise: tab }),

  /** Another tab has the bench, or has saved. */
  wait(tab, now, device) {
    if (tab.waiting) return only(tab);
    const waiting = { ...tab, waiting: true };
    if (!(tab.dirty || tab.lost) || now.document === tab.came) return only({ ...waiting, dirty: false, came: now.document });
    const mine = tab.bench === markOf(device.bench());
    const { tab: safe, put } = mine ? onBench(tab, now, device) : onShelf(waiting, now, device);
    return { tab: { ...safe, waiting: true, came: now.document }, put, otherwise: { ...failed(waiting), came: null } };
  },

  /** This tab has the bench. `take`: the device's save, which is to come onto the bench; nothing was changed here meanwhile. */
  resume(tab, now, device) {
    if (!tab.waiting) return only(tab);
    const here = { ...tab, waiting: false };
    if (now.document !== tab.came) return onBench({ ...here, bench: null }, now, device);
    if (tab.given) return only(here);
    const theirs = device.bench();
    if (tab.bench === null || (tab.bench !== 0 && theirs === null)) return onBench(here, now, device);
    if (markOf(theirs) === tab.bench) return only({ ...here, came: theirs ? null : tab.came });
    return { ...only(here), take: theirs };
  },

  /** The builder's answer: this tab's work counts. What the other one has saved goes onto the shelf. */
  keepMine: (tab, now, device) => onBench({ ...tab, waiting: false, came: null, given: false }, now, device),

  /** The builder's answer: the other tab's work is to lie here. This tab's own stays on the shelf. */
  takeTheirs(tab, now, device) {
    const shelved = now.document === tab.came ? only(tab) : onShelf(tab, now, device);
    return { ...shelved, tab: { ...shelved.tab, waiting: false, came: now.document }, take: device.bench(), otherwise: failed(tab) };
  },

  /** The other tab's save lies on the bench. */
  took: (tab, now, device, save) => only(begun(save, now, device)),
};

const duringOpening = ["leave", "came", "stays"];

/** One step; where another lure is just being opened, that comes first. */
export function step(name, tab, now, device, ...given) {
  const at = tab.coming && !duringOpening.includes(name) ? steps.came(tab, now, device).tab : tab;
  return steps[name](at, now, device, ...given);
}
