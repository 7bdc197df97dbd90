// Starts the page: features, module, presets, saved work, the address; then the watchers.

import { createAlbum } from "./album.js";
import { createAutosave } from "./autosave.js";
import { watchCanvas, watchMotion } from "./canvas.js";
import { loadCore, readOnly } from "./core.js";
import { onStore } from "./database.js";
import { enterMeansDone, part } from "./dialogs.js";
import { lacking } from "./features.js";
import { documentOf, download, saveDamaged } from "./files.js";
import { firstSteps } from "./help.js";
import { createHost } from "./host.js";
import { createSpeaker } from "./language.js";
import { dismiss, notice } from "./notices.js";
import { keepOffline } from "./offline.js";
import { createPictures } from "./pictures.js";
import { watchInstall } from "./install.js";
import { createJournal } from "./journal.js";
import { presets } from "./parts.js";
import { createAnnouncer, prepareReport, writeReport } from "./report.js";
import { openFromAddress, prepareShareDialog } from "./share.js";
import { createSafety } from "./safety.js";
import { createStore, drawerKey } from "./store.js";
import { benchIsHeld, createHold } from "./tabs.js";
import { decimalSign, words } from "./words.js";

const prefersDark = matchMedia("(prefers-color-scheme: dark)").matches;

function look(dark, largeText = false) {
  const { dataset } = document.documentElement;
  dataset.look = dark ? "dark" : "light";
  dataset.text = largeText ? "large" : "usual";
}

function progress(steps, sentence) {
  for (const id of ["loading-words", "loading-line"]) part(id).hidden = false;
  part("loading-line").value = steps;
  if (sentence) part("loading-words").textContent = sentence;
}

// Shows one plain sentence in place of the bench.
function stop(sentence, mayReload) {
  const place = part("loading");
  const said = document.createElement("p");
  said.className = "stop";
  said.setAttribute("role", "alert");
  said.textContent = sentence;
  const pieces = [place.querySelector("img"), place.querySelector(".name"), said];
  if (mayReload) {
    const again = document.createElement("button");
    again.type = "button";
    again.className = "chief";
    again.textContent = words.stop.reload;
    again.addEventListener("click", () => location.reload());
    pieces.push(again);
  }
  place.replaceChildren(...pieces);
  place.hidden = false;
}

// False where drawing is not possible after all.
function beginSession(core, store, { save, damaged, laid }) {
  const session = save?.session ?? null;
  const begun = core.start(session ?? "", navigator.language ?? "", prefersDark, window.devicePixelRatio);
  if (begun > 1) return false;
  const refused = begun === 1 && session !== null;
  if (session === null) autosaveOf.current.untouched();
  const safe = refused ? autosaveOf.current.instead() : laid;
  const hurt = refused ? session : damaged;
  if (hurt !== null) {
    const { damagedSave, onShelf, noRoomAside } = words.notices;
    notice("damaged", `${damagedSave} ${safe ? onShelf : noRoomAside}`, [saveDamaged(hurt)]);
  }
  return true;
}

// Opens what another tab has saved.
const opener = (core) => (session) => {
  const refusal = core.openJson(documentOf(session) ?? "");
  core.wake();
  return refusal;
};

function connect(core, store, save) {
  const { notices } = words;
  const copy = [notices.download, () => download("lure.json", core.documentJson())];
  return createAutosave({
    core,
    store,
    save,
    now: Date.now,
    onSuccess() {
      dismiss("storage");
      safetyOf.current?.kept();
    },
    onFailure: () => notice("storage", notices.notKept, [copy], false),
    onLeave: (may) => (may ? dismiss("another")
      : notice("another", notices.anotherWaits, [copy, [notices.letGo, () => autosaveOf.current.letGo()]])),
    onElsewhere: () => notice("tabs", notices.otherTab, [
      [notices.loadOther, () => autosaveOf.current.takeTheirs(opener(core))],
      [notices.keepMine, () => autosaveOf.current.keepMine()],
    ], false),
  });
}
const autosaveOf = { current: null };
const safetyOf = { current: null };

// Two tabs never overwrite each other: one holds the bench, the other says so, and asks again whenever it is looked
// at or used. Returns the function that asks.
function shareBench(core, store) {
  const { notices } = words;
  const hold = createHold(() => {
    dismiss("tabs");
    autosaveOf.current.resumeBench(opener(core));
  }, () => {
    autosaveOf.current.yieldBench();
    say();
  });
  const say = () => notice("tabs", notices.benchElsewhere, [
    [notices.workHere, hold.takeOver],
    [notices.copyToShelf, () => {
      if (!autosaveOf.current.copy()) notice("storage", notices.notKept);
      say();
    }],
  ], false);
  hold.ask();
  window.addEventListener("focus", hold.ask);
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && hold.ask());
  return hold.ask;
}

