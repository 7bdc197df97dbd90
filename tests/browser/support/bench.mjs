// The page in a browser, operated by touch and mouse. The page's read-only hooks give positions and values; every
// action is a real touch, click or key.

import assert from "node:assert/strict";
import { join } from "node:path";
import { after } from "node:test";
import { launchBrowser, modulesDir, pageDir, shotsDir } from "./settings.mjs";
import { serve } from "./server.mjs";

export const sizes = {
  phone: { width: 390, height: 844 },
  tablet: { width: 1024, height: 768 },
  large: { width: 1366, height: 1024 },
};

// Controls on every step; those on the shelf need the shelf opened first.
const places = { undo: "undo", redo: "redo", name: "lure.name", share: "shelf.share", save: "shelf.save", file: "shelf.load" };

// What a processor draws for want of a graphics card is nine tenths of a frame: in the tests frames are made and sent, and
// drawn only while a picture of them is taken.
const drawForPictures = (device) => device.addInitScript(() => {
  const calls = globalThis.WebGL2RenderingContext?.prototype;
  if (!calls) return;
  const draw = calls.drawElements;
  globalThis.drawn = (yes) => (calls.drawElements = yes ? draw : () => {});
  globalThis.drawn(false);
});

/** One browser and one server for all tests of a file; `switches` are further ones for the browser. */
export async function workshop(switches) {
  const shop = { server: await serve(pageDir, modulesDir), browser: await launchBrowser(switches) };
  after(async () => {
    await shop.browser.close();
    await shop.server.stop();
  });

  /** A new device: nothing saved, `size` in CSS px, with a touch screen, of a country that works in millimetres. With
   * `drawn` it draws every frame, as a tablet does. */
  shop.device = async ({ size = sizes.tablet, dpr = 1, drawn = false, ...more } = {}) => {
    const device = await shop.browser.newContext({
      viewport: size, deviceScaleFactor: dpr, hasTouch: true, isMobile: true, locale: "en-GB", ...more,
    });
    if (!drawn) await drawForPictures(device);
    return device;
  };

  /** Opens the page on a device and waits until the bench has started. */
  shop.open = async (device, address = shop.server.address) => {
    const bench = new Bench(await device.newPage());
    await bench.page.goto(address);
    await bench.ready();
    return bench;
  };
  return shop;
}

export class Bench {
  constructor(page) {
    this.page = page;
    this.faults = [];
    page.on("pageerror", (error) => this.faults.push(String(error)));
    page.on("console", (line) => line.type() === "error" && this.faults.push(line.text()));
  }

  async ready({ withFirstSteps = false } = {}) {
    await this.page.waitForFunction(() => globalThis.EvenfallHooks && document.getElementById("loading").hidden);
    const skip = this.page.locator("#dialog-first-skip");
    if (!withFirstSteps && (await skip.isVisible())) await skip.click();
    await this.settled();
  }

  hook(name, ...given) {
    return this.page.evaluate(([hook, args]) => globalThis.EvenfallHooks[hook](...args), [name, given]);
  }
  frames() { return this.hook("frames"); }
  async items() { return JSON.parse(await this.hook("itemsJson")); }
  async document() { return JSON.parse(await this.hook("documentJson")); }
  async answers() { return JSON.parse(await this.hook("answersJson")); }

  /** Waits until the bench draws no more frames, although the browser offers some. */
  async settled() {
    for (let tries = 0; tries < 100; tries++) {
      const [before, after] = await this.page.evaluate(async () => {
        const { frames } = globalThis.EvenfallHooks;
        const first = frames();
        for (let offered = 0; offered < 4; offered++) await new Promise(requestAnimationFrame);
        return [first, frames()];
      });
      if (before === after && after > 0) return;
    }
    assert.fail("the bench goes on drawing without a reason");
  }

  /** Place of a widget; undefined where it is not drawn. */
  async find(id) {
    return (await this.items()).find((item) => item.id === id);
  }

  async middleOf(id) {
    const item = await this.bringIntoSight(id);
    const canvas = await this.page.locator("#canvas").boundingBox();
    return [canvas.x + item.x + item.w / 2, canvas.y + item.y + item.h / 2];
  }

  async tap(id) {
    const [x, y] = await this.middleOf(id);
    await this.page.touchscreen.tap(x, y);
    await this.settled();
  }

  async click(id) {
    const [x, y] = await this.middleOf(id);
    await this.page.mouse.move(x, y);
    await this.page.mouse.down();
    await this.settled(); // a hand holds a button longer than a program does; the bench looks once a frame
    await this.page.mouse.up();
    await this.settled();
  }

  async has(id) {
    return (await this.find(id))?.visible === true;
  }

  /** Opens the closed sections of the panel, one after the other, until one holds the widget. */
  async openSectionOf(id) {
    for (const { id: heading } of (await this.items()).filter(({ closed }) => closed)) {
      if (await this.find(id)) return;
      const byTouch = await this.page.evaluate(() => navigator.maxTouchPoints > 0);
      const touch = () => (byTouch ? this.tap(heading) : this.click(heading));
      await touch();
      // On a phone a message may have lain over the heading: the first touch put it away.
      if ((await this.find(heading))?.closed) await touch();
    }
  }

