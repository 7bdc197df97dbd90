// Data that the build has put into index.html itself, beside the page's files.

const held = (id) => document.getElementById(id)?.textContent ?? "";

/** The demo lures that come with the page, as {name, text}; the name is the file name without extension. */
export function presets() {
  return Object.entries(JSON.parse(held("presets"))).map(([name, text]) => ({ name, text }));
}

/** True for the one-file page, which opens from a disk. */
export const isOneFile = () => document.getElementById("compiled-code") !== null;

/** The compiled code as it was packed; a file of its own beside the page, or carried along by a page that is one file. */
export async function packedCode() {
  if (isOneFile()) return Uint8Array.from(atob(held("compiled-code").trim()), (sign) => sign.charCodeAt(0));
  const answer = await fetch(new URL("evenfall.wasm.packed", document.baseURI));
  if (!answer.ok) throw new Error(`evenfall.wasm.packed: ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}
