// The distribution's Firefox, with a window of its own on a screen that nobody sees, since it draws no WebGL without one.

import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { firefoxDriver, firefoxPath } from "./settings.mjs";

/** A screen: the server picks a free number and says it on its third channel. It stays when its last window is closed. */
export async function startScreen() {
  const server = spawn("Xvfb", ["-displayfd", "3", "-screen", "0", "1366x1024x24", "-nolisten", "tcp", "-noreset"], { stdio: ["ignore", "ignore", "ignore", "pipe"] });
  const number = await new Promise((resolve, reject) => {
    server.stdio[3].once("data", (said) => resolve(String(said).trim()));
    server.once("error", reject);
  });
  return { display: `:${number}`, close: () => server.kill() };
}

/** Firefox on such a screen; `more` are further settings of its driver. */
export const launchFirefox = (screen, more = {}) => firefoxDriver.launch({
  browser: "firefox", executablePath: firefoxPath, headless: false, env: { ...process.env, DISPLAY: screen.display },
  extraPrefsFirefox: { "webgl.force-enabled": true, "dom.serviceWorkers.enabled": true, "intl.accept_languages": "en-GB" },
  ...more,
});

export const hook = (page, name) => page.evaluate((called) => globalThis.EvenfallHooks[called](), name);
export const documentOf = async (page) => JSON.parse(await hook(page, "documentJson"));

export async function ready(page) {
  await page.waitForFunction(() => globalThis.EvenfallHooks && document.getElementById("loading").hidden, { timeout: 60_000 });
  await page.evaluate(() => document.getElementById("dialog-first").close("skip"));
  await rest(page);
}

// Until the bench takes none of the frames it is offered.
export async function rest(page) {
  for (let tries = 0; tries < 60; tries++) {
    const before = await hook(page, "frames");
    await page.evaluate(async () => { for (let i = 0; i < 4; i++) await new Promise(requestAnimationFrame); });
    if (before > 0 && before === (await hook(page, "frames"))) return;
  }
  assert.fail("the bench goes on drawing without a reason");
}

async function middleOf(page, id) {
  const item = JSON.parse(await hook(page, "itemsJson")).find((each) => each.id === id);
  assert.ok(item?.visible, `${id} is in sight`);
  const canvas = await page.evaluate(() => { const { x, y } = document.getElementById("canvas").getBoundingClientRect(); return { x, y }; });
  return [canvas.x + item.x + item.w / 2, canvas.y + item.y + item.h / 2];
}

// By mouse: Firefox's remote agent refuses the touches that the driver makes.
export async function tap(page, id) {
  await page.mouse.move(...(await middleOf(page, id)));
  await page.mouse.down();
  await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 60)));
  await page.mouse.up();
  await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 80)));
  await rest(page);
}

export async function warmWater(page) {
  await tap(page, "step.water");
  await tap(page, "water.temperature");
  for (const key of ["1", "9", "ok"]) await tap(page, `keypad.${key}`);
}
