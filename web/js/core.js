// The compiled bench as plain JavaScript functions. Nothing else in the page calls the module directly.

import createEvenfall from "evenfall-program"; // Emscripten's loader; the build defines this name
import { instantiate } from "./code.js";

// The compiled code calls the page through globalThis.EvenfallHost (host.js), which must exist first.
export async function loadCore(canvas, onAbort) {
  const module = await new Promise((resolve, reject) => {
    createEvenfall({
      canvas,
      instantiateWasm(imports, begin) {
        instantiate(imports).then(({ instance, module }) => begin(instance, module)).catch(reject);
        return {}; // the exports come later, by `begin`
      },
      print: (line) => console.info(line),
      printErr: (line) => console.warn(line),
      onAbort,
    }).then(resolve, reject);
  });
  const text = (name, ...given) => module.ccall(name, "string", given.map(kind), given);
  const number = (name, ...given) => module.ccall(name, "number", given.map(kind), given);
  // A long text does not go by the stack, as ccall's do: it may be larger than that.
  const long = (call, name, value, ...more) => {
    const utf8 = new TextEncoder().encode(`${value}\0`);
    const at = module._malloc(utf8.length);
    module.HEAPU8.set(utf8, at);
    try {
      return call(name, at, ...more);
    } finally {
      module._free(at);
    }
  };
  const bytes = (name, ...given) => {
    const at = number(name, ...given);
    return module.HEAPU8.slice(at, at + number("ef_held_size"));
  };
  const act = (name, ...given) => module.ccall(name, null, given.map(kind), given);

  return {
    /** 0: started. 1: started with a demo, because `saved` could not be opened. 2: no drawing context. */
    start: (saved, locale, dark, dpr) => long(number, "ef_start", saved, locale, dark ? 1 : 0, dpr),
    /** Each returns "", or the sentences of a refusal; then nothing has changed. */
    openJson: (json) => long(text, "ef_open_json", json),
    /** Puts a picture behind the drawing: rows of RGBA. False where its size is not allowed. */
    showPicture(width, height, rgba, marks) {
      const room = number("ef_picture_room", width, height);
      if (room === 0) return false;
      module.HEAPU8.set(rgba, room);
      act("ef_picture_ready", marks);
      return true;
    },
    takePictureAway: () => act("ef_picture_away"),
    /** Sets the parts drawer saved on the device; adds the pieces of one from a file. */
    setDrawer: (json) => long(text, "ef_set_drawer", json),
    addToDrawer: (json) => long(text, "ef_add_to_drawer", json),
    openLink: (link) => text("ef_open_link", link),
    openSession: (session) => long(text, "ef_open_session", session),
    /** Lists a lure of the shelf, or of the bin, after clearKept; `time` in ms, `when` as it is shown. */
    clearKept: () => act("ef_clear_kept"),
    showKept: (id, session, time, when, inBin) => long(act, "ef_show_kept", session, id, time, when, inBin ? 1 : 0),
    /** Offers a file that holds everything, to be taken back; lists the lures of this device before. */
    offerEverything: (json) => long(text, "ef_offer_everything", json),
    /** Whether the browser keeps the storage (false too where that is not known), and the work since the last such file. */
    setSafety: (persisted, changes, days) => act("ef_set_safety", persisted ? 1 : 0, changes, days),
    documentJson: () => text("ef_document_json"),
    answersJson: () => text("ef_answers_json"),
    planJson: () => text("ef_plan_json"),
    link: () => text("ef_link"),
    /** The build sheet as bytes: "html", "svg", "pdf", or "leaves" for the pages of the HTML alone. */
    sheet: (form, address) => bytes("ef_sheet", ["html", "svg", "pdf", "leaves"].indexOf(form), address),
    typeface: (semibold) => bytes("ef_typeface", semibold ? 1 : 0),
    /** {side, path} of an address as a square code, in squares including the quiet zone; null where none holds it. */
    codeOf(address) {
      const [side, path] = text("ef_code", address).split(/ (.*)/s);
      return path ? { side: Number(side), path } : null;
    },
    sessionJson: (withHistory = true) => text("ef_session_json", withHistory ? 1 : 0),
    wake: () => act("ef_wake"),
    /** A text of the page in the language of the bench. */
    said: (english) => long(text, "ef_said", english),
    /** What the language's catalogue did not have; for tests. */
    untranslated: () => JSON.parse(text("ef_untranslated")),
    setDecimalSign: (sign) => act("ef_set_decimal_sign", sign.charCodeAt(0)),
    setTextScale: (scale) => act("ef_set_text_scale", scale),
    setDpr: (dpr) => act("ef_set_dpr", dpr),
    /** The device asks for less motion; the browser offers to install the page; a sentence shown for some seconds. */
    setCalm: (calm) => act("ef_set_calm", calm ? 1 : 0),
    offerInstall: (offered) => act("ef_offer_install", offered ? 1 : 0),
    say: (sentence) => act("ef_say", sentence),
    setText: (fieldId, value) => act("ef_set_text", fieldId, value),
    preset: (name, json) => act("ef_preset", name, json),
    frames: () => number("ef_frames"),
    itemsJson: () => text("ef_items_json"),
    cutJson: () => text("ef_cut_json"),
    /** [[id, title] …] of what the help has on a question; one entry as an object. */
    helpFound: (question) => JSON.parse(text("ef_help_found", question)),
    helpEntry: (id) => JSON.parse(text("ef_help_entry", id)),
    version: () => text("ef_version"),
    /** Goes to the changes that do what lead alone cannot. */
    showWays: () => act("ef_show_ways"),
    goToStep: (id) => act("ef_go_to_step", id),
    problem: () => text("ef_problem"),
    /** Mean time in µs of one "evaluate", "plan", "uncertainty", "draws" or "joints" of the lure on the bench. */
    benchUs: (what, times) => number("ef_bench_us", what, times),
    /** Bytes of memory used by the compiled code. */
    memory: () => module.HEAPU8.length,
  };
}

const kind = (value) => (typeof value === "string" ? "string" : "number");

const reading = [
  "documentJson", "answersJson", "planJson", "link", "sessionJson", "frames", "itemsJson", "cutJson", "problem",
  "benchUs", "sheet", "memory", "untranslated",
];

/** Read-only hooks for tests. */
export function readOnly(core) {
  return Object.freeze(Object.fromEntries(reading.map((name) => [name, core[name]])));
}
