// A small server for the page alone, on its own port, that can be stopped while the page is open.

import { createHash } from "node:crypto";
import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";

const types = {
  ".css": "text/css; charset=utf-8", ".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8",
  ".json": "application/json", ".png": "image/png", ".svg": "image/svg+xml", ".txt": "text/plain; charset=utf-8",
  ".webmanifest": "application/manifest+json",
};

const hashList = /(?<=^const files = ).*?(?=;)/m;

/** Name → SHA-256 of the files of an assembled page, as its worker names them. */
export const hashesIn = (folder) => JSON.parse(hashList.exec(readFileSync(join(folder, "service-worker.js"), "utf8"))[0]);

/** Makes the folder `next` another build of the page in `folder`, with a script of its own; returns the build it is made from. */
export function nextBuild(folder, next) {
  cpSync(folder, next, { recursive: true });
  const build = /name="evenfall-build" content="([^"]+)"/.exec(readFileSync(join(folder, "index.html"), "utf8"))[1];
  const change = (name, to) => writeFileSync(join(next, name), to(readFileSync(join(next, name), "utf8")));
  change("index.html", (text) => text.replaceAll(build, "next-build"));
  change("evenfall.js", (text) => `${text}globalThis.isNextBuild = true;\n`);
  const hashOf = (name) => createHash("sha256").update(readFileSync(join(next, name))).digest("hex");
  change("service-worker.js", (text) => text.replaceAll(build, "next-build")
    .replace(hashList, (list) => JSON.stringify(Object.fromEntries(Object.keys(JSON.parse(list)).map((name) => [name, hashOf(name)])))));
  return build;
}

/**
 * Serves `folder` under /bench/, like a project page below a host. `modules` is the folder of the page's own modules,
 * which the build bundles; tests of single modules find them under /bench/js/.
 */
export async function serve(folder, modules) {
  let current = folder;
  let hosted = (name, answer) => answer;
  const server = createServer(async (request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url, "http://page").pathname));
    const name = path === "/bench/" ? "index.html" : path.replace(/^\/bench\//, "");
    const place = modules && name.startsWith("js/") ? join(modules, "..") : current;
    try {
      const type = types[extname(name)] ?? "application/octet-stream";
      const { headers, body } = hosted(name, { headers: { "content-type": type, "cache-control": "no-cache" }, body: await readFile(join(place, name)) });
      response.writeHead(200, headers);
      response.end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  const origin = `http://127.0.0.1:${server.address().port}`;
  return {
    origin,
    address: `${origin}/bench/`,
    /** Serves another build at the same address. */
    swap(other) {
      current = other;
    },
    /** Another way of hosting: `way` is given each file's name and {headers, body}, and gives what is sent; what it throws is a 404. */
    hostBy(way) {
      hosted = way;
    },
    stop() {
      server.closeAllConnections();
      return new Promise((resolve) => server.close(resolve));
    },
  };
}
