// The page on a device that fails it: no room, no database, damaged records, no memory, no surface, a screen turned in mid-drag.

import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { colours, difference } from "./support/png.mjs";
import { keepPlan, planTheLead, warmWater } from "./support/ways.mjs";

const shop = await workshop();
const steps = ["shape", "joints", "hardware", "lead", "finish", "water", "log", "sheet"];

test("a walk through every step, the shelf, a plan, a link, a file and a sheet asks the page's own origin alone and runs no text as code", async () => {
  const device = await shop.device();
  const asked = [];
  device.on("request", (request) => asked.push(request.url()));
  // A script of the page's own origin may run, but may make no code out of text.
  await device.route("**/probe.js", (route) => route.fulfill({
    contentType: "text/javascript",
    body: `const tries = { eval: () => (0, eval)("1"), function: () => new Function("return 1")(), wasm: () => new WebAssembly.Module(
             new Uint8Array([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0])) && "made" };
           globalThis.probed = Object.fromEntries(Object.entries(tries).map(([name, run]) => {
             try { return [name, run()]; } catch (fault) { return [name, fault.name]; } }));`,
  }));
  const bench = await shop.open(device);
  const violations = [];
  await device.exposeFunction("tellViolation", (text) => violations.push(text));
  await bench.page.evaluate(() =>
    document.addEventListener("securitypolicyviolation", (e) => globalThis.tellViolation(`${e.effectiveDirective} ${e.blockedURI}`)));
  for (const step of steps) {
    await bench.tap(`step.${step}`);
  }
  await warmWater(bench);
  await planTheLead(bench);
  await keepPlan(bench);
  await bench.open("save");
  const arrives = bench.page.waitForEvent("download");
  await bench.page.locator("#dialog-save-file").tap();
  await arrives;
  await bench.page.locator("#dialog-save").waitFor({ state: "hidden" }); // saving closes it
  await bench.open("share");
  await bench.page.locator("#dialog-share-link").waitFor();
  await bench.page.keyboard.press("Escape");
  await bench.settled();
  await bench.tap("answer.fall");
  await bench.page.keyboard.press("Escape");
  await bench.page.evaluate(() => navigator.serviceWorker.ready);
  assert.deepEqual(violations, [], "nothing of the walk is against the policy");

  await bench.page.evaluate(() => new Promise((resolve, reject) => {
    const script = document.createElement("script");
    Object.assign(script, { src: "probe.js", onload: resolve, onerror: reject });
    document.head.append(script);
  }));
  assert.deepEqual(await bench.page.evaluate(() => globalThis.probed), { eval: "EvalError", function: "EvalError", wasm: "made" });

  assert.ok(asked.some((url) => url.endsWith("/evenfall.wasm.gz")), "requests are recorded");
  assert.deepEqual(asked.filter((url) => !url.startsWith(`${shop.server.origin}/`) && !/^(data|blob):/.test(url)), []);
  await device.close();
});

test("when room runs out in the middle of work the page says so, goes on, and keeps again once there is room", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await warmWater(bench);
  await bench.keptSoon();
  await bench.page.evaluate(() => {
    globalThis.givenSetItem = Storage.prototype.setItem;
    Storage.prototype.setItem = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
  });
  const before = await bench.document();
  await warmWater(bench);
  const line = bench.page.locator('.notice[data-kind="storage"]');
  await line.waitFor();
  await bench.settled();
  const changed = await bench.document();
  assert.notDeepEqual(changed, before, "the change is on the bench");
  await bench.page.evaluate(() => (Storage.prototype.setItem = globalThis.givenSetItem));
  await warmWater(bench);
  await bench.keptSoon();
  await line.waitFor({ state: "detached" });
  const last = await bench.document();
  await bench.page.reload();
  await bench.ready();
  assert.deepEqual(await bench.document(), last);
  bench.noFaults();
  await device.close();
});

test("a database that does not answer is told, and the bench works and keeps without it", async () => {
  const device = await shop.device();
  await device.addInitScript(() => { IDBFactory.prototype.open = () => new EventTarget(); });
  const bench = await shop.open(device);
  await warmWater(bench);
  await bench.keptSoon();
  const changed = await bench.document();
  await bench.page.locator('.notice[data-kind="database"]').waitFor();
  await bench.page.reload();
  await bench.ready();
  assert.deepEqual(await bench.document(), changed);
  bench.noFaults();
  await device.close();
});

test("what the storage has lost of its last writes is put back from the database", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await warmWater(bench);
  await bench.keptSoon();
  const before = await bench.page.evaluate(() => ({ ...localStorage }));
  await warmWater(bench);
  await bench.keptSoon();
  const changed = await bench.document();
  await bench.meanwhile(500);
  await bench.page.evaluate((earlier) => window.addEventListener("pagehide", () => {
    localStorage.clear();
    for (const [key, text] of Object.entries(earlier)) localStorage.setItem(key, text);
  }), before);
  await bench.page.reload();
  await bench.ready();
  assert.deepEqual(await bench.document(), changed);
  bench.noFaults();
  await device.close();
});

