// The Swim view: the first answer comes at once, the band fills while one watches in frames that are never long, the
// wave moves only when asked, and Joints tells what a change does to it.

import assert from "node:assert/strict";
import { test } from "node:test";
import { workshop } from "./support/bench.mjs";
import { colours, difference } from "./support/png.mjs";

const shop = await workshop();
const sizes = { tablet: { width: 1024, height: 768 }, upright: { width: 768, height: 1024 }, phone: { width: 390, height: 844 } };

async function poke(bench, id) {
  const [x, y] = await bench.middleOf(id);
  await bench.page.touchscreen.tap(x, y);
}

async function swimOpen(device) {
  const bench = await shop.open(device);
  await bench.tap("step.water");
  await bench.tap("water.view.3");
  return bench;
}

test("the first answer comes within a second, no task of the page is long meanwhile, and then it rests", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.water");
  const [x, y] = await bench.middleOf("water.view.3");
  await bench.page.evaluate(() => {
    globalThis.longTasks = [];
    new PerformanceObserver((list) => globalThis.longTasks.push(...list.getEntries().map((task) => task.duration)))
      .observe({ entryTypes: ["longtask"] });
  });
  const asked = Date.now();
  await bench.page.touchscreen.tap(x, y);
  // The controls of the wave stand below it as soon as there is one.
  while (!(await bench.find("swim.play"))) {
    assert.ok(Date.now() - asked < 10_000, "no answer in ten seconds");
    await bench.pace();
  }
  const first = (Date.now() - asked) / 1000;
  const working = await bench.frames();
  await bench.meanwhile(300);
  assert.ok((await bench.frames()) > working, "the band fills in further frames");
  await bench.settled();
  const all = (Date.now() - asked) / 1000;
  const tasks = await bench.page.evaluate(() => globalThis.longTasks);
  console.log(`first answer after ${first} s, all after ${all} s; tasks over 50 ms: ${tasks.map(Math.round)}`);
  const over = await bench.frames();
  await bench.meanwhile(1500);
  assert.equal(await bench.frames(), over, "at rest it draws nothing");
  bench.noFaults();
  await device.close();
});

test("the wave moves when started, stands still when paused, and stops when another view is opened", async () => {
  const device = await shop.device();
  const bench = await swimOpen(device);
  const still = await bench.picture();
  await poke(bench, "swim.play");
  await bench.page.waitForTimeout(700);
  const early = await bench.frames();
  await bench.page.waitForTimeout(400);
  assert.ok((await bench.frames()) > early, "it draws while it swims");
  await poke(bench, "swim.play");
  await bench.settled();
  assert.ok(difference(await bench.shot("swim-paused"), still) > 0.002, "the lure is elsewhere in its beat");
  const rests = await bench.frames();
  await bench.meanwhile(1000);
  assert.equal(await bench.frames(), rests, "paused, it draws nothing");
  await poke(bench, "swim.play");
  await bench.tap("water.view.0");
  const away = await bench.frames();
  await bench.meanwhile(1000);
  assert.equal(await bench.frames(), away, "nobody looks: nothing moves");
  bench.noFaults();
  await device.close();
});

test("a retrieve is typed in, by the hour and by the handle, and kept on the device; the lure stays as it is", async () => {
  const device = await shop.device();
  const bench = await swimOpen(device);
  const before = await bench.document();
  await bench.tap("swim.by.1");
  await bench.enter("swim.speed", "3.6");
  await bench.tap("swim.by.2");
  await bench.enter("swim.turns", "2");
  await bench.keptSoon();
  await bench.page.reload();
  await bench.ready();
  const { retrieve } = JSON.parse(await bench.hook("sessionJson")).settings;
  assert.equal(retrieve.by, "turns");
  assert.ok(Math.abs(retrieve.m_s[1] - 2 * retrieve.line_per_turn_m) < 1e-9, JSON.stringify(retrieve));
  assert.deepEqual(await bench.document(), before);
  bench.noFaults();
  await device.close();
});

test("Joints tells what a change did, once the swim before it is known, and works out nothing before", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.joints");
  await bench.tap("joints.0");
  await bench.tap("step.joints");
  const plain = (await bench.find("joints.0")).y;
  await bench.tap("step.water");
  await bench.tap("water.view.3");
  await bench.tap("step.joints");
  const told = (await bench.find("joints.0")).y;
  assert.ok(told > plain + 40, "the line has its place above the joints");
  const before = await bench.shot("swim-change-none");
  await bench.enter("joints.0.relief_fore", "10");
  await bench.tap("step.lead");
  await bench.tap("step.joints"); // to its top again
  assert.ok(difference(await bench.shot("swim-change-told"), before) > 0.0005, "the line says something else");
  assert.equal((await bench.find("joints.0")).y, told, "the rows stay where the finger is");
  bench.noFaults();
  await device.close();
});

test("beats that were counted are added with what was foretold, and stand in the log over their way", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.log");
  await bench.tap("log.view.1");
  await bench.tap("log.add");
  await bench.tap("log.kind.9");
  await bench.enter("log.new.beats", "12");
  await bench.enter("log.new.travel", "3");
  await bench.settled();
  await bench.shot("swim-count");
  await bench.tap("log.new.put");
  const [count] = (await bench.document()).log;
  assert.deepEqual([count.kind, count.stage, count.beats, count.travel_mm], ["beats", "rigged", 12, 3000]);
  assert.ok(count.foretold_per_m > 0.3 && count.foretold_per_m < 6, JSON.stringify(count));
  await bench.shot("swim-count-log");
  bench.noFaults();
  await device.close();
});

for (const [name, size] of Object.entries(sizes)) {
  test(`${name}: the Swim view is drawn, light and dark, in millimetres and in inches, large enough for a finger`, async () => {
    for (const locale of ["en-GB", "en-US"]) {
      const device = await shop.device({ size, locale });
      const bench = await swimOpen(device);
      for (const theme of ["light", "dark"]) {
        const picture = await bench.shot(`swim-${name}-${locale}-${theme}`);
        const { count, largest } = colours(picture);
        assert.ok(count > 50 && largest < 0.95, `${count} colours, one covers ${largest}`);
        for (const { id, w, h, visible } of await bench.items()) {
          if (visible && !id.startsWith("draw.")) assert.ok(w >= 43.9 && h >= 43.9, `${id}: ${w} × ${h}`);
        }
        if (theme === "light") {
          await bench.tap("shelf.open");
          await bench.tap("shelf.theme.1");
          await bench.tap("shelf.close");
        }
      }
      bench.noFaults();
      await device.close();
    }
  });
}
