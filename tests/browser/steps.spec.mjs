// Every step of the bench opens under a finger, and what it shows is what the session says.

import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { colours, difference } from "./support/png.mjs";

const shop = await workshop();
const steps = ["shape", "joints", "hardware", "lead", "finish", "water", "log"];

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
