// The page's HTML dialogs: opening one returns a promise of how it was closed.

export const part = (id) => document.getElementById(id);

/** Opens a dialog on top of the bench; resolves with the value of the button that closed it ("" for Escape). */
export function ask(dialog) {
  return new Promise((resolve) => {
    dialog.returnValue = "";
    // Where it is open already, the earlier request ends now; closing it would send its event later, and to both
    // requests.
    if (dialog.open) dialog.dispatchEvent(new Event("close"));
    dialog.addEventListener("close", () => {
      part("canvas").focus({ preventScroll: true });
      resolve(dialog.returnValue);
    }, { once: true });
    if (!dialog.open) dialog.showModal();
  });
}

export function message(sentence) {
  part("dialog-message-text").textContent = sentence;
  return ask(part("dialog-message"));
}

/** Asks for a line of text; resolves with it, or with null when it was left as it was. */
export async function askText(label, current) {
  part("dialog-text-label").textContent = label;
  const input = part("dialog-text-input");
  input.value = current;
  const answer = ask(part("dialog-text"));
  input.focus();
  input.select();
  return (await answer) === "ok" ? input.value : null;
}

// Enter in a form presses its first button, which is Cancel; in this dialog it must mean Done.
export function enterMeansDone() {
  part("dialog-text-input").addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || event.isComposing) return;
    event.preventDefault();
    part("dialog-text").close("ok");
  });
}
