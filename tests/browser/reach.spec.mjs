// When lead alone cannot: what would do it, asked, looked at, kept and undone by touch.

import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { ask, presets } from "./support/program.mjs";
import { openPreset, planTheLead } from "./support/ways.mjs";

const shop = await workshop();
const millrace = presets.find((path) => path.endsWith("/millrace-170.json"));

/** Asks for a fall that the holes of this lure do not allow, and for a plan. */
async function askTooMuch(bench) {
  await openPreset(bench, "millrace-170");
  await bench.tap("step.lead");
  await bench.enter("lead.fall", "0.75"); // s/ft
  await planTheLead(bench);
}

const waysOf = (items) => items.filter(({ id }) => /^lead\.way\.\d+$/.test(id));

for (const [name, size] of Object.entries({ tablet: sizes.tablet, phone: sizes.phone })) {
  test(`${name}: below a plan that falls short stand ways; one is looked at, kept and undone`, async () => {
    const device = await shop.device({ size });
    const bench = await shop.open(device);
    await askTooMuch(bench);
    const before = await bench.document();
    const native = ask("reach", millrace, "--fall", `${before.targets.fall_mm_s}mm/s`);
    assert.equal(native.met, false);
    assert.equal(waysOf(await bench.items()).length, native.ways.length);
    await bench.shot(`reach-plan-${name}`);

    await bench.tap("lead.way.0");
    await bench.bringIntoSight("lead.way.keep");
    await bench.shot(`reach-way-${name}`);
    await bench.bringIntoSight("lead.map");
    await bench.shot(`reach-map-${name}`);
    assert.deepEqual(await bench.document(), before);
    await bench.tap("lead.way.beside");
    await bench.shot(`reach-beside-${name}`);
    await bench.tap("variants.close");
    assert.deepEqual(await bench.document(), before);

    await bench.tap("lead.way.keep");
    const answers = await bench.answers();
    const [way] = native.ways;
    for (const figure of ["mass_g", "in_water_g", "fall_mm_s", "pitch_deg", "bg_mm"])
      assert.ok(Math.abs(answers[figure] - way[figure]) < 1e-4 * Math.max(1, Math.abs(way[figure])), `${figure}: ${answers[figure]} and ${way[figure]}`);
    await bench.shot(`reach-kept-${name}`);
    await bench.tap("undo");
    assert.deepEqual(await bench.document(), before);
    bench.noFaults();
    await device.close();
  });
}

test("an answer of the strip that lead cannot reach leads to what would do it", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const ways = bench.page.locator("#dialog-explain-ways");
  await bench.tap("answer.fall");
  await bench.page.locator("#dialog-explain").waitFor();
  assert.equal(await ways.isVisible(), false, "what is asked is in reach");
  await bench.page.locator("#dialog-explain button.chief").tap();
  await askTooMuch(bench);
  await bench.tap("lead.drop");
  await bench.tap("step.shape");
  await bench.tap("answer.fall");
  await ways.waitFor();
  await bench.shot("reach-from-the-strip");
  await ways.tap();
  await bench.settled();
  assert.ok(await bench.find("lead.way.0"), "the ways are listed");
  bench.noFaults();
  await device.close();
});
