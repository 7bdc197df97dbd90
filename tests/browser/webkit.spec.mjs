// The third family of browsers: the distribution's WebKit in its plain window, on a screen that nobody sees, driven by the
// standard WebDriver. A small set: start, draw, work, rest, keep. It is not Safari: see TABLET.md for what only that can show.

import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { after, test } from "node:test";
import { colours } from "./support/png.mjs";
import { serve } from "./support/server.mjs";
import { modulesDir, pageDir, shotsDir } from "./support/settings.mjs";

const driverPath = process.env.EVENFALL_WEBKIT_DRIVER ?? "/usr/bin/WebKitWebDriver";

const screen = spawn("Xvfb", ["-displayfd", "3", "-screen", "0", "1366x1024x24", "-nolisten", "tcp"], { stdio: ["ignore", "ignore", "ignore", "pipe"] });
const number = await new Promise((resolve, reject) => {
  screen.stdio[3].once("data", (said) => resolve(String(said).trim()));
  screen.once("error", reject);
});
const server = await serve(pageDir, modulesDir);
// The driver takes no free port by itself: one near the server's own, which nobody else has asked for.
const port = Number(new URL(server.origin).port) > 60000 ? 20000 + (Number(new URL(server.origin).port) % 1000) : Number(new URL(server.origin).port) + 1;
// A device without a language of its own: the browser then names one that there is not.
const driver = spawn(driverPath, [`--port=${port}`, "--host=127.0.0.1"], { stdio: "ignore", env: { ...process.env, DISPLAY: `:${number}`, LC_ALL: "C" } });

async function ask(method, path, body) {
  const answer = await fetch(`http://127.0.0.1:${port}${path}`, { method, body: body && JSON.stringify(body) });
  const { value } = await answer.json();
  if (value?.error) throw new Error(`${method} ${path}: ${value.error}: ${value.message}`);
  return value;
}

async function until(what, look, seconds = 120) {
  for (const end = Date.now() + 1000 * seconds; Date.now() < end; await new Promise((go) => setTimeout(go, 250))) {
    const found = await Promise.resolve(look()).catch(() => undefined);
    if (found) return found;
  }
  assert.fail(`${what} within ${seconds} s`);
}

await until("the driver answers", () => ask("GET", "/status"), 30);
const { sessionId } = await ask("POST", "/session", { capabilities: { alwaysMatch: {} } });
const at = `/session/${sessionId}`;
after(async () => {
  await ask("DELETE", at).catch(() => {});
  driver.kill();
  screen.kill();
  await server.stop();
});

const run = (script, ...args) => ask("POST", `${at}/execute/sync`, { script, args });
const hook = (name) => run("return globalThis.EvenfallHooks[arguments[0]]()", name);
const lure = async () => JSON.parse(await hook("documentJson"));

async function ready() {
  await until("the bench stands", () => run("return Boolean(globalThis.EvenfallHooks) && document.getElementById('loading').hidden"));
  await run("document.getElementById('dialog-first').close('skip')");
  await rest();
}

// Until the bench draws no more frames.
async function rest() {
  let last = -1;
  await until("the bench comes to rest", async () => {
    const now = await hook("frames");
    const still = now > 0 && now === last;
    last = now;
    return still;
  });
}

async function tap(id) {
  const item = await until(`${id} is in sight`, async () =>
    JSON.parse(await hook("itemsJson")).find((each) => each.id === id && each.visible), 30);
  const canvas = await run("const { x, y } = document.getElementById('canvas').getBoundingClientRect(); return { x, y };");
  const [x, y] = [canvas.x + item.x + item.w / 2, canvas.y + item.y + item.h / 2].map(Math.round);
  const before = await hook("frames");
  const hand = (...actions) =>
    ask("POST", `${at}/actions`, { actions: [{ type: "pointer", id: "hand", parameters: { pointerType: "mouse" }, actions }] });
  // The browser hands moves over once a frame, presses at once: a hand is there before it presses.
  await hand({ type: "pointerMove", duration: 0, x, y, origin: "viewport" });
  await new Promise((go) => setTimeout(go, 400));
  await hand({ type: "pointerDown", button: 0 }, { type: "pause", duration: 400 }, { type: "pointerUp", button: 0 });
  // A slow machine may be a while between feeling the hand and showing what it did.
  await until(`${id} is felt`, async () => (await hook("frames")) > before, 30);
  await new Promise((go) => setTimeout(go, 300));
  await rest();
}

test("WebKit: the bench starts, is drawn, works, and keeps a change over a reload", async () => {
  await ask("POST", `${at}/window/rect`, { width: 1100, height: 860 });
  await ask("POST", `${at}/url`, { url: server.address });
  await ready();
  const picture = Buffer.from(await ask("GET", `${at}/screenshot`), "base64");
  writeFileSync(join(shotsDir, "webkit.png"), picture);
  const seen = colours(picture);
  assert.ok(seen.count > 200 && seen.largest < 0.9, `the lure is drawn: ${seen.count} colours, one of them on ${seen.largest}`);

  await tap("step.water");
  await tap("water.temperature");
  // A browser without a language calls itself American, and then the water is in °F.
  const before = (await lure()).water.temperature_C;
  for (const key of ["6", "6", "ok"]) await tap(`keypad.${key}`);
  await until("the water is warmer", async () => Math.abs((await lure()).water.temperature_C - (66 - 32) / 1.8) < 0.01, 30);
  assert.ok((await lure()).water.temperature_C > before);
  const changed = await lure();
  await until("the change is kept", () => run(`return ["a", "b"].some((slot) =>
    JSON.parse(localStorage.getItem("evenfall.slot." + slot) ?? "{}").session === globalThis.EvenfallHooks.sessionJson())`));
  await ask("POST", `${at}/refresh`, {});
  await ready();
  assert.deepEqual(await lure(), changed);
});

test("WebKit: a bench at rest draws no frames", async () => {
  await new Promise((go) => setTimeout(go, 6000)); // longer than a word on the bench stays
  await rest();
  const still = await hook("frames");
  await new Promise((go) => setTimeout(go, 2000));
  assert.equal(await hook("frames"), still);
});
