// Messages above the bench that stay until answered. One of each kind at a time.

import { part } from "./dialogs.js";
import { words } from "./words.js";

/**
 * Shows a message. `answers` is a list of [label, action]; every answer also removes it. With `mayClose` it can be closed
 * without an answer.
 */
export function notice(kind, sentence, answers = [], mayClose = true) {
  dismiss(kind);
  const line = document.createElement("div");
  line.className = "notice";
  line.dataset.kind = kind;
  const about = document.createElement("p");
  about.textContent = sentence;
  const row = document.createElement("div");
  row.className = "row";
  const offered = mayClose ? [...answers, [words.notices.close, () => {}]] : answers;
  for (const [label, action] of offered) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = label;
    button.addEventListener("click", () => {
      line.remove();
      action();
    });
    row.append(button);
  }
  line.append(about, row);
  part("notices").append(line);
}

export function dismiss(kind) {
  for (const line of part("notices").querySelectorAll(".notice")) {
    if (line.dataset.kind === kind) line.remove();
  }
}
