# Sourced by the scripts: names of folders, plain messages, and installing what is missing. Expects: root = the top
# of the project.

cache="${EVENFALL_CACHE:-${XDG_CACHE_HOME:-$HOME/.cache}/evenfall}"

# Use the distribution's own tools even where others with the same name are first in PATH.
export EMSDK_PYTHON=/usr/bin/python3
# Emscripten's optimiser needs Node modules that the distribution keeps here. Said before it is installed: a Node
# from elsewhere would not find them.
export NODE_PATH="/usr/share/nodejs${NODE_PATH:+:$NODE_PATH}"
export CCACHE_DIR="${CCACHE_DIR:-$cache/ccache}"
export CCACHE_NOHASHDIR=1
export CCACHE_BASEDIR="$root"

# Packages needed to build the page. An entry "command:package" is satisfied by that command, from any source.
# Emscripten itself is installed by web/setup/emscripten.sh.
page_packages=(node:nodejs cmake:cmake ninja:ninja-build ccache esbuild python3 python3-fonttools dpkg-dev
    debian-archive-keyring)

jobs="${EVENFALL_JOBS:-$(nproc)}"

say() { printf '%s\n' "$*" >&2; } # progress; only results go to standard output
die() { printf '\nevenfall: %s\n' "$*" >&2; exit 1; }

# install_packages NAME... : installs the distribution packages that are missing; quick when there are none.
install_packages() {
    local wanted=() missing=() entry package
    for entry in "$@"; do
        case "$entry" in
            *:*) command -v "${entry%%:*}" >/dev/null 2>&1 || missing+=("${entry#*:}") ;;
            *) wanted+=("$entry") ;;
        esac
    done
    if [ ${#wanted[@]} -gt 0 ]; then
        local installed
        installed="$(dpkg-query -W -f='${db:Status-Abbrev} ${Package}\n' "${wanted[@]}" 2>/dev/null |
            awk '$1 == "ii" { print $2 }')" || true
        for package in "${wanted[@]}"; do
            grep -qxF "$package" <<<"$installed" || missing+=("$package")
        done
    fi
    [ ${#missing[@]} -eq 0 ] && return 0

    command -v apt-get >/dev/null 2>&1 ||
        die "these are missing: ${missing[*]} – and this machine has no apt-get to install them with."
    local as_root=()
    if [ "$(id -u)" -ne 0 ]; then
        if command -v sudo >/dev/null 2>&1 && { sudo -n true 2>/dev/null || [ -t 0 ]; }; then
            as_root=(sudo)
        else
            die "these packages are missing: ${missing[*]}
Installing them needs root. Run as root, or have this done once:
    apt-get install --no-install-recommends ${missing[*]}"
        fi
    fi
    say "Installing: ${missing[*]}"
    local log="$cache/log/install.log"
    mkdir -p "$cache/log"
    "${as_root[@]}" apt-get -q update >"$log" 2>&1 || { cat "$log" >&2; die "apt-get update failed."; }
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -q install -y --no-install-recommends "${missing[@]}" \
        >>"$log" 2>&1 </dev/null || { tail -n 30 "$log" >&2; die "these packages could not be installed: ${missing[*]}"; }
}
