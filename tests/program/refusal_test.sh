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
refused "needs a preset file" weigh
refused "cannot be opened" weigh "$work/missing.json"
refused "has no option --fall" weigh "$presets/millrace-170.json" --fall 300mm/s
refused "lacks its value" lead "$presets/millrace-170.json" --fall
refused "not for both" lead "$presets/millrace-170.json" --fall 300mm/s --in-water 2g
refused "[--pitch]" lead "$presets/millrace-170.json" --pitch steep
refused "[--fall]" lead "$presets/millrace-170.json" --fall 2.5g
refused "the limit is 1 to 5000 mm/s" lead "$presets/millrace-170.json" --fall 9000mm/s
refused "damaged" open 1.nonsense

printf '{"evenfall": 1, "hole": []}' >"$work/bad.json"
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
expect_in out "evenfall lead PRESET"
expect_status 0 --version
expect_in out "evenfall "
finish
