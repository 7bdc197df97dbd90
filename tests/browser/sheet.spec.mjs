// The Sheet step: paper on the screen, from the printer and as files.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { pagesOf, scales } from "./support/paper.mjs";
import { presetsDir, program, shotsDir } from "./support/settings.mjs";
import { openPreset, warmWater } from "./support/ways.mjs";

const shop = await workshop();
const papers = { A4: [210, 297], Letter: [215.9, 279.4] }; // ISO 216; 8.5 × 11 in

async function openSheet(device) {
  const bench = await shop.open(device);
  await bench.tap("step.sheet");
  await bench.page.locator("#sheet .leaf").first().waitFor();
  await bench.page.evaluate(() => document.fonts.ready);
  return bench;
}

const leaves = (bench) => bench.page.locator("#sheet .leaf");

for (const [look, size] of [["light", "tablet"], ["dark", "tablet"], ["light", "phone"], ["dark", "phone"]]) {
  test(`the sheet lies where the drawing was, in the paper's proportion, ${look}, ${size}`, async () => {
    const device = await shop.device({ size: sizes[size], colorScheme: look });
    await device.addInitScript(() => {
      globalThis.blocked = [];
      document.addEventListener("securitypolicyviolation", (event) => globalThis.blocked.push(event.violatedDirective));
    });
    const bench = await openSheet(device);
    const box = await bench.page.locator("#sheet").boundingBox();
    const bar = await bench.find("step.sheet");
    const print = await bench.find("sheet.print");
    assert.ok(box.height > 200 && box.y + box.height <= bar.y, "above the bar");
    assert.ok(box.x + box.width <= print.x || box.y + box.height <= print.y, "beside the panel or above it");
    const page = await leaves(bench).first().locator("svg").boundingBox();
    assert.ok(Math.abs(page.height / page.width - 297 / 210) < 0.005, `${page.width} × ${page.height}`);
    assert.ok((await leaves(bench).count()) >= 6);
    assert.deepEqual(await bench.page.evaluate(() => globalThis.blocked), [], "the page's policy has stopped nothing");
    assert.equal(await bench.page.locator("#sheet [style], #sheet style").count(), 0);
    assert.ok(await bench.page.evaluate(() => document.fonts.check('600 12px "evenfall-sheet"')), "set in the sheet's own face");
    await bench.shot(`sheet-${size}-${look}`);
    bench.noFaults();
    await device.close();
  });
}

test("every page tells its words to those who do not see them, tables as tables", async () => {
  const device = await shop.device();
  const bench = await openSheet(device);
  const drill = bench.page.locator("#sheet table", { has: bench.page.getByRole("columnheader", { name: "From datum" }) }).first();
  const cells = await drill.locator("tr").nth(1).locator("td").allTextContents();
  const hole = (await bench.document()).holes[0];
  assert.equal(cells[0], hole.name);
  assert.equal(Number(cells[2]), hole.diameter_mm);
  for (const leaf of await leaves(bench).all()) assert.equal(await leaf.getByRole("heading", { level: 2 }).count(), 1);
  await device.close();
});

test("two fingers enlarge the sheet and one moves it; the bench below feels nothing", async () => {
  const device = await shop.device();
  const bench = await openSheet(device);
  const before = await bench.document();
  const width = async () => (await leaves(bench).first().boundingBox()).width;
  const small = await width();
  const box = await bench.page.locator("#sheet").boundingBox();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await bench.touch("touchStart", { x: x - 40, y }, { x: x + 40, y });
  for (let apart = 50; apart <= 100; apart += 10) await bench.touch("touchMove", { x: x - apart, y }, { x: x + apart, y });
  await bench.touch("touchEnd");
  const large = await width();
  assert.ok(Math.abs(large / small - 2.5) < 0.2, `${small} → ${large}`);
  const scrolled = await bench.page.locator("#sheet").evaluate((place) => place.scrollTop);
  await bench.drag({ x, y: y + 100 }, { x, y: y - 100 });
  assert.ok((await bench.page.locator("#sheet").evaluate((place) => place.scrollTop)) > scrolled + 50);
  assert.equal(await bench.page.evaluate(() => window.visualViewport.scale), 1);
  assert.deepEqual(await bench.document(), before);
  await device.close();
});

