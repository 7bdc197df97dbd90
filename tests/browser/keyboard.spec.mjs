// Without fingers and without eyes: the keyboard can come and go, and the answers stand beside the drawing as text.

import assert from "node:assert/strict";
import { test } from "node:test";
import { workshop } from "./support/bench.mjs";
import { warmWater } from "./support/ways.mjs";

const shop = await workshop();
const focused = (bench) => bench.page.evaluate(() => document.activeElement.id);

test("the keyboard starts in the drawing, leaves it by Tab and comes back by Shift+Tab", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  assert.equal(await focused(bench), "canvas");
  await bench.page.keyboard.press("Tab");
  assert.equal(await focused(bench), "report-toggle");
  await bench.page.keyboard.press("Shift+Tab");
  assert.equal(await focused(bench), "canvas");
  await device.close();
});

test("the answers can be read as text over the bench and put away again", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.page.keyboard.press("Tab");
  await bench.page.keyboard.press("Enter");
  const report = bench.page.locator("#report");
  assert.equal((await report.boundingBox()).width, bench.page.viewportSize().width);
  await bench.shot("report");
  await bench.page.keyboard.press("Escape");
  assert.equal(await focused(bench), "canvas");
  assert.ok((await report.boundingBox()).width <= 1);

  await bench.page.keyboard.press("Tab");
  await bench.page.keyboard.press("Enter");
  await bench.page.getByRole("button", { name: "Back to the bench" }).tap();
  assert.ok((await report.boundingBox()).width <= 1, "a finger finds the way back too");
  await device.close();
});

test("the text holds the core's own answers, before and after a change", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const rows = () => bench.page.locator("#report-body table").first().locator("tbody tr").allTextContents();
  const shown = async () => {
    const answers = await bench.answers();
    const lines = await rows();
    for (const [label, value, digits, unit] of [
      ["Finished mass", answers.mass_g, 2, "g"], ["Water displaced", answers.displaced_cm3, 2, "cm³"],
      ["Weight in water", answers.in_water_g, 2, "g"],
    ]) {
      assert.ok(lines.includes(`${label}${value.toFixed(digits).replace("-", "−")} ${unit}`), `${label} ${value} in ${lines}`);
    }
    for (const segment of answers.segments) await bench.page.locator("#report-body th", { hasText: segment.name }).first().waitFor({ state: "attached" });
    return answers.in_water_g;
  };
  const before = await shown();
  const told = await bench.page.locator("#report-body").textContent();
  await warmWater(bench);
  await bench.page.waitForFunction((text) => document.getElementById("report-body").textContent !== text, told);
  assert.notEqual(await shown(), before);
  await device.close();
});

test("the page has one heading for it all, a described canvas and a live line", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const { page } = bench;
  assert.equal(await page.locator("h1").count(), 1);
  assert.equal(await page.locator("html").getAttribute("lang"), "en");
  const about = await page.locator("#canvas").getAttribute("aria-describedby");
  assert.match(await page.locator(`#${about}`).textContent(), /Tab leaves/);
  assert.equal(await page.locator("#live").getAttribute("role"), "status");
  await device.close();
});
