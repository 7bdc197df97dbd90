#!/bin/bash
# Runs both commands of the README in an empty Debian, made for it by the distribution's bootstrap tool and removed afterwards:
# web/run.sh --build-only, then tests/run.sh, on a clean clone of what is committed. Wants root, and some gigabytes in /var/tmp.
#
#   tests/fresh.sh 12|13|both              both commands
#   tests/fresh.sh 12|13|both page         web/run.sh --build-only alone
#   tests/fresh.sh 12|13|both tests        tests/run.sh alone
#
# The last line for each release says what passed or failed and how long it took; the exit status is 0 when all passed.
# EVENFALL_DEBIAN_MIRROR  the archive to ask (default: the one the machine's own apt sources name)
# EVENFALL_JOBS           how many compilers and tests run at once (default: one for each processor)
# EVENFALL_FRESH_KEEP=1   leaves the roots there, for a look into them
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)"
. "$root/web/setup/common.sh"
. "$root/web/setup/archive.sh"

case "${1:-}" in
    12 | 13) releases=("$1") ;;
    both) releases=(12 13) ;;
    *) die "say which Debian: tests/fresh.sh 12, 13 or both." ;;
esac
case "${2:-}" in
    "") commands=("web/run.sh --build-only" tests/run.sh) ;;
    page) commands=("web/run.sh --build-only") ;;
    tests) commands=(tests/run.sh) ;;
    *) die "unknown word \"$2\"; known are page and tests." ;;
esac
[ "$(id -u)" -eq 0 ] || die "tests/fresh.sh wants root, to make an empty Debian and to change into it."
install_packages mmdebstrap git:git ca-certificates
mirror="$(mirror_candidates | head -n 1)"
[ -n "$mirror" ] || die "no Debian archive is named in this machine's apt sources; set EVENFALL_DEBIAN_MIRROR."

# enter FOLDER COMMAND: runs it there, with processes and mounts of its own that are gone when it ends.
enter() {
    unshare --mount --pid --fork --kill-child bash -euc '
        mount -t proc proc "$1/proc"
        mount --rbind /dev "$1/dev"
        mount --rbind /sys "$1/sys"
        exec chroot "$1" env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin HOME=/root LANG=C.UTF-8 \
            NODE_EXTRA_CA_CERTS=/etc/machine-certificates.crt ${2:+"EVENFALL_JOBS=$2"} \
            sh -c "cd /evenfall && $3" </dev/null' enter "$1" "${EVENFALL_JOBS:-}" "$2"
}

status=0
for release in "${releases[@]}"; do
    case "$release" in 12) suite=bookworm ;; 13) suite=trixie ;; esac
    folder="$(mktemp -d "/var/tmp/evenfall-debian-$release.XXXXXX")"
    [ -n "${EVENFALL_FRESH_KEEP:-}" ] || trap 'rm -rf --one-file-system "$folder"' EXIT
    say "Debian $release in $folder"
    mmdebstrap --quiet --mode=root --variant=apt "$suite" "$folder" "$mirror" || die "Debian $release could not be made."
    cp /etc/hosts "$folder/etc/hosts"
    # npm goes by the certificates that this machine trusts: its way out may have one of its own.
    cp /etc/ssl/certs/ca-certificates.crt "$folder/etc/machine-certificates.crt"
    git clone -q "$root" "$folder/evenfall"
    report="Debian $release:"
    for command in "${commands[@]}"; do
        say "--- Debian $release: $command"
        begun=$SECONDS
        if enter "$folder" "$command"; then word=passed; else word=FAILED; status=1; fi
        report+=" $command $word after $((SECONDS - begun)) s;"
    done
    [ -n "${EVENFALL_FRESH_KEEP:-}" ] || rm -rf --one-file-system "$folder"
    say "${report%;}"
done
exit $status
