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
