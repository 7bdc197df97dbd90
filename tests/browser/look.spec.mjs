// What a builder sets for himself – large text, the left hand, open sections – and photos that stay on the device.

import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { addPhoto, openAlbum, warmWater } from "./support/ways.mjs";

const shop = await workshop();
const session = async (bench) => JSON.parse(await bench.hook("sessionJson"));

/** A flick upwards, 16 px a frame of the page: a driver of touches is too slow for one on a busy machine. */
const flick = (bench, { x, y }, steps) => bench.page.evaluate(async ([atX, atY, count]) => {
  const canvas = document.getElementById("canvas");
  const touch = (type, clientY) => {
    const finger = new Touch({ identifier: 1, target: canvas, clientX: atX, clientY });
    const touches = type === "touchend" ? [] : [finger];
    canvas.dispatchEvent(new TouchEvent(type, { touches, targetTouches: touches, changedTouches: [finger], bubbles: true, cancelable: true }));
  };
  touch("touchstart", atY);
  for (let step = 1; step <= count; step++) {
    await new Promise(requestAnimationFrame);
    touch("touchmove", atY - 16 * step);
  }
  await new Promise(requestAnimationFrame);
  touch("touchend", atY - 16 * count);
}, [x, y, steps]);

/** Every visible widget lies inside the canvas, in the bench's own pixels. */
async function assertInside(bench, when) {
  const scale = await bench.page.evaluate(() => parseFloat(getComputedStyle(document.documentElement).fontSize) / 16);
  const { width, height } = await bench.page.locator("#canvas").boundingBox();
  for (const { id, x, y, w, h, visible } of await bench.items()) {
    if (!visible) continue;
    assert.ok(x >= -1 && y >= -1 && x + w <= width / scale + 1 && y + h <= height / scale + 1, `${when}: ${id} is cut off`);
  }
}

test("the left hand has the panel at its side, large text is larger everywhere, and both stay over a reload", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const usual = await bench.find("lead.plan");
  await bench.tap("shelf.open");
  await bench.tap("shelf.hand.0");
  await bench.shot("left-handed-shelf");
  await bench.tap("shelf.close");
  const left = await bench.find("lead.plan");
  assert.ok(left.x + left.w < usual.x, "the panel lies at the left");
  assert.equal(left.w, usual.w);
  await bench.shot("left-handed");
  await bench.enter("lead.pitch", "-1.5");
  await assertInside(bench, "left-handed");

  await bench.tap("shelf.open");
  await bench.tap("shelf.text.1");
  await bench.page.waitForFunction(() => getComputedStyle(document.documentElement).fontSize === "20px");
  await bench.settled();
  await assertInside(bench, "large text");
  await bench.shot("large-text");
  await bench.keptSoon();
  await bench.page.reload();
  await bench.ready();
  assert.equal(await bench.page.evaluate(() => getComputedStyle(document.documentElement).fontSize), "20px");
  const { settings } = await session(bench);
  assert.equal(settings.large_text, true);
  assert.equal(settings.left_handed, true);
  await assertInside(bench, "large text after a reload");
  bench.noFaults();
  await device.close();
});

test("a section opens under the finger and is found open after a reload", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.shape");
  assert.ok(await bench.find("shape.length"), "the first section is open");
  assert.equal(await bench.find("shape.moisture"), undefined);
  const { y } = await bench.bringIntoSight("section.shape.wood");
  await bench.tap("section.shape.wood");
  assert.ok(await bench.find("shape.moisture"));
  assert.equal((await bench.find("section.shape.wood")).y, y, "its heading stays where the finger was");
  await bench.shot("sections");
  await bench.keptSoon();
  await bench.page.reload();
  await bench.ready();
  assert.ok(await bench.find("shape.moisture"));
  await device.close();
});

test("a flick glides on and comes to rest; where the device asks for less motion it stands still at once", async () => {
  for (const reducedMotion of ["no-preference", "reduce"]) {
    const device = await shop.device({ size: sizes.phone, reducedMotion });
    const bench = await shop.open(device);
    await bench.tap("step.water");
    const at = async () => (await bench.find("water.view.0")).y;
    const { x, y, h } = await bench.find("water.temperature");
    const from = { x: x + 60, y: y + h / 2 };
    const before = await at();
    await flick(bench, from, 6);
    await bench.settled();
    const way = before - (await at());
    if (reducedMotion === "reduce") assert.ok(way <= 97, `it went ${way} px, the finger 96`);
    else assert.ok(way > 110, `it went ${way} px, the finger 96`);
    await device.close();
  }
});

test("photos and lines of a lure stay on the device, go into no link and no file of the lure, and are removed by a second tap", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await warmWater(bench);
  await openAlbum(bench);
  const { page } = bench;
  await page.locator("#dialog-album-text").fill("Pike, 72 cm, slow over the weed");
  await page.getByRole("button", { name: "Add the line" }).tap();
  await page.locator("#dialog-album-list li").first().waitFor();
  await addPhoto(bench, "In the tub");
  assert.deepEqual(await page.locator("#dialog-album-list li p:first-of-type").allTextContents(), ["In the tub", "Pike, 72 cm, slow over the weed"]);
  await bench.shot("album");
  assert.ok(!(await bench.hook("sessionJson")).includes("Pike"));
  assert.ok(!(await bench.hook("documentJson")).includes("Pike"));
  await page.locator("#dialog-album").getByRole("button", { name: "Close" }).tap();
  await bench.keptSoon();

  await page.reload();
  await bench.ready();
  await bench.tap("log.album");
  await page.locator("#dialog-album-list img").waitFor();
  const { naturalWidth } = await page.locator("#dialog-album-list img").evaluate(async (img) => (await img.decode(), { naturalWidth: img.naturalWidth }));
  assert.equal(naturalWidth, 1024);
  const remove = page.locator("#dialog-album-list li").first().getByRole("button");
  await remove.tap();
  assert.equal(await page.locator("#dialog-album-list li").count(), 2);
  await remove.tap();
  await page.waitForFunction(() => document.querySelectorAll("#dialog-album-list li").length === 1);
  bench.noFaults();
  await device.close();
});
