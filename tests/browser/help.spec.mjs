// The first minute, the help at a touch and by a search, labels that fit, About, and what an accessibility checker finds in the page's HTML.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { Bench, sizes, workshop } from "./support/bench.mjs";
import { axeSource } from "./support/settings.mjs";

const shop = await workshop();

/** Puts the dialog away that explains; returns what it said. */
async function explained(bench) {
  const dialog = bench.page.locator("#dialog-explain");
  await dialog.waitFor();
  const text = (piece) => bench.page.locator(`#dialog-explain-${piece}`).textContent();
  const said = { title: await text("title"), what: await text("what"), how: await text("how"), source: await text("source"), trust: await text("trust") };
  said.figures = await bench.page.locator("#dialog-explain-figures > *").allTextContents();
  await dialog.getByRole("button", { name: "Understood" }).tap();
  await bench.settled();
  return said;
}

test("a tour of five touches greets whoever comes for the first time, shows a step of the bench behind each, can be skipped, does not come again, and is found on the shelf", async () => {
  for (const size of [sizes.phone, sizes.tablet]) {
    const device = await shop.device({ size });
    const bench = new Bench(await device.newPage());
    await bench.page.goto(shop.server.address);
    await bench.ready({ withFirstSteps: true });
    const title = bench.page.locator("#dialog-first-title");
    const seen = [];
    const steps = [];
    for (let card = 0; card < 5; card++) {
      await bench.settled();
      seen.push(await title.textContent());
      steps.push(JSON.parse(await bench.hook("sessionJson")).view.step);
      await bench.shot(`first-${card + 1}-${size.width}`);
      await bench.page.locator("#dialog-first-next").tap();
    }
    assert.equal(new Set(seen).size, 5);
    assert.deepEqual(steps, ["shape", "lead", "water", "log", "sheet"]);
    assert.equal(await title.isVisible(), false);
    await bench.settled();
    assert.equal(JSON.parse(await bench.hook("sessionJson")).view.step, "lead", "the bench is as it was before");
    await bench.page.reload();
    await bench.ready({ withFirstSteps: true });
    assert.equal(await title.isVisible(), false);
    await bench.tap("shelf.open");
    await bench.tap("shelf.first");
    await title.waitFor();
    await bench.page.locator("#dialog-first-skip").tap();
    assert.equal(await title.isVisible(), false);
    bench.noFaults();
    await device.close();
  }
});

test("every answer of the strip can be tapped for what it is, with the figures that went into it", async () => {
  for (const size of [sizes.phone, sizes.tablet]) {
    const device = await shop.device({ size });
    const bench = await shop.open(device);
    const answers = (await bench.items()).map(({ id }) => id).filter((id) => id.startsWith("answer."));
    assert.ok(answers.length >= 5, answers.join());
    for (const id of answers) {
      await bench.tap(id);
      if (id === "answer.fall") await bench.shot(`explain-${size.width}`);
      const said = await explained(bench);
      for (const [piece, text] of Object.entries(said)) assert.ok(text.length > 3, `${id}: ${piece}`);
    }
    await device.close();
  }
});

// The shell's own tests walk every step on both screens, touch every figure and look for labels that are cut off.
test("figures of a step explain themselves at a touch, with source and trust", async () => {
  const device = await shop.device({ size: sizes.tablet });
  const bench = await shop.open(device);
  for (const step of ["shape", "hardware", "water", "log"]) {
    await bench.tap(`step.${step}`);
    await bench.settled();
    const offered = (await bench.items()).filter(({ id, visible }) => visible && /^help\.[a-z_]+$/.test(id)).slice(0, 2);
    for (const { id } of offered) {
      await bench.tap(id);
      const said = await explained(bench);
      for (const piece of ["title", "what", "how", "source", "trust"]) assert.ok(said[piece].length > 3, `${step}: ${id}: ${piece}`);
    }
    if (step === "log") assert.ok(offered.length > 0, "the log's figures explain themselves");
  }
  bench.noFaults();
  await device.close();
});

