// A picture behind the drawing: laid to scale by its marks, its outline found and kept, kept itself on the device alone.

import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { findOutline, laySketch, traceSketch } from "./support/ways.mjs";

const shop = await workshop();

test("a sketch is laid behind the drawing, its outline found, kept as one change, and the picture is there after a reload", async () => {
  const device = await shop.device({ size: sizes.tablet });
  const bench = await shop.open(device);
  // A bare body: holes, wire and pockets of a demo lure have no room in the oval.
  for (const id of ["shelf.open", "shelf.new", "card.bare"]) await bench.tap(id);
  const before = await bench.document();
  await laySketch(bench);
  await bench.shot("picture-laid");
  await traceSketch(bench, "160");
  await bench.shot("picture-outline");
  assert.deepEqual(await bench.document(), before, "what is offered is not kept yet");
  await bench.tap("picture.back");
  assert.deepEqual(await bench.document(), before);

  await findOutline(bench);
  await bench.tap("picture.keep");
  const traced = await bench.document();
  const length = traced.shape.back_mm.at(-1)[0];
  const height = Math.max(...traced.shape.back_mm.map(([, z]) => z)) - Math.min(...traced.shape.belly_mm.map(([, z]) => z));
  // The oval is 1000 by 300 pixels; marks are set by finger within two or three.
  assert.ok(Math.abs(length - 160) < 2.5, `${length} mm`);
  assert.ok(Math.abs(height / length - 0.3) < 0.006, `${height} mm`);

  await bench.tap("step.lead");
  await bench.shot("picture-lead"); // the sketch stays in sight, its marks do not
  assert.equal(await bench.find("draw.picture.nose"), undefined);
  await bench.tap("step.shape");

  const link = await bench.hook("link");
  assert.ok(link.length < 2000, "no picture is in the link");
  await bench.keptSoon();
  await bench.page.waitForTimeout(300);
  await bench.page.reload();
  await bench.ready();
  await bench.page.waitForFunction(() => JSON.parse(globalThis.EvenfallHooks.itemsJson()).some(({ id }) => id === "draw.picture.nose"));
  assert.deepEqual(await bench.document(), traced);

  await bench.tap("picture.away");
  await bench.page.reload();
  await bench.ready();
  await bench.meanwhile(300);
  assert.equal(await bench.find("draw.picture.nose"), undefined);
  bench.noFaults();
  await device.close();
});

test("marks are moved without dragging too: a shorter rule makes the picture larger, and back again", async () => {
  const device = await shop.device({ size: sizes.tablet });
  const bench = await shop.open(device);
  await laySketch(bench);
  await bench.tap("picture.scale_by.1");
  await bench.tap("picture.mark.2");
  const length = async () => (await bench.middleOf("draw.picture.tail"))[0] - (await bench.middleOf("draw.picture.nose"))[0];
  const before = await length();
  for (let k = 0; k < 6; k++) await bench.tap("picture.aft");
  const after = await length();
  assert.ok(after > before + 2, `${before} px long, then ${after}`);
  for (let k = 0; k < 6; k++) await bench.tap("picture.fore");
  assert.ok(Math.abs((await length()) - before) < 1, "back where it was");
  await device.close();
});

test("a search can be stopped, and a file that is no picture says so", async () => {
  const device = await shop.device({ size: sizes.phone });
  // A quick machine finds the outline before a finger can stop it: its frames are held back while that is tried.
  await device.addInitScript(() => {
    const usual = window.requestAnimationFrame.bind(window);
    window.requestAnimationFrame = (draw) => (globalThis.heldBack ? setTimeout(() => usual(draw), 150) : usual(draw));
  });
  const bench = await shop.open(device);
  await laySketch(bench);
  await bench.bringIntoSight("picture.away"); // what stands in the button's place while it is busy is taller
  const [x, y] = await bench.middleOf("picture.find");
  await bench.page.evaluate(() => { globalThis.heldBack = true; });
  await bench.page.touchscreen.tap(x, y);
  await bench.page.waitForFunction(() => JSON.parse(globalThis.EvenfallHooks.itemsJson()).some(({ id }) => id === "picture.stop"));
  const stop = await bench.find("picture.stop");
  assert.ok(stop.visible);
  const canvas = await bench.page.locator("#canvas").boundingBox();
  await bench.page.touchscreen.tap(canvas.x + stop.x + stop.w / 2, canvas.y + stop.y + stop.h / 2);
  await bench.page.waitForFunction(() => !JSON.parse(globalThis.EvenfallHooks.itemsJson()).some(({ id }) => id === "picture.stop"));
  await bench.page.evaluate(() => { globalThis.heldBack = false; });
  await bench.settled();
  assert.equal(await bench.find("picture.keep"), undefined, "nothing is offered by a search that was stopped");
  await bench.shot("picture-phone");

  await bench.tap("picture.choose");
  await bench.page.locator("#dialog-picture-file").setInputFiles({ name: "no.png", mimeType: "image/png", buffer: Buffer.from("no picture") });
  await bench.page.getByText("holds no picture").waitFor();
  await device.close();
});
