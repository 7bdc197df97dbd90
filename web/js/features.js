// Features that the page requires.

/** "" where nothing is missing; otherwise the key of the sentence (words.stop) that names it. */
export function lacking() {
  if (typeof WebAssembly !== "object") return "wasm";
  const trial = document.createElement("canvas").getContext("webgl2");
  if (!trial) return "webgl";
  // Devices allow few drawing contexts at a time; release this one.
  trial.getExtension("WEBGL_lose_context")?.loseContext();
  return "";
}
