#!/bin/bash
# Prints the folder of the Emscripten that builds the page, and installs one first where there is none:
#   1.  the one named by EVENFALL_EMSCRIPTEN, or whose em++ is in PATH: 3.1.6 or newer, except Debian 12's own;
#   2.  the distribution's package, on anything but Debian 12;
#   3.  on Debian 12, whose 3.1.6 makes a much slower page, Debian 13's: its packages are unpacked into the cache
#       and run there with their own libraries, by any user and without changing the system. Where that fails, 3.1.6
#       after all.
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)"
. "$root/web/setup/common.sh"
. "$root/web/setup/archive.sh"
package=/usr/share/emscripten
unpacked="$cache/emscripten-trixie"

on_debian_12() { [ "$(. /etc/os-release && echo "${ID:-} ${VERSION_ID:-}")" = "debian 12" ]; }

# Debian 13's Emscripten with all its dependencies, unpacked into the folder $unpacked.
unpack_it() {
    local work deb
    rm -rf "$cache"/work-emscripten.*
    work="$(mktemp -d "$cache/work-emscripten.XXXXXX")"
    mkdir -p "$work/debs/partial" "$work/tree/bin"
    # An empty list of installed packages makes apt download all dependencies.
    private_apt apt-get -o Dir::State::status=/dev/null -o "Dir::Cache::archives=$work/debs" -o Debug::NoLocking=true \
        -y --no-install-recommends --download-only -t trixie install emscripten || return 1
    for deb in "$work"/debs/*.deb; do # without a gigabyte of libraries for kinds of linking that are not used
        dpkg-deb --fsys-tarfile "$deb" | tar -x -C "$work/tree" --exclude='*/wasm32-emscripten/*lto*' \
            --exclude='*/wasm32-emscripten/pic' || return 1
    done
    cat >"$work/tree/bin/run" <<'RUN'
#!/bin/sh
# Runs Debian 13's program of the same name, with Debian 13's own libraries.
tree="$(dirname "$(dirname "$0")")"
name="$(basename "$0")"
program="$tree/usr/lib/llvm-19/bin/$name"
[ -e "$program" ] || program="$tree/usr/bin/$name"
# Otherwise the compiler would look for its headers beside the loader.
case "$name" in clang*) set -- -resource-dir "$tree/usr/lib/clang/19" "$@" ;; esac
for loader in "$tree"/usr/lib/*-linux-gnu/ld-linux-*; do
    exec "$loader" --argv0 "$program" --library-path "${loader%/*}" "$program" "$@"
done
RUN
    chmod 755 "$work" "$work/tree/bin/run"
    (cd "$work/tree/bin" && for name in ../usr/lib/llvm-19/bin/* ../usr/bin/wasm*; do ln -sf run "$(basename "$name")"; done)
    printf '%s\n' "LLVM_ROOT = '$unpacked/bin'" "BINARYEN_ROOT = '$unpacked'" "NODE_JS = 'node'" 'FROZEN_CACHE = True' \
        >"$work/tree$package/.emscripten"
    ln -s ../nodejs "$work/tree$package/node_modules"
    mv "$work/tree" "$unpacked"
    rm -rf "$work"
    echo 'int main() {}' >"$cache/log/empty.cpp"
    "$unpacked$package/em++" "$cache/log/empty.cpp" -o "$cache/log/empty.js"
}

chosen="${EVENFALL_EMSCRIPTEN:-}"
if [ -z "$chosen" ] && command -v em++ >/dev/null; then
    chosen="$(dirname "$(readlink -f "$(command -v em++)")")"
    if [ "$chosen" = "$package" ] && on_debian_12; then chosen=""; fi
fi
if [ -z "$chosen" ] && on_debian_12; then
    exec 9>"$cache/lock"
    flock 9
    chosen="$unpacked$package"
    if [ ! -d "$unpacked" ]; then
        say "Fetching Debian 13's Emscripten"
        (read_lists trixie) && unpack_it >"$cache/log/emscripten.log" 2>&1 || {
            rm -rf "$unpacked"
            say "Debian 13's Emscripten could not be fetched (why: $cache/log/emscripten.log). The page is built with Debian 12's,
and calculates more slowly. EVENFALL_EMSCRIPTEN=$package chooses that without trying."
            chosen=""
        }
    fi
fi
if [ -z "$chosen" ]; then
    install_packages emscripten
    chosen="$package"
fi

version="$(tr -d '"' <"$chosen/emscripten-version.txt" 2>/dev/null)" || die "$chosen is no folder of Emscripten."
[ "$(printf '%s\n' 3.1.6 "$version" | sort -V | head -n 1)" = 3.1.6 ] ||
    die "the Emscripten in $chosen is $version; the page wants 3.1.6 or newer."
printf '%s\n' "$chosen"
