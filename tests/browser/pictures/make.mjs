// Makes README's pictures anew from the built page and program:
//
//   tests/browser/pictures/make.sh
//
// The Lead step, a fall in the Water step still and moving, and the first page of the sheet.

import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { test } from "node:test";
import { workshop } from "../support/bench.mjs";
import { presetsDir, program } from "../support/settings.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const work = mkdtempSync(join(tmpdir(), "evenfall-pictures-"));
const shop = await workshop();
const frames = 24;
const frameMs = 125;

test("pictures of the page", async () => {
  const device = await shop.device({ locale: "en-GB" });
  const bench = await shop.open(device);
  const picture = (name, clip) => bench.page.screenshot({ path: join(here, name), clip });
  await bench.tap("step.lead");
  await bench.settled();
  await picture("lead-1024x768.png");

  await bench.tap("step.water");
  await bench.tap("water.view.1");
  await bench.enter("water.depth", "0.4");
  const [x, y] = await bench.middleOf("water.play");
  await bench.page.touchscreen.tap(x, y);
  const moving = [];
  for (let i = 0; i < frames; ++i) {
    const next = bench.page.waitForTimeout(frameMs);
    moving.push(join(work, `frame-${String(i).padStart(2, "0")}.png`));
    await bench.page.screenshot({ path: moving.at(-1), clip: { x: 0, y: 88, width: 640, height: 600 } });
    if (i === Math.floor(frames / 2)) await picture("fall-1024x768.png");
    await next;
  }
  execFileSync("img2webp", ["-loop", "0", "-lossy", "-q", "60", "-d", String(frameMs), ...moving, "-o", join(here, "fall.webp")]);
  await device.close();
});

test("a page of the sheet", () => {
  const sheet = join(work, "sheet.pdf");
  execFileSync(program, ["sheet", join(presetsDir, "millrace-170.json"), "-o", sheet]);
  execFileSync("pdftoppm", ["-png", "-r", "72", "-f", "3", "-l", "3", "-singlefile", sheet, join(here, "sheet")]);
  rmSync(work, { recursive: true });
});
