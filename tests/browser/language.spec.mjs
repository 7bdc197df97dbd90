// The page in German: by the device's language or by choice, on the bench, in its HTML and on the sheet; nothing is left in
// English and nothing is cut off.

import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";

const shop = await workshop();

const steps = ["shape", "joints", "hardware", "lead", "finish", "water", "log", "sheet"];

/** Texts that the catalogue lacks; what the demo lures themselves are called is nobody's to translate. */
async function leftInEnglish(bench) {
  const names = new Set(["Evenfall", bench.page.url()]);
  const collect = (value) => {
    if (typeof value === "string" && value.startsWith("{")) collect(JSON.parse(value));
    else if (typeof value === "string") names.add(value);
    else if (value && typeof value === "object") Object.values(value).forEach(collect);
  };
  collect(await bench.document());
  collect(JSON.parse(await bench.page.locator("#presets").textContent()));
  const untranslated = JSON.parse(await bench.page.evaluate(() => JSON.stringify(globalThis.EvenfallHooks.untranslated())));
  return [...new Set(untranslated)].filter((text) => !names.has(text));
}

for (const [name, size] of Object.entries({ tablet: sizes.tablet, phone: sizes.phone })) {
  test(`${name}: the device's language is spoken at every step, and the shelf has the choice`, async () => {
    const device = await shop.device({ size, locale: "de-DE" });
    const bench = await shop.open(device);
    assert.equal(await bench.page.evaluate(() => document.documentElement.lang), "de");
    for (const step of steps) {
      await bench.tap(`step.${step}`);
      await bench.settled();
      await bench.shot(`german-${step}-${name}`);
    }
    assert.equal(await bench.page.locator("#sheet h2").first().textContent(), "Bauplan");
    await bench.tap("step.lead");
    await bench.tap("shelf.open");
    await bench.shot(`german-shelf-${name}`);
    assert.deepEqual(await leftInEnglish(bench), []);
    await bench.bringIntoSight("shelf.language.0");
    await bench.tap("shelf.language.0");
    await bench.settled();
    assert.equal(await bench.page.evaluate(() => document.documentElement.lang), "en");
    assert.equal(await bench.page.locator("#report-title").textContent(), "Answers");
    await bench.keptSoon();
    await bench.page.reload();
    await bench.ready();
    assert.equal(await bench.page.evaluate(() => document.documentElement.lang), "en", "the choice stays");
    bench.noFaults();
    await device.close();
  });
}

test("dialogs and notices speak the language, too; what is typed stays as it is", async () => {
  const device = await shop.device({ locale: "de-DE" });
  const bench = await shop.open(device);
  await bench.tap("step.shape");
  await bench.tap("shape.name");
  const dialog = bench.page.locator("#dialog-text");
  await dialog.waitFor();
  assert.equal(await bench.page.locator("#dialog-text button.chief").textContent(), "Fertig");
  await bench.page.locator("#dialog-text-input").fill("Lead 2.5");
  await bench.shot("german-dialog");
  await bench.page.locator("#dialog-text button.chief").tap();
  await bench.settled();
  assert.equal((await bench.document()).name, "Lead 2.5");
  assert.deepEqual(await leftInEnglish(bench), []);
  bench.noFaults();
  await device.close();
});
