#!/bin/bash
# Downloads the pinned outside sources (web/setup/pins.txt) into the cache and writes the CMake initial-cache file
# that names them. Uses the network only for what is not cached yet, and never the machine's own apt lists: it has
# its own lists and state. Prints the path of the initial-cache file on standard output, and progress on standard
# error.
#
#   web/setup/fetch.sh            fetch what is missing
#
#   EVENFALL_CACHE          the cache folder (default ~/.cache/evenfall)
#   EVENFALL_DEBIAN_MIRROR  the archive to use (default: the one in the machine's own apt sources)
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)"
. "$root/web/setup/common.sh"
. "$root/web/setup/archive.sh"

pins="$root/web/setup/pins.txt"

# One pin per line as "line-number kind name version suite".
list_pins() { awk '!/^[[:space:]]*(#|$)/ { print NR, $1, $2, $3, $4 }' "$pins"; }

folder_of() { printf '%s/sources/%s_%s' "$cache" "$1" "$(tr ':+~' '___' <<<"$2")"; }

# Names the line of the pins to change when the pinned version is no longer in its suite.
explain_missing() {
    local line="$1" kind="$2" name="$3" version="$4" suite="$5" held
    local type='Packages'
    case "$kind" in source | upstream) type='Sources' ;; esac
    held="$(private_apt apt-cache madison "$name" 2>/dev/null |
        awk -F' *[|] *' -v suite="$suite" -v type="$type" '$3 ~ (suite "/main") && $3 ~ type { print $2 }' |
        sort -u | paste -sd' ')" || true
    case " $held " in
        *" $version "*) die "$name $version is in the suite \"$suite\", but the archive did not hand it over (see above).
Try again later, or set EVENFALL_DEBIAN_MIRROR to another archive, or change line $line of web/setup/pins.txt." ;;
    esac
    die "$name $version is not in the suite \"$suite\" any more (the suite holds: ${held:-nothing of that name}).
Change line $line of web/setup/pins.txt to a version that is there, then run this again."
}

