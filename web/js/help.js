// The first steps as three cards, and explanations of the strip's answers.

import { ask, part } from "./dialogs.js";
import { words } from "./words.js";

/** Shows the cards one after the other; resolves after the last one or when they are skipped. */
export function firstSteps() {
  const { cards, count, next, begin } = words.first;
  let at = 0;
  const show = () => {
    part("dialog-first-count").textContent = count(at + 1, cards.length);
    [part("dialog-first-title").textContent, part("dialog-first-text").textContent] = cards[at];
    part("dialog-first-next").textContent = at + 1 < cards.length ? next : begin;
    part("dialog-first-skip").hidden = at + 1 === cards.length;
  };
  part("dialog-first-next").onclick = () => {
    at += 1;
    if (at < cards.length) show();
    else part("dialog-first").close("read");
  };
  show();
  return ask(part("dialog-first"));
}

export function explain(id) {
  const told = words.answers[id];
  if (!told) return;
  const [title, what, whence] = told;
  part("dialog-explain-title").textContent = title;
  part("dialog-explain-what").textContent = what;
  part("dialog-explain-whence").textContent = whence;
  ask(part("dialog-explain"));
}
