// How soon the page can be used, what it weighs, and how long the sums take in the page, beside the native program's time. Prints; never fails on time, since the machine
// that runs the tests is not the builder's tablet.

import assert from "node:assert/strict";
import { existsSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { dirname, join } from "node:path";
import { test } from "node:test";
import { workshop } from "./support/bench.mjs";
import { modulesDir, pageDir, program } from "./support/settings.mjs";
import { openPreset } from "./support/ways.mjs";

const shop = await workshop();
const preset = "millrace-170";

// Times of the native benchmarks in µs, by name: the least of five runs each.
function nativeTimes() {
  const bench = process.env.EVENFALL_BENCH ?? join(dirname(program), "../tests/evenfall_bench");
  assert.ok(existsSync(bench), `the native benchmarks are missing: ${bench} (name them by EVENFALL_BENCH)`);
  const run = spawnSync(bench, ["evaluate,uncertainty,joints,sheet", "--reporter", "least", "--benchmark-samples", "5", "--benchmark-warmup-time", "30"], { encoding: "utf8" });
  assert.equal(run.status, 0, run.stderr);
  return Object.fromEntries([...run.stdout.matchAll(/^([\d.e+]+) (.+)$/gm)].map(([, us, name]) => [name, Number(us)]));
}

test("time of the bench's sums, page beside native", async (t) => {
  const device = await shop.device({ drawn: true });
  const bench = await shop.open(device);
  await openPreset(bench, preset);
  // Links and sheets have no hook that counts: the page's clock does, over many.
  const timed = (hook, given, runs) => bench.page.evaluate(([name, args, times]) => {
    const from = performance.now();
    for (let n = 0; n < times; n++) globalThis.EvenfallHooks[name](...args);
    return (1000 * (performance.now() - from)) / times;
  }, [hook, given, runs]);
  const inPage = {
    [`evaluate ${preset}`]: () => bench.hook("benchUs", "evaluate", 80),
    [`edit of lead ${preset}`]: () => bench.hook("benchUs", "edit", 160),
    [`plan ${preset}`]: () => bench.hook("benchUs", "plan", 12),
    [`joints ${preset}`]: () => bench.hook("benchUs", "joints", 5),
    [`uncertainty ${preset}`]: () => bench.hook("benchUs", "uncertainty", 20),
    [`10000 draws ${preset}`]: () => bench.hook("benchUs", "draws", 1),
    [`write link ${preset}`]: () => timed("link", [], 50),
    [`sheet ${preset}`]: () => timed("sheet", ["pdf", ""], 1),
  };
  // In turn, and of as many rounds on both sides the least: other programs only ever add time, and the browser compiles
  // thoroughly only what has run some hundred times.
  const native = {};
  const page = {};
  const take = (times, name, us) => (times[name] = Math.min(us, times[name] ?? Infinity));
  for (let turn = 0; turn < 8; turn++) {
    for (const [name, us] of Object.entries(nativeTimes())) take(native, name, us);
    for (const [name, measured] of Object.entries(inPage))
      for (let round = 0; round < 5; round++) take(page, name, await measured());
  }
  for (const [name, us] of Object.entries(page)) {
    assert.ok(us > 0 && native[name] > 0, `${name} was measured on both sides: ${us} and ${native[name]}`);
    t.diagnostic(`${name}: native ${native[name].toFixed(1)} µs, page ${us.toFixed(1)} µs, ratio page/native ${(us / native[name]).toFixed(2)}`);
  }
  await device.close();
});

test("time to the first frame that can be touched, and what the page weighs", async (t) => {
  const took = [];
  for (let visit = 0; visit < 5; visit++) {
    const device = await shop.device({ drawn: true });
    const bench = await shop.open(device);
    took.push(await bench.page.evaluate(() => performance.getEntriesByName("evenfall bench stands")[0]?.startTime));
    await device.close();
  }
  for (const ms of took) assert.ok(ms > 0, `every visit is measured: ${took}`);
  const sorted = [...took].sort((a, b) => a - b);
  t.diagnostic(`first frame, from the start of loading, loopback, no cache: ${sorted.map((ms) => ms.toFixed(0)).join(", ")} ms (aim: 1500)`);
  const sizes = spawnSync("/usr/bin/python3", [join(dirname(modulesDir), "setup/page_sizes.py"), pageDir], { encoding: "utf8" });
  assert.equal(sizes.status, 0, sizes.stderr);
  for (const line of sizes.stdout.trimEnd().split("\n")) t.diagnostic(line);
});
