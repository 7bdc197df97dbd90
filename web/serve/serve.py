#!/usr/bin/python3
"""Serves a folder on this machine alone.

usage: serve.py FOLDER [--port N]

Every answer says "no-cache", so that the browser asks again and a new build is seen at the next load.
"""

import argparse
import errno
import functools
import http.server
import sys

TYPES = {
    ".css": "text/css; charset=utf-8",
    ".gz": "application/gzip",
    ".html": "text/html; charset=utf-8",
    ".ico": "image/x-icon",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".mjs": "text/javascript; charset=utf-8",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".txt": "text/plain; charset=utf-8",
    ".wasm": "application/wasm",
    ".webmanifest": "application/manifest+json",
    ".woff2": "font/woff2",
}


class Handler(http.server.SimpleHTTPRequestHandler):
    extensions_map = {**TYPES, "": "application/octet-stream"}
    protocol_version = "HTTP/1.1"

    def end_headers(self):
        self.send_header("Cache-Control", "no-cache")
        self.send_header("X-Content-Type-Options", "nosniff")
        super().end_headers()

    def list_directory(self, path):
        self.send_error(404)
        return None

    def log_message(self, format, *arguments):
        # A quiet terminal: only what went wrong is told.
        if len(arguments) > 1 and str(arguments[1])[:1] in "45":
            super().log_message(format, *arguments)


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("folder")
    parser.add_argument("--port", type=int, default=8137)
    arguments = parser.parse_args()

    handler = functools.partial(Handler, directory=arguments.folder)
    try:
        server = http.server.ThreadingHTTPServer(("127.0.0.1", arguments.port), handler)
    except OSError as error:
        if error.errno != errno.EADDRINUSE:
            raise
        sys.exit(f"evenfall: port {arguments.port} is taken; name another one with --port N")
    print(f"Evenfall is at http://127.0.0.1:{server.server_address[1]}/  (Ctrl+C ends it)", flush=True)
    try:
        server.serve_forever()
    except KeyboardInterrupt:
        pass


if __name__ == "__main__":
    main()
