// Sequences used by several tests, so that the widgets they touch are named only here.

import { join } from "node:path";
import { modulesDir } from "./settings.mjs";

/** Makes a small change by touch: the fishing water, one degree warmer. */
export async function warmWater(bench) {
  await bench.tap("step.water");
  const { temperature_C: now } = (await bench.document()).water;
  await bench.enter("water.temperature", String(now + 1));
}

/** Names the lure by the page's text dialog. */
export async function names(bench, name) {
  await bench.open("name");
  await bench.page.locator("#dialog-text-input").fill(name);
  await bench.page.locator("#dialog-text").getByRole("button", { name: "Done" }).tap();
  await bench.settled();
}

/** Opens a demo preset from the shelf. */
export async function openPreset(bench, name) {
  await bench.tap("shelf.open");
  await bench.tap(`shelf.preset.${name}`);
}

/** Goes to the Lead step and asks for a plan. */
export async function planTheLead(bench) {
  await bench.tap("step.lead");
  await bench.tap("lead.plan");
}

/** Accepts the plan that is offered. */
export async function keepPlan(bench) {
  await bench.tap("lead.keep");
}

/** Ids of the lures on the shelf, as they are listed; leaves the shelf open. */
export async function lookAtShelf(bench) {
  await bench.tap("shelf.open");
  await bench.page.waitForTimeout(100); // the page passes the lures on after the frame that opens the shelf
  await bench.settled();
  return (await bench.items()).map(({ id }) => id).filter((id) => id.startsWith("shelf.lure."));
}

/** Opens the last used lure on the shelf. */
export async function takeFromShelf(bench) {
  const [newest] = await lookAtShelf(bench);
  await bench.tap(newest);
  await bench.page.waitForTimeout(100);
  await bench.settled();
}

/** Opens the photos and catches of the lure, from any step. */
export async function openAlbum(bench) {
  await bench.tap("step.log");
  await bench.tap("log.view.1");
  await bench.tap("log.album");
}

/** Adds a photo with a line of text to the open album. */
export async function addPhoto(bench, text) {
  const photo = join(modulesDir, "../../tests/browser/pictures/lead-1024x768.png");
  await bench.page.locator("#dialog-album-text").fill(text);
  await bench.page.locator("#dialog-album-file").setInputFiles(photo);
  await bench.page.locator("#dialog-album-list img").waitFor();
}

const kinds = { dry_weight: 0, held_under: 1, tub_fall: 4 };

/** Puts down a reading in the Bench log's list of readings; `stage` null leaves the one offered. */
export async function putDown(bench, kind, stage, amounts) {
  await bench.tap("log.add");
  await bench.tap(`log.kind.${kinds[kind]}`);
  if (stage !== null) {
    await bench.tap("log.new.stage");
    await bench.tap(`pick.${stage}`);
  }
  for (const [field, text] of Object.entries(amounts)) await bench.enter(`log.new.${field}`, text);
  await bench.tap("log.new.put");
}

/** An oval of half axes 500 and 150; with `blunt` above 2 a superellipse, which has more room at its ends. */
const oval = { half: 150, blunt: 2 };

// A sketch of 1200 × 700, drawn about its middle with a pencil by the browser itself: half as long as 500.
const sketch = (page, shape) => page.evaluate(async ({ half, blunt }) => {
  const canvas = document.createElement("canvas");
  canvas.width = 1200;
  canvas.height = 700;
  const pen = canvas.getContext("2d");
  const light = pen.createLinearGradient(0, 0, 1200, 700);
  light.addColorStop(0, "#f4f1e8");
  light.addColorStop(1, "#c9c4b8");
  pen.fillStyle = light;
  pen.fillRect(0, 0, 1200, 700);
  pen.strokeStyle = "#4a4a4a";
  pen.lineWidth = 4;
  pen.beginPath();
  const bent = (share) => Math.sign(share) * Math.abs(share) ** (2 / blunt);
  for (let step = 0; step < 720; step++) {
    const angle = (step * Math.PI) / 360;
    pen.lineTo(600 + 500 * bent(Math.cos(angle)), 350 + half * bent(Math.sin(angle)));
  }
  pen.closePath();
  pen.stroke();
  const blob = await new Promise((resolve) => canvas.toBlob(resolve, "image/png"));
  return [...new Uint8Array(await blob.arrayBuffer())];
}, shape);

/** Lays a sketch behind the drawing, from the Shape step. */
export async function laySketch(bench, shape = oval) {
  await bench.tap("step.shape");
  await bench.tap("picture.choose");
  const buffer = Buffer.from(await sketch(bench.page, shape));
  await bench.page.locator("#dialog-picture-file").setInputFiles({ name: "sketch.png", mimeType: "image/png", buffer });
  await bench.page.waitForFunction(() => JSON.parse(globalThis.EvenfallHooks.itemsJson()).some(({ id }) => id === "draw.picture.nose"));
  await bench.settled();
}

/** Moves the marks of nose and tail onto the ends of the sketch, says how far apart they are, and finds its outline. */
export async function traceSketch(bench, apart) {
  bench.marks = { nose: 0.08, tail: 0.92 }; // where they begin, in shares of the picture's width
  await moveMark(bench, "nose", 100 / 1200);
  await moveMark(bench, "tail", 1100 / 1200);
  await bench.enter("picture.apart", apart);
  await findOutline(bench);
}

/** Asks for the outline and waits until it is offered. */
export async function findOutline(bench) {
  await bench.tap("picture.find");
  await bench.page.waitForFunction(() => JSON.parse(globalThis.EvenfallHooks.itemsJson()).some(({ id }) => id === "picture.keep"));
  await bench.settled();
}

// Drags a mark to a place on the picture, in shares of its width, while both marks lie level.
async function moveMark(bench, name, to) {
  const [nx] = await bench.middleOf("draw.picture.nose");
  const [tx] = await bench.middleOf("draw.picture.tail");
  const { nose, tail } = bench.marks;
  const perShare = (tx - nx) / (tail - nose); // px on the screen
  const [x, y] = await bench.middleOf(`draw.picture.${name}`);
  await bench.drag({ x, y }, { x: nx + (to - nose) * perShare, y });
  bench.marks[name] = to;
}
