#!/usr/bin/env bash
# Bad input: status 2, one sentence per fault with its place on standard error, nothing on standard output.
. "$(dirname "$0")/support.sh"

refused() {  # SENTENCE ARGUMENTS...
    local sentence=$1
    shift
    expect_status 2 "$@"
    expect_in err "$sentence"
    expect_empty out
}

refused "No command was given."
refused "There is no command “sink”." sink
refused "Did you mean “weigh”?" wiegh
refused "needs a preset file" weigh
refused "needs a preset file" log
refused "needs a link" open
refused "Did you mean “--pitch”?" lead "$presets/millrace-170.json" --pich -3deg
refused "has no option --json" sheet "$presets/millrace-170.json" --json
refused "takes nothing more, not “5mm” as well" weigh "$presets/millrace-170.json" 5mm
refused "“log” knows add, exclude, stands, csv, next, done, how, not “ad”. Did you mean “add”?" log "$presets/millrace-170.json" ad
refused "cannot be read as a number" lead "$presets/millrace-170.json" --fall --json
refused "cannot be opened" weigh "$work/missing.json"
refused "has no option --fall" weigh "$presets/millrace-170.json" --fall 300mm/s
refused "lacks its value" lead "$presets/millrace-170.json" --fall
refused "not for both" lead "$presets/millrace-170.json" --fall 300mm/s --in-water 2g
refused "[--pitch]" lead "$presets/millrace-170.json" --pitch steep
refused "[--fall]" lead "$presets/millrace-170.json" --fall 2.5g
refused "the limit is 1 to 5000 mm/s" lead "$presets/millrace-170.json" --fall 9000mm/s
refused "damaged" open 1.nonsense

printf '{"evenfall": 2, "hole": []}' >"$work/bad.json"
refused "did you mean “holes”?  [/hole]" weigh "$work/bad.json"
expect_in err "lacks its “shape”"
sed 's/"moisture_percent": 8/"moisture_percent": 80/' "$presets/millrace-170.json" >"$work/wet.json"
refused "The wood holds 80 % moisture; the limit is 0 to 30 %.  [/wood/moisture_percent]" weigh "$work/wet.json"
head -c 300000 /dev/zero | tr '\0' ' ' >"$work/huge.json"
refused "the limit is 256 kB" weigh "$work/huge.json"
echo "10 g of lead in hole 2" >"$work/words.json"
refused "This is not JSON: it goes wrong at line 1, column" weigh "$work/words.json"

# What does not fit where it is sent is told, and the status says so: nobody builds by half a table.
"$program" weigh "$presets/millrace-170.json" >/dev/full 2>"$work/err"
[ $? -eq 2 ] || fail "printing onto a full device must end with status 2"
expect_in err "Not everything could be printed"

expect_status 0 --help
expect_in out "lead"
expect_in out "how much lead in which hole"
expect_status 0 lead --help
expect_in out "evenfall lead [options] PRESET"
expect_in out "--pitch ANGLE"
cp "$work/out" "$work/lead-help"
expect_status 0 help lead
cmp -s "$work/out" "$work/lead-help" || fail "“help lead” says other than “lead --help”"
refused "Did you mean “lead”?" help leed
expect_status 0 --version
version=$(sed -n 's/^project(evenfall VERSION \([0-9.]*\).*/\1/p' "$EVENFALL_SOURCE/CMakeLists.txt")
expect_in out "evenfall $version, documents of version"

# Completion and manual know every verb and option that help knows.
expect_status 0 completion
bash -n "$work/out" || fail "the completion script is no bash"
completed() {  # WORDS... : what bash would offer for the last of them
    bash -c '. "$0"; COMP_WORDS=("$@") COMP_CWORD=$(($# - 1)); _evenfall; printf "%s\n" "${COMPREPLY[@]}"' "$work/out" "$@"
}
[ "$(completed evenfall wei)" = weigh ] || fail "no verb is completed: $(completed evenfall wei)"
[ "$(completed evenfall lead x.json --pi)" = --pitch ] || fail "no option is completed"
[ "$(cd "$work" && touch only.json && completed evenfall lead only)" = only.json ] || fail "no file is completed"
expect_status 0 manual
expect_in out ".SS evenfall log PRESET add KIND VALUE"
expect_in out ".B \-\-in\-water MASS"
if command -v man >/dev/null; then
    man --warnings -l "$work/out" >/dev/null 2>"$work/err" || fail "man does not read the manual page"
    expect_empty err
fi
finish
