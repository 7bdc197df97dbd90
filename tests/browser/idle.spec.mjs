// A bench at rest costs nothing.

import assert from "node:assert/strict";
import { test } from "node:test";
import { workshop } from "./support/bench.mjs";

const shop = await workshop();

test("a page that nobody touches draws no frames for three seconds, and the next touch draws", async () => {
  const device = await shop.device({ drawn: true });
  const bench = await shop.open(device);
  await bench.tap("step.lead");
  const before = await bench.frames();
  await bench.page.waitForTimeout(3000);
  assert.equal(await bench.frames(), before);
  await bench.tap("step.water");
  assert.ok((await bench.frames()) > before);
  await device.close();
});

test("a hidden page draws no frames and wakes when it is seen again", async () => {
  const device = await shop.device({ drawn: true });
  const bench = await shop.open(device);
  const other = await device.newPage();
  await other.bringToFront();
  const before = await bench.frames();
  await other.waitForTimeout(1000);
  assert.equal(await bench.frames(), before);
  await other.close();
  await bench.page.bringToFront();
  await bench.tap("step.shape");
  assert.ok((await bench.frames()) > before);
  await device.close();
});
