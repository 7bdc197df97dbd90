// A lure that travels in the address from one device to another.

import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { basename, join } from "node:path";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { presets } from "./support/program.mjs";
import { program, shotsDir } from "./support/settings.mjs";
import { openPreset, takeFromShelf, warmWater } from "./support/ways.mjs";

const shop = await workshop();

async function sharedAddress(bench) {
  await bench.open("share");
  const field = bench.page.locator("#dialog-share-link");
  await field.waitFor();
  return field.inputValue();
}

async function givenAddress() {
  const device = await shop.device();
  const bench = await shop.open(device);
  await warmWater(bench);
  const address = await sharedAddress(bench);
  const document = await bench.document();
  await device.close();
  return { address, document };
}

test("a lure that was changed on one device opens the same on another", async () => {
  const { address, document } = await givenAddress();
  assert.match(new URL(address).hash, /^#2\.[A-Za-z0-9_-]*[A-Za-z0-9]$/);
  const device = await shop.device();
  const bench = await shop.open(device, address);
  assert.deepEqual(await bench.document(), document);
  assert.equal(new URL(bench.page.url()).hash, "", "the address is cleared");
  bench.noFaults();
  await device.close();
});

test("a line break or a blank within a link is forgiven", async () => {
  const { address, document } = await givenAddress();
  for (const broken of ["%0A", "%0D%0A", "%20"]) {
    const device = await shop.device();
    const bench = await shop.open(device, address.replace(/#.{60}/, (front) => front + broken));
    assert.deepEqual(await bench.document(), document);
    await device.close();
  }
});

test("a link is an unsaved copy: a reload brings the own lure back", async () => {
  const { address, document } = await givenAddress();
  const device = await shop.device();
  const bench = await shop.open(device);
  await warmWater(bench);
  await warmWater(bench);
  await bench.keptSoon();
  const own = await bench.document();
  await bench.page.goto(address); // the same page: only the fragment differs
  await bench.page.waitForFunction(() => location.hash === "");
  assert.deepEqual(await bench.document(), document);
  await bench.meanwhile(1500);
  await bench.page.reload();
  await bench.ready();
  assert.deepEqual(await bench.document(), own);
  await device.close();
});

test("once a copy from a link is changed it is kept, and the lure before it waits on the shelf", async () => {
  const { address } = await givenAddress();
  const device = await shop.device();
  const first = await shop.open(device);
  await warmWater(first);
  await warmWater(first);
  await first.keptSoon();
  const own = await first.document();
  await first.page.close();

  const bench = await shop.open(device, address);
  await warmWater(bench);
  await bench.keptSoon();
  const changed = await bench.document();
  await bench.page.reload();
  await bench.ready();
  assert.deepEqual(await bench.document(), changed);

  await takeFromShelf(bench);
  assert.deepEqual(await bench.document(), own);
  await device.close();
});

test("a copy from a link can be kept as it is", async () => {
  const { address, document } = await givenAddress();
  const device = await shop.device();
  const bench = await shop.open(device, address);
  await bench.page.locator('.notice[data-kind="link"]').getByRole("button", { name: "Save it" }).tap();
  await bench.page.reload();
  await bench.ready();
  assert.deepEqual(await bench.document(), document);
  await device.close();
});

for (const [what, damage] of [
  ["cut short", (link) => link.slice(0, -9)],
  ["with one letter changed", (link) => link.replace(/(#.{20})(.)/, (_, start, letter) => start + (letter === "A" ? "B" : "A"))],
  ["of an unknown version", (link) => link.replace(/#\d+\./, "#9.")],
]) {
  test(`a link ${what} says so and leaves what was there`, async () => {
    const { address } = await givenAddress();
    const device = await shop.device();
    const first = await shop.open(device);
    await warmWater(first);
    await first.keptSoon();
    const own = await first.document();
    const bench = await shop.open(device, damage(address));
    await bench.page.locator('.notice[data-kind="link"]').filter({ hasText: "could not be opened" }).waitFor();
    assert.deepEqual(await bench.document(), own);
    assert.equal(new URL(bench.page.url()).hash, "");
    await device.close();
  });
}

test("the share dialog copies the link, counts its characters and fits a phone", async () => {
  const device = await shop.device({ size: sizes.phone, permissions: ["clipboard-read", "clipboard-write"] });
  const bench = await shop.open(device);
  const address = await sharedAddress(bench);
  const { page } = bench;
  assert.equal(await page.locator("#dialog-share-count").textContent(), `${address.length.toLocaleString("en")} characters`);
  assert.equal(await page.locator("#dialog-share-long").isVisible(), address.length > 1800);
  await page.getByRole("button", { name: "Copy the link" }).tap();
  await page.getByText("Copied.").waitFor();
  assert.equal(await page.evaluate(() => navigator.clipboard.readText()), address);
  const box = await page.locator("#dialog-share").boundingBox();
  assert.ok(box.x >= 0 && box.x + box.width <= sizes.phone.width && box.y >= 0 && box.y + box.height <= sizes.phone.height);
  await bench.shot("dialog-share-phone");
  await page.getByRole("button", { name: "Close" }).tap();
  assert.equal(await page.evaluate(() => document.activeElement.id), "canvas");
  await device.close();
});

test("a long link carries a note", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const note = await bench.page.evaluate(async () => {
    const { shareDialog } = await import("./js/share.js");
    const said = [];
    for (const size of [1700, 1900, 9000]) {
      shareDialog(`2.${"A".repeat(size - location.href.length)}`, () => null);
      const line = document.getElementById("dialog-share-long");
      said.push(line.hidden ? "" : line.textContent);
    }
    return said;
  });
  assert.equal(note[0], "");
  assert.match(note[1], /1800/);
  assert.match(note[2], /8000/);
  await device.close();
});

test("the links of the demos are short, and the same bytes from the page and from the program", async (t) => {
  const device = await shop.device();
  const bench = await shop.open(device);
  for (const preset of presets) {
    const name = basename(preset, ".json");
    await openPreset(bench, name);
    const link = await bench.hook("link");
    const run = spawnSync(program, ["link", preset], { encoding: "utf8" });
    assert.equal(run.status, 0, run.stderr);
    assert.equal(link, run.stdout.trim());
    const limit = name === "quarry-230" ? 900 : 700;
    t.diagnostic(`${name}: ${link.length} characters (limit ${limit})`);
    assert.ok(link.length <= limit, `${name}: ${link.length}`);
  }
  await device.close();
});

test("the share dialog shows a square code that another device's camera reads as the very link", async () => {
  for (const [name, size] of [["tablet", sizes.tablet], ["phone", sizes.phone]]) {
    for (const look of ["light", "dark"]) {
      const device = await shop.device({ size, colorScheme: look });
      const bench = await shop.open(device);
      const address = await sharedAddress(bench);
      const code = bench.page.locator("#dialog-share-code");
      await code.scrollIntoViewIfNeeded();
      const picture = join(shotsDir, `code-${name}-${look}.png`);
      await code.screenshot({ path: picture });
      const read = spawnSync("zbarimg", ["--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", picture], { encoding: "utf8" });
      assert.equal(read.stdout.trim(), address, `${name}, ${look}`);
      await device.close();
    }
  }
});
