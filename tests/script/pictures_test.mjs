// The picture behind the drawing, without a browser: what is said where it cannot lie there.

import assert from "node:assert/strict";
import { test } from "node:test";
import { pageModule } from "./support/page_modules.mjs";

class Dialog extends EventTarget {
  open = false;
  showModal() {
    this.open = true;
  }
  close(value) {
    this.open = false;
    this.returnValue = value;
    setTimeout(() => this.dispatchEvent(new Event("close")), 0);
  }
}

test("a picture too small or too narrow is refused with a sentence, and the one before still lies there", async () => {
  const text = { textContent: "" };
  const parts = {
    canvas: { focus() {} }, "dialog-message": new Dialog(), "dialog-message-text": text, "dialog-picture": new Dialog(),
    "dialog-picture-file": {},
  };
  globalThis.document = {
    getElementById: (id) => parts[id],
    createElement: () => ({
      getContext: () => ({ fillRect() {}, drawImage() {}, getImageData: () => ({ data: "pixels" }) }),
      toBlob: (take) => setTimeout(() => take("blob"), 0),
    }),
  };
  let size = [600, 300];
  globalThis.createImageBitmap = async () => ({ width: size[0], height: size[1], close() {} });
  const laid = [];
  const deleted = [];
  const core = {
    // As the core has it: both sides from 24 pixels on.
    showPicture: (width, height) => width >= 24 && height >= 24 && laid.push([width, height]) > 0,
    wake() {},
    takePictureAway: () => deleted.push("picture"),
  };
  const { words } = await pageModule("words.js");
  const { createPictures } = await pageModule("pictures.js");
  const pictures = createPictures({ core, lureId: () => "lure", keepLure() {}, onNotKept() {} });
  const choose = async () => {
    pictures.choose();
    parts["dialog-picture-file"].files = ["file"];
    text.textContent = "";
    parts["dialog-picture-file"].onchange();
    for (let tries = 0; tries < 100 && text.textContent === "" && laid.length === 0; ++tries)
      await new Promise((wake) => setTimeout(wake, 5));
    parts["dialog-message"].close("");
  };
  await choose();
  assert.deepEqual(laid, [[600, 300]]);
  laid.length = 0;
  for (const odd of [[12, 9], [20000, 200], [23, 1600]]) {
    size = odd;
    await choose();
    assert.equal(text.textContent, words.picture.wrongSize, `${odd}`);
    assert.deepEqual(laid, []);
  }
  assert.match(words.picture.wrongSize, /24 pixels/);
  assert.deepEqual(deleted, []);
});
