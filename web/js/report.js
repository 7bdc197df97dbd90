// The answers as headings and tables, for screen readers and for anyone who opens them. Only displays what it is
// given; the numbers are the core's, rounded for reading.

import { part } from "./dialogs.js";
import { words } from "./words.js";

const say = words.report;
/** A number; its decimal sign is the language's once it is said (language.js). */
export const figure = (value, digits = 2) => {
  if (typeof value !== "number") return say.none;
  const text = value.toFixed(digits);
  return text.replace("-", /[1-9]/.test(text) ? "−" : ""); // zero has no sign
};

function table(caption, heads, rows) {
  const made = document.createElement("table");
  made.createCaption().textContent = caption;
  const top = made.createTHead().insertRow();
  for (const head of heads) {
    const cell = document.createElement("th");
    cell.scope = "col";
    cell.textContent = head;
    top.append(cell);
  }
  const body = made.createTBody();
  for (const [first, ...rest] of rows) {
    const row = body.insertRow();
    const head = document.createElement("th");
    head.scope = "row";
    head.textContent = first;
    row.append(head);
    for (const value of rest) row.insertCell().textContent = value;
  }
  return made;
}

function finished(answers) {
  const rows = Object.entries(say.rows).map(([key, [label, unit]]) => {
    const value = figure(answers[key]);
    return [label, value === say.none ? value : `${value} ${unit}`];
  });
  for (const [label, at] of [[say.g, answers.g_mm], [say.b, answers.b_mm]]) {
    rows.push([label, Array.isArray(at) ? `${at.map((value) => figure(value, 1)).join("; ")} mm` : say.none]);
  }
  return table(say.finished, [say.what, say.value], rows);
}

function holes(list) {
  const rows = list.map((hole, i) => [
    hole.name || `${i + 1}`, figure(hole.diameter_mm), figure(hole.depth_mm, 1),
    hole.fill?.material ?? say.none, figure(hole.fill?.mass_g),
  ]);
  return table(say.holes, [say.hole, say.diameter, say.depth, say.material, say.mass], rows);
}

function warnings(list) {
  const made = document.createElement("ul");
  for (const { sentence } of list) {
    const line = document.createElement("li");
    line.textContent = sentence;
    made.append(line);
  }
  return made;
}

function heading(text) {
  const made = document.createElement("h3");
  made.textContent = text;
  return made;
}

/** Writes the report of the lure on the bench. */
export function writeReport(core) {
  const lure = JSON.parse(core.documentJson());
  const answers = JSON.parse(core.answersJson() || "{}");
  const pieces = [heading(lure.name || say.lure), finished(answers)];
  if (answers.segments?.length) {
    const rows = answers.segments.map((s) => [s.name, figure(s.volume_cm3), figure(s.mass_g), figure(s.in_water_g)]);
    pieces.push(table(say.segments, [say.name, say.volume, say.mass, say.inWater], rows));
  }
  if (answers.stages?.length) {
    const rows = answers.stages.map((s) => [s.stage.replaceAll("_", " "), figure(s.mass_g), figure(s.in_water_g)]);
    pieces.push(table(say.stages, [say.stage, say.mass, say.inWater], rows));
  }
  if (lure.holes?.length) pieces.push(holes(lure.holes));
  if (answers.warnings?.length) pieces.push(heading(say.notes), warnings(answers.warnings));
  part("report-body").replaceChildren(...pieces);
}

/** The button that shows and hides the report over the bench. */
export function prepareReport() {
  const button = part("report-toggle");
  const report = part("report");
  const show = (shown) => {
    for (const piece of [report, button]) piece.classList.toggle("shown", shown);
    report.tabIndex = shown ? 0 : -1; // a scrolling element must be reachable by keyboard
    button.textContent = shown ? say.away : say.toggle;
    button.setAttribute("aria-expanded", String(shown));
    if (shown) report.focus();
    else part("canvas").focus({ preventScroll: true });
  };
  button.addEventListener("click", () => show(!report.classList.contains("shown")));
  report.addEventListener("keydown", (event) => event.key === "Escape" && show(false));
}

/** A live region that announces the latest text, at most once a second. */
export function createAnnouncer() {
  let timer = 0;
  let next = "";
  return (text) => {
    next = text;
    timer ||= setTimeout(() => {
      timer = 0;
      part("live").textContent = next;
    }, 1000);
  };
}
