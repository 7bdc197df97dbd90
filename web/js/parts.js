// What the build has put into index.html itself, beside the page's files.

const held = (id) => document.getElementById(id)?.textContent ?? "";

/** The demo lures that come with the page, as {name, text}; the name is the file's own without its ending. */
export function presets() {
  return Object.entries(JSON.parse(held("presets"))).map(([name, text]) => ({ name, text }));
}

/** Is this the page that is one file and opens from a disk? */
export const isOneFile = () => document.getElementById("compiled-code") !== null;

/** The compiled code where the page carries it along (gzipped, base64); undefined where it is a file of its own. */
export async function compiledCode() {
  if (!isOneFile()) return undefined;
  const packed = Uint8Array.from(atob(held("compiled-code").trim()), (sign) => sign.charCodeAt(0));
  const plain = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Uint8Array(await new Response(plain).arrayBuffer());
}
