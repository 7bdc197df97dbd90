// Dialogs, and what is taken in through them, without a browser.

import assert from "node:assert/strict";
import { test } from "node:test";
import { setTimeout as wait } from "node:timers/promises";
import { pageModule } from "./support/page_modules.mjs";

// What of HTML's <dialog> is used: the event "close" comes a task after the closing.
class Dialog extends EventTarget {
  open = false;
  returnValue = "";
  showModal() {
    assert.ok(!this.open);
    this.open = true;
  }
  close(value) {
    this.open = false;
    this.returnValue = value;
    setTimeout(() => this.dispatchEvent(new Event("close")), 0);
  }
}
const parts = {
  canvas: { focus() {} }, "dialog-picture": new Dialog(), "dialog-picture-file": {}, "dialog-save": new Dialog(),
  "dialog-save-about": {}, "dialog-save-file": { removeAttribute() {} }, "dialog-save-system": {},
};
globalThis.document = {
  getElementById: (id) => parts[id],
  createElement: () => ({
    getContext: () => ({ fillRect() {}, drawImage() {}, getImageData: () => ({ data: "pixels" }) }),
    toBlob: (take) => setTimeout(() => take(parts.blob), 0),
  }),
};

test("a dialog that is asked anew while it is open answers nothing to who asked first, and waits for the second", async () => {
  const { ask } = await pageModule("dialogs.js");
  const dialog = new Dialog();
  const first = ask(dialog);
  let answer;
  const second = ask(dialog).then((value) => (answer = value));
  assert.equal(await first, "");
  await wait(5);
  assert.equal(answer, undefined);
  assert.ok(dialog.open);
  dialog.close("ok");
  assert.equal(await second, "ok");
});

async function takePicture({ blob = "picture", meanwhile = () => {} } = {}) {
  const { createPictures } = await pageModule("pictures.js");
  const told = [];
  let lure = "first";
  let drawn;
  globalThis.createImageBitmap = () => new Promise((resolve) => (drawn = () => resolve({ width: 2, height: 1, close() {} })));
  parts.blob = blob;
  const core = { showPicture: () => told.push("shown"), wake() {} };
  const pictures = createPictures({ core, lureId: () => lure, keepLure: () => told.push("lure kept"), onNotKept: () => told.push("not kept") });
  pictures.choose();
  parts["dialog-picture-file"].files = ["file"];
  parts["dialog-picture-file"].onchange();
  meanwhile((id) => (lure = id));
  drawn();
  await wait(20);
  return told;
}

test("a picture is laid behind the lure it was chosen for, and behind no other that has come in the meantime", async () => {
  assert.deepEqual(await takePicture(), ["lure kept", "shown"]);
  assert.deepEqual(await takePicture({ meanwhile: (put) => put("second") }), []);
});

test("a picture that the browser cannot put into a file is shown, and told as not kept", async () => {
  assert.deepEqual(await takePicture({ blob: null }), ["lure kept", "not kept", "shown"]);
});

test("the dialog of a file closes once it is saved, and says whether it was", async () => {
  const { saveDialog } = await pageModule("files.js");
  Object.defineProperty(globalThis, "navigator", { value: {}, configurable: true });
  const { setTimeout: later } = globalThis;
  globalThis.setTimeout = (act, ms) => (ms > 1000 ? later(act, ms).unref() : later(act, ms)); // an address is let go late
  const given = saveDialog("lure.json", "{}", "lure");
  parts["dialog-save-file"].onclick();
  assert.equal(await given, true);
  assert.ok(!parts["dialog-save"].open);
  const left = saveDialog("lure.json", "{}", "lure");
  parts["dialog-save"].close("close");
  assert.equal(await left, false);
  globalThis.setTimeout = later;
});

test("a figure that rounds to nothing has no sign", async () => {
  const { figure } = await pageModule("report.js");
  const read = (value) => figure(value).replace(",", ".");
  assert.deepEqual([-0.001, 0.001, -0.006, -10, 0].map(read), ["0.00", "0.00", "−0.01", "−10.00", "0.00"]);
});

test("a save that was downloaded opens as the lure in it, be it a session or the record that the device had", async () => {
  const { documentOf } = await pageModule("files.js");
  const session = '{"session": 1, "document": {"name": "Mine"}}';
  for (const text of [session, JSON.stringify({ rev: 3, session, crc: 0 })]) assert.equal(documentOf(text), '{"name":"Mine"}');
  for (const text of ['{"name": "Mine"}', "null", "noise", '{"session": "noise"}', '{"session": 1}']) assert.equal(documentOf(text), null);
});

test("the file of a drawer is told from the file of a lure", async () => {
  const { isDrawer } = await pageModule("files.js");
  assert.ok(isDrawer('{ "evenfall_drawer": 1 }'));
  assert.ok(!isDrawer('{ "name": "evenfall_drawer" }'));
});
