// A bench that is used hard and long: fingers at random, and a working day of changes.

import assert from "node:assert/strict";
import { test } from "node:test";
import { workshop } from "./support/bench.mjs";
import { colours } from "./support/png.mjs";

const shop = await workshop();
const seed = Number(process.env.EVENFALL_TOUCH_SEED ?? 1);
const touches = Number(process.env.EVENFALL_TOUCHES ?? 1000);
// Eight hours with a change every six seconds are 4,800; every run takes a third of that, EVENFALL_CHANGES=5000 the whole day.
const changes = Number(process.env.EVENFALL_CHANGES ?? 1500);

// Numerical Recipes' linear congruence (from memory): the same fingers for the same seed.
function fingers(start) {
  let state = start >>> 0;
  const next = () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
  return { next, below: (n) => Math.floor(next() * n) };
}

// The browser's remark on a touch that it no longer lets anybody cancel: to be expected of fingers like these.
const harmless = /^Ignored attempt to cancel a touch/;

const passing = /^(step|answer|help)\./;

/** One touch in four meets anything at all; the others something that can be touched, seldom what only leads elsewhere. */
async function aim(bench, { next, below }) {
  const { width, height } = bench.page.viewportSize();
  const within = ({ x, y }) => x > 0 && x < width && y > 0 && y < height;
  const anywhere = { x: 2 + next() * (width - 4), y: 2 + next() * (height - 4) };
  if (below(4) === 0) return anywhere;
  const often = below(6) > 0;
  const seen = (await bench.items()).filter((item) => item.visible && !(often && passing.test(item.id)));
  if (seen.length === 0) return anywhere;
  const done = seen.find((item) => item.id === "keypad.ok");
  const item = done && below(4) === 0 ? done : seen[below(seen.length)];
  const spot = { x: item.x + next() * item.w, y: item.y + next() * item.h };
  return within(spot) ? spot : anywhere;
}

const kinds = ["tap", "tap", "tap", "tap", "tap", "tap", "tap", "tap", "tap", "drag", "drag", "drag", "drag", "cancelled drag", "pinch"];

async function touchSomething(bench, random) {
  const from = await aim(bench, random);
  const to = { x: from.x + 200 * (random.next() - 0.5), y: from.y + 200 * (random.next() - 0.5) };
  const kind = kinds[random.below(kinds.length)];
  await (kind === "pinch" ? bench.touch("touchStart", from, to) : bench.touch("touchStart", from));
  if (kind === "pinch") await bench.touch("touchMove", { x: from.x + 20, y: from.y }, { x: to.x - 20, y: to.y });
  else if (kind !== "tap") await bench.touch("touchMove", { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
  if (kind.endsWith("drag")) await bench.touch("touchMove", to);
  await bench.touch(kind === "cancelled drag" ? "touchCancel" : "touchEnd");
  return `${kind} ${[from.x, from.y, to.x, to.y].map(Math.round).join(" ")}`;
}

test(`${touches} touches at random (seed ${seed}), the device turned now and then, leave no fault and a lure whose every answer is a number`, async (t) => {
  const device = await shop.device({ size: { width: 360, height: 640 } });
  // Printing and choosing files would open windows of the system's own.
  await device.addInitScript(() => {
    window.print = () => {};
    HTMLInputElement.prototype.click = () => {};
  });
  const bench = await shop.open(device);
  bench.page.on("dialog", (dialog) => dialog.dismiss());
  const random = fingers(seed);
  const lures = new Set();
  const widgets = new Set();
  const last = [];
  for (let n = 1; n <= touches; n++) {
    last.push(await touchSomething(bench, random));
    if (last.length > 12) last.shift();
    // A dialog of the page over the bench is put away after a touch or two, as a person would.
    if (random.below(2) === 0 && (await bench.page.evaluate(() => document.querySelector("dialog[open]") !== null))) await bench.page.keyboard.press("Escape");
    if (n % 200 === 0) {
      const { width, height } = bench.page.viewportSize();
      await bench.page.setViewportSize({ width: height, height: width });
    }
    if (n % 10 !== 0) continue;
    const where = `touch ${n} of seed ${seed}; the last: ${last.join("; ")}`;
    await bench.answersAreNumbers(where);
    lures.add(JSON.stringify(await bench.document()));
    for (const item of await bench.items()) widgets.add(item.id);
    assert.deepEqual(bench.faults.filter((fault) => !harmless.test(fault)), [], where);
  }
  t.diagnostic(`${lures.size} different lures and ${widgets.size} different widgets on the way`);
  assert.ok(lures.size > touches / 200, `the touches change the lure: ${lures.size} different ones`);
  for (let n = 0; n < 3; n++) await bench.page.keyboard.press("Escape");
  assert.ok(colours(await bench.shot("wear-touched")).count > 20, "and there is still a bench to be seen");
  await device.close();
});

test(`${changes} changes, one in five taken back, cost no more memory than the first tenth of them`, async (t) => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.finish");
  await bench.tap("finish.1");
  const wire = await device.newCDPSession(bench.page);
  await wire.send("HeapProfiler.enable");
  const heap = async () => {
    await wire.send("HeapProfiler.collectGarbage");
    return { script: (await wire.send("Runtime.getHeapUsage")).usedSize, code: await bench.hook("memory") };
  };
  const places = {};
  await bench.tap("finish.1.by.1");
  for (const id of ["finish.1.by.0", "finish.1.by.1", "undo"]) places[id] = await bench.middleOf(id);
  // Touches made in the page itself, a frame each for down and up: through the tests' wire a day would take a day.
  const work = (some) => bench.page.evaluate(async ([at, count]) => {
    const canvas = document.getElementById("canvas");
    const frame = () => new Promise(requestAnimationFrame);
    const tap = async ([clientX, clientY]) => {
      const touch = new Touch({ identifier: 1, target: canvas, clientX, clientY, screenX: clientX, screenY: clientY, pageX: clientX, pageY: clientY });
      const send = (type, fingers) => canvas.dispatchEvent(new TouchEvent(type, { touches: fingers, targetTouches: fingers, changedTouches: [touch], bubbles: true, cancelable: true }));
      send("touchstart", [touch]);
      await frame();
      await frame();
      send("touchend", []);
      await frame();
    };
    let changed = 0;
    let last = globalThis.EvenfallHooks.link();
    for (let n = 0; n < count; n++) {
      await tap(at[n % 5 === 4 ? "undo" : n % 2 === 0 ? "finish.1.by.0" : "finish.1.by.1"]);
      const now = globalThis.EvenfallHooks.link();
      changed += now !== last ? 1 : 0;
      last = now;
    }
    return changed;
  }, [places, some]);
  let changed = await work(changes / 10);
  const early = await heap();
  for (let part = 0; part < 9; part++) changed += await work(changes / 10);
  const late = await heap();
  const megabytes = (bytes) => `${(bytes / 2 ** 20).toFixed(2)} MB`;
  t.diagnostic(`compiled code ${megabytes(early.code)} after ${changes / 10} changes, ${megabytes(late.code)} after ${changes}; ` +
    `script ${megabytes(early.script)} and ${megabytes(late.script)}; ${changed} changes took`);
  assert.ok(changed > 0.9 * changes, `the touches change the lure: ${changed} of ${changes} did`);
  assert.equal(late.code, early.code);
  assert.ok(late.script < early.script + 2 ** 20, "the page's own script holds less than a megabyte more");
  await bench.answersAreNumbers("after a day");
  assert.ok(colours(await bench.shot("wear-day")).count > 20, "and there is still a bench to be seen");
  bench.noFaults();
  await device.close();
});
