// The page as a guest on a device: what it asks for, what it allows, what it says when it cannot run.

import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { serve } from "./support/server.mjs";
import { pageDir } from "./support/settings.mjs";

const shop = await workshop();

test("the page boots, reports no faults, and asks its own origin alone", async () => {
  const device = await shop.device();
  const asked = [];
  device.on("request", (request) => asked.push(request.url()));
  const bench = await shop.open(device);
  await bench.page.evaluate(() => navigator.serviceWorker.ready);
  bench.noFaults();
  assert.ok(asked.some((url) => url.endsWith("/evenfall.wasm.gz")), "requests are recorded");
  const elsewhere = asked.filter((url) => !url.startsWith(`${shop.server.origin}/`) && !/^(data|blob):/.test(url));
  assert.deepEqual(elsewhere, []);
  await device.close();
});

test("a strict security policy stands in the page and is in force", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const policy = await bench.page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute("content");
  const rules = Object.fromEntries(policy.split(";").map((rule) => rule.trim().split(/\s+(.*)/s)));
  assert.equal(rules["default-src"], "'none'");
  assert.equal(rules["script-src"], "'self' 'wasm-unsafe-eval'");
  assert.equal(rules["connect-src"], "'self'");
  assert.ok(!/unsafe-inline|'unsafe-eval'|\*|https?:/.test(policy), policy);

  const broken = await bench.page.evaluate(async () => {
    const blocked = new Promise((resolve) => document.addEventListener("securitypolicyviolation", (e) => resolve(e.effectiveDirective), { once: true }));
    const script = document.createElement("script");
    script.textContent = "globalThis.slippedThrough = true";
    document.head.append(script);
    return { directive: await blocked, ran: globalThis.slippedThrough === true };
  });
  assert.match(broken.directive, /^script-src/);
  assert.equal(broken.ran, false);
  const reached = await bench.page.evaluate(() => fetch("http://127.0.0.1:9/").then(() => "reached", () => "refused"));
  assert.equal(reached, "refused");
  await device.close();
});

test("no file of the page names another host to load from", () => {
  const loads = /(?:src|href)\s*=\s*["'](?:https?:)?\/\/|url\(\s*["']?(?:https?:)?\/\/|(?:fetch|import)\(\s*["'`]https?:/;
  const names = readdirSync(pageDir, { recursive: true }).filter((name) => /\.(html|css|js|svg|webmanifest)$/.test(name));
  assert.ok(names.includes("index.html") && names.includes("evenfall.js"));
  for (const name of names) assert.doesNotMatch(readFileSync(join(pageDir, name), "utf8"), loads, name);
});

test("the manifest describes an app that can be installed, by addresses relative to the page", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const manifest = JSON.parse(readFileSync(join(pageDir, "assets/evenfall.webmanifest"), "utf8"));
  const at = new URL("assets/evenfall.webmanifest", shop.server.address);
  assert.equal(new URL(manifest.start_url, at).href, shop.server.address);
  assert.equal(new URL(manifest.scope, at).href, shop.server.address);
  assert.ok(manifest.icons.some(({ purpose }) => purpose === "maskable"));
  const touchIcon = await bench.page.locator('link[rel="apple-touch-icon"]').evaluate((link) => link.href);
  for (const address of [touchIcon, ...manifest.icons.map(({ src }) => new URL(src, at).href)]) {
    const size = await bench.page.evaluate(async (src) => {
      const image = new Image();
      image.src = src;
      await image.decode();
      return [image.naturalWidth, image.naturalHeight];
    }, address);
    const stated = manifest.icons.find(({ src }) => address.endsWith(src))?.sizes;
    if (stated && stated !== "any") assert.equal(size.join("x"), stated, address);
    assert.ok(size[0] > 0 && size[0] === size[1], address);
  }
  await device.close();
});

test("without WebGL 2 the page says so in plain words", async () => {
  const device = await shop.device();
  await device.addInitScript(() => {
    const given = HTMLCanvasElement.prototype.getContext;
    HTMLCanvasElement.prototype.getContext = function (kind, ...rest) {
      return kind === "webgl2" ? null : given.call(this, kind, ...rest);
    };
  });
  const page = await device.newPage();
  await page.goto(shop.server.address);
  await page.locator("#loading .stop").filter({ hasText: "WebGL 2" }).waitFor();
  await device.close();
});

test("without WebAssembly the page says so in plain words", async () => {
  const device = await shop.device();
  await device.addInitScript(() => delete globalThis.WebAssembly);
  const page = await device.newPage();
  await page.goto(shop.server.address);
  await page.locator("#loading .stop").filter({ hasText: "WebAssembly" }).waitFor();
  await device.close();
});

test("without JavaScript the page says so in plain words", async () => {
  const device = await shop.device({ javaScriptEnabled: false });
  const page = await device.newPage();
  await page.goto(shop.server.address);
  const words = page.locator("noscript");
  assert.match(await words.innerHTML(), /needs JavaScript/);
  const box = await words.boundingBox();
  assert.ok(box.height > 20 && box.y + box.height < sizes.tablet.height, "the words are in sight");
  await device.close();
});

test("a missing part is told, with a way to load the page again", async () => {
  const device = await shop.device({ serviceWorkers: "block" });
  const page = await device.newPage();
  await page.route("**/evenfall.wasm*", (route) => route.abort());
  await page.goto(shop.server.address);
  await page.locator("#loading .stop").waitFor();
  await page.unroute("**/evenfall.wasm*");
  await page.getByRole("button", { name: "Load again" }).tap();
  await page.waitForFunction(() => globalThis.EvenfallHooks);
  await device.close();
});

test("where a policy forbids compiled code the page says so, and not that the connection failed", async () => {
  const server = await serve(pageDir);
  server.hostBy((name, { headers, body }) => ({ headers: { ...headers, "content-security-policy": "script-src 'self'" }, body }));
  const device = await shop.device({ serviceWorkers: "block" });
  const page = await device.newPage();
  await page.goto(server.address);
  const said = await page.locator("#loading .stop[role=alert]").textContent();
  assert.match(said, /blocked/);
  assert.doesNotMatch(said, /connection/);
  await device.close();
  await server.stop();
});

test("inside another page the bench does not start and says so", async () => {
  const device = await shop.device();
  const page = await device.newPage();
  await page.goto(`${shop.server.address}licences.txt`);
  await page.evaluate((address) => {
    const frame = document.createElement("iframe");
    frame.src = address;
    document.body.append(frame);
  }, shop.server.address);
  assert.match(await page.frameLocator("iframe").locator("#loading .stop[role=alert]").textContent(), /inside another page/);
  await device.close();
});

test("even without its script the page says after a while that a part may be missing", async () => {
  const device = await shop.device();
  const page = await device.newPage();
  await page.route("**/evenfall.js", (route) => route.abort());
  await page.goto(shop.server.address);
  await page.locator("#loading-late").waitFor({ state: "visible", timeout: 20_000 });
  await device.close();
});
