// What the page cannot do without.

/** "" when all is there; otherwise the key of the sentence (words.stop) that says what is missing. */
export function lacking() {
  if (typeof WebAssembly !== "object") return "wasm";
  const trial = document.createElement("canvas").getContext("webgl2");
  if (!trial) return "webgl";
  // Devices allow few drawing surfaces at a time; give this one back.
  trial.getExtension("WEBGL_lose_context")?.loseContext();
  return "";
}
