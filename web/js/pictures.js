// The picture behind the drawing: chosen from the device's files or camera, scaled down, saved in the browser's
// database with its lure. It never leaves the device.

import { drawn, jpegOf, onStore } from "./database.js";
import { ask, message, part } from "./dialogs.js";
import { words } from "./words.js";

const pictures = "pictures";

/** `core` is the bench; `lureId()` returns the id of its lure, `keepLure()` saves it, so that the picture has a lure to belong to. */
export function createPictures({ core, lureId, keepLure, onNotKept }) {
  let shown = null; // { id, blob, marks } of the picture on the bench
  let asked = null; // the lure that was looked up last

  function show(canvas, marks) {
    const { width, height } = canvas;
    const { data } = canvas.getContext("2d").getImageData(0, 0, width, height);
    if (!core.showPicture(width, height, data, marks)) return false;
    core.wake();
    return true;
  }

  async function take(file) {
    const id = lureId();
    let canvas;
    try {
      canvas = await drawn(file);
    } catch {
      return message(words.picture.unreadable);
    }
    const blob = await jpegOf(canvas, 0.9);
    if (lureId() !== id) return; // another lure was opened in the meantime: the picture was not meant for it
    keepLure();
    if (!blob) onNotKept();
    const before = shown;
    shown = { id: lureId(), blob, marks: "" };
    asked = shown.id;
    if (!show(canvas, "")) {
      shown = before; // it still lies there
      return message(words.picture.wrongSize);
    }
  }

  async function save() {
    if (!shown?.blob) return;
    const { id, blob, marks } = shown;
    if ((await onStore(pictures, "readwrite", (store) => store.put({ blob, marks }, id))) === undefined) onNotKept();
  }

  return {
    choose() {
      const dialog = part("dialog-picture");
      const input = part("dialog-picture-file");
      input.value = "";
      input.onchange = () => {
        dialog.close("");
        if (input.files[0]) take(input.files[0]);
      };
      return ask(dialog);
    },
    /** The marks have changed, or the picture was removed (""). */
    keep(marks) {
      if (shown === null) return;
      if (marks === "") {
        const { id } = shown;
        shown = null;
        onStore(pictures, "readwrite", (store) => store.delete(id));
        return;
      }
      shown.marks = marks;
      save();
    },
    /** Another lure may have been opened: shows its picture and removes that of the one before. */
    async follow() {
      const id = lureId();
      if (asked === id) return;
      asked = id;
      if (shown !== null) {
        shown = null;
        core.takePictureAway();
        core.wake();
      }
      const kept = await onStore(pictures, "readonly", (store) => store.get(id));
      if (!kept?.blob || lureId() !== id || shown !== null) return;
      try {
        const canvas = await drawn(kept.blob);
        shown = { id, blob: kept.blob, marks: kept.marks };
        if (!show(canvas, kept.marks)) shown = null;
      } catch {
        // A picture that can no longer be read is ignored.
      }
    },
    /** Deletes the pictures of deleted lures. */
    async tidy(known) {
      const ids = (await onStore(pictures, "readonly", (store) => store.getAllKeys())) ?? [];
      for (const id of ids) if (!known.has(id)) await onStore(pictures, "readwrite", (store) => store.delete(id));
    },
  };
}
