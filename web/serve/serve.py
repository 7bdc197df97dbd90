#!/usr/bin/python3
"""Serves the folder of the page.

usage: serve.py FOLDER [--port N] [--lan]

On this machine alone; with --lan to every device in the same network as well. Only plain files inside the folder are
handed out. Every answer says "no-cache", so that the browser asks again and a new build is seen at the next load.
"""

import argparse
import errno
import functools
import http.server
import os
import re
import shutil
import socket
import stat
import subprocess
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

    def send_head(self):
        path = self.translate_path(self.path)
        if not self.is_ours(path):
            self.send_error(404)
            return None
        if os.path.isdir(path):
            return super().send_head()  # to its index.html
        span = self.asked_range(os.stat(path).st_size)
        return super().send_head() if span is None else self.send_part(path, *span)

    def is_ours(self, path):
        """A plain file or folder that lies in the served folder, symbolic links followed."""
        try:
            real = os.path.realpath(path, strict=True)
            kind = os.stat(path).st_mode
        except (OSError, ValueError):  # ValueError: a NUL within the path
            return False
        top = os.path.realpath(self.directory)
        return os.path.commonpath([top, real]) == top and (stat.S_ISREG(kind) or stat.S_ISDIR(kind))

    def asked_range(self, size):
        """First byte and length of the one range that was asked for; None for the whole file."""
        asked = re.fullmatch(r"bytes=(\d*)-(\d*)", self.headers.get("Range", "").strip())
        if asked is None or asked.groups() == ("", ""):
            return None
        first, last = asked.groups()
        if not first:
            first, last = max(0, size - int(last)), size - 1
        else:
            first, last = int(first), min(int(last), size - 1) if last else size - 1
        return first, last - first + 1

    def send_part(self, path, first, length):
        size = os.stat(path).st_size
        if first >= size or length <= 0:
            self.send_response(416)
            self.send_header("Content-Range", f"bytes */{size}")
            self.send_header("Content-Length", "0")
            self.end_headers()
            return None
        self.send_response(206)
        self.send_header("Content-Type", self.guess_type(path))
        self.send_header("Content-Range", f"bytes {first}-{first + length - 1}/{size}")
        self.send_header("Content-Length", str(length))
        self.end_headers()
        if self.command == "GET":
            with open(path, "rb") as file:
                file.seek(first)
                self.wfile.write(file.read(length))
        return None

    def end_headers(self):
        self.send_header("Accept-Ranges", "bytes")
        self.send_header("Cache-Control", "no-cache")
        self.send_header("X-Content-Type-Options", "nosniff")
        self.send_header("X-Frame-Options", "DENY")
        self.send_header("Content-Security-Policy", "frame-ancestors 'none'")
        super().end_headers()

    def list_directory(self, path):
        self.send_error(404)
        return None

    def log_message(self, format, *arguments):
        # A quiet terminal: only what went wrong is told.
        if len(arguments) > 1 and str(arguments[1])[:1] in "45":
            super().log_message(format, *arguments)


def address_in_the_network():
    """The address that other devices in the same network reach this machine by; None without a network."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))  # an address kept for examples: nothing is sent to it
            return probe.getsockname()[0]
        except OSError:
            return None


def tell_the_network(port):
    host = address_in_the_network()
    if host is None:
        print("No network was found: only this machine can open it.", flush=True)
        return
    address = f"http://{host}:{port}/"
    print(f"On a tablet in the same network: {address}", flush=True)
    if shutil.which("qrencode"):
        subprocess.run(["qrencode", "-t", "ANSIUTF8", "-m", "2", address], check=False)
    print("Without https a browser does not install the page, keep it for later without a network, or keep the\n"
          "screen on; everything else works. Everyone in this network can open it: end it when you are done.", flush=True)


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("folder")
    parser.add_argument("--port", type=int, default=8137)
    parser.add_argument("--lan", action="store_true", help="for every device in the same network")
    arguments = parser.parse_args()

    handler = functools.partial(Handler, directory=arguments.folder)
    try:
        server = http.server.ThreadingHTTPServer(("0.0.0.0" if arguments.lan else "127.0.0.1", arguments.port), handler)
    except OSError as error:
        if error.errno != errno.EADDRINUSE:
            raise
        sys.exit(f"evenfall: port {arguments.port} is taken; name another one with --port N")
    port = server.server_address[1]
    print(f"Evenfall is at http://127.0.0.1:{port}/  (Ctrl+C ends it)", flush=True)
    if arguments.lan:
        tell_the_network(port)
    try:
        server.serve_forever()
    except KeyboardInterrupt:
        pass


if __name__ == "__main__":
    main()
