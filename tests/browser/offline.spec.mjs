// Without a network, and across versions.

import assert from "node:assert/strict";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { workshop } from "./support/bench.mjs";
import { hashesIn, nextBuild, serve } from "./support/server.mjs";
import { pageDir } from "./support/settings.mjs";
import { warmWater } from "./support/ways.mjs";

const shop = await workshop();

test("after one visit the page opens with its server gone and the network off", async () => {
  const server = await serve(pageDir);
  const device = await shop.device();
  const first = await shop.open(device, server.address);
  await first.page.evaluate(() => navigator.serviceWorker.ready);
  await server.stop();
  await device.setOffline(true);

  await first.page.reload();
  await first.ready();
  assert.equal(await first.page.evaluate(() => navigator.serviceWorker.controller !== null), true);
  assert.ok((await first.document()).name, "a lure lies on the bench");
  first.noFaults();

  const second = await shop.open(device, `${server.address}?from=home-screen`);
  assert.ok((await second.items()).length > 0, "a new window opens as well, whatever stands behind '?'");
  await device.close();
});

test("the worker keeps every file of the page, the compiled code gzipped alone", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.page.evaluate(() => navigator.serviceWorker.ready);
  const missing = await bench.page.evaluate(async (files) => {
    const caches_ = await Promise.all((await caches.keys()).map((name) => caches.open(name)));
    const found = async (file) => (await Promise.all(caches_.map((cache) => cache.match(file)))).some(Boolean);
    const gone = [];
    for (const file of files) if (!(await found(file === "index.html" ? "./" : file))) gone.push(file);
    if (!files.includes("evenfall.wasm")) gone.push("the plain code's name in the list");
    return files.length > 7 ? gone : ["the list itself"];
  }, Object.keys(hashesIn(pageDir)));
  assert.deepEqual(missing, ["evenfall.wasm"]);
  await device.close();
});

test("where the device has cleared what it kept and left the worker, a start with a network keeps it all again", async () => {
  const server = await serve(pageDir);
  const device = await shop.device();
  const bench = await shop.open(device, server.address);
  await bench.page.evaluate(() => navigator.serviceWorker.ready);
  for (const cleared of ["all", "one file"]) {
    await bench.page.evaluate(async (what) => {
      for (const name of await caches.keys()) {
        if (what === "all") await caches.delete(name);
        else await (await caches.open(name)).delete("evenfall.js");
      }
    }, cleared);
    await bench.page.reload();
    await bench.ready();
    const files = Object.keys(hashesIn(pageDir)).filter((name) => name !== "evenfall.wasm");
    await bench.page.waitForFunction(async (names) => {
      const there = await Promise.all(names.map((name) => caches.match(name === "index.html" ? "./" : name)));
      return there.every(Boolean);
    }, files);
  }
  await server.stop();
  await device.setOffline(true);
  await bench.page.reload();
  await bench.ready();
  bench.noFaults();
  await device.close();
});

test("a new version waits until it is asked for, then loads once and leaves nothing of the old one", async () => {
  const next = mkdtempSync(join(tmpdir(), "evenfall-next-"));
  const build = nextBuild(pageDir, next);
  const server = await serve(pageDir);
  const device = await shop.device();
  const bench = await shop.open(device, server.address);
  const { page } = bench;
  const buildSeen = () => page.locator('meta[name="evenfall-build"]').getAttribute("content");
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.reload();
  await bench.ready();

  server.swap(next);
  await page.reload();
  await bench.ready();
  assert.equal(await buildSeen(), build, "a plain reload stays with the old version");
  await page.locator('.notice[data-kind="version"]').waitFor();

  let loads = 0;
  page.on("load", () => loads++);
  // What the device could not keep does not go for it unasked.
  await page.evaluate(() => {
    globalThis.givenSetItem = Storage.prototype.setItem;
    Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };
  });
  await warmWater(bench);
  const changed = await bench.document();
  await page.locator('.notice[data-kind="version"]').getByRole("button", { name: "Load it" }).tap();
  await page.locator('.notice[data-kind="version"]').filter({ hasText: "would be gone" }).waitFor();
  await page.waitForTimeout(1000);
  assert.equal(loads, 0);
  assert.deepEqual(await bench.document(), changed);
  await page.evaluate(() => (Storage.prototype.setItem = globalThis.givenSetItem));

  const loaded = page.waitForEvent("load");
  await page.locator('.notice[data-kind="version"]').getByRole("button", { name: "Load it" }).tap();
  await loaded;
  await bench.ready();
  await page.waitForTimeout(1000);
  assert.equal(loads, 1);
  assert.equal(await buildSeen(), "next-build");
  assert.deepEqual(await bench.document(), changed, "kept as soon as there was room");
  const kept = await page.evaluate(() => caches.keys());
  assert.deepEqual(kept.map((name) => name.split(" ").at(-1)), ["next-build"]);
  bench.noFaults();
  await device.close();
  await server.stop();
  rmSync(next, { recursive: true });
});
