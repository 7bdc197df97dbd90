// Every step of the bench opens under a finger, and what it shows is what the session says.

import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { colours, difference } from "./support/png.mjs";

const shop = await workshop();
const steps = ["shape", "joints", "hardware", "lead", "finish", "water"];

// Drawn things whose size follows the drawing's scale, not a finger: they say so in their id.
const scaled = /^draw\./;

for (const [name, size] of Object.entries(sizes)) {
  // The larger screens at a ratio of 1: this browser draws without a graphics card.
  const dpr = name === "phone" ? 2 : 1;
  test(`${name} ${size.width} × ${size.height}: each step opens by touch, nothing is cut off, and everything is large enough for a finger`, async () => {
    const device = await shop.device({ size, dpr });
    const bench = await shop.open(device);
    let last = null;
    for (const step of steps) {
      await bench.tap(`step.${step}`);
      assert.equal(JSON.parse(await bench.hook("sessionJson")).view.step, step);
      await bench.page.waitForTimeout(250);
      const picture = await bench.shot(`${name}-${step}`);
      const { count, largest } = colours(picture);
      assert.ok(count > 50 && largest < 0.95, `${step} is drawn: ${count} colours, one covers ${largest}`);
      if (last) assert.ok(difference(picture, last) > 0.005, `${step} looks different from the step before`);
      last = picture;

      const wrong = [];
      for (const { id, x, y, w, h, visible } of await bench.items()) {
        if (!visible) continue;
        const inside = x >= -0.5 && y >= -0.5 && x + w <= size.width + 0.5 && y + h <= size.height + 0.5;
        if (!inside) wrong.push(`${id} is cut off: ${x} ${y} ${w} ${h}`);
        if (!scaled.test(id) && (w < 43.9 || h < 43.9)) wrong.push(`${id} is too small for a finger: ${w} × ${h}`);
      }
      assert.deepEqual(wrong, [], step);
    }
    const overflow = await bench.page.evaluate(() => {
      const { scrollWidth, scrollHeight, clientWidth, clientHeight } = document.documentElement;
      return [scrollWidth - clientWidth, scrollHeight - clientHeight, visualViewport.scale];
    });
    assert.deepEqual(overflow, [0, 0, 1]);
    bench.noFaults();
    await device.close();
  });
}

test("a joint follows a finger along the drawing, as one change that undo takes back", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.joints");
  const before = await bench.document();
  const [x, y] = await bench.middleOf("draw.joint.0");
  await bench.drag({ x, y }, { x: x + 24, y });
  const after = await bench.document();
  assert.ok(after.joints[0].at_mm > before.joints[0].at_mm + 2, `${after.joints[0].at_mm} mm`);
  assert.deepEqual(after.joints[1], before.joints[1]);
  await bench.shot("joint-dragged");
  await bench.open("undo");
  assert.deepEqual(await bench.document(), before);
  await device.close();
});

test("two fingers that begin on the same joint change nothing of the lure, and the browser itself does not zoom", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.joints");
  const before = await bench.document();
  const [x, y] = await bench.middleOf("draw.joint.0");
  const fingers = (spread) => [{ x, y }, { x: x - spread, y: y + spread / 4 }];
  await bench.touch("touchStart", fingers(60)[0]);
  await bench.page.waitForTimeout(50);
  await bench.touch("touchStart", ...fingers(60));
  for (let spread = 65; spread <= 160; spread += 5) {
    await bench.touch("touchMove", { x: x + spread - 60, y }, fingers(spread)[1]);
    await bench.page.waitForTimeout(16);
  }
  await bench.touch("touchEnd");
  await bench.settled();
  assert.deepEqual(await bench.document(), before);
  assert.equal(await bench.page.evaluate(() => visualViewport.scale), 1);
  await device.close();
});
