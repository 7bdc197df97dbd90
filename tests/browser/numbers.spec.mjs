// Numbers go in through the page's own keypad; undo and redo take them back and bring them again.

import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { warmWater } from "./support/ways.mjs";

const shop = await workshop();

for (const [name, size] of Object.entries(sizes)) {
  test(`${name}: a number entered by touch is in the document, and the answers follow`, async () => {
    const device = await shop.device({ size });
    const bench = await shop.open(device);
    await bench.tap("step.shape");
    const [before, answersBefore] = [await bench.document(), await bench.answers()];
    await bench.enter("shape.moisture", "4.5");
    const after = await bench.document();
    assert.equal(after.wood.moisture_percent, 4.5);
    assert.deepEqual({ ...after, wood: { ...after.wood, moisture_percent: before.wood.moisture_percent } }, before);
    assert.ok((await bench.answers()).mass_g < answersBefore.mass_g, "drier wood is lighter");
    bench.noFaults();
    await device.close();
  });
}

test("a number entered by mouse is in the document", async () => {
  const device = await shop.device({ hasTouch: false, isMobile: false });
  const bench = await shop.open(device);
  await bench.click("step.shape");
  await bench.enter("shape.moisture", "8", (id) => bench.click(id));
  assert.equal((await bench.document()).wood.moisture_percent, 8);
  await device.close();
});

test("undo takes changes back one by one, redo brings them again", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const seen = [await bench.document()];
  for (let i = 0; i < 3; i++) {
    await warmWater(bench);
    seen.push(await bench.document());
  }
  for (let i = 2; i >= 0; i--) {
    await bench.open("undo");
    assert.deepEqual(await bench.document(), seen[i]);
  }
  for (let i = 1; i <= 3; i++) {
    await bench.open("redo");
    assert.deepEqual(await bench.document(), seen[i]);
  }
  await device.close();
});

test("a number that cannot be is refused with a sentence and changes nothing", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.shape");
  const before = await bench.document();
  await bench.enter("shape.moisture", "95");
  assert.deepEqual(await bench.document(), before);
  assert.ok(await bench.has("keypad.ok"), "the keypad stays, for another try");
  await bench.shot("keypad-refusal");
  await bench.tap("keypad.cancel");
  assert.equal(await bench.has("keypad.ok"), false);
  assert.deepEqual(await bench.document(), before);
  await device.close();
});

test("a device of the United States begins in inches, others in millimetres, and what was chosen stays", async () => {
  const device = await shop.device({ locale: "en-US" });
  const bench = await shop.open(device);
  const length = async () => JSON.parse(await bench.hook("sessionJson")).settings.length;
  assert.equal(await length(), "in_fraction");
  await bench.tap("step.shape");
  await bench.shot("numbers-inches-at-first");
  await bench.tap("shelf.open");
  await bench.tap("shelf.length.0");
  await bench.keptSoon();
  await bench.page.reload();
  await bench.ready();
  assert.equal(await length(), "mm");
  await device.close();
  const other = await shop.device({ locale: "en-AU" });
  assert.equal(JSON.parse(await (await shop.open(other)).hook("sessionJson")).settings.length, "mm");
  await other.close();
});

test("numbers are shown with the comma of a language that has one, typed with either sign, and kept with a point", async () => {
  const device = await shop.device({ locale: "de-DE" });
  const bench = await shop.open(device);
  await bench.tap("step.shape");
  await bench.enter("shape.length", "171.5");
  assert.equal((await bench.document()).shape.back_mm.at(-1)[0], 171.5);
  await bench.page.locator("#report-body td").filter({ hasText: /^\d+,\d\d g$/ }).first().waitFor({ state: "attached" });
  const rows = await bench.page.locator("#report-body td").allTextContents();
  assert.ok(rows.some((text) => /^\d+,\d\d g$/.test(text)), rows.slice(0, 6).join(" | "));
  assert.ok(!rows.some((text) => /\d\.\d/.test(text)), rows.find((text) => /\d\.\d/.test(text)));
  await bench.shot("numbers-with-comma");
  await device.close();
});
