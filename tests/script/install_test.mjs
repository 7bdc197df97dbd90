// The browser's offer to install the page, without a browser.

import assert from "node:assert/strict";
import { test } from "node:test";
import { pageModule } from "./support/page_modules.mjs";

class Offer extends Event {
  asked = 0;
  constructor() { super("beforeinstallprompt", { cancelable: true }); }
  prompt() { this.asked++; }
}

test("the shelf offers to install the page while the browser does, and asks it once", async () => {
  globalThis.window = new EventTarget();
  const { watchInstall } = await pageModule("install.js");
  const told = [];
  const install = watchInstall({ offerInstall: (offered) => told.push(offered) });
  assert.deepEqual(told, [], "nothing is offered by itself");
  install();
  const offer = new Offer();
  window.dispatchEvent(offer);
  assert.ok(offer.defaultPrevented, "the browser's own banner stays away");
  install();
  install();
  assert.equal(offer.asked, 1);
  assert.equal(told.at(-1), false);
  window.dispatchEvent(new Offer());
  window.dispatchEvent(new Event("appinstalled"));
  assert.deepEqual(told.slice(-2), [true, false], "once installed it is offered no more");
});
