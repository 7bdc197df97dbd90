# Sourced after common.sh: access to the Debian archive with separate package lists, so that the machine's own apt
# is not touched.

keyring=/usr/share/keyrings/debian-archive-keyring.gpg
private="$cache/apt"

# The archive addresses in the machine's own apt sources for its release, or the one in EVENFALL_DEBIAN_MIRROR.
mirror_candidates() {
    if [ -n "${EVENFALL_DEBIAN_MIRROR:-}" ]; then
        printf '%s\n' "$EVENFALL_DEBIAN_MIRROR"
        return
    fi
    apt-get indextargets --no-release-info --format '$(RELEASE) $(COMPONENT) $(REPO_URI)' 'Created-By: Packages' |
        awk -v codename="$(. /etc/os-release && printf '%s' "${VERSION_CODENAME:-sid}")" '
            ($1 == codename || $1 ~ /^(old)?stable$/) && $2 == "main" && !seen[$3]++ { print $3 }'
}

# private_apt TOOL WORD... : apt-get or apt-cache with those lists.
private_apt() {
    local tool="$1"; shift
    local options=(-q
        -o "Dir::Etc::sourcelist=$private/sources.list" -o Dir::Etc::sourceparts=/dev/null
        -o Dir::Etc::preferences=/dev/null -o Dir::Etc::preferencesparts=/dev/null
        -o "Dir::State::lists=$private/lists" -o "Dir::Cache=$private/cache"
        -o APT::Get::AllowUnauthenticated=false -o Acquire::Retries=3 -o Acquire::Languages=none)
    [ "$(id -u)" -eq 0 ] && options+=(-o APT::Sandbox::User=root)
    "$tool" "${options[@]}" "$@"
}

# read_lists SUITE... : updates the package lists of these suites.
read_lists() {
    [ -r "$keyring" ] || die "the archive keyring $keyring is missing; install the package debian-archive-keyring."
    mkdir -p "$private/lists/partial" "$private/cache/archives/partial" "$cache/log"
    local mirror suite tried=0
    while read -r mirror; do
        tried=1
        for suite in "$@"; do
            printf 'deb [signed-by=%s] %s %s main\n' "$keyring" "$mirror" "$suite"
            printf 'deb-src [signed-by=%s] %s %s main\n' "$keyring" "$mirror" "$suite"
        done >"$private/sources.list"
        if private_apt apt-get -o APT::Update::Error-Mode=any update >"$cache/log/lists.log" 2>&1; then
            return 0
        fi
    done < <(mirror_candidates)
    [ "$tried" = 1 ] || die "no Debian archive is named in this machine's apt sources.
Set EVENFALL_DEBIAN_MIRROR to the address of one (the folder that holds dists/ and pool/)."
    tail -n 5 "$cache/log/lists.log" >&2
    die "the package lists of the suites $* could not be read (see above)."
}
