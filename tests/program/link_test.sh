#!/usr/bin/env bash
# "evenfall link" and "evenfall open": the same lure at both ends.
. "$(dirname "$0")/support.sh"

for file in millrace-170 reedline-120 quarry-230 estuary-150; do
    expect_status 0 link "$presets/$file.json"
    link=$(cat "$work/out")
    expect_status 0 open "$link"
    cp "$work/out" "$work/opened.json"
    expect_status 0 link "$work/opened.json"
    [ "$(cat "$work/out")" = "$link" ] || fail "$file: the link of the opened link differs"
    expect_status 0 open "https://lures.example/page/#$link"
    cmp -s "$work/out" "$work/opened.json" || fail "$file: an address opens other than its bare link"
    "$program" weigh "$presets/$file.json" --json >"$work/a"
    "$program" weigh "$work/opened.json" --json >"$work/b"
    cmp -s "$work/a" "$work/b" || fail "$file: the lure weighs otherwise after its link"
    expect_status 2 open "${link%????}"
    expect_in err "damaged or cut short"
    expect_empty out
done
finish
