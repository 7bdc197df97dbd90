// Lures as files, and names through the page's own text dialog.

import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, workshop } from "./support/bench.mjs";
import { presets } from "./support/program.mjs";
import { warmWater, names } from "./support/ways.mjs";

const shop = await workshop();

async function choose(bench, file) {
  await bench.open("file");
  const [chooser] = await Promise.all([
    bench.page.waitForEvent("filechooser"),
    bench.page.getByText("Choose a file").tap(),
  ]);
  await chooser.setFiles(file);
}

test("a saved file opens again as the same lure", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  await warmWater(bench);
  const saved = await bench.document();
  await bench.open("save");
  await bench.page.locator("#dialog-save-file").waitFor();
  const arrives = bench.page.waitForEvent("download");
  await bench.page.locator("#dialog-save-file").tap();
  const file = await arrives;
  assert.match(file.suggestedFilename(), /\.json$/);
  const path = await file.path();
  await bench.page.locator("#dialog-save").waitFor({ state: "hidden" }); // saving closes it
  await bench.open("undo");
  await choose(bench, path);
  await bench.settled();
  assert.deepEqual(await bench.document(), saved);
  await device.close();
});

for (const preset of presets) {
  test(`${preset.split("/").at(-1)} opens as a file`, async () => {
    const device = await shop.device();
    const bench = await shop.open(device);
    await choose(bench, preset);
    await bench.page.waitForFunction(() => !document.getElementById("dialog-open").open);
    await bench.settled();
    assert.match(preset, new RegExp((await bench.document()).name.split(" ")[0].toLowerCase()));
    bench.noFaults();
    await device.close();
  });
}

test("a file that is no lure says so and changes nothing", async () => {
  const device = await shop.device();
  const bench = await shop.open(device);
  const before = await bench.document();
  for (const [name, text, says] of [["noise.json", "not a lure", /./], ["large.json", " ".repeat(300_000), /256 kB/]]) {
    await choose(bench, { name, mimeType: "application/json", buffer: Buffer.from(text) });
    const said = bench.page.locator("#dialog-message-text");
    await said.waitFor();
    assert.match(await said.textContent(), says);
    await bench.page.getByRole("button", { name: "Understood" }).tap();
    assert.deepEqual(await bench.document(), before);
  }
  await device.close();
});

test("a name is typed into a real field, on a phone too, and Enter or Done takes it", async () => {
  const device = await shop.device({ size: sizes.phone });
  const bench = await shop.open(device);
  await names(bench, "Weir runner 9");
  assert.equal((await bench.document()).name, "Weir runner 9");
  await bench.open("name");
  await bench.shot("dialog-text-phone");
  await bench.page.locator("#dialog-text-input").fill("Weir runner 10");
  await bench.page.keyboard.press("Enter");
  await bench.settled();
  assert.equal((await bench.document()).name, "Weir runner 10");
  await bench.open("name");
  await bench.page.locator("#dialog-text-input").fill("no");
  await bench.page.keyboard.press("Escape");
  await bench.settled();
  assert.equal((await bench.document()).name, "Weir runner 10");
  await device.close();
});
