// Photos of a lure, of its tub and of what it caught, each with a line: kept in the browser's database with the lure.
// They are in no link and no file of the lure, only in the file of everything.

import { drawn, jpegOf, onStore } from "./database.js";
import { ask, part } from "./dialogs.js";
import { jpegFrom } from "./photo_file.js";
import { locale } from "./language.js";
import { words } from "./words.js";

const photos = "photos";
const quality = 0.85;
const most = 40; // entries of one lure
const keyOf = (lure, id) => `${lure} ${id}`; // no lure's id holds a space
const lureOf = (key) => key.split(" ")[0];
const newEntryId = (time) => `${String(time).padStart(15, "0")}-${Math.random().toString(36).slice(2, 8)}`;
const ofLure = (lure) => IDBKeyRange.bound(keyOf(lure, ""), keyOf(lure, "\uffff"));

/** `lureId()` and `keepLure()` as createPictures has them. */
export function createAlbum({ lureId, keepLure }) {
  const say = (sentence) => { part("dialog-album-said").textContent = sentence; };
  let shown = []; // addresses of the photos in the list

  const forget = () => {
    for (const address of shown) URL.revokeObjectURL(address);
    shown = [];
  };

  function line(key, { time, text, blob }) {
    const entry = document.createElement("li");
    if (blob) {
      const picture = document.createElement("img");
      picture.src = URL.createObjectURL(blob);
      picture.alt = text || words.album.photo;
      shown.push(picture.src);
      entry.append(picture);
    }
    const about = document.createElement("p");
    about.translate = false; // it is the builder's own
    about.textContent = text;
    const when = document.createElement("p");
    when.className = "quiet";
    when.textContent = new Date(time).toLocaleDateString(locale(), { dateStyle: "medium" });
    const remove = document.createElement("button");
    remove.type = "button";
    remove.textContent = words.album.remove;
    let asked = false;
    remove.onclick = async () => {
      if (!asked) {
        asked = true;
        remove.textContent = words.album.removeAgain;
        return;
      }
      await onStore(photos, "readwrite", (store) => store.delete(key));
      list();
    };
    entry.append(about, when, remove);
    return entry;
  }

  async function list() {
    const range = ofLure(lureId());
    const keys = (await onStore(photos, "readonly", (store) => store.getAllKeys(range))) ?? [];
    const entries = (await onStore(photos, "readonly", (store) => store.getAll(range))) ?? [];
    forget();
    // Both lists are in the order of their keys, the oldest first.
    part("dialog-album-list").replaceChildren(...entries.map((entry, i) => line(keys[i], entry)).reverse());
    const full = entries.length >= most;
    for (const id of ["dialog-album-add", "dialog-album-file"]) part(id).disabled = full;
    if (full) say(words.album.full(most));
  }

  async function put(blob) {
    const input = part("dialog-album-text");
    const text = input.value.trim();
    if (text === "" && blob === null) return;
    keepLure(); // an entry needs a lure to belong to
    const time = Date.now();
    const kept = await onStore(photos, "readwrite", (store) => store.put({ time, text, blob }, keyOf(lureId(), newEntryId(time))));
    say(kept === undefined ? words.album.notKept : "");
    if (kept !== undefined) input.value = "";
    await list();
  }

  async function take(file) {
    let canvas;
    try {
      canvas = await drawn(file);
    } catch {
      return say(words.picture.unreadable);
    }
    const blob = await jpegOf(canvas, quality);
    return blob ? put(blob) : say(words.album.notKept);
  }

  return {
    async show() {
      say("");
      const file = part("dialog-album-file");
      file.onchange = async () => {
        const [chosen] = file.files;
        if (chosen) await take(chosen);
        file.value = "";
      };
      part("dialog-album-add").onclick = () => put(null);
      part("dialog-album-text").onkeydown = (event) => {
        if (event.key !== "Enter" || event.isComposing) return;
        event.preventDefault(); // it would press Close
        put(null);
      };
      await list();
      await ask(part("dialog-album"));
      forget();
      part("dialog-album-list").replaceChildren();
    },
    /** The entries of all lures, [{lure, time, text, blob}]; `lure` is the lure's id, "" for the one on the bench. */
    async all() {
      const keys = (await onStore(photos, "readonly", (store) => store.getAllKeys())) ?? [];
      const entries = (await onStore(photos, "readonly", (store) => store.getAll())) ?? [];
      return entries.map((entry, i) => ({ ...entry, lure: lureOf(keys[i]) === lureId() ? "" : lureOf(keys[i]) }));
    },
    /** Keeps what a file brought for the lure of this id, [{time, text, jpeg}]; false where not all of it could be. */
    async take(lure, brought) {
      let whole = true;
      for (const { time, text, jpeg } of brought.slice(0, most)) {
        const blob = jpeg === null ? null : jpegFrom(jpeg);
        const entry = { time, text, blob };
        whole = (await onStore(photos, "readwrite", (store) => store.put(entry, keyOf(lure, newEntryId(time))))) !== undefined && whole;
      }
      return whole;
    },
    /** Deletes the entries of deleted lures. */
    async tidy(known) {
      const keys = (await onStore(photos, "readonly", (store) => store.getAllKeys())) ?? [];
      for (const key of keys) if (!known.has(lureOf(key))) await onStore(photos, "readwrite", (store) => store.delete(key));
    },
  };
}
