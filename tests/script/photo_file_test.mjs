// Photos in the file of everything: put behind what the bench wrote, and taken off again.

import assert from "node:assert/strict";
import { test } from "node:test";
import { pageModule } from "./support/page_modules.mjs";

const { withPhotos, withoutPhotos, jpegFrom } = await pageModule("photo_file.js");
const bench = '{"evenfall_everything": 1,\n"lures": []}\n';
const entry = { lure: "far", time: 5, text: "Pike, “72 cm”\nslow", blob: null };

test("entries come off as they were put on, and the bench reads what it wrote", async () => {
  const whole = await (await withPhotos(bench, [entry, { ...entry, lure: "" }])).text();
  const { file, photos } = withoutPhotos(whole);
  assert.deepEqual(JSON.parse(file), JSON.parse(bench));
  assert.deepEqual(photos.map(({ lure, time, text, jpeg }) => [lure, time, text, jpeg]),
    [["far", 5, entry.text, null], ["", 5, entry.text, null]]);
  assert.equal(await withPhotos(bench, []), bench);
  assert.deepEqual(withoutPhotos(bench), { file: bench, photos: [] });
});

test("what is no photo is left for the bench to refuse, the whole file with it", () => {
  const good = { lure: "far", time: 5, text: "", jpeg: null };
  const bad = [3, null, { ...good, lure: 3 }, { ...good, time: -1 }, { ...good, time: 1e300 }, { ...good, time: "5" },
    { ...good, text: "x".repeat(401) }, { ...good, text: null }, { ...good, jpeg: 7 }];
  for (const one of bad) {
    const text = JSON.stringify({ evenfall_everything: 1, photos: [good, one] });
    assert.deepEqual(withoutPhotos(text), { file: text, photos: [] }, JSON.stringify(one));
  }
  for (const text of ["", "{", '{"photos": 3}']) assert.deepEqual(withoutPhotos(text), { file: text, photos: [] });
});

test("a text that is no JPEG's is no photo", async () => {
  assert.deepEqual([...new Uint8Array(await jpegFrom(btoa("ab")).arrayBuffer())], [97, 98]);
  assert.equal(jpegFrom("§"), null);
});
