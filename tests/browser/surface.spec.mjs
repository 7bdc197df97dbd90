// The graphics driver takes the drawing surface away, as tablets do with pages in the background.

import assert from "node:assert/strict";
import { test } from "node:test";
import { workshop } from "./support/bench.mjs";
import { colours, difference } from "./support/png.mjs";

const shop = await workshop();

const take = (bench) =>
  bench.page.evaluate(() => {
    globalThis.surfaceTaken = document.getElementById("canvas").getContext("webgl2").getExtension("WEBGL_lose_context");
    globalThis.surfaceTaken.loseContext();
  });
const giveBack = (bench) => bench.page.evaluate(() => globalThis.surfaceTaken.restoreContext());

test("a surface that was lost and given back shows the same bench as before", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.lead");
  const before = await bench.shot("surface-before");
  assert.ok(colours(before).count > 20, "there is something to lose");
  await take(bench);
  await bench.page.waitForTimeout(300);
  await giveBack(bench);
  await bench.page.waitForTimeout(500);
  await bench.settled();
  const after = await bench.shot("surface-after");
  // Not one pixel in a hundred may differ; a blank or torn surface differs in far more.
  assert.ok(difference(before, after) < 0.01);
  await bench.tap("step.shape");
  assert.ok(difference(await bench.shot("surface-next"), after) > 0.01, "and it goes on drawing");
  bench.noFaults();
  await device.close();
});

test("a surface that does not come back is told, with a way to load the page again", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await take(bench);
  await bench.page.locator('.notice[data-kind="surface"]').waitFor({ timeout: 8000 });
  await bench.page.getByRole("button", { name: "Load again" }).tap();
  await bench.page.waitForFunction(() => globalThis.surfaceTaken === undefined && globalThis.EvenfallHooks);
  await device.close();
});

test("a frame asks the graphics card nothing, so that it never waits for one that is still drawing", async () => {
  const device = await shop.device();
  await device.addInitScript(() => {
    globalThis.asked = {};
    const calls = WebGL2RenderingContext.prototype;
    for (const name of Object.getOwnPropertyNames(calls)) {
      if (!/^(get[A-Z]|is[A-Z]|check|read|finish|client)/.test(name) || /^(isContextLost|getContextAttributes)$/.test(name)) continue; // answered by the page itself
      const call = calls[name];
      calls[name] = function (...given) {
        globalThis.asked[name] = (globalThis.asked[name] ?? 0) + 1;
        return call.apply(this, given);
      };
    }
  });
  const bench = await shop.open(device);
  const asked = () => bench.page.evaluate(() => globalThis.asked);
  assert.ok((await asked()).getShaderParameter > 0, "what is asked before the first frame is seen here");
  await bench.page.evaluate(() => (globalThis.asked = {}));
  const before = await bench.frames();
  for (const step of ["lead", "water", "shape"]) await bench.tap(`step.${step}`);
  await bench.drag({ x: 300, y: 250 }, { x: 360, y: 240 });
  assert.ok((await bench.frames()) > before + 10, "frames were drawn");
  assert.deepEqual(await asked(), {});
  bench.noFaults();
  await device.close();
});
