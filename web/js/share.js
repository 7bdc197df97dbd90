// Share links: the whole lure is after '#' in the address, which is never sent to a server.

import { ask, part } from "./dialogs.js";
import { notice } from "./notices.js";
import { isOneFile } from "./parts.js";
import { words } from "./words.js";

const longLink = 1800;
const veryLongLink = 8000;

/** The share text in the address, or ""; line breaks and blanks that a messenger has put into it are left out. */
export function linkInAddress() {
  const text = location.hash.slice(1).replace(/\s|%(0a|0d|09|20)/gi, "");
  return /^\d+\./.test(text) ? text : "";
}

/** Removes the share text from the address, so that a reload opens the saved work and not the link again. */
export function clearAddress() {
  history.replaceState(null, "", location.pathname + location.search);
}

/**
 * Opens the link in the address, if there is one, as a copy that is not saved until it changes. Where the device cannot
 * save the work on the bench, it asks first.
 */
export function openFromAddress(core, autosave) {
  const link = linkInAddress();
  if (!link) return;
  clearAddress();
  if (!autosave.unsaved()) return openLink(core, autosave, link);
  notice("link", words.notices.linkWaits, [
    [words.notices.openIt, () => openLink(core, autosave, link)],
    [words.notices.leaveIt, () => {}],
  ], false);
}

function openLink(core, autosave, link) {
  const refusal = core.openLink(link);
  if (refusal) {
    notice("link", `${words.notices.linkRefused} ${refusal} ${words.notices.linkRefusedRest}`);
  } else {
    autosave.linked();
    notice("link", words.notices.fromLink, [[words.notices.keepIt, () => autosave.keepNow()]]);
  }
  core.wake();
}

// The square code of the address in the open dialog, or the sentence that it is too long. All squares are of the same whole
// number of the screen's pixels: 330 px for the code, or 3 px a square where that is more and there is room.
function drawCode(code) {
  const place = part("dialog-share-code");
  place.toggleAttribute("hidden", code === null);
  part("dialog-share-no-code").hidden = code !== null;
  if (code === null) return;
  const room = Math.min(Math.max(330, 3 * code.side), place.parentElement.clientWidth);
  const pixels = Math.max(1, Math.floor((room * devicePixelRatio) / code.side));
  place.setAttribute("width", (pixels * code.side) / devicePixelRatio);
  place.setAttribute("viewBox", `0 0 ${code.side} ${code.side}`);
  place.querySelector("path").setAttribute("d", code.path);
}

export function shareDialog(linkText, codeOf) {
  const address = new URL(`#${linkText}`, location.href).href;
  const field = part("dialog-share-link");
  field.value = address;
  part("dialog-share-count").textContent = words.share.count(address.length);
  part("dialog-share-said").textContent = "";
  part("dialog-share-disk").hidden = !isOneFile();
  const long = part("dialog-share-long");
  long.hidden = address.length <= longLink;
  long.textContent = address.length > veryLongLink ? words.share.veryLong : words.share.long;
  part("dialog-share-system").hidden = !canShare({ url: address });
  const closed = ask(part("dialog-share"));
  // A file address on this device is of no use to another camera.
  drawCode(isOneFile() ? null : codeOf(address));
  if (isOneFile()) part("dialog-share-no-code").hidden = true;
  field.setSelectionRange(0, 0);
  field.scrollTop = 0; // the beginning is more useful to see than the end
  return closed;
}

export function canShare(data) {
  return typeof navigator.share === "function" && (navigator.canShare?.(data) ?? false);
}

/** True when it was handed on. */
export async function shareBySystem(data) {
  try {
    await navigator.share(data);
    return true;
  } catch {
    return false; // closing the system's sheet is reported as an error, but is none here
  }
}

async function copy(field) {
  const said = part("dialog-share-said");
  try {
    await navigator.clipboard.writeText(field.value);
    said.textContent = words.share.copied;
  } catch {
    field.focus();
    field.select();
    said.textContent = words.share.notCopied;
  }
}

export function prepareShareDialog() {
  const field = part("dialog-share-link");
  part("dialog-share-copy").addEventListener("click", () => copy(field));
  part("dialog-share-system").addEventListener("click", () => shareBySystem({ title: document.title, url: field.value }));
}
