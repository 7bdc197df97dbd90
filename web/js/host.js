// Requests of the compiled bench to the page. They come in the middle of a frame, so anything that may call back
// waits until the frame is over.

import { askText, message } from "./dialogs.js";
import { documentOf, isDrawer, isEverything, largestText, openDialog, saveDamaged, saveDialog } from "./files.js";
import { about, explain, firstSteps, helpDialog, onTour } from "./help.js";
import { locale } from "./language.js";
import { notice } from "./notices.js";
import { withPhotos, withoutPhotos } from "./photo_file.js";
import { shareDialog } from "./share.js";
import { createSheet } from "./sheet.js";
import { keepAwake } from "./wake.js";
import { words } from "./words.js";

// A time in the characters of the bench's typeface, in the bench's language where possible.
function whenText(time) {
  const at = new Date(time);
  const local = at.toLocaleString(locale(), { dateStyle: "medium", timeStyle: "short" }).replace(/\s/g, " ");
  return /^[\x20-\x7e\xa1-\xff]+$/.test(local) ? local : at.toISOString().slice(0, 16).replace("T", " ");
}

const settledMs = 150; // a held stepper changes many times a second; the consequences can wait

/** `getCore` and `autosave` return something only after the bench has started; changes before that are ignored. */
export function createHost({ getCore, store, autosave, pictures, album, safety, announce, install, speaks, onChange }) {
  const later = (action) => setTimeout(action, 0);
  let settling = 0;
  const sheet = createSheet(getCore);
  function fillShelf() {
    const show = (id, session, time, inBin) => getCore().showKept(id, session ?? "", time, time > 0 ? whenText(time) : "", inBin);
    getCore().clearKept();
    for (const { id, time, session } of store.lures(autosave().lureId())) show(id, session, time, false);
    for (const { id, time, session } of store.binned()) show(id, session, time, true);
    safety().tell();
    getCore().wake();
  }
  const changeShelf = (change) => later(() => {
    change();
    fillShelf();
  });
  let offeredPhotos = []; // of the file of everything that waits for an answer
  function openText(text) {
    const { file, photos } = isEverything(text) ? withoutPhotos(text) : { file: text, photos: [] };
    if (file.length > largestText) return words.open.tooLarge;
    if (isDrawer(file)) return getCore().addToDrawer(file);
    if (!isEverything(file)) return autosave().another(() => getCore().openJson(documentOf(file) ?? file));
    fillShelf();
    offeredPhotos = photos;
    return getCore().offerEverything(file);
  }
  async function takePhotos(became) {
    let whole = true;
    for (const [there, here] of became) {
      const brought = offeredPhotos.filter(({ lure }) => lure === there);
      whole = (await album().take(here, brought)) && whole;
    }
    offeredPhotos = [];
    if (!whole) message(words.album.notKept);
  }
  return {
    explain: (told) => later(() => explain(JSON.parse(told), getCore())),
    show_sheet: (...where) => later(() => sheet.show(...where)),
    hide_sheet: () => later(sheet.hide),
    print_sheet: () => later(sheet.print),
    save_sheet: (name) => later(() => sheet.save(name)),
    install: () => later(install),
    speaks: (code) => later(() => speaks(code)),
    first_steps: () => later(() => firstSteps(getCore())),
    show_help: () => later(() => helpDialog(getCore())),
    about: () => later(() => about(getCore())),
    keep_awake: (awake) => later(() => keepAwake(awake)),
    shelf_opens: () => later(fillShelf),
    // True when another lure may be opened: answered at once, because it is opened right after.
    another_lure() {
      const may = autosave().leave();
      if (may) later(autosave().came);
      return may;
    },
    take_kept(id) {
      later(() => {
        const session = store.shelf(id)?.session ?? null;
        const refusal = autosave().another(() => (session === null ? words.open.unreadable : getCore().openSession(session)), id);
        if (refusal) notice("unread", words.notices.lureUnread, [saveDamaged(store.textOf(id))]);
        getCore().wake();
      });
    },
    drop_kept: (id) => changeShelf(() => store.drop(id)),
    take_back: (id) => changeShelf(() => store.takeBack(id)),
    empty_bin: () => changeShelf(store.emptyBin),
    // True when all of it is kept: answered at once, because nothing is taken over before.
    take_everything(text) {
      const became = store.takeAll(JSON.parse(text));
      later(fillShelf);
      if (became) takePhotos(became);
      return became !== null;
    },
    changed() {
      if (onTour()) return;
      autosave()?.changed();
      clearTimeout(settling);
      settling = setTimeout(onChange, settledMs);
    },
    show_album: () => later(() => album().show()),
    choose_picture: () => later(() => pictures().choose()),
    keep_picture: (marks) => later(() => pictures()?.keep(marks)),
    keep_drawer: (text) => later(() => store.keepDrawer(text) || autosave().notKept()),
    share: (linkText) => later(() => shareDialog(linkText, getCore().codeOf)),
    save_file: (name, text) => later(async () => {
      const everything = isEverything(text);
      const what = everything ? "everything" : name.endsWith(".json") && !isDrawer(text) ? "lure" : "other";
      const content = everything ? await withPhotos(text, await album().all()) : text;
      if (!(await saveDialog(name, content, what))) return;
      if (everything) safety().saved();
      getCore().say(words.save.done(name));
    }),
    open_file() {
      later(() =>
        openDialog((text) => {
          const refusal = openText(text);
          getCore().wake();
          return refusal;
        }),
      );
    },
    ask_text(fieldId, label, current) {
      later(async () => {
        const answer = await askText(label, current);
        if (answer === null) return;
        getCore().setText(fieldId, answer);
        getCore().wake();
      });
    },
    announce,
  };
}
