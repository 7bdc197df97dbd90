// A bench that is used hard and long: fingers at random, and a working day of changes.

import assert from "node:assert/strict";
import { test } from "node:test";
import { workshop } from "./support/bench.mjs";

// Frames as fast as they can be drawn: a day's changes are to fit into minutes.
const shop = await workshop(["--disable-frame-rate-limit", "--disable-gpu-vsync", "--enable-precise-memory-info"]);

// Numerical Recipes' linear congruence (from memory): the same fingers for the same seed.
function fingers(seed) {
  let state = seed >>> 0;
  const next = () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
  return { next, below: (n) => Math.floor(next() * n) };
}

// The browser's remark on a touch that it no longer lets anybody cancel: to be expected of fingers like these.
const harmless = /^Ignored attempt to cancel a touch/;

const seed = Number(process.env.EVENFALL_TOUCH_SEED ?? 1);

test(`a thousand touches at random (seed ${seed}) leave no fault, and a lure whose every answer is a number`, async (t) => {
  const device = await shop.device();
  // Printing and choosing files would open windows of the system's own.
  await device.addInitScript(() => {
    window.print = () => {};
    HTMLInputElement.prototype.click = () => {};
  });
  const bench = await shop.open(device);
  bench.page.on("filechooser", () => {});
  bench.page.on("dialog", (dialog) => dialog.dismiss());
  const { next, below } = fingers(seed);
  const { width, height } = bench.page.viewportSize();
  const place = () => ({ x: 2 + next() * (width - 4), y: 2 + next() * (height - 4) });
  const documents = new Set();
  const tried = [];
  for (let n = 0; n < 1000; n++) {
    const kind = below(10);
    const [a, b] = [place(), place()];
    tried.push(`${n}: ${kind} ${a.x.toFixed(0)},${a.y.toFixed(0)} ${b.x.toFixed(0)},${b.y.toFixed(0)}`);
    if (kind < 6) {
      await bench.touch("touchStart", a);
      await bench.page.waitForTimeout(8);
      await bench.touch("touchEnd");
    } else if (kind < 9) {
      await bench.touch("touchStart", a);
      for (const share of [0.3, 0.7, 1]) await bench.touch("touchMove", { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) });
      await bench.touch(kind === 8 ? "touchCancel" : "touchEnd");
    } else {
      await bench.touch("touchStart", a, b);
      await bench.touch("touchMove", { x: a.x + 20, y: a.y }, { x: b.x - 20, y: b.y });
      await bench.touch("touchEnd");
    }
    if (n % 10 === 9) {
      // Whatever dialog of the page lies over the bench is put away again, as a person would.
      if (await bench.page.locator("dialog[open]").count()) await bench.page.keyboard.press("Escape");
      await bench.answersAreNumbers(`touch ${n} of seed ${seed}; the last: ${tried.slice(-12).join("; ")}`);
      documents.add(JSON.stringify(await bench.document()));
      assert.deepEqual(bench.faults.filter((fault) => !harmless.test(fault)), [], `no fault by touch ${n} of seed ${seed}; the last: ${tried.slice(-12).join("; ")}`);
    }
  }
  assert.ok(documents.size > 5, `the touches change the lure: ${documents.size} different ones`);
  t.diagnostic(`${documents.size} different lures on the way`);
  await device.close();
});

test("five thousand changes, one in five taken back, cost no more memory than the first five hundred", async (t) => {
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
  const work = (changes) => bench.page.evaluate(async ([at, count]) => {
    const canvas = document.getElementById("canvas");
    const frame = () => new Promise(requestAnimationFrame);
    const tap = async ([clientX, clientY]) => {
      const touch = new Touch({ identifier: 1, target: canvas, clientX, clientY, screenX: clientX, screenY: clientY, pageX: clientX, pageY: clientY });
      const send = (type, touches) => canvas.dispatchEvent(new TouchEvent(type, { touches, targetTouches: touches, changedTouches: [touch], bubbles: true, cancelable: true }));
      send("touchstart", [touch]);
      await frame();
      await frame();
      send("touchend", []);
      await frame();
      await frame();
    };
    let changed = 0;
    let last = globalThis.EvenfallHooks.link();
    for (let n = 0; n < count; n++) {
      const id = n % 5 === 4 ? "undo" : n % 2 === 0 ? "finish.1.by.0" : "finish.1.by.1";
      await tap(at[id]);
      const now = globalThis.EvenfallHooks.link();
      changed += now !== last ? 1 : 0;
      last = now;
    }
    return changed;
  }, [places, changes]);
  let changed = await work(500);
  const early = await heap();
  for (let part = 0; part < 9; part++) changed += await work(500);
  const late = await heap();
  t.diagnostic(`compiled code ${early.code / 2 ** 20} MB after 500 changes, ${late.code / 2 ** 20} MB after 5000; script ${(early.script / 2 ** 20).toFixed(2)} and ${(late.script / 2 ** 20).toFixed(2)} MB; ${changed} changes took`);
  assert.ok(changed > 3500, `the touches change the lure: ${changed} of 5000 did`);
  assert.equal(late.code, early.code);
  assert.ok(late.script < early.script + 2 ** 20, "the page's own script holds less than a megabyte more");
  await bench.answersAreNumbers("after a day");
  bench.noFaults();
  await device.close();
});
