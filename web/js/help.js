// The first steps as a short tour, what a tapped figure is, the search of the help, and what the page is.

import { ask, part } from "./dialogs.js";
import { terms } from "./parts.js";
import { words } from "./words.js";

let tour = false;

/** Whether the steps that are shown are the tour's: nothing of them is the builder's, and nothing is saved. */
export const onTour = () => tour;

const frame = () => new Promise(requestAnimationFrame);

/** Shows where things are, a step of the bench behind each card; resolves after the last one or when it is skipped. */
export async function firstSteps(core) {
  const { cards, count, next, begin } = words.first;
  const { view } = JSON.parse(core.sessionJson(false));
  let at = 0;
  tour = true;
  const show = () => {
    const [step, title, text] = cards[at];
    part("dialog-first-count").textContent = count(at + 1, cards.length);
    part("dialog-first-title").textContent = title;
    part("dialog-first-text").textContent = text;
    part("dialog-first-next").textContent = at + 1 < cards.length ? next : begin;
    part("dialog-first-skip").hidden = at + 1 === cards.length;
    core.goToStep(step);
  };
  part("dialog-first-next").onclick = () => {
    at += 1;
    if (at < cards.length) show();
    else part("dialog-first").close("read");
  };
  show();
  await ask(part("dialog-first"));
  core.goToStep(view.step);
  for (let n = 0; n < 3; n++) await frame(); // the bench tells of its step once it has drawn it
  tour = false;
}

function pieces(kind, texts) {
  return texts.map((text) => {
    const made = document.createElement(kind);
    made.textContent = text;
    return made;
  });
}

/** What is asked of the lure is told by these; lead may not reach it. */
const asked = ["in_water", "fall", "hang", "chance"];

const leadFallsShort = (core) => JSON.parse(core.planJson() || "{}").met === false;

/** Shows an entry of the help, with the figures that went into what was tapped. */
export async function explain({ id, title, what, how, figures, steps, source, trust }, core) {
  for (const [name, text] of Object.entries({ title, what, how, source, trust })) part(`dialog-explain-${name}`).textContent = text;
  part("dialog-explain-figures").replaceChildren(...figures.flatMap(([label, value]) => [...pieces("dt", [label]), ...pieces("dd", [value])]));
  part("dialog-explain-figures").hidden = figures.length === 0;
  part("dialog-explain-steps").replaceChildren(...pieces("li", steps));
  part("dialog-explain-steps").hidden = steps.length === 0;
  part("dialog-explain-grounds").hidden = source === "";
  part("dialog-explain-ways").hidden = figures.length === 0 || !asked.includes(id) || !leadFallsShort(core);
  const answer = ask(part("dialog-explain"));
  part("dialog-explain").scrollTop = 0;
  if ((await answer) === "ways") core.showWays();
}

/** The search: entries of the help for a question in plain words. */
export function helpDialog(core) {
  const question = part("dialog-help-question");
  const list = () => {
    const found = core.helpFound(question.value);
    part("dialog-help-none").hidden = found.length > 0;
    part("dialog-help-list").replaceChildren(...found.map(([id, title]) => {
      const line = document.createElement("li");
      const button = document.createElement("button");
      button.type = "button";
      button.textContent = title;
      button.dataset.entry = id;
      button.addEventListener("click", () => explain(core.helpEntry(id)));
      line.append(button);
      return line;
    }));
    part("dialog-help-list").scrollTop = 0;
  };
  question.value = "";
  question.oninput = list;
  // Enter would press the form's first button, which closes it.
  question.onkeydown = (event) => event.key === "Enter" && !event.isComposing && event.preventDefault();
  list();
  return ask(part("dialog-help"));
}

/** What the page is, where it comes from, and the terms of the works of others in it. */
export async function about(core) {
  part("dialog-about-version").textContent = core.version();
  const shown = ask(part("dialog-about"));
  const place = part("dialog-about-terms");
  if (place.childElementCount === 0) {
    const [own, ...others] = (await terms()).split(/^==== (.+) ====$/m);
    const works = [[words.about.own, own.split(/\n\n\n/)[0]]];
    for (let i = 0; i < others.length; i += 2) works.push([others[i], others[i + 1]]);
    place.replaceChildren(...works.map(([name, text]) => {
      const made = document.createElement("details");
      const head = document.createElement("summary");
      head.textContent = name;
      made.append(head, ...pieces("pre", [text.trim()]));
      return made;
    }));
  }
  return shown;
}