fetch_one() {
    local line="$1" kind="$2" name="$3" version="$4" suite="$5"
    local target work log
    target="$(folder_of "$name" "$version")"
    log="$cache/log/$name.log"
    work="$(mktemp -d "$cache/work.XXXXXX")"
    say "Fetching $name $version"
    if [ "$kind" = source ]; then
        (cd "$work" && private_apt apt-get source --download-only "$name=$version") >"$log" 2>&1 ||
            { rm -rf "$work"; tail -n 4 "$log" >&2; explain_missing "$@"; }
        (cd "$work" && dpkg-source --no-check -x ./*.dsc tree) >>"$log" 2>&1 ||
            { tail -n 8 "$log" >&2; die "$name could not be unpacked."; }
    elif [ "$kind" = upstream ]; then
        (cd "$work" && private_apt apt-get source --download-only --tar-only "$name=$version") >"$log" 2>&1 ||
            { rm -rf "$work"; tail -n 4 "$log" >&2; explain_missing "$@"; }
        (cd "$work" && mkdir tree && tar -xf ./*.orig.tar.* -C tree --strip-components 1) >>"$log" 2>&1 ||
            { tail -n 8 "$log" >&2; die "$name could not be unpacked."; }
    else
        (cd "$work" && private_apt apt-get download "$name=$version") >"$log" 2>&1 ||
            { rm -rf "$work"; tail -n 4 "$log" >&2; explain_missing "$@"; }
        (cd "$work" && dpkg-deb -x ./*.deb tree) >>"$log" 2>&1 ||
            { tail -n 8 "$log" >&2; die "$name could not be unpacked."; }
    fi
    mkdir -p "$cache/sources"
    rm -rf "$target"
    # Moved into place only when complete, so that an interrupted run leaves nothing unfinished.
    mv "$work/tree" "$target"
    rm -rf "$work"
}

mkdir -p "$cache/log"
exec 9>"$cache/lock"
flock 9

ready=0
while read -r line kind name version suite; do
    [ -n "$suite" ] || die "line $line of web/setup/pins.txt wants four words: kind, name, version, suite."
    case "$kind" in source | upstream | headers | font) ;; *)
        die "line $line of web/setup/pins.txt: the kind \"$kind\" is none of source, upstream, headers, font." ;;
    esac
    [ -d "$(folder_of "$name" "$version")" ] && continue
    if [ "$ready" = 0 ]; then
        rm -rf "$cache"/work.*
        read_lists $(list_pins | awk '{ print $5 }' | sort -u)
        ready=1
    fi
    fetch_one "$line" "$kind" "$name" "$version" "$suite"
done < <(list_pins)

# The rest depends only on the pins and on these scripts.
key="$(cat "$pins" "$root/web/setup/fetch.sh" "$root/web/setup/terms.py" | sha256sum | cut -c1-16)"
bundle="$cache/bundle-$key"
if [ ! -f "$bundle/evenfall.cmake" ]; then
    work="$(mktemp -d "$cache/work.XXXXXX")"
    chmod 755 "$work"
    mkdir -p "$work/include"
    declare -A where=()
    {
        echo "Evenfall is built with the following works of others; their terms follow, as their packages state them."
        while read -r line kind name version suite; do
            folder="$(folder_of "$name" "$version")"
            where[$name]="$folder"
            if [ "$kind" = headers ]; then
                # Links instead of copies: one header folder for every build, with nothing else of /usr/include in
                # it.
                for entry in "$folder"/usr/include/*; do ln -s "$entry" "$work/include/"; done
            fi
            case "$name" in
                catch2) continue ;;           # only used by the tests, never part of a program
                libboost*-dev) continue ;;    # its licence requires no notice beside compiled code
                libstb-dev) continue ;;       # decodes pictures in the program; the page's browser does it there
            esac
            terms="$folder/debian/copyright"
            [ -f "$terms" ] || [ "$kind" = upstream ] || terms="$(find "$folder/usr/share/doc" -name copyright | head -n 1)"
            # The files that are part of the page, so that the terms of tests and other systems are left out.
            case "$name" in
                zlib) used=(inflate.c) ;;
                libsdl2) used=(src/ src/{atomic,cpuinfo,dynapi,events,joystick,libm,locale,misc,stdlib,thread,timer,video}/
                    src/render/SDL_render.c src/video/{yuv2rgb,emscripten,khronos}/ include/SDL.h include/SDL_egl.h include/SDL_opengles2_gl2.h) ;;
                imgui) used=(imgui.cpp imstb_truetype.h) ;;
                nlohmann-json3-dev) used=(include/nlohmann/json.hpp) ;;
                libeigen3-dev) used=(Eigen/Core) ;;
                *) used=() ;;
            esac
            printf '\n\n==== %s %s ====\n\n' "$name" "$version"
            if [ "$kind" = upstream ]; then
                sed '/\*\//q' "$folder/c/qrcodegen.h" # the notice at the head of a source file
                continue
            fi
            /usr/bin/python3 "$root/web/setup/terms.py" "$terms" ${used[@]+"${used[@]}"}
        done < <(list_pins)
    } >"$work/licences.txt"
    fonts="$(find "${where[fonts-adobe-sourcesans3]}/usr/share/fonts" -name '*-Regular.otf' -printf '%h\n' | head -n 1)"
    {
        echo "# Written by web/setup/fetch.sh; hand it to CMake with -C."
        define() { printf 'set(%s "%s" CACHE PATH "%s")\n' "$@"; }
        define EVENFALL_ZLIB_SOURCE "${where[zlib]}" "zlib source folder"
        define EVENFALL_QR_SOURCE "${where[qr-code-generator]}" "QR code generator source folder"
        define EVENFALL_SDL2_SOURCE "${where[libsdl2]}" "SDL2 source folder"
        define EVENFALL_IMGUI_SOURCE "${where[imgui]}" "Dear ImGui source folder"
        define EVENFALL_CATCH2_SOURCE "${where[catch2]}" "Catch2 source folder"
        define EVENFALL_HEADERS "$bundle/include" "folder of the header-only libraries"
        define EVENFALL_FONTS "$fonts" "folder of the font files"
        define EVENFALL_LICENCES "$bundle/licences.txt" "terms of the works that go into the page"
    } >"$work/evenfall.cmake"
    rm -rf "$bundle"
    mv "$work" "$bundle"
fi
printf '%s\n' "$bundle/evenfall.cmake"
