// The Bench log in a browser: readings put down by touch narrow the answer, stay over a reload, and come back out.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { putDown } from "./support/ways.mjs";

const shop = await workshop();

/** The chance as the report for screen readers has it, or as the strip says it. */
async function chance(bench) {
  return (await bench.answers()).chance_percent;
}

test("a dry weight, one held under and a tub fall are put down by touch; the chance follows, undo takes back, a reload keeps", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.log");
  await bench.tap("log.view.1");
  const first = await chance(bench);
  await putDown(bench, "dry_weight", 1, { mass: "21.6" });
  await putDown(bench, "held_under", 1, { mass: "56.2", holder: "0.3" });
  const read = (await bench.document()).log;
  assert.deepEqual(read.map((r) => [r.kind, r.stage, r.mass_g]), [["dry_weight", "drilled", 21.6], ["held_under", "drilled", 56.2]]);
  assert.match(read[0].date, /^\d{4}-\d{2}-\d{2}$/);
  const second = await chance(bench);
  assert.ok(second !== first, `the chance answers: ${first} → ${second}`);
  await putDown(bench, "tub_fall", 7, { time: "3.6" });
  assert.equal((await bench.document()).log.length, 3);
  await bench.tap("undo");
  assert.equal((await bench.document()).log.length, 2);
  assert.equal(await chance(bench), second);
  await bench.keptSoon();
  await bench.page.reload();
  await bench.ready();
  assert.equal((await bench.document()).log.length, 2);
  await bench.tap("log.0");
  await bench.tap("log.0.exclude");
  assert.equal((await bench.document()).log[0].excluded, true);
  await bench.shot("log-readings");
  bench.noFaults();
  await device.close();
});

test("a fall is timed as carvers do it: sealed, hooks and tail on; single things and a test weight may hang on instead", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.log");
  await bench.shot("log-now-with-all");
  await bench.tap("log.best_next"); // begins it, at its stage: of a blank, a caliper across each segment
  assert.ok(await bench.has("log.new.station"));
  await bench.tap("log.new.cancel");
  await bench.tap("log.view.1");
  await bench.tap("log.add");
  await bench.tap("log.kind.4");
  await bench.enter("log.new.time", "3.9");
  await bench.shot("log-hung-on");
  await bench.tap("log.new.put");
  const [all] = (await bench.document()).log;
  assert.equal(all.stage, "sealed");
  assert.deepEqual(all.with, [{ what: "all" }]);
  await bench.tap("log.0");
  await bench.tap("log.0.with.all");
  await bench.tap("log.0.with.part.2");
  await bench.enter("log.0.with.weight", "2");
  const [some] = (await bench.document()).log;
  assert.deepEqual(some.with, [{ what: "part", part: 3 }, { what: "weight", mass_g: 2, material: "lead" }]);
  await bench.shot("log-hung-on-some");
  bench.noFaults();
  await device.close();
});

test("a reading ten times too heavy is left out, told in what to do now, and believed by one touch", async () => {
  const device = await shop.device({ size: sizes.phone });
  const bench = await shop.open(device);
  await bench.tap("step.log");
  await bench.tap("log.view.1");
  const first = await chance(bench);
  await putDown(bench, "dry_weight", 1, { mass: "216" });
  assert.equal(await chance(bench), first, "nothing rests on it");
  await bench.tap("log.view.0");
  await bench.shot("log-slip-phone");
  await bench.tap("log.0.stands");
  assert.equal((await bench.document()).log[0].stands, true);
  assert.notEqual(await chance(bench), first);
  bench.noFaults();
  await device.close();
});

test("the log is handed out as a table", async () => {
  const device = await shop.device({ acceptDownloads: true });
  const bench = await shop.open(device);
  await bench.tap("step.log");
  await bench.tap("log.view.1");
  await putDown(bench, "dry_weight", 1, { mass: "21.6" });
  await bench.tap("log.csv");
  await bench.page.locator("#dialog-save-file").waitFor();
  const arrives = bench.page.waitForEvent("download");
  await bench.page.locator("#dialog-save-file").tap();
  const download = await arrives;
  const text = await readFile(await download.path(), "utf8");
  assert.match(download.suggestedFilename(), /\.csv$/);
  assert.match(text, /dry_weight.*21\.6/);
  await device.close();
});

for (const [name, size] of Object.entries({ phone: sizes.phone, tablet: sizes.tablet })) {
  test(`${name}: every view of the log opens and is large enough for a finger; ten thousand lures are drawn a frame's worth at a time`, async () => {
    const device = await shop.device({ size, dpr: name === "phone" ? 2 : 1 });
    const bench = await shop.open(device);
    await bench.tap("step.log");
    for (const view of [0, 1, 2]) {
      await bench.tap(`log.view.${view}`);
      await bench.shot(`log-${name}-${view}`);
      for (const { id, w, h, visible } of await bench.items()) {
        if (visible && !id.startsWith("draw.")) assert.ok(w >= 43.9 && h >= 43.9, `${id} of view ${view}: ${w} × ${h}`);
      }
    }
    const before = await bench.frames();
    await bench.tap("log.draw");
    // 250 lures a frame: forty frames and the ones that settle.
    assert.ok((await bench.frames()) - before >= 40, "drawn a frame's worth at a time");
    const rests = await bench.frames();
    await bench.meanwhile(800);
    assert.equal(await bench.frames(), rests, "then the page rests");
    bench.noFaults();
    await device.close();
  });
}
