// Unpacks the compiled code by the small program of web/unpack.

import program from "evenfall-unpack"; // its bytes as the signs of a text, put here by the build

/** Packed bytes -> plain bytes. Throws where they are cut or damaged. */
export async function unpacked(packed) {
  const { instance } = await WebAssembly.instantiate(Uint8Array.from(program, (sign) => sign.charCodeAt(0)));
  const { memory, room, unpack, size } = instance.exports;
  const place = room(packed.length);
  if (place === 0) throw new Error("no memory to unpack into");
  new Uint8Array(memory.buffer).set(packed, place);
  const made = unpack(place, packed.length);
  if (made === 0) throw new Error("the packed code is damaged");
  return new Uint8Array(memory.buffer, made, size());
}
