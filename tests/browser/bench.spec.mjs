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

// Mean times of the native benchmarks in µs, by name.
function nativeTimes() {
  const bench = process.env.EVENFALL_BENCH ?? join(dirname(program), "../tests/evenfall_bench");
  assert.ok(existsSync(bench), `the native benchmarks are missing: ${bench} (name them by EVENFALL_BENCH)`);
  const run = spawnSync(bench, ["evaluate,uncertainty,sheet", "--reporter", "xml", "--benchmark-samples", "20"], { encoding: "utf8" });
  assert.equal(run.status, 0, run.stderr);
  const found = run.stdout.matchAll(/<BenchmarkResults name="([^"]+)"[^>]*>.*?<mean value="([^"]+)"/gs);
  return Object.fromEntries([...found].map(([, name, ns]) => [name, Number(ns) / 1000]));
}

test("time of an evaluation and of a lead plan, page beside native", async (t) => {
  const native = nativeTimes();
  const device = await shop.device();
  const bench = await shop.open(device);
  await openPreset(bench, preset);
  // The first runs are the browser's quick compilation; the last ones, which count, its thorough one.
  const measured = async (hook, runs) => {
    for (let warming = 0; warming < 3; warming++) await bench.hook(hook, runs);
    return bench.hook(hook, runs);
  };
  // Links and sheets have no hook that counts: the page's clock does, over many.
  const timed = async (hook, given, runs) => bench.page.evaluate(([name, args, times]) => {
    const run = () => globalThis.EvenfallHooks[name](...args);
    for (let warming = 0; warming < times; warming++) run();
    const from = performance.now();
    for (let n = 0; n < times; n++) run();
    return (1000 * (performance.now() - from)) / times;
  }, [hook, given, runs]);
  const rows = [
    [`evaluate ${preset}`, await measured("benchEvaluateUs", 300)],
    [`plan ${preset}`, await measured("benchPlanUs", 20)],
    [`uncertainty ${preset}`, await measured("benchUncertaintyUs", 20)],
    [`10000 draws ${preset}`, await measured("benchDrawsUs", 2)],
    [`write link ${preset}`, await timed("link", [], 200)],
    [`sheet ${preset}`, await timed("sheet", ["pdf", ""], 10)],
  ];
  for (const [name, page] of rows) {
    assert.ok(page > 0 && native[name] > 0, `${name} was measured on both sides: ${page} and ${native[name]}`);
    t.diagnostic(`${name}: native ${native[name].toFixed(1)} µs, page ${page.toFixed(1)} µs, ratio page/native ${(page / native[name]).toFixed(2)}`);
  }
  await device.close();
});

test("time to the first frame that can be touched, and what the page weighs", async (t) => {
  const took = [];
  for (let visit = 0; visit < 5; visit++) {
    const device = await shop.device();
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