  /** Scrolls by finger, and opens its section where that is closed, until the widget can be touched. */
  async bringIntoSight(id) {
    if (!(await this.find(id))) await this.openSectionOf(id);
    for (let tries = 0; tries < 40; tries++) {
      const item = await this.find(id);
      assert.ok(item, `there is no ${id} on the screen; there are ${(await this.items()).map((i) => i.id).join(" ")}`);
      if (item.visible) return item;
      const { height } = this.page.viewportSize();
      const middle = await this.scrollStart(item);
      const away = Math.max(-140, Math.min(140, middle.y - (item.y + item.h / 2)));
      await this.drag(middle, { x: middle.x, y: Math.max(4, Math.min(height - 4, middle.y + away)) }, { rest: true });
    }
    assert.fail(`${id} cannot be brought into sight`);
  }

  // A free point among the visible widgets of the same list, where a drag can start.
  async scrollStart(item) {
    const list = (id) => id.split(".")[0];
    const beside = (await this.items()).filter((other) =>
      other.visible && list(other.id) === list(item.id) && other.x < item.x + item.w && item.x < other.x + other.w);
    const canvasBox = await this.page.locator("#canvas").boundingBox();
    // Between two widgets of a long panel none may be visible: then any place of the panel will do.
    if (beside.length === 0) return { x: canvasBox.x + item.x + item.w / 2, y: canvasBox.y + 0.78 * canvasBox.height };
    const top = Math.min(...beside.map((other) => other.y));
    const bottom = Math.max(...beside.map((other) => other.y + other.h));
    const canvas = await this.page.locator("#canvas").boundingBox();
    return { x: canvas.x + item.x + item.w / 2, y: canvas.y + (top + bottom) / 2 };
  }

  /** The rest between two movements of a finger: about a frame. */
  pace() { return this.page.waitForTimeout(16); }

  /** A while in which something could still happen that must not: there is no state to wait for. */
  meanwhile(milliseconds) { return this.page.waitForTimeout(milliseconds); }

  async touch(type, ...points) {
    this.wire ??= await this.page.context().newCDPSession(this.page);
    await this.wire.send("Input.dispatchTouchEvent", { type, touchPoints: points.map(({ x, y }, id) => ({ x, y, id })) });
  }

  /** A drag by one finger; with `rest` it rests before it lets go, so that nothing glides on. */
  async drag(from, to, { steps = 12, rest = false } = {}) {
    await this.touch("touchStart", from);
    for (let i = 1; i <= steps; i++) {
      await this.touch("touchMove", { x: from.x + ((to.x - from.x) * i) / steps, y: from.y + ((to.y - from.y) * i) / steps });
      await this.pace();
    }
    if (rest) await this.meanwhile(150);
    await this.touch("touchEnd");
    await this.settled();
  }

  /** Uses a control that every step has: undo, redo, name, share, save, file. */
  async open(what) {
    if (places[what].startsWith("shelf.")) await this.tap("shelf.open");
    await this.tap(places[what]);
  }

  /** Waits until the document on the bench is saved on the device. */
  async keptSoon() {
    await this.page.waitForFunction(() => {
      const saves = ["a", "b"].map((slot) => JSON.parse(localStorage.getItem(`evenfall.slot.${slot}`) ?? '{"rev":0}'));
      const newest = saves.reduce((a, b) => (a.rev >= b.rev ? a : b));
      return newest.session && newest.session === globalThis.EvenfallHooks.sessionJson();
    });
  }

  /** Types a number on the page's own keypad into a field: "12.5", "-3", "7/64". */
  async enter(fieldId, text, tap = (id) => this.tap(id)) {
    await tap(fieldId);
    assert.ok(await this.has("keypad.ok"), `tapping ${fieldId} opens the keypad`);
    const keys = { ".": "point", "/": "bar", " ": "space" };
    for (const sign of text.replace("-", "")) await tap(`keypad.${keys[sign] ?? sign}`);
    if (text.startsWith("-")) await tap("keypad.sign");
    await tap("keypad.ok");
  }

  /** A picture of the page, with a frame that is drawn for it. */
  async picture(more) {
    await this.page.evaluate(async () => {
      if (!globalThis.drawn || !globalThis.EvenfallHooks) return;
      globalThis.drawn(true);
      const { frames } = globalThis.EvenfallHooks;
      const before = frames();
      window.dispatchEvent(new Event("resize"));
      for (let offered = 0; offered < 20 && frames() === before; offered++) await new Promise(requestAnimationFrame);
      await new Promise(requestAnimationFrame);
    });
    const picture = await this.page.screenshot(more);
    await this.page.evaluate(() => globalThis.drawn?.(false));
    return picture;
  }

  /** The same, kept under this name. */
  shot(name) { return this.picture({ path: join(shotsDir, `${name}.png`) }); }

  /** Checks that the document can be built and every number of its answers is finite. */
  async answersAreNumbers(when) {
    const answers = await this.answers();
    for (const key of ["mass_g", "mass_sigma_g", "displaced_cm3", "in_water_g", "bg_mm"]) {
      assert.ok(Number.isFinite(answers[key]), `${when}: ${key} is ${answers[key]}`);
    }
    assert.ok([...answers.g_mm, ...answers.b_mm].every(Number.isFinite), when);
    return answers;
  }

  noFaults() {
    assert.deepEqual(this.faults, [], "the page reports no faults");
  }
}
