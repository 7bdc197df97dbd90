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
    await bench.pace();
  }
  await bench.touch("touchEnd");
  await bench.settled();
  assert.deepEqual(await bench.document(), before);
  assert.equal(await bench.page.evaluate(() => visualViewport.scale), 1);
  await device.close();
});

test("a point of the back is dragged, one is added by a tap on the line and taken away again", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.shape");
  const before = await bench.document();
  const [x, y] = await bench.middleOf("draw.back.5");
  await bench.touch("touchStart", { x, y });
  for (let up = 2; up <= 20; up += 2) {
    await bench.touch("touchMove", { x, y: y - up });
    await bench.pace();
  }
  await bench.settled();
  await bench.shot("point-held");
  await bench.touch("touchEnd");
  await bench.settled();
  const dragged = await bench.document();
  const grown = dragged.shape.back_mm[5][1] - before.shape.back_mm[5][1];
  assert.ok(grown > 3 && grown < 12, `the back has become higher there, by as much as the finger went: ${grown} mm`);
  assert.deepEqual(dragged.shape.belly_mm, before.shape.belly_mm);

  const [ax, ay] = await bench.middleOf("draw.belly.4");
  const [bx, by] = await bench.middleOf("draw.belly.5");
  await bench.page.touchscreen.tap((ax + bx) / 2, (ay + by) / 2);
  await bench.settled();
  const added = await bench.document();
  assert.equal(added.shape.belly_mm.length, before.shape.belly_mm.length + 1);
  await bench.tap("shape.point.5.remove");
  assert.deepEqual((await bench.document()).shape.belly_mm, before.shape.belly_mm);
  await bench.open("undo");
  await bench.open("undo");
  await bench.open("undo");
  assert.deepEqual(await bench.document(), before);
  await device.close();
});

test("two fingers make the drawing larger where they lie and move it; a tap on Fit brings it back", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const before = await bench.document();
  const [x, y] = await bench.middleOf(hole);
  const [nose] = await bench.middleOf("draw.hole.0");
  const fingers = (spread, down) => [{ x: x - 20 - spread, y: y + down }, { x: x + 20 + spread, y: y + down }];
  await bench.touch("touchStart", ...fingers(0, 0));
  for (let step = 1; step <= 12; step++) {
    await bench.touch("touchMove", ...fingers(4 * step, 0));
    await bench.pace();
  }
  for (let step = 1; step <= 6; step++) {
    await bench.touch("touchMove", ...fingers(48, 5 * step));
    await bench.pace();
  }
  await bench.touch("touchEnd");
  await bench.settled();
  await bench.shot("zoomed");
  const now = await bench.find(hole);
  const fore = await bench.find("draw.hole.0");
  const canvas = await bench.page.locator("#canvas").boundingBox();
  const apart = canvas.x + now.x + now.w / 2 - (canvas.x + fore.x + fore.w / 2);
  assert.ok(apart > 1.8 * (x - nose), `holes lie ${apart} px apart instead of ${x - nose}`);
  assert.ok(Math.abs(canvas.x + now.x + now.w / 2 - x) < 12, "what lies between the fingers stays there");
  assert.ok(canvas.y + now.y + now.h / 2 > y + 10, "and goes with them");
  await bench.tap("draw.fit");
  const [backX] = await bench.middleOf(hole);
  assert.ok(Math.abs(backX - x) < 1);
  assert.deepEqual(await bench.document(), before);
  await device.close();
});

test("a hole dragged where it cannot be drilled says why and goes back", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap(hole);
  const before = await bench.document();
  const [x, y] = await bench.middleOf(hole);
  const [gap] = await bench.middleOf("draw.joint.0");
  await bench.touch("touchStart", { x, y });
  for (let step = 1; step <= 20; step++) {
    await bench.touch("touchMove", { x: x + ((gap - x) * step) / 20, y });
    await bench.pace();
  }
  await bench.settled();
  assert.ok(await bench.find("draw.refused"), "it is marked while the finger is down");
  await bench.shot("hole-refused");
  await bench.touch("touchEnd");
  await bench.settled();
  assert.equal(await bench.find("draw.refused"), undefined);
  // What is kept is a lure that can be built: the last place that could be drilled on the way.
  assert.equal((await bench.answers()).problems?.length ?? 0, 0);
  const moved = (await bench.document()).holes[2].x_mm - before.holes[2].x_mm;
  assert.ok(Math.abs(moved) < 30, `it stands ${moved} mm from where it was`);
  await device.close();
});
