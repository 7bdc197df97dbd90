// The page as one file, opened from a disk: nothing is served and nothing is loaded.

import assert from "node:assert/strict";
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";
import { pathToFileURL } from "node:url";
import { Bench, sizes } from "./support/bench.mjs";
import { launchBrowser, oneFile } from "./support/settings.mjs";
import { names, warmWater } from "./support/ways.mjs";

const folder = mkdtempSync(join(tmpdir(), "evenfall-one-file-"));
cpSync(oneFile, join(folder, "evenfall.html")); // alone in its folder: there is nothing beside it to lean on
const address = pathToFileURL(join(folder, "evenfall.html")).href;
const browser = await launchBrowser();
after(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

async function opened(device, where = address) {
  const bench = new Bench(await device.newPage());
  await bench.page.goto(where);
  await bench.ready();
  return bench;
}
const newDevice = () => browser.newContext({ viewport: sizes.tablet, hasTouch: true, isMobile: true, acceptDownloads: true });

test("the file opens from a disk, works, asks for nothing, and keeps its work over a reload", async () => {
  const device = await newDevice();
  const asked = [];
  device.on("request", (request) => asked.push(request.url()));
  const bench = await opened(device);
  await warmWater(bench);
  await bench.keptSoon();
  const changed = await bench.document();
  await bench.page.reload();
  await bench.ready();
  assert.deepEqual(await bench.document(), changed);
  assert.deepEqual(asked.filter((url) => url !== address && !/^(data|blob):/.test(url)), []);
  bench.noFaults();
  await bench.shot("one-file");
  await device.close();
});

test("the file carries the terms of others' works and a policy without holes", () => {
  const text = readFileSync(oneFile, "utf8");
  assert.match(text, /id="terms">[\s\S]*Source Sans/);
  const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(text)[1];
  assert.match(policy, /^default-src 'none'; script-src 'sha256-[^']+' 'wasm-unsafe-eval'; style-src 'sha256-[^']+';/);
  assert.doesNotMatch(policy, /unsafe-inline|'unsafe-eval'|\*|https?:|connect-src/);
});

test("where the browser refuses to keep anything, the file hands its work out as a download", async () => {
  const device = await newDevice();
  await device.addInitScript(() => {
    Object.defineProperty(window, "localStorage", { get() { throw new DOMException("denied", "SecurityError"); } });
  });
  const bench = await opened(device);
  await names(bench, "Disk runner 3");
  const [file] = await Promise.all([
    bench.page.waitForEvent("download"),
    bench.page.locator('.notice[data-kind="storage"]').getByRole("button", { name: "Save a copy" }).tap(),
  ]);
  assert.equal(JSON.parse(readFileSync(await file.path(), "utf8")).name, "Disk runner 3");
  await device.close();
});

test("a link made by the file opens in the file, and the dialog says whom it serves", async () => {
  const device = await newDevice();
  const bench = await opened(device);
  await names(bench, "Disk runner 4");
  await bench.open("share");
  await bench.page.locator("#dialog-share-disk").waitFor();
  const link = await bench.page.locator("#dialog-share-link").inputValue();
  const other = await newDevice();
  const second = await opened(other, link);
  assert.equal((await second.document()).name, "Disk runner 4");
  await device.close();
  await other.close();
});
