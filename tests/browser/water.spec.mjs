// The Water step: the fall plays in true time and rests when it is over, a finger scrubs it, every view opens.

import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { colours, difference } from "./support/png.mjs";

const shop = await workshop();
const views = ["waters", "fall", "afloat", "swim", "season", "hinges", "ledger"];

/** The bench with the fall in view. */
async function fallOpen(device) {
  const bench = await shop.open(device);
  await bench.tap("step.water");
  await bench.tap("water.view.1");
  return bench;
}

/** A touch that does not wait for the bench to rest: it is to move now. */
async function poke(bench, id) {
  const [x, y] = await bench.middleOf(id);
  await bench.page.touchscreen.tap(x, y);
}

test("the fall plays in its own time, draws while it plays and no frame afterwards", async () => {
  const device = await shop.device();
  const bench = await fallOpen(device);
  await bench.enter("water.depth", "0.3");
  const before = await bench.document();
  const start = Date.now();
  await poke(bench, "water.play");
  await bench.page.waitForTimeout(600);
  const early = await bench.frames();
  const moving = await bench.shot("water-playing");
  await bench.page.waitForTimeout(600);
  assert.ok((await bench.frames()) > early, "it draws while the lure falls");
  assert.ok(difference(await bench.picture(), moving) > 0.0003, "the lure has moved on");
  await bench.settled();
  // 0.3 m at 160 mm/s and the start: between one and four seconds, whatever the machine draws in that time.
  const took = (Date.now() - start) / 1000;
  assert.ok(took > 1.5 && took < 8, `it took ${took} s`);
  const over = await bench.frames();
  await bench.meanwhile(1500);
  assert.equal(await bench.frames(), over, "after the fall the page rests");
  assert.deepEqual(await bench.document(), before, "watching changes nothing of the lure");
  bench.noFaults();
  await device.close();
});

test("a paused fall stands still and draws nothing; a finger on the bar moves it", async () => {
  const device = await shop.device();
  const bench = await fallOpen(device);
  await poke(bench, "water.play");
  await bench.page.waitForTimeout(700);
  await poke(bench, "water.play");
  await bench.settled();
  const paused = await bench.picture();
  const rests = await bench.frames();
  await bench.meanwhile(1000);
  assert.equal(await bench.frames(), rests, "paused, it draws nothing");
  const bar = await bench.find("water.scrub");
  const y = bar.y + bar.h / 2;
  await bench.drag({ x: bar.x + 0.1 * bar.w, y }, { x: bar.x + 0.6 * bar.w, y });
  assert.ok(difference(await bench.shot("water-scrubbed"), paused) > 0.002, "the lure is elsewhere");
  bench.noFaults();
  await device.close();
});

for (const [name, size] of Object.entries({ phone: sizes.phone, tablet: sizes.tablet })) {
  test(`${name}: every view of the Water step opens, differs from the last, and is large enough for a finger, light and dark`, async () => {
    const device = await shop.device({ size, dpr: name === "phone" ? 2 : 1 });
    const bench = await shop.open(device);
    await bench.tap("step.water");
    for (const theme of ["light", "dark"]) {
      let last = null;
      for (const [index, view] of views.entries()) {
        await bench.tap(`water.view.${index}`);
        assert.equal(JSON.parse(await bench.hook("sessionJson")).view.water_view, view);
        const picture = await bench.shot(`water-${name}-${theme}-${view}`);
        const { count, largest } = colours(picture);
        assert.ok(count > 50 && largest < 0.95, `${view} is drawn: ${count} colours, one covers ${largest}`);
        if (last) assert.ok(difference(picture, last) > 0.003, `${view} looks different from the view before`);
        last = picture;
        for (const { id, w, h, visible } of await bench.items()) {
          if (visible && !id.startsWith("draw.")) assert.ok(w >= 43.9 && h >= 43.9, `${id} of ${view}: ${w} × ${h}`);
        }
      }
      if (theme === "light") {
        await bench.tap("shelf.open");
        await bench.tap("shelf.theme.1");
        await bench.tap("shelf.close");
      }
    }
    bench.noFaults();
    await device.close();
  });
}
