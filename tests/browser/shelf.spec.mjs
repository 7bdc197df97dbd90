// Several lures side by side on one device.

import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { lookAtShelf, names, openPreset, takeFromShelf, warmWater } from "./support/ways.mjs";

const shop = await workshop();

test("a lure that gives up the bench waits on the shelf and comes back as it was; nothing of either is lost", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await names(bench, "First of two");
  const first = await bench.document();
  await openPreset(bench, "quarry-230");
  await names(bench, "Second of two");
  const second = await bench.document();

  assert.equal((await lookAtShelf(bench)).length, 1);
  await bench.shot("shelf");
  await bench.tap("shelf.close");
  await takeFromShelf(bench);
  assert.deepEqual(await bench.document(), first);
  await bench.keptSoon();
  await bench.page.reload();
  await bench.ready();
  assert.deepEqual(await bench.document(), first);
  await takeFromShelf(bench);
  assert.deepEqual(await bench.document(), second);
  // What was done to it is taken back, and what was done to the other one is not.
  const { name } = second;
  await bench.tap("undo");
  assert.notEqual((await bench.document()).name, name);
  assert.deepEqual({ ...(await bench.document()), name }, second);
  assert.equal(await bench.has("undo"), false);
  bench.noFaults();
  await device.close();
});

test("a demo that nobody touched does not pile up on the shelf", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  for (const demo of ["quarry-230", "estuary-150", "reedline-120"]) await openPreset(bench, demo);
  assert.deepEqual(await lookAtShelf(bench), []);
  await device.close();
});

test("a lure goes into the bin at one tap and comes back at one; the bin is emptied only by a second answer", async () => {
  const device = await shop.device({ size: sizes.phone });
  const bench = await shop.open(device);
  await names(bench, "Not wanted");
  const thrown = await bench.document();
  await openPreset(bench, "estuary-150");
  const [row] = await lookAtShelf(bench);
  const id = row.replace("shelf.lure.", "");
  const drop = async () => {
    await bench.tap(`shelf.drop.${id}`);
    await bench.page.waitForTimeout(100);
    await bench.settled();
    assert.equal(await bench.find(row), undefined);
    await bench.tap("shelf.bin");
  };
  await drop();
  await bench.shot("shelf-bin-phone");
  await bench.tap(`shelf.back.${id}`);
  await bench.page.waitForTimeout(100);
  await bench.settled();
  await bench.tap(row);
  await bench.page.waitForTimeout(100);
  await bench.settled();
  assert.deepEqual(await bench.document(), thrown);

  await openPreset(bench, "quarry-230");
  await lookAtShelf(bench);
  await drop();
  await bench.tap("shelf.empty");
  await bench.tap("shelf.empty.no");
  assert.ok(await bench.find(`shelf.back.${id}`));
  await bench.tap("shelf.empty");
  await bench.shot("shelf-bin-asked-phone");
  await bench.tap("shelf.empty.yes");
  await bench.page.waitForTimeout(100);
  await bench.settled();
  assert.equal(await bench.find("shelf.bin"), undefined);
  assert.equal(await bench.page.evaluate(() => Object.keys(localStorage).some((key) => key.includes("bin"))), false);
  bench.noFaults();
  await device.close();
});

test("two lures stand side by side, the one on the bench and one chosen on the shelf", async () => {
  for (const [name, size] of Object.entries({ tablet: sizes.tablet, upright: { width: 768, height: 1024 }, phone: sizes.phone })) {
    const device = await shop.device({ size });
    const bench = await shop.open(device);
    await warmWater(bench);
    const own = await bench.document();
    await bench.tap("shelf.open");
    await bench.tap("shelf.compare");
    await bench.tap("pick.demo.quarry-230");
    assert.ok(await bench.has("variants.close"));
    await bench.shot(`variants-${name}`);
    await bench.tap("variants.close");
    assert.deepEqual(await bench.document(), own);
    bench.noFaults();
    await device.close();
  }
});

test("a killed tab loses nothing older than one second", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await warmWater(bench);
  const changed = await bench.document();
  await bench.page.waitForTimeout(1000);
  const wire = await shop.browser.newBrowserCDPSession();
  const { targetInfos } = await wire.send("Target.getTargets");
  assert.ok(targetInfos.length > 0);
  // A crash gives no event to save by.
  const crashed = bench.page.waitForEvent("crash");
  bench.page.goto("chrome://crash").catch(() => {});
  await crashed;
  const again = await shop.open(device);
  assert.deepEqual(await again.document(), changed);
  await device.close();
});

test("a damaged lure on the shelf is not lost: it can be saved as it is, and the others stay", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await names(bench, "Sound");
  await openPreset(bench, "quarry-230");
  await names(bench, "Hurt");
  await openPreset(bench, "estuary-150");
  const hurt = await bench.page.evaluate(() => {
    const key = Object.keys(localStorage).find((name) => name.startsWith("evenfall.lure.") && localStorage[name].includes("Hurt"));
    localStorage[key] = localStorage[key].replace("Hurt", "Hrut");
    return localStorage[key];
  });
  const rows = await lookAtShelf(bench);
  assert.equal(rows.length, 2);
  const arrives = bench.page.waitForEvent("download");
  await bench.tap(rows[1]);
  await bench.page.locator('.notice[data-kind="unread"]').getByRole("button", { name: "Save it as a file" }).tap();
  const chunks = [];
  for await (const chunk of await (await arrives).createReadStream()) chunks.push(chunk);
  assert.equal(String(Buffer.concat(chunks)), hurt);
  await device.close();
});
