// Fingers on the drawing: they move what was chosen, look elsewhere, and never slip.

import assert from "node:assert/strict";
import { test } from "node:test";
import { workshop } from "./support/bench.mjs";

const shop = await workshop();
const hole = "draw.hole.2";

test("a finger that slides over the drawing moves the section and nothing of the lure", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const before = await bench.document();
  const station = async () => JSON.parse(await bench.hook("sessionJson")).view.section_x_mm;
  const stood = await station();
  const [x, y] = await bench.middleOf(hole);
  await bench.drag({ x, y }, { x: x + 90, y });
  assert.ok(Math.abs((await station()) - stood) > 5);
  assert.deepEqual(await bench.document(), before);
  await device.close();
});

test("a hole that was tapped follows a finger, as one change that undo takes back", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const before = await bench.document();
  await bench.tap(hole);
  const [x, y] = await bench.middleOf(hole);
  await bench.drag({ x, y }, { x: x + 14, y });
  const after = await bench.document();
  assert.ok(after.holes[2].x_mm > before.holes[2].x_mm + 1, `${after.holes[2].x_mm} mm`);
  assert.deepEqual({ ...after.holes[2], x_mm: 0 }, { ...before.holes[2], x_mm: 0 });
  await bench.shot("hole-dragged");
  await bench.open("undo");
  assert.deepEqual(await bench.document(), before);
  await device.close();
});

test("a second finger takes the hole out of the first one's hand, and the browser itself does not zoom", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const before = await bench.document();
  await bench.tap(hole);
  const [x, y] = await bench.middleOf(hole);
  const fingers = (spread) => [{ x: x + spread, y }, { x: x - 60 - spread, y: y + 10 }];
  await bench.touch("touchStart", fingers(0)[0]);
  await bench.page.waitForTimeout(50);
  await bench.touch("touchStart", ...fingers(0));
  for (let spread = 2; spread <= 40; spread += 2) {
    await bench.touch("touchMove", ...fingers(spread));
    await bench.page.waitForTimeout(16);
  }
  await bench.touch("touchEnd");
  await bench.settled();
  assert.deepEqual(await bench.document(), before);
  assert.equal(await bench.page.evaluate(() => visualViewport.scale), 1);
  await device.close();
});