test("records that are noise, all of them, cost neither the bench nor a later save", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await warmWater(bench);
  await bench.keptSoon();
  const kept = await bench.page.evaluate(() => {
    const names = Object.keys(localStorage);
    window.addEventListener("pagehide", () => names.forEach((name, n) => localStorage.setItem(name, `{"noise":[${n},"\u0000`)));
    return names;
  });
  assert.ok(kept.length >= 2, kept.join(" "));
  await bench.page.reload();
  await bench.ready();
  assert.ok((await bench.answersAreNumbers("after noise")).mass_g > 0);
  await warmWater(bench);
  await bench.keptSoon();
  const changed = await bench.document();
  await bench.page.reload();
  await bench.ready();
  assert.deepEqual(await bench.document(), changed);
  bench.noFaults();
  await device.close();
});

// A drawing of a few lines, as a camera's file would come.
const picture = (page, width = 600, height = 300) => page.evaluate(async ([w, h]) => {
  const canvas = Object.assign(document.createElement("canvas"), { width: w, height: h });
  const pen = canvas.getContext("2d");
  pen.fillStyle = "#eee";
  pen.fillRect(0, 0, w, h);
  pen.strokeRect(w / 8, h / 3, (w * 3) / 4, h / 3);
  const blob = await new Promise((resolve) => canvas.toBlob(resolve, "image/png"));
  return [...new Uint8Array(await blob.arrayBuffer())];
}, [width, height]);

async function layPicture(bench, bytes) {
  await bench.tap("step.shape");
  await bench.tap("picture.choose");
  await bench.page.locator("#dialog-picture-file").setInputFiles({ name: "sketch.png", mimeType: "image/png", buffer: Buffer.from(bytes) });
}
const pictureLies = (bench) =>
  bench.page.waitForFunction(() => JSON.parse(globalThis.EvenfallHooks.itemsJson()).some(({ id }) => id === "draw.picture.nose"));

const databases = {
  "is refused": () => (IDBFactory.prototype.open = () => {
    throw new DOMException("denied", "SecurityError");
  }),
  "has no room": () => (IDBObjectStore.prototype.put = () => {
    throw new DOMException("full", "QuotaExceededError");
  }),
};
for (const [what, spoil] of Object.entries(databases)) {
  test(`where the browser's database ${what} a picture still lies behind the drawing, and the page says that it will not be kept`, async () => {
    const device = await shop.device();
    await device.addInitScript(spoil);
    const bench = await shop.open(device);
    const before = await bench.document();
    await layPicture(bench, await picture(bench.page));
    await pictureLies(bench);
    await bench.settled();
    const [x, y] = await bench.middleOf("draw.picture.nose");
    await bench.drag({ x, y }, { x: x + 30, y });
    await bench.page.locator('.notice[data-kind="storage"]').waitFor();
    assert.deepEqual(await bench.document(), before);
    await warmWater(bench);
    await bench.keptSoon();
    bench.noFaults();
    await device.close();
  });
}

test("a kept picture that is no picture any more is left out, and the lure opens as it was", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await layPicture(bench, await picture(bench.page));
  await pictureLies(bench);
  await bench.settled();
  const [x, y] = await bench.middleOf("draw.picture.nose");
  await bench.drag({ x, y }, { x: x + 30, y });
  await bench.keptSoon();
  const spoiled = await bench.page.evaluate(async () => {
    const done = (request) => new Promise((resolve, reject) => Object.assign(request, { onsuccess: () => resolve(request.result), onerror: reject }));
    const base = await done(indexedDB.open("evenfall"));
    const store = base.transaction(["pictures"], "readwrite").objectStore("pictures");
    const ids = await done(store.getAllKeys());
    for (const id of ids) await done(store.put({ blob: new Blob(["no picture"]), marks: 7 }, id));
    base.close();
    return ids.length;
  });
  assert.equal(spoiled, 1);
  const before = await bench.document();
  await bench.page.reload();
  await bench.ready();
  await bench.meanwhile(300);
  assert.equal(await bench.find("draw.picture.nose"), undefined);
  assert.deepEqual(await bench.document(), before);
  await layPicture(bench, await picture(bench.page));
  await pictureLies(bench);
  bench.noFaults();
  await device.close();
});

