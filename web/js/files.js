// Lures as files: saving a copy, and opening one.

import { ask, message, part } from "./dialogs.js";
import { canShare, shareBySystem } from "./share.js";
import { words } from "./words.js";

const largestFile = 200 * 1024 * 1024; // everything in one file, with photos
export const largestText = 8 * 1024 * 1024; // without them; what a lure may have is less, and known to the core

export const isDrawer = (text) => /^\s*\{\s*"evenfall_drawer"/.test(text);
export const isEverything = (text) => /^\s*\{\s*"evenfall_everything"/.test(text);

/** The media type of a file, by its name. */
const types = { csv: "text/csv", json: "application/json", pdf: "application/pdf", svg: "image/svg+xml", html: "text/html" };
const typeOf = (name) => ({ type: types[name.split(".").at(-1)] });

/** Downloads a text at once. */
export function download(name, text) {
  const address = URL.createObjectURL(new Blob([text], typeOf(name)));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser must have started reading before the address is revoked.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** The answer to a notice of a save that cannot be read. */
export const saveDamaged = (text) => [words.notices.downloadDamaged, () => download("evenfall-damaged-save.json", text)];

/**
 * Offers a file for saving, a text, bytes or a blob; resolves with true when it was saved or handed on. `what` it is: "lure",
 * "everything" or "other". Uses a dialog, because a share sheet requires a tap on real HTML.
 */
export async function saveDialog(name, content, what) {
  const file = new File([content], name, typeOf(name));
  const address = URL.createObjectURL(file);
  part("dialog-save-about").textContent = words.save.about(name, what);
  const link = part("dialog-save-file");
  link.href = address;
  link.download = name;
  const system = part("dialog-save-system");
  system.hidden = !canShare({ files: [file] });
  const dialog = part("dialog-save");
  // The browser begins with the file once the tap is over; only then may the dialog go.
  link.onclick = () => setTimeout(() => dialog.close("saved"), 0);
  system.onclick = async () => (await shareBySystem({ files: [file] })) && dialog.close("saved");
  const answer = await ask(dialog);
  link.removeAttribute("href");
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  return answer === "saved";
}

/** Lets the builder choose a file; `open(text)` returns "" or the reason of the refusal. */
export function openDialog(open) {
  const dialog = part("dialog-open");
  const take = async (file) => {
    dialog.close("");
    let refusal;
    try {
      refusal = open(await textOf(file));
    } catch (problem) {
      refusal = problem instanceof TooLarge ? words.open.tooLarge : words.open.unreadable;
    }
    if (refusal) message(refusal);
  };
  const input = part("dialog-open-file");
  input.value = "";
  input.onchange = () => input.files[0] && take(input.files[0]);
  return ask(dialog);
}

class TooLarge extends Error {}

async function textOf(file) {
  if (file.size > largestFile) throw new TooLarge();
  return file.text();
}

/** Document text from a session's text or a save's text; null where there is none. */
export function documentOf(text) {
  try {
    const { session, document } = JSON.parse(text);
    if (typeof session === "string") return documentOf(session);
    return document ? JSON.stringify(document) : null;
  } catch {
    return null;
  }
}
