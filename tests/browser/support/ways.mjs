// Sequences used by several tests, so that the widgets they touch are named only here.

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

// A sketch of an oval, 1200 × 700, drawn with a pencil by the browser itself: half axes 500 and 150 about the middle.
const sketch = (page) => page.evaluate(async () => {
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
  pen.ellipse(600, 350, 500, 150, 0, 0, 2 * Math.PI);
  pen.stroke();
  const blob = await new Promise((resolve) => canvas.toBlob(resolve, "image/png"));
  return [...new Uint8Array(await blob.arrayBuffer())];
});

/** Lays the sketch behind the drawing, from the Shape step. */
export async function laySketch(bench) {
  await bench.tap("step.shape");
  await bench.tap("picture.choose");
  const buffer = Buffer.from(await sketch(bench.page));
  await bench.page.locator("#dialog-picture-file").setInputFiles({ name: "sketch.png", mimeType: "image/png", buffer });
  await bench.page.waitForFunction(() => JSON.parse(globalThis.EvenfallHooks.itemsJson()).some(({ id }) => id === "draw.picture.nose"));
  await bench.settled();
}
