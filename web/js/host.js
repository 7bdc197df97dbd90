// What the compiled bench may ask of the page. It calls in the middle of a frame, so that everything that might call back
// waits until the frame is over.

import { askText } from "./dialogs.js";
import { openDialog, saveDialog } from "./files.js";
import { shareDialog } from "./share.js";

const settledMs = 150; // a held stepper changes many times a second; what follows from it need not

/** `getCore` and `autosave` give what is there only once the bench stands; before that a change is no news. */
export function createHost({ getCore, store, autosave, announce, onChange }) {
  const later = (action) => setTimeout(action, 0);
  let settling = 0;
  return {
    changed() {
      autosave()?.changed();
      clearTimeout(settling);
      settling = setTimeout(onChange, settledMs);
    },
    share: (linkText) => later(() => shareDialog(linkText)),
    save_file: (name, text) => later(() => saveDialog(name, text)),
    open_file() {
      later(() =>
        openDialog(store, (text) => {
          const refusal = getCore().openJson(text);
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
