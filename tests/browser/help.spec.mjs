// The first minute, what the answers mean, and what an accessibility checker finds in the page's HTML.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { Bench, sizes, workshop } from "./support/bench.mjs";
import { axeSource } from "./support/settings.mjs";

const shop = await workshop();

test("three cards greet whoever comes for the first time, can be skipped, do not come again, and are found on the shelf", async () => {
  const device = await shop.device({ size: sizes.phone });
  const bench = new Bench(await device.newPage());
  await bench.page.goto(shop.server.address);
  await bench.ready({ withFirstSteps: true });
  const title = bench.page.locator("#dialog-first-title");
  const seen = [];
  for (let card = 0; card < 3; card++) {
    seen.push(await title.textContent());
    await bench.shot(`first-${card + 1}-phone`);
    await bench.page.locator("#dialog-first-next").tap();
  }
  assert.equal(new Set(seen).size, 3);
  assert.equal(await title.isVisible(), false);
  await bench.page.reload();
  await bench.ready({ withFirstSteps: true });
  assert.equal(await title.isVisible(), false);
  await bench.tap("shelf.open");
  await bench.tap("shelf.first");
  await title.waitFor();
  await bench.page.locator("#dialog-first-skip").tap();
  assert.equal(await title.isVisible(), false);
  await device.close();
});

test("every answer of the strip can be tapped for what it means and where it comes from", async () => {
  for (const size of [sizes.phone, sizes.tablet]) {
    const device = await shop.device({ size });
    const bench = await shop.open(device);
    const answers = (await bench.items()).map(({ id }) => id).filter((id) => id.startsWith("answer."));
    assert.ok(answers.length >= 5, answers.join());
    for (const id of answers) {
      await bench.tap(id);
      await bench.page.locator("#dialog-explain").waitFor();
      for (const piece of ["title", "what", "whence"]) {
        assert.ok((await bench.page.locator(`#dialog-explain-${piece}`).textContent()).length > 3, `${id}: ${piece}`);
      }
      if (id === "answer.fall") await bench.shot(`explain-${size.width}`);
      await bench.page.locator("#dialog-explain").getByRole("button", { name: "Understood" }).tap();
    }
    await device.close();
  }
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
};
for (const look of ["light", "dark"]) {
  test(`an accessibility checker finds nothing serious in any view, ${look}`, async () => {
    const device = await shop.device({ colorScheme: look, bypassCSP: true });
    for (const [name, go] of Object.entries(views)) {
      const bench = await shop.open(device);
      await go(bench);
      await bench.settled();
      await bench.page.evaluate(readFileSync(axeSource, "utf8"));
      const { violations, passes } = await bench.page.evaluate(() => globalThis.axe.run());
      assert.ok(passes.length > 10, `${name}: the checker has looked`);
      const serious = violations.filter(({ impact }) => ["serious", "critical"].includes(impact));
      assert.deepEqual(serious.map(({ id, nodes }) => `${name}: ${id}: ${nodes[0].html}`), []);
      await bench.page.close();
    }
    await device.close();
  });
}
