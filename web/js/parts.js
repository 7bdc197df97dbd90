// Data that the build has put into index.html itself, beside the page's files.

const held = (id) => document.getElementById(id)?.textContent ?? "";

/** The demo lures that come with the page, as {name, text}; the name is the file name without extension. */
export function presets() {
  return Object.entries(JSON.parse(held("presets"))).map(([name, text]) => ({ name, text }));
}

/** True for the one-file page, which opens from a disk. */
export const isOneFile = () => document.getElementById("compiled-code") !== null;

/** The gzipped compiled code that such a page carries along. */
export const carriedCode = () => Uint8Array.from(atob(held("compiled-code")), (sign) => sign.charCodeAt(0));

/** The project's own licence and the terms of the works of others in the page; "" where they cannot be read. */
export async function terms() {
  if (isOneFile()) return held("terms");
  try {
    return await (await fetch("licences.txt")).text();
  } catch {
    return "";
  }
}
