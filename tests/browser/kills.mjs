// The whole browser killed, without a word before: a change that is older than a second is there when it starts again.
// Run by hand on a machine that does nothing else, with the environment of the browser tests: EVENFALL_KILLS=50 kills it
// fifty times.

import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";
import { setTimeout } from "node:timers/promises";
import { Bench, sizes } from "./support/bench.mjs";
import { serve } from "./support/server.mjs";
import { chromium, chromiumPath, pageDir, switches } from "./support/settings.mjs";
import { warmWater } from "./support/ways.mjs";

const kills = Number(process.env.EVENFALL_KILLS ?? 4);
const profile = mkdtempSync(join(tmpdir(), "evenfall-kill-"));
const server = await serve(pageDir);
after(async () => {
  kill();
  await server.stop();
  rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
});

/** Kills the browser of this profile with all its processes; returns how many there were. */
function kill() {
  return readdirSync("/proc").filter((pid) => {
    if (!/^\d+$/.test(pid) || Number(pid) === process.pid) return false;
    try {
      return readFileSync(`/proc/${pid}/cmdline`, "utf8").includes(`--user-data-dir=${profile}\0`) && process.kill(Number(pid), "SIGKILL");
    } catch {
      return false; // it has ended meanwhile
    }
  }).length;
}

async function open() {
  const device = await chromium.launchPersistentContext(profile, {
    executablePath: chromiumPath, args: switches, viewport: sizes.tablet, hasTouch: true, isMobile: true, locale: "en-GB",
  });
  const bench = new Bench(await device.newPage()); // the first one may be that of the killed browser, behind what it says about that
  await bench.page.bringToFront();
  await bench.page.goto(server.address);
  await bench.ready();
  return bench;
}

test(`a killed browser loses nothing older than one second, in ${kills} kills`, async (t) => {
  let lost = 0;
  let expected = null;
  for (let n = 0; n <= kills; n++) {
    const bench = await open();
    const found = (await bench.document()).water.temperature_C;
    if (expected !== null && found !== expected) {
      lost += 1;
      t.diagnostic(`kill ${n}: ${found} °C, and it was ${expected} °C`);
    }
    if (n < kills) {
      if (n === 0) await warmWater(bench);
      else await bench.tap((await bench.has("undo")) ? "undo" : "redo");
      expected = (await bench.document()).water.temperature_C;
      assert.notEqual(expected, found);
      await bench.meanwhile(1000);
    }
    assert.ok(kill() > 0);
    while (kill() > 0) await setTimeout(50);
  }
  t.diagnostic(`${lost} of ${kills} kills lost the last change`);
  assert.equal(lost, 0);
});
