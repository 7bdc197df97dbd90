// The builder's own pieces: laid in by touch, kept on the device beside the lures, put on another one, handed out as a file.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";
import { workshop } from "./support/bench.mjs";
import { openPreset } from "./support/ways.mjs";

const shop = await workshop();

test("a hook is laid into the drawer, is there after a reload, and is put on another lure", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const { parts } = await bench.document();
  const index = parts.findIndex((part) => part.stage === "rigged");
  await bench.tap("step.hardware");
  await bench.tap(`hardware.${index}`);
  await bench.tap(`hardware.${index}.drawer`);
  await bench.tap("drawer.0");
  await bench.enter("drawer.0.mass", "1.83");
  await bench.tap("drawer.add.wire");
  await bench.enter("drawer.1.diameter", "0.8");
  await bench.shot("drawer");
  await bench.page.waitForFunction(() => localStorage.getItem("evenfall.drawer")?.includes("0.8"));

  await bench.page.reload();
  await bench.ready();
  await openPreset(bench, "reedline-120");
  const before = await bench.document();
  await bench.tap("step.hardware");
  await bench.tap("drawer.0");
  await bench.tap("drawer.0.put_on");
  const after = await bench.document();
  assert.equal(after.parts.length, before.parts.length + 1);
  assert.equal(after.parts.at(-1).name, parts[index].name);
  assert.equal(after.parts.at(-1).mass_g, 1.83);
  bench.noFaults();
  await device.close();
});

test("a piece that another tab lays into the drawer lies in it here too, and is written over by none of this one's", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.hardware");
  await bench.openSectionOf("drawer.add.stock");
  const other = await device.newPage();
  await other.goto(`${shop.server.address}js/store.js`); // any page of the same place
  await other.evaluate(() => localStorage.setItem("evenfall.drawer", JSON.stringify({
    evenfall_drawer: 1, things: [{ kind: "wire", name: "Theirs", diameter_mm: 0.8, temper: "soft" }],
  })));
  await bench.page.bringToFront();
  await bench.page.waitForFunction(() => JSON.parse(globalThis.EvenfallHooks.itemsJson()).some(({ id }) => id === "drawer.0"));
  await bench.tap("drawer.add.stock");
  const things = () => bench.page.evaluate(() => JSON.parse(localStorage.getItem("evenfall.drawer")).things);
  assert.equal((await things()).length, 2);
  assert.equal((await things())[0].name, "Theirs");
  await device.close();
});

test("a drawer travels as a file, and a wrong one says which field is wrong and changes nothing", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await bench.tap("step.hardware");
  await bench.tap("drawer.add.stock");
  await bench.tap("drawer.save");
  const [download] = await Promise.all([bench.page.waitForEvent("download"), bench.page.locator("#dialog-save-file").tap()]);
  const text = await readFile(await download.path(), "utf8");
  assert.equal(JSON.parse(text).evenfall_drawer, 1);
  await bench.page.locator("#dialog-save").waitFor({ state: "hidden" }); // saving closes it

  const other = await shop.device();
  const there = await shop.open(other);
  const lure = await there.document();
  await there.tap("step.hardware");
  const load = async (content) => {
    await there.tap("drawer.load");
    await there.page.locator("#dialog-open-file").setInputFiles({ name: "d.json", mimeType: "application/json", buffer: Buffer.from(content) });
    await there.settled();
  };
  await load(text.replace(/"diameter_mm": [\d.]+/, '"diameter_mm": 4000'));
  await there.page.getByText("diameter_mm").first().waitFor();
  assert.equal(await there.find("drawer.0"), undefined);
  await there.page.keyboard.press("Escape");
  await load(text);
  assert.ok(await there.find("drawer.0"));
  assert.deepEqual(await there.document(), lure);
  await other.close();
  await device.close();
});
