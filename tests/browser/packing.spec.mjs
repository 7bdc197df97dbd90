// The compiled code as the page unpacks it. No browser is needed.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { pageDir } from "./support/settings.mjs";

const built = join(pageDir, "..", "web");
const module = readFileSync(join(built, "evenfall.wasm"));
const packed = readFileSync(join(pageDir, "evenfall.wasm.packed"));

/** Packed bytes -> what the unpacker makes of them, or null. */
async function unpacked(bytes) {
  const { instance } = await WebAssembly.instantiate(readFileSync(join(built, "evenfall_unpack.wasm")));
  const { memory, room, unpack, size } = instance.exports;
  const place = room(bytes.length);
  new Uint8Array(memory.buffer).set(bytes, place);
  const made = unpack(place, bytes.length);
  return made === 0 ? null : Buffer.from(memory.buffer, made, size());
}

test("the packed code unpacks to the module that was built, byte for byte", async () => {
  const made = await unpacked(packed);
  assert.ok(made !== null && made.equals(module), "the module came back otherwise");
});

test("cut or damaged code never passes for the module", async () => {
  // The last bytes of both packings only empty the coder: without them, or with others, all that was packed may still come back.
  const last = packed.length - 16;
  // Twelve bytes for each of the coded streams; one of them told longer than it is comes back as it was, with bytes that nobody asks for.
  const front = 12 * 21;
  for (const length of [0, 5, front, front + 13, front + 14, 1000, packed.length >> 1, last]) {
    const made = await unpacked(packed.subarray(0, length));
    assert.ok(made === null || !made.equals(module), `cut to ${length} bytes`);
  }
  for (let k = 0; k < 24; k++) {
    const hurt = Buffer.from(packed);
    const at = front + Math.floor((k * (last - front)) / 23);
    hurt[at] ^= 1 << k % 8;
    // Either the unpacker says so, or it stops, or what it makes is no longer the module and the browser refuses it.
    const made = await unpacked(hurt).catch((error) => {
      assert.ok(error instanceof WebAssembly.RuntimeError, String(error));
      return null;
    });
    assert.ok(made === null || !made.equals(module), `a bit of byte ${at} changed nothing`);
  }
});