test("memory has a limit of 256 MB; where the device gives no more, the page says that it stopped, and the work is there when it is loaded again", async (t) => {
  const device = await shop.device();
  // The compiled code's memory, as it is handed out.
  await device.addInitScript(() => {
    const given = WebAssembly.instantiateStreaming;
    WebAssembly.instantiateStreaming = async (...all) => {
      const made = await given(...all);
      globalThis.benchMemory = Object.values(made.instance.exports).find((thing) => thing instanceof WebAssembly.Memory);
      return made;
    };
  });
  const bench = await shop.open(device);
  const pages = (bytes) => bytes / 65536;
  const limit = await bench.page.evaluate(() => {
    const grow = (by) => {
      try {
        globalThis.benchMemory.grow(by);
        return true;
      } catch {
        return false;
      }
    };
    // The first power of two that is too much, then downwards: how far it can grow, without growing it.
    const whole = 65536;
    let now = globalThis.benchMemory.buffer.byteLength / whole;
    const start = now;
    const tooMuch = !grow(4096 - now + 1);
    return { start, tooMuch, now: globalThis.benchMemory.buffer.byteLength / whole };
  });
  assert.ok(limit.tooMuch, "it cannot grow beyond 256 MB");
  assert.equal(limit.now, limit.start);
  assert.ok(limit.start <= pages(1 << 26), "and begins with less than 64 MB");

  await warmWater(bench);
  await bench.keptSoon();
  const kept = await bench.document();
  // From here on the device gives nothing more, and the bench is handed pictures until it asks for more.
  await bench.page.evaluate(() => {
    globalThis.asked = 0;
    globalThis.benchMemory.grow = () => {
      globalThis.asked += 1;
      throw new RangeError("no more memory");
    };
  });
  const stop = bench.page.locator("#loading .stop");
  await layPicture(bench, await picture(bench.page, 1600, 1600));
  await pictureLies(bench);
  await bench.settled();
  // Finding an outline takes several planes of numbers as large as the picture.
  await bench.tap("picture.find").catch(() => {});
  await bench.page.waitForFunction(() => globalThis.asked > 0, undefined, { timeout: 60_000 });
  await bench.page.waitForTimeout(1000);
  const asked = await bench.page.evaluate(() => globalThis.asked);
  t.diagnostic(`asked for more ${asked} times`);
  assert.ok(asked > 0, "more memory was asked for and refused");
  assert.match(await stop.textContent(), /stopped/);
  await bench.page.getByRole("button", { name: "Load again" }).tap();
  await bench.ready();
  assert.deepEqual(await bench.document(), kept);
  await device.close();
});

test("a surface lost three times over, the moment a change was made, comes back drawn and with all of the work", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.water");
  for (let n = 0; n < 3; n++) {
    const before = await bench.document();
    await warmWater(bench);
    const changed = await bench.document();
    assert.notDeepEqual(changed, before);
    const shown = await bench.shot(`surface-held-${n}`);
    await bench.page.evaluate(() => {
      globalThis.surface = document.getElementById("canvas").getContext("webgl2").getExtension("WEBGL_lose_context");
      globalThis.surface.loseContext();
    });
    // Fingers that see nothing: no frame is drawn, and nothing goes wrong.
    for (const x of [100, 400, 700]) await bench.page.touchscreen.tap(x, 400);
    await bench.page.evaluate(() => globalThis.surface.restoreContext());
    await bench.page.waitForTimeout(400);
    await bench.settled();
    assert.deepEqual(await bench.document(), changed);
    const back = await bench.shot(`surface-back-${n}`);
    const seen = colours(back);
    assert.ok(seen.count > 200 && seen.largest < 0.9, `${seen.count} colours, one of them on ${seen.largest}: not black`);
    assert.ok(difference(shown, back) < 0.02, "it shows what it showed before");
    await bench.keptSoon();
  }
  const changed = await bench.document();
  await bench.page.reload();
  await bench.ready();
  assert.deepEqual(await bench.document(), changed);
  await device.close();
});

test("a screen turned in the middle of a drag leaves a lure that can be built, one change at most, and nothing in the hand", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const wire = await device.newCDPSession(bench.page);
  const turn = (width, height) => wire.send("Emulation.setDeviceMetricsOverride", { width, height, deviceScaleFactor: 1, mobile: true });
  const before = await bench.document();
  await bench.tap("draw.hole.2");
  for (const [width, height] of [[768, 1024], [1024, 768], [390, 844], [1024, 768]]) {
    const [x, y] = await bench.middleOf("draw.hole.2");
    await bench.touch("touchStart", { x, y });
    for (let by = 2; by <= 8; by += 2) {
      await bench.touch("touchMove", { x: x + by, y });
      await bench.pace();
    }
    await turn(width, height);
    await bench.page.waitForTimeout(100);
    for (let by = 10; by <= 14; by += 2) {
      await bench.touch("touchMove", { x: x + by, y });
      await bench.pace();
    }
    await bench.touch("touchEnd");
    await bench.settled();
    await bench.answersAreNumbers(`turned to ${width} × ${height}`);
    const now = await bench.document();
    assert.deepEqual({ ...now, holes: [] }, { ...before, holes: [] }, "nothing but a hole has moved");
    for (const [n, hole] of now.holes.entries()) assert.deepEqual({ ...hole, x_mm: 0 }, { ...before.holes[n], x_mm: 0 });
    // A finger that slides over the drawing now moves nothing of the lure: the hole is out of the hand, or taken up anew.
    const seen = colours(await bench.shot(`turned-${width}`));
    assert.ok(seen.count > 200 && seen.largest < 0.9);
  }
  await turn(sizes.tablet.width, sizes.tablet.height);
  await bench.settled();
  for (let undone = 0; undone < 4 && (await bench.has("undo")) ; undone++) await bench.open("undo");
  assert.deepEqual(await bench.document(), before);
  bench.noFaults();
  await device.close();
});
