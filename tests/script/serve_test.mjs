// The script that serves the page: only plain files of its folder, whatever a request's path says.

import assert from "node:assert/strict";
import { execFileSync, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";

const source = process.env.EVENFALL_SOURCE;
const folder = mkdtempSync(join(tmpdir(), "evenfall-serve-"));
const page = join(folder, "page");
let server;
let port;

before(async () => {
  mkdirSync(join(page, "parts"), { recursive: true });
  writeFileSync(join(page, "index.html"), "the page");
  writeFileSync(join(page, "digits.txt"), "0123456789");
  writeFileSync(join(folder, "private.txt"), "not of the page");
  symlinkSync(join(folder, "private.txt"), join(page, "out.txt"));
  symlinkSync(folder, join(page, "up"));
  symlinkSync(join(page, "digits.txt"), join(page, "inside.txt"));
  execFileSync("mkfifo", [join(page, "waits.txt")]);
  server = spawn("/usr/bin/python3", [join(source, "web/serve/serve.py"), page, "--port", "0"]);
  port = await new Promise((resolve, reject) => {
    server.stdout.on("data", (said) => resolve(Number(/127\.0\.0\.1:(\d+)/.exec(said)?.[1])));
    server.on("exit", () => reject(new Error("the server ended")));
  });
});
after(() => {
  server.kill();
  rmSync(folder, { recursive: true });
});

/** Asks with the path as it is: fetch() would tidy it. */
function ask(path, headers = [], method = "GET") {
  return new Promise((resolve, reject) => {
    const line = connect(port, "127.0.0.1", () => {
      line.end([`${method} ${path} HTTP/1.1`, "Host: bench", "Connection: close", ...headers, "", ""].join("\r\n"));
    });
    let said = "";
    line.setEncoding("utf8").setTimeout(5000, () => reject(new Error(`no answer to ${path}`)));
    line.on("data", (more) => (said += more)).on("error", reject);
    line.on("close", () => {
      const [head, ...body] = said.split("\r\n\r\n");
      resolve({ status: Number(head.split(" ")[1]), head, body: body.join("\r\n\r\n") });
    });
  });
}

test("the page is handed out, asked for anew each time, and in no other page's frame", async () => {
  for (const path of ["/", "/index.html"]) {
    const answer = await ask(path);
    assert.equal(answer.status, 200);
    assert.equal(answer.body, "the page");
    assert.match(answer.head, /Cache-Control: no-cache/);
    assert.match(answer.head, /X-Frame-Options: DENY/);
    assert.match(answer.head, /Content-Security-Policy: frame-ancestors 'none'/);
  }
  assert.equal((await ask("/inside.txt")).body, "0123456789", "a link within the folder");
});

test("nothing outside the folder, no pipe, no listing, no broken path", async () => {
  for (const path of ["/out.txt", "/up/private.txt", "/../private.txt", "/%2e%2e/private.txt", "/waits.txt", "/parts/",
    "/nothing.txt", "/a%00b", "/digits.txt%00.html", "/digits.txt/"]) {
    const answer = await ask(path);
    assert.equal(answer.status, 404, path);
    assert.doesNotMatch(answer.body, /not of the page/);
  }
  assert.equal((await ask("/")).status, 200, "and it goes on serving");
});

test("a part of a file is handed out as asked (RFC 9110, section 14)", async () => {
  const part = async (range) => {
    const { status, head, body } = await ask("/digits.txt", [`Range: ${range}`]);
    return [status, body, /Content-Range: (.*)/.exec(head)?.[1].trim()];
  };
  assert.deepEqual(await part("bytes=2-4"), [206, "234", "bytes 2-4/10"]);
  assert.deepEqual(await part("bytes=7-"), [206, "789", "bytes 7-9/10"]);
  assert.deepEqual(await part("bytes=-3"), [206, "789", "bytes 7-9/10"]);
  assert.deepEqual(await part("bytes=8-99"), [206, "89", "bytes 8-9/10"]);
  assert.deepEqual(await part("bytes=10-"), [416, "", "bytes */10"]);
  assert.deepEqual(await part("bytes=0-1,4-5"), [200, "0123456789", undefined], "several ranges: the whole file");
  assert.deepEqual(await part("lines=0-1"), [200, "0123456789", undefined]);
  assert.equal((await ask("/digits.txt", ["Range: bytes=2-4"], "HEAD")).body, "");
});
