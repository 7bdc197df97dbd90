// One pixel of the canvas is one pixel of the screen.

import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { colours } from "./support/png.mjs";

const shop = await workshop();

const surface = (bench) =>
  bench.page.evaluate(() => {
    const canvas = document.getElementById("canvas");
    return { width: canvas.width, height: canvas.height, css: [canvas.clientWidth, canvas.clientHeight], dpr: devicePixelRatio };
  });

function assertCrisp({ width, height, css, dpr }, wanted) {
  assert.equal(dpr, wanted);
  assert.deepEqual([width, height], css.map((length) => Math.round(length * dpr)));
}

// Paper, wood, lead and letters: what is not drawn is one colour.
async function assertDrawn(bench, name) {
  const seen = colours(await bench.shot(name));
  assert.ok(seen.count > 200 && seen.largest < 0.8, `${name}: ${seen.count} colours, one of them on ${seen.largest} of it`);
}

for (const dpr of [1, 2, 3]) {
  test(`at a device pixel ratio of ${dpr} the drawing surface has ${dpr} pixels a CSS pixel`, async () => {
    const device = await shop.device({ size: sizes.phone, dpr });
    const bench = await shop.open(device);
    assertCrisp(await surface(bench), dpr);
    await bench.shot(`phone-dpr${dpr}`);
    bench.noFaults();
    await device.close();
  });
}

test("the surface follows a new pixel ratio and a turned screen, and touches still land", async () => {
  const device = await shop.device({ size: sizes.tablet, dpr: 1 });
  const bench = await shop.open(device);
  const wire = await device.newCDPSession(bench.page);
  // The emulation tells the page of a new ratio only together with a new size.
  for (const [width, height, deviceScaleFactor] of [[1025, 768, 2], [768, 1024, 2], [1024, 768, 1], [1025, 768, 3]]) {
    await wire.send("Emulation.setDeviceMetricsOverride", { width, height, deviceScaleFactor, mobile: true });
    await bench.page.waitForFunction((ratio) => devicePixelRatio === ratio, deviceScaleFactor);
    await bench.settled();
    const now = await surface(bench);
    assert.deepEqual(now.css, [width, height]);
    assertCrisp(now, deviceScaleFactor);
    await assertDrawn(bench, `ratio-${width}-${deviceScaleFactor}`);
    for (const step of ["step.shape", "step.lead"]) {
      const before = await bench.hook("sessionJson");
      await bench.tap(step);
      assert.notEqual(await bench.hook("sessionJson"), before, `${step} is touched`);
    }
  }
  await device.close();
});

test("a notice above the bench makes the canvas smaller, not blurred", async () => {
  const device = await shop.device({ size: sizes.phone, dpr: 2 });
  const bench = await shop.open(device, `${shop.server.address}#1.damaged`);
  await bench.page.locator(".notice").waitFor();
  await bench.settled();
  const now = await surface(bench);
  assert.ok(now.css[1] < sizes.phone.height);
  assertCrisp(now, 2);
  await device.close();
});

test("where the reader has larger letters, all of the bench is larger, fits, and feels fingers where it is drawn", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const usual = await bench.find("step.shape");
  await bench.page.evaluate(() => {
    document.documentElement.style.fontSize = "20px";
    window.dispatchEvent(new Event("resize"));
  });
  await bench.settled();
  const canvas = await bench.page.locator("#canvas").boundingBox();
  const larger = await bench.find("step.shape");
  assert.ok(Math.abs(larger.y + larger.h - canvas.height / 1.25) < 2, "the bar stands at the foot, in larger pixels");
  assert.ok(larger.h >= usual.h - 1);
  for (const { id, x, w } of (await bench.items()).filter(({ visible }) => visible)) {
    assert.ok(x >= -1 && x + w <= canvas.width / 1.25 + 1, `${id} is cut off`);
  }
  const water = await bench.find("step.water");
  await bench.page.touchscreen.tap(canvas.x + 1.25 * (water.x + water.w / 2), canvas.y + 1.25 * (water.y + water.h / 2));
  await bench.settled();
  assert.equal(JSON.parse(await bench.hook("sessionJson")).view.step, "water");
  await assertDrawn(bench, "larger-letters");
  await device.close();
});
