// Features that the page requires.

const emptyModule = Uint8Array.of(0, 0x61, 0x73, 0x6d, 1, 0, 0, 0);

/** "" where nothing is missing; otherwise the key of the sentence (words.stop) that names it. */
export function lacking() {
  // A host that cannot send a header can forbid frames by no other way: no stranger's page may lie over the bench.
  if (window.top !== window.self) return "framed";
  if (typeof WebAssembly !== "object") return "wasm";
  try {
    new WebAssembly.Module(emptyModule);
  } catch {
    return "blocked"; // by a policy
  }
  const trial = document.createElement("canvas").getContext("webgl2");
  if (!trial) return "webgl";
  // Devices allow few drawing contexts at a time; release this one.
  trial.getExtension("WEBGL_lose_context")?.loseContext();
  return "";
}