// For example out of memory: after an uncaught exception the compiled code is in an undefined state.
function watchForCrash() {
  const { Exception, RuntimeError } = WebAssembly;
  const look = (fault) => [Exception, RuntimeError].some((kind) => kind && fault instanceof kind) && stop(words.stop.crash, true);
  window.addEventListener("error", ({ error }) => look(error));
  window.addEventListener("unhandledrejection", ({ reason }) => look(reason));
}

async function start() {
  look(prefersDark);
  const build = document.querySelector("meta[name=evenfall-build]").content;
  for (const place of document.querySelectorAll("[data-build]")) place.textContent = build;
  const missing = lacking();
  if (missing) return stop(words.stop[missing], false);

  const storage = () => window.localStorage;
  const journal = createJournal({ storage, onStore, now: Date.now, onHang: () => notice("database", words.notices.databaseHangs) });
  const onLetGo = (text) => notice("bin", words.notices.binFull, [saveDamaged(text)]);
  const store = createStore({ storage, tab: crypto.randomUUID?.() ?? String(Math.random()), now: Date.now, journal, onLetGo });
  let core = null;
  let pictures = null;
  let album = null;
  let askForBench = null;
  let checkSize = null;
  let install = null;
  let speak = null;
  const refresh = () => {
    if (!core) return;
    writeReport(core);
    pictures?.follow();
    askForBench?.();
    const { settings } = JSON.parse(core.sessionJson(false));
    look(settings?.theme === "dark", settings?.large_text === true);
    checkSize?.();
  };
  globalThis.EvenfallHost = createHost({
    getCore: () => core, store, autosave: () => autosaveOf.current, pictures: () => pictures, album: () => album, safety: () => safetyOf.current,
    announce: createAnnouncer(), install: () => install?.(), speaks: (code) => speak?.(code), onChange: refresh,
  });

  watchForCrash();
  progress(1, words.loading.module);
  // Before the compiled code comes, whose long work would be counted as the database's.
  if (!(await benchIsHeld())) await journal.recover();
  core = await loadCore(part("canvas"), () => stop(words.stop.crash, true));
  progress(3, words.loading.start);
  core.setDecimalSign(decimalSign);
  speak = createSpeaker(core);
  for (const { name, text } of presets()) core.preset(name, text);
  const loaded = store.load();
  autosaveOf.current = connect(core, store, loaded.save);
  const ofLure = { lureId: autosaveOf.current.lureId, keepLure: () => autosaveOf.current.keepNow() };
  pictures = createPictures({ core, ...ofLure, onNotKept: () => autosaveOf.current.notKept() });
  album = createAlbum(ofLure);
  const drawer = store.drawer();
  if (drawer !== null && core.setDrawer(drawer) !== "") store.drawerUnread();
  if (!beginSession(core, store, loaded)) return stop(words.stop.webgl, true);
  safetyOf.current = createSafety({ core, store, manager: navigator.storage, now: Date.now });
  askForBench = shareBench(core, store);
  openFromAddress(core, autosaveOf.current);
  refresh();

  checkSize = watchCanvas(core);
  watchMotion(core);
  install = watchInstall(core);
  autosaveOf.current.watch();
  // Changes of the drawer in another tab are taken over here, so that neither tab overwrites the other's pieces.
  window.addEventListener("storage", ({ key, newValue }) => {
    if (key !== drawerKey || newValue === null) return;
    core.setDrawer(newValue);
    core.wake();
  });
  window.addEventListener("hashchange", () => openFromAddress(core, autosaveOf.current));
  enterMeansDone();
  prepareShareDialog();
  prepareReport();
  globalThis.EvenfallHooks = readOnly(core);

  progress(4);
  part("loading").hidden = true;
  // The frame requested here is the first with the lure in it; after it the bench can be touched.
  requestAnimationFrame(() => requestAnimationFrame(() => performance.mark("evenfall bench stands")));
  part("canvas").focus({ preventScroll: true });
  core.wake();
  const known = store.known();
  if (known) for (const kept of [pictures, album]) kept.tidy(known.add(autosaveOf.current.lureId()));
  safetyOf.current.look();
  if (store.firstTime("steps") && loaded.save === null) firstSteps(core);
  keepOffline(() => !autosaveOf.current.unsaved());
}

start().catch((problem) => {
  console.error(problem);
  stop(words.stop.load, true);
});
