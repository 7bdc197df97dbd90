// The main job: the page's numbers are the native program's numbers.

import assert from "node:assert/strict";
import { test } from "node:test";
import { workshop } from "./support/bench.mjs";
import { assertSame } from "./support/numbers.mjs";
import { ask, presets } from "./support/program.mjs";
import { keepPlan, openPreset, planTheLead } from "./support/ways.mjs";

const shop = await workshop();
const nameOf = (path) => path.split("/").at(-1).replace(".json", "");

for (const path of presets) {
  const name = nameOf(path);
  test(`${name}: opened by touch, the answers are those of "evenfall weigh"`, async () => {
    const device = await shop.device();
    const bench = await shop.open(device);
    await openPreset(bench, name);
    const { chance_percent: chance, ...answers } = await bench.answers();
    assertSame(answers, ask("weigh", path));
    // The program rounds a share to a millionth.
    const native = 100 * ask("chance", path).chance_now.both;
    assert.ok(Math.abs(chance - native) < 1e-4, `chance ${chance} on the page, ${native} in the program`);
    bench.noFaults();
    await device.close();
  });

  test(`${name}: the plan is that of "evenfall lead"`, async () => {
    const device = await shop.device();
    const bench = await shop.open(device);
    await openPreset(bench, name);
    assertSame(JSON.parse(await bench.hook("planJson")), ask("lead", path));
    await device.close();
  });
}

test('millrace-170: asked for another hang, "Plan the lead" under a finger fills the holes as the native program does', async () => {
  const path = presets.find((preset) => nameOf(preset) === "millrace-170");
  const wanted = ask("lead", path, "--pitch", "-1.5deg");
  const device = await shop.device();
  const bench = await shop.open(device);
  await openPreset(bench, "millrace-170");
  const before = await bench.document();
  await bench.tap("step.lead");
  await bench.enter("lead.pitch", "-1.5");
  await planTheLead(bench);
  await bench.shot("plan-offered");
  await keepPlan(bench);
  const after = await bench.document();
  assert.equal(after.targets.pitch_deg, -1.5);
  assert.notDeepEqual(after.holes, before.holes);

  // What the document holds is the plan's own figures, rounded where a document rounds (far below a bench's reading).
  const planned = wanted.fills.filter(({ mass_g }) => mass_g > 0);
  assert.ok(planned.length > 0);
  for (const { hole: number, material, mass_g, depth_mm } of planned) {
    const hole = after.holes[number - 1];
    assert.ok(hole.fill, `hole ${number} is filled`);
    assert.equal(hole.fill.material, material);
    assert.ok(Math.abs(hole.fill.mass_g - mass_g) < 1e-5, `hole ${number}: ${hole.fill.mass_g} and ${mass_g} g`);
    assert.ok(Math.abs(hole.depth_mm - depth_mm) < 1e-5, `hole ${number}: ${hole.depth_mm} and ${depth_mm} mm`);
  }
  const answers = await bench.answers();
  assert.ok(Math.abs(answers.pitch_deg - after.targets.pitch_deg) < 0.05, "the finished lure hangs as asked");
  const asked = after.targets.fall_mm_s;
  assert.ok(Math.abs(answers.fall_mm_s / asked - 1) < 0.005, `it falls as asked: ${answers.fall_mm_s} and ${asked} mm/s`);
  bench.noFaults();
  await device.close();
});
