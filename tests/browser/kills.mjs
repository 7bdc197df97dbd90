// The whole browser killed, without a word before: a change that is older than a second is there when it starts again.
// Run by hand on a machine that does nothing else, with the environment of the browser tests: EVENFALL_KILLS=50 kills
// Chromium and Firefox fifty times each.

import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";
import { setTimeout } from "node:timers/promises";
import { Bench, sizes } from "./support/bench.mjs";
import { documentOf, launchFirefox, ready, startScreen, tap, warmWater as warmInFirefox } from "./support/firefox.mjs";
import { serve } from "./support/server.mjs";
import { chromium, chromiumPath, pageDir, switches } from "./support/settings.mjs";
import { warmWater } from "./support/ways.mjs";

const kills = Number(process.env.EVENFALL_KILLS ?? 4);
const server = await serve(pageDir);
const screen = await startScreen();
after(async () => {
  await server.stop();
  screen.close();
});

/** Kills the browser of this profile with all its processes; returns how many there were. */
function kill(profile) {
  return readdirSync("/proc").filter((pid) => {
    if (!/^\d+$/.test(pid) || Number(pid) === process.pid) return false;
    try {
      return readFileSync(`/proc/${pid}/cmdline`, "utf8").includes(profile) && process.kill(Number(pid), "SIGKILL");
    } catch {
      return false; // it has ended meanwhile
    }
  }).length;
}

async function openChromium(profile) {
  const device = await chromium.launchPersistentContext(profile, {
    executablePath: chromiumPath, args: switches, viewport: sizes.tablet, hasTouch: true, isMobile: true, locale: "en-GB",
  });
  const bench = new Bench(await device.newPage()); // the first one may be that of the killed browser, behind what it says about that
  await bench.page.bringToFront();
  await bench.page.goto(server.address);
  await bench.ready();
  return {
    document: () => bench.document(),
    change: async (first) => (first ? warmWater(bench) : bench.tap((await bench.has("undo")) ? "undo" : "redo")),
  };
}

async function openFirefox(profile) {
  const browser = await launchFirefox(screen, { userDataDir: profile });
  const page = await browser.newPage();
  await page.setViewport({ width: 1024, height: 768 });
  await page.goto(server.address);
  await ready(page);
  return {
    document: () => documentOf(page),
    change: async (first) => {
      if (first) return warmInFirefox(page);
      const items = await page.evaluate(() => JSON.parse(globalThis.EvenfallHooks.itemsJson()));
      return tap(page, items.some(({ id, visible }) => id === "undo" && visible) ? "undo" : "redo");
    },
  };
}

for (const [name, open] of Object.entries({ Chromium: openChromium, Firefox: openFirefox })) {
  test(`${name} killed loses nothing older than one second, in ${kills} kills`, async (t) => {
    const profile = mkdtempSync(join(tmpdir(), "evenfall-kill-"));
    t.after(() => {
      kill(profile);
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    });
    let lost = 0;
    let expected = null;
    for (let n = 0; n <= kills; n++) {
      const bench = await open(profile);
      const found = (await bench.document()).water.temperature_C;
      if (expected !== null && found !== expected) {
        lost += 1;
        t.diagnostic(`kill ${n}: ${found} °C, and it was ${expected} °C`);
      }
      if (n < kills) {
        await bench.change(n === 0);
        expected = (await bench.document()).water.temperature_C;
        assert.notEqual(expected, found);
        await setTimeout(1000);
      }
      assert.ok(kill(profile) > 0);
      while (kill(profile) > 0) await setTimeout(50);
    }
    t.diagnostic(`${lost} of ${kills} kills lost the last change`);
    assert.equal(lost, 0);
  });
}
