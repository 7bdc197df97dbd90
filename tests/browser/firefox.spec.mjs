// The other family of browsers: the distribution's Firefox, with a window of its own on a screen that nobody sees, since it
// draws no WebGL without one. A smaller set than in Chromium: start, work, keep, share, offline, one file.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";
import { pathToFileURL } from "node:url";
import { documentOf, hook, launchFirefox, ready, rest, startScreen, tap, warmWater } from "./support/firefox.mjs";
import { scales } from "./support/paper.mjs";
import { serve } from "./support/server.mjs";
import { modulesDir, oneFile, pageDir, shotsDir } from "./support/settings.mjs";

const screen = await startScreen();
const browser = await launchFirefox(screen);
const server = await serve(pageDir, modulesDir);
after(async () => {
  await browser.close();
  await server.stop();
  screen.close();
});

async function open(context, address = server.address) {
  const page = await context.newPage();
  await page.setViewport({ width: 1024, height: 768 });
  const faults = [];
  page.on("pageerror", (error) => faults.push(String(error)));
  await page.goto(address);
  await ready(page);
  return { page, faults };
}

test("Firefox: the bench starts, works, rests without frames, and keeps a change over a reload", async () => {
  const context = await browser.createBrowserContext();
  const { page, faults } = await open(context);
  await warmWater(page);
  const changed = await documentOf(page);
  assert.equal(changed.water.temperature_C, 19);
  const before = await hook(page, "frames");
  await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 6000))); // longer than a word on the bench stays
  await rest(page);
  const still = await hook(page, "frames");
  await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 2000)));
  assert.equal(await hook(page, "frames"), still, `no frames at rest (${before} before)`);
  await page.screenshot({ path: join(shotsDir, "firefox.png") });
  await page.reload();
  await ready(page);
  assert.deepEqual(await documentOf(page), changed);
  assert.deepEqual(faults, []);
  await context.close();
});

test("Firefox: the card makes a whole lure, its lead planned, and the sheet prints it", async () => {
  const context = await browser.createBrowserContext();
  const { page, faults } = await open(context);
  for (const id of ["shelf.open", "shelf.new", "card.segments.more"]) await tap(page, id);
  await page.mouse.wheel({ deltaY: 3000 }); // to the end of the card
  await rest(page);
  await tap(page, "card.make");
  const lure = await documentOf(page);
  assert.equal(lure.joints.length, 3);
  const { fall_mm_s: fall } = JSON.parse(await hook(page, "answersJson"));
  assert.ok(Math.abs(fall - 120) < 1, `it falls as asked: ${fall} mm/s`);
  await tap(page, "step.sheet");
  await page.waitForSelector("#sheet .leaf");
  assert.deepEqual(faults, []);
  await context.close();
});

test("Firefox: a link opens as the same lure on another device, and a cut one says so", async () => {
  const one = await browser.createBrowserContext();
  const { page } = await open(one);
  await warmWater(page);
  const given = await documentOf(page);
  const link = await hook(page, "link");
  const other = await browser.createBrowserContext();
  const second = await open(other, `${server.address}#${link}`);
  assert.deepEqual(await documentOf(second.page), given);
  const third = await open(other, `${server.address}#${link.slice(0, -9)}`);
  assert.ok(await third.page.$('.notice[data-kind="link"]'));
  await one.close();
  await other.close();
});

test("Firefox: a second tab says that the bench is open elsewhere, and takes it over when told to; a reload is no second tab", async () => {
  const context = await browser.createBrowserContext();
  const first = await open(context);
  const line = '.notice[data-kind="tabs"]';
  await first.page.reload();
  await ready(first.page);
  assert.equal(await first.page.$(line), null, "the reloaded page holds the bench");
  const second = await open(context);
  await second.page.waitForSelector(line);
  await second.page.$eval(`${line} button`, (button) => button.click());
  await first.page.waitForSelector(line);
  assert.equal(await second.page.$(line), null);
  assert.deepEqual([...first.faults, ...second.faults], []);
  await context.close();
});

test("Firefox: when the device refuses to keep anything the page says so and offers a file", async () => {
  const context = await browser.createBrowserContext();
  const { page, faults } = await open(context);
  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
  });
  await warmWater(page);
  await page.waitForSelector('.notice[data-kind="storage"]');
  const said = await page.$eval('.notice[data-kind="storage"]', (line) => line.textContent);
  assert.match(said, /Not saved on this device/);
  assert.match(said, /Save a copy/);
  assert.deepEqual(faults, []);
  await context.close();
});

test("Firefox: after one visit the page opens with its server gone", async () => {
  // Service workers are not for private contexts there: the browser's own.
  const mine = await serve(pageDir);
  const { page } = await open(browser.defaultBrowserContext(), mine.address);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  await mine.stop();
  await page.reload();
  await ready(page);
  assert.ok((await documentOf(page)).name);
  await page.close();
});

test("Firefox: the one file opens from a disk", async () => {
  const folder = mkdtempSync(join(tmpdir(), "evenfall-firefox-"));
  cpSync(oneFile, join(folder, "evenfall.html"));
  const { page, faults } = await open(browser.defaultBrowserContext(), pathToFileURL(join(folder, "evenfall.html")).href);
  assert.ok((await documentOf(page)).name);
  assert.deepEqual(faults, []);
  await page.close();
  rmSync(folder, { recursive: true });
});

test("Firefox: the sheet stands in its step and is printed alone, page for page", async () => {
  const context = await browser.createBrowserContext();
  const { page, faults } = await open(context);
  await tap(page, "step.sheet");
  await page.waitForSelector("#sheet .leaf");
  await page.screenshot({ path: join(shotsDir, "firefox-sheet.png") });
  const leaves = await page.evaluate(() => document.querySelectorAll("#sheet .leaf").length);
  // The driver gives the paper; that the page's own box asks for the same one is measured in Chromium.
  const file = join(shotsDir, "firefox-sheet.pdf");
  await page.pdf({ path: file, width: "210mm", height: "297mm", margin: { top: 0, right: 0, bottom: 0, left: 0 }, preferCSSPageSize: true });
  const words = execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
  assert.equal(words.match(/100 mm exactly/g)?.length, leaves, "both bars stand on every page");
  assert.equal(words.split("\f").length - 1, leaves);
  assert.doesNotMatch(words, /Answers as text/);
  const measured = scales(file, "10", "160");
  assert.ok(measured.length >= 4 && measured.every((length) => Math.abs(length - 150) <= 0.1), `true to size: ${measured}`);
  assert.deepEqual(faults, []);
  await context.close();
});
