// Brings the compiled code in: gzipped and inflated here, so that any host will do; or, where that fails, as the plain file,
// which many hosts encode by themselves.

import { carriedCode, isOneFile } from "./parts.js";

async function fetched(name) {
  const answer = await fetch(new URL(name, document.baseURI));
  if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
  return answer;
}

async function inflated() {
  const { body, headers } = isOneFile() ? new Response(carriedCode()) : await fetched("evenfall.wasm.gz");
  // A host that calls the file's content encoded has the browser inflate it.
  return headers.has("content-encoding") ? body : body.pipeThrough(new DecompressionStream("gzip"));
}

// Compiled while it arrives. That takes the right content type, which not every host knows.
const instantiated = (body, imports) =>
  WebAssembly.instantiateStreaming(new Response(body, { headers: { "content-type": "application/wasm" } }), imports);

/** {instance, module} of the compiled code, with `imports` linked in. */
export async function instantiate(imports) {
  try {
    return await instantiated(await inflated(), imports);
  } catch (problem) {
    if (isOneFile()) throw problem;
    return instantiated((await fetched("evenfall.wasm")).body, imports);
  }
}
