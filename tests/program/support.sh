# For the tests of the command-line program: run it, look at its status, output and errors.
# EVENFALL_PROGRAM and EVENFALL_PRESETS come from ctest.
set -u
program=${EVENFALL_PROGRAM:?names the program to test}
presets=${EVENFALL_PRESETS:?names the folder of demo presets}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failures=0

fail() {
    echo "FAILED: $*"
    failures=$((failures + 1))
}

# expect_status WANTED ARGUMENTS...: runs the program; its output is left in $work/out and $work/err
expect_status() {
    local wanted=$1
    shift
    "$program" "$@" >"$work/out" 2>"$work/err"
    local status=$?
    [ "$status" -eq "$wanted" ] || fail "status $status, not $wanted: evenfall $* ($(head -c 300 "$work/err"))"
}

expect_in() {  # FILE TEXT
    grep -qF -- "$2" "$work/$1" || fail "“$2” is not in std$1: $(head -c 600 "$work/$1")"
}

expect_empty() {  # FILE
    [ ! -s "$work/$1" ] || fail "std$1 is not empty: $(head -c 300 "$work/$1")"
}

# expect_json EXPRESSION: true for the JSON object d in $work/out, in Python
expect_json() {
    /usr/bin/python3 - "$work/out" "$1" <<'PYTHON' || fail "not so: $1"
import json, sys
d = json.load(open(sys.argv[1]))
sys.exit(0 if eval(sys.argv[2]) else 1)
PYTHON
}

finish() {
    [ "$failures" -eq 0 ] && echo "all as expected" || echo "$failures failed"
    exit $((failures > 0))
}