test("the help finds an entry for a question in plain words, and tells its steps in the units that are set", async () => {
  const device = await shop.device({ size: sizes.phone });
  const bench = await shop.open(device);
  await bench.tap("shelf.open");
  await bench.tap("shelf.help");
  const question = bench.page.locator("#dialog-help-question");
  await question.waitFor();
  await bench.shot("help-all");
  await question.fill("how do I weigh under water?");
  await bench.shot("help-found");
  await bench.page.locator("#dialog-help-list button").first().tap();
  await bench.shot("help-entry");
  assert.match(await bench.page.locator("#dialog-explain-steps").textContent(), /fork/);
  assert.equal(await bench.page.locator("#dialog-explain-grounds").isVisible(), false);
  const said = await explained(bench);
  assert.match(said.title, /under water/);
  await question.fill("xylophone");
  assert.ok(await bench.page.locator("#dialog-help-none").isVisible());
  await bench.page.locator("#dialog-help").getByRole("button", { name: "Close" }).tap();
  bench.noFaults();
  await device.close();
});

test("About tells version, licences and that nothing leaves the device", async () => {
  const device = await shop.device({ size: sizes.phone });
  const bench = await shop.open(device);
  await bench.tap("shelf.open");
  await bench.tap("shelf.about");
  const dialog = bench.page.locator("#dialog-about");
  await dialog.waitFor();
  await bench.shot("about");
  assert.match(await dialog.textContent(), /Version \d+\.\d+\.\d+, build [0-9a-f]{12}/);
  assert.match(await dialog.textContent(), /Nothing leaves this device/);
  const works = dialog.locator("summary");
  const names = await works.allTextContents();
  for (const work of ["Evenfall", "imgui", "libsdl2", "fonts-adobe-sourcesans3"]) assert.ok(names.some((name) => name.startsWith(work)), `${work} in ${names}`);
  await works.first().tap();
  await bench.shot("about-licence");
  assert.match(await dialog.locator("pre").first().textContent(), /MIT License/);
  await dialog.getByRole("button", { name: "Close" }).tap();
  bench.noFaults();
  await device.close();
});

// axe-core's rules, after WCAG 2.2 A and AA. A clean run says nothing about the canvas: what is drawn there stands as text
// in the report, which is why that is among the views.
const views = {
  bench: async () => {},
  sheet: async (bench) => {
    await bench.tap("step.sheet");
    await bench.page.locator("#sheet .leaf").first().waitFor();
  },
  report: async (bench) => {
    await bench.page.locator("#report-toggle").focus();
    await bench.page.keyboard.press("Enter");
  },
  share: (bench) => bench.open("share"),
  save: (bench) => bench.open("save"),
  open: (bench) => bench.open("file"),
  name: (bench) => bench.open("name"),
  explanation: (bench) => bench.tap("answer.fall"),
  help: async (bench) => {
    await bench.tap("shelf.open");
    await bench.tap("shelf.help");
  },
  about: async (bench) => {
    await bench.tap("shelf.open");
    await bench.tap("shelf.about");
    await bench.page.locator("#dialog-about summary").first().waitFor();
  },
};
for (const look of ["light", "dark"]) {
  test(`an accessibility checker finds nothing serious in any view, ${look}`, async () => {
    const device = await shop.device({ colorScheme: look, bypassCSP: true });
    for (const [name, go] of Object.entries(views)) {
      const bench = await shop.open(device);
      await go(bench);
      await bench.settled();
      await bench.page.evaluate(readFileSync(axeSource, "utf8"));
      const { violations, passes } = await bench.page.evaluate(() => globalThis.axe.run({ resultTypes: ["violations"] }));
      assert.ok(passes.length > 10, `${name}: the checker has looked`);
      const serious = violations.filter(({ impact }) => ["serious", "critical"].includes(impact));
      assert.deepEqual(serious.map(({ id, nodes }) => `${name}: ${id}: ${nodes[0].html}`), []);
      await bench.page.close();
    }
    await device.close();
  });
}