test("the sheet goes away under what lies over it and with its step", async () => {
  const device = await shop.device();
  const bench = await openSheet(device);
  const seen = () => bench.page.locator("#sheet").isVisible();
  await bench.tap("shelf.open");
  assert.equal(await seen(), false);
  await bench.tap("shelf.close");
  await bench.page.locator("#sheet .leaf").first().waitFor();
  await bench.tap("step.lead");
  await bench.page.locator("#sheet").waitFor({ state: "hidden" });
  await device.close();
});

for (const [paper, [width, height]] of Object.entries(papers)) {
  test(`printing gives the sheet alone, page for page on ${paper}`, async () => {
    const device = await shop.device();
    await device.addInitScript(() => {
      globalThis.printed = 0;
      window.print = () => { globalThis.printed += 1; };
    });
    const bench = await openSheet(device);
    if (paper === "Letter") await bench.tap("sheet.paper.1");
    await bench.tap("sheet.print");
    await bench.page.waitForFunction(() => globalThis.printed === 1);
    const file = join(shotsDir, `sheet-printed-${paper}.pdf`);
    writeFileSync(file, await bench.page.pdf({ preferCSSPageSize: true }));
    const pages = pagesOf(file);
    assert.equal(pages.length, await leaves(bench).count());
    // A browser rounds its page to whole CSS pixels, 1/96 in.
    for (const [w, h] of pages) assert.ok(Math.abs(w - width) < 0.3 && Math.abs(h - height) < 0.3, `${w} × ${h}`);
    const measured = scales(file, "10", "160");
    assert.ok(measured.length >= 4 && measured.every((length) => Math.abs(length - 150) <= 0.1), `true to size: ${measured}`);
    const words = execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
    assert.equal(words.match(/100 mm exactly/g).length, pages.length, "both bars stand on every page");
    assert.doesNotMatch(words, /Answers as text|Skip/);
    await device.close();
  });
}

test("files saved by the page are the program's, byte for byte", async () => {
  const device = await shop.device();
  const bench = await openSheet(device);
  await bench.tap("sheet.paper.1");
  await bench.tap("sheet.lures.more");
  for (const ending of ["pdf", "html", "svg"]) {
    await bench.tap(`sheet.${ending}`);
    await bench.page.locator("#dialog-save-file").waitFor();
    const arrives = bench.page.waitForEvent("download");
    await bench.page.locator("#dialog-save-file").tap();
    const file = await arrives;
    assert.equal(file.suggestedFilename(), `millrace-170.${ending}`);
    const own = join(shotsDir, `sheet-program.${ending}`);
    execFileSync(program, ["sheet", join(presetsDir, "millrace-170.json"), "-o", own, "--paper", "letter", "--lures", "2",
      "--page", shop.server.address]);
    assert.ok(readFileSync(await file.path()).equals(readFileSync(own)), ending);
    await bench.page.locator("#dialog-save").waitFor({ state: "hidden" }); // saving closes it
  }
  await device.close();
});

test("a batch of two recipes from the shelf is the program's, byte for byte", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await warmWater(bench);
  await bench.keptSoon();
  const first = join(shotsDir, "batch-first.json");
  writeFileSync(first, await bench.hook("documentJson"));
  await openPreset(bench, "reedline-120");
  await bench.tap("step.sheet");
  await bench.page.locator("#sheet .leaf").first().waitFor();
  const more = (await bench.items()).find(({ id }) => /^sheet\.with\..*\.more$/.test(id)).id;
  await bench.tap(more);
  await bench.tap(more);
  await bench.shot("sheet-batch");
  await bench.tap("sheet.pdf");
  await bench.page.locator("#dialog-save-file").waitFor();
  const arrives = bench.page.waitForEvent("download");
  await bench.page.locator("#dialog-save-file").tap();
  const file = await arrives;
  const own = join(shotsDir, "batch-program.pdf");
  execFileSync(program, ["sheet", join(presetsDir, "reedline-120.json"), "-o", own, "--also", first, "--lures", "2", "--page", shop.server.address]);
  assert.ok(readFileSync(await file.path()).equals(readFileSync(own)));
  await device.close();
});
