// The compiled code comes in by whatever the host can do, and offline by the same way.

import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { pathToFileURL } from "node:url";
import { brotliCompressSync, constants, gunzipSync } from "node:zlib";
import { workshop } from "./support/bench.mjs";
import { nextBuild, serve } from "./support/server.mjs";
import { oneFile, pageDir } from "./support/settings.mjs";

const shop = await workshop();
const plain = "evenfall.wasm";
const gzipped = "evenfall.wasm.gz";
const missing = () => { throw new Error("not here"); };

/**
 * Opens the page on a device of its own from a host of the given `way` (server.mjs), and once more with that host gone. Gives which
 * of the two files were asked for, and which of them the worker keeps.
 */
async function visit(way, beforeScripts = () => {}) {
  const server = await serve(pageDir);
  const asked = new Set();
  server.hostBy((name, answer) => {
    if (name === plain || name === gzipped) asked.add(name);
    return way(name, answer);
  });
  const device = await shop.device();
  await device.addInitScript(beforeScripts);
  const bench = await shop.open(device, server.address);
  await bench.page.evaluate(() => navigator.serviceWorker.ready);
  const kept = await bench.page.evaluate(async () => {
    const [cache] = await Promise.all((await caches.keys()).map((name) => caches.open(name)));
    return (await cache.keys()).map(({ url }) => url.split("/").at(-1)).filter((name) => name.startsWith("evenfall.wasm"));
  });
  await server.stop();
  await device.setOffline(true);
  await bench.page.reload();
  await bench.ready();
  assert.ok((await bench.answers()).mass_g > 0, "the bench stands without its host");
  await device.close();
  return { asked: [...asked], kept };
}

test("the two files hold the same code", () => {
  assert.ok(gunzipSync(readFileSync(join(pageDir, gzipped))).equals(readFileSync(join(pageDir, plain))));
});

test("a host that encodes nothing and knows no content types hands out the gzip, and it alone is asked for and kept", async () => {
  const seen = await visit((name, { headers, body }) => ({
    headers: name.startsWith(plain) ? { "content-type": "application/octet-stream" } : headers, body }));
  assert.deepEqual(seen, { asked: [gzipped], kept: [gzipped] });
});

test("where the gzip is missing the plain file does, encoded by the host", async () => {
  const encoded = brotliCompressSync(readFileSync(join(pageDir, plain)), { params: { [constants.BROTLI_PARAM_QUALITY]: 1 } });
  const seen = await visit((name, answer) => {
    if (name === gzipped) missing();
    return name === plain ? { headers: { "content-type": "application/wasm", "content-encoding": "br" }, body: encoded } : answer;
  });
  assert.deepEqual(seen, { asked: [gzipped, plain], kept: [plain] });
});

test("a host that calls the gzip an encoding has the browser inflate it", async () => {
  const seen = await visit((name, { headers, body }) => ({
    headers: name === gzipped ? { ...headers, "content-type": "application/wasm", "content-encoding": "gzip" } : headers, body }));
  assert.deepEqual(seen, { asked: [gzipped], kept: [gzipped] });
});

test("a browser that cannot inflate takes the plain file", async () => {
  // A worker has a world of its own, which only its script can change.
  const seen = await visit(
    (name, { headers, body }) => ({ headers, body: name === "service-worker.js" ? `delete self.DecompressionStream;\n${body}` : body }),
    () => delete globalThis.DecompressionStream);
  assert.ok(seen.asked.includes(plain));
  assert.deepEqual(seen.kept, [plain]);
});

// A device that has the build of pageDir, and a server that is being given the next one: `half` is how it answers until it has it.
async function halfDeployed(half) {
  const next = mkdtempSync(join(tmpdir(), "evenfall-half-"));
  nextBuild(pageDir, next);
  const server = await serve(pageDir);
  const device = await shop.device();
  const bench = await shop.open(device, server.address);
  const { page } = bench;
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.reload();
  await bench.ready();
  server.swap(next);
  server.hostBy(half);
  const tried = await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    const worker = new Promise((found) => registration.addEventListener("updatefound", () => found(registration.installing)));
    await registration.update().catch(() => {});
    const installing = await worker;
    return new Promise((ended) => {
      const look = () => ["installed", "redundant"].includes(installing.state) && ended(installing.state);
      installing.addEventListener("statechange", look);
      look();
    });
  });
  assert.equal(tried, "redundant", "what is not whole is no version");
  await page.reload();
  await bench.ready();
  const isNext = () => page.evaluate(() => Boolean(globalThis.isNextBuild));
  assert.equal(await isNext(), false, "the old build goes on");
  const end = async () => {
    bench.noFaults();
    await device.close();
    await server.stop();
    rmSync(next, { recursive: true });
  };
  return { server, bench, isNext, end };
}

test("a deployment that is half finished is not taken, and taken whole once it is finished", async () => {
  const { server, bench, isNext, end } = await halfDeployed((name, answer) =>
    (name === "evenfall.js" ? { ...answer, body: readFileSync(join(pageDir, name)) } : answer));
  const { page } = bench;
  await page.context().setOffline(true);
  await page.reload();
  await bench.ready();
  assert.equal(await isNext(), false, "without a network, too");
  await page.context().setOffline(false);
  assert.equal(await page.locator('.notice[data-kind="version"]').count(), 0);

  server.hostBy((name, answer) => answer);
  await page.reload();
  await bench.ready();
  const loaded = page.waitForEvent("load");
  await page.locator('.notice[data-kind="version"]').getByRole("button", { name: "Load it" }).tap();
  await loaded;
  await bench.ready();
  assert.equal(await isNext(), true);
  await page.context().setOffline(true);
  await page.reload();
  await bench.ready();
  assert.equal(await isNext(), true);
  await end();
});

test("the page of a network that asks for a login is kept in no file's place", async () => {
  const login = "<!doctype html><title>Log in</title>";
  const { bench, end } = await halfDeployed((name, answer) =>
    (name.startsWith("assets/icon") ? { headers: { "content-type": "text/html" }, body: login } : answer));
  const kept = await bench.page.evaluate(async () => {
    const answers = [];
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const request of await cache.keys()) answers.push([request.url, await (await cache.match(request)).text()]);
    }
    return answers;
  });
  assert.ok(kept.length > 7);
  assert.deepEqual(kept.filter(([, text]) => text.includes("Log in")), []);
  await end();
});

test("a gzip cut short or damaged never runs: the plain file does", async () => {
  for (const hurt of [(body) => body.subarray(0, body.length >> 1), (body) => Buffer.from(body).fill(0, 5000, 5100)]) {
    const server = await serve(pageDir);
    server.hostBy((name, { headers, body }) => ({ headers, body: name === gzipped ? hurt(body) : body }));
    const device = await shop.device({ serviceWorkers: "block" });
    const asked = [];
    device.on("request", (request) => asked.push(request.url().split("/").at(-1)));
    const bench = await shop.open(device, server.address);
    assert.ok(asked.includes(plain));
    assert.ok((await bench.answers()).mass_g > 0);
    await device.close();
    await server.stop();
  }
});

test("one file whose code is damaged says so instead of starting", async () => {
  const folder = mkdtempSync(join(tmpdir(), "evenfall-hurt-"));
  const hurt = readFileSync(oneFile, "utf8").replace(/(id="compiled-code">.{4000}).{400}/, (all, front) => front + "A".repeat(400));
  writeFileSync(join(folder, "evenfall.html"), hurt);
  const device = await shop.device();
  const page = await device.newPage();
  await page.goto(pathToFileURL(join(folder, "evenfall.html")).href);
  await page.locator("#loading .stop").waitFor();
  await device.close();
  rmSync(folder, { recursive: true });
});
