#!/usr/bin/env bash
# Files that are written: many writers at once, writers killed or refused at every step, full disks, closed folders.
# What was acknowledged is there; the file is the old one or the new one; nothing is left behind.
. "$(dirname "$0")/support.sh"
here=$(cd "$(dirname "$0")" && pwd)

readings() { /usr/bin/python3 -c 'import json, sys; print(len(json.load(open(sys.argv[1])).get("log", [])))' "$1"; }
nothing_left() {  # FOLDER WHAT
    [ -z "$(find "$1" -name '.*evenfall-writing')" ] || fail "$2: left behind: $(find "$1" -name '.*evenfall-writing')"
}

# Held by somebody else for too long: a sentence, and nothing is changed. It takes half a minute; the rest runs meanwhile.
mkdir "$work/held"
cp "$presets/reedline-120.json" "$work/held/lure.json"
/usr/bin/python3 - "$work/held/.lure.json.evenfall-writing" "$work/held/ready" <<'PYTHON' &
import fcntl, sys, time
with open(sys.argv[1], "w") as file:
    fcntl.lockf(file, fcntl.LOCK_EX)
    open(sys.argv[2], "w").close()
    time.sleep(600)
PYTHON
holder=$!
until [ -e "$work/held/ready" ]; do sleep 0.1; done
("$program" log "$work/held/lure.json" add dry_weight 30g --stage carved 2>"$work/held/told"
 echo $? >"$work/held/status") &
waits=$!

# Fifty at once: every reading that was acknowledged is there.
mkdir "$work/many"
cp "$presets/reedline-120.json" "$work/many/lure.json"
writers=()
for k in $(seq 50); do
    "$program" log "$work/many/lure.json" add dry_weight "30.$(printf %02d "$k")g" --stage carved 2>>"$work/many/told" &
    writers+=($!)
done
for writer in "${writers[@]}"; do
    wait "$writer" || fail "one of fifty writers ended with $?: $(tail -n 1 "$work/many/told")"
done
[ "$(readings "$work/many/lure.json")" -eq 50 ] || fail "fifty readings were acknowledged, $(readings "$work/many/lure.json") are there"
/usr/bin/python3 - "$work/many/lure.json" <<'PYTHON' || fail "not every one of fifty readings is there"
import json, sys
masses = sorted(round(r["mass_g"], 2) for r in json.load(open(sys.argv[1]))["log"])
sys.exit(masses != [round(30 + k / 100, 2) for k in range(1, 51)])
PYTHON
nothing_left "$work/many" "fifty writers"

# At every step of writing: killed there, and refused there by the system (a full disk, for one).
${CXX:-c++} -shared -fPIC -O1 -o "$work/steps.so" "$here/steps.cpp" || fail "the shim for single steps does not compile"
steps=0
for how in kill refuse; do
    for step in $(seq 40); do
        folder=$work/$how-$step
        mkdir "$folder"
        cp "$presets/reedline-120.json" "$folder/lure.json"
        chmod 640 "$folder/lure.json"
        env ASAN_OPTIONS=verify_asan_link_order=0 LD_PRELOAD="$work/steps.so" EVENFALL_STEP="$step" EVENFALL_HOW="$how" \
            EVENFALL_STEP_REACHED="$folder/reached" \
            "$program" log "$folder/lure.json" add dry_weight 30g --stage carved >/dev/null 2>"$folder/told"
        status=$?
        if cmp -s "$folder/lure.json" "$presets/reedline-120.json"; then
            [ "$status" -ne 0 ] || fail "$how at step $step: acknowledged, and the reading is not there"
        else
            [ "$(readings "$folder/lure.json")" = 1 ] || fail "$how at step $step: the file is neither the old nor the new one"
        fi
        [ "$(stat -c %a "$folder/lure.json")" = 640 ] || fail "$how at step $step: another mode"
        if [ "$how" = refuse ]; then
            [ "$status" -eq 0 ] || grep -q '^evenfall: ' "$folder/told" || fail "refused at step $step without a sentence"
            nothing_left "$folder" "refused at step $step"
        fi
        # Whatever was left, the next writer writes, and leaves nothing.
        before=$(readings "$folder/lure.json")
        "$program" log "$folder/lure.json" add dry_weight 31g --stage carved 2>"$folder/told" ||
            fail "after $how at step $step nobody can write: $(cat "$folder/told")"
        [ "$(readings "$folder/lure.json")" -eq $((before + 1)) ] || fail "after $how at step $step a reading is lost"
        nothing_left "$folder" "the next writer after $how at step $step"
        [ -e "$folder/reached" ] || break # it wrote without as many steps
        steps=$((steps + 1))
    done
done
[ "$steps" -ge 14 ] || fail "only $steps steps of writing were seen; the test looks at the wrong ones"

# Writers killed at any moment among others that go on: what was acknowledged is there.
mkdir "$work/killed"
cp "$presets/reedline-120.json" "$work/killed/lure.json"
for k in $(seq 40); do
    ("$program" log "$work/killed/lure.json" add dry_weight "31.$(printf %02d "$k")g" --stage carved 2>/dev/null &&
         echo "31.$(printf %02d "$k")" >>"$work/killed/acknowledged") &
    writer=$!
    # The program is the subshell's only child.
    if [ $((k % 2)) -eq 0 ]; then
        sleep "0.0$((k % 7))"
        child=$(cat /proc/$writer/task/$writer/children 2>/dev/null)
        [ -z "$child" ] || kill -KILL $child 2>/dev/null
    fi
done
for writer in $(jobs -p); do
    [ "$writer" = "$holder" ] || [ "$writer" = "$waits" ] || wait "$writer" 2>/dev/null
done
/usr/bin/python3 - "$work/killed/lure.json" "$work/killed/acknowledged" <<'PYTHON' || fail "an acknowledged reading is lost among killed writers"
import json, sys
there = {round(r["mass_g"], 2) for r in json.load(open(sys.argv[1]))["log"]}
told = {float(line) for line in open(sys.argv[2])}
sys.exit(not told <= there or len(told) < 20)
PYTHON
expect_status 0 log "$work/killed/lure.json" add dry_weight 32g --stage carved
nothing_left "$work/killed" "killed writers"

# A disk that is full: the limit on a file's size stands for it, with its signal and without.
mkdir "$work/full"
for verb in "log FILE add dry_weight 30g --stage carved" "lead FILE --write FILE" "board FILE --size 200x50x40 --mass 170g --write FILE" \
            "reach FILE --length 110mm --write FILE" "new --length 120mm --write FILE" "link FILE --code FILE.svg" \
            "sheet FILE -o FILE.pdf" "log FILE next --write FILE"; do
    cp "$presets/reedline-120.json" "$work/full/lure.json"
    # shellcheck disable=SC2086
    (ulimit -f 1; trap '' XFSZ; "$program" ${verb//FILE/$work/full/lure.json} >/dev/null 2>"$work/err")
    [ $? -eq 2 ] || fail "on a full disk the status is not 2: $verb"
    expect_in err "cannot be written: "
    cmp -s "$work/full/lure.json" "$presets/reedline-120.json" || fail "a full disk changed the file: $verb"
    [ "$(ls -A "$work/full")" = lure.json ] || fail "on a full disk something is left: $verb: $(ls -A "$work/full")"
    # shellcheck disable=SC2086
    (ulimit -c 0; ulimit -f 1; "$program" ${verb//FILE/$work/full/lure.json} >/dev/null 2>&1) 2>/dev/null
    cmp -s "$work/full/lure.json" "$presets/reedline-120.json" || fail "a writer killed by a full disk changed the file: $verb"
    rm -rf "$work/full"/.[!.]* "$work/full"/lure.json.*
done

# A folder in which nothing may be made, and a file that may not be written. Root may do all, so it becomes somebody else.
mkdir "$work/closed" "$work/bin"
cp "$presets/reedline-120.json" "$work/closed/lure.json"
chmod 666 "$work/closed/lure.json"
cp "$program" "$work/bin/evenfall"
somebody=()
if [ "$(id -u)" -eq 0 ]; then
    chmod 711 "$work"
    somebody=(setpriv --reuid 65534 --regid 65534 --clear-groups)
fi
chmod 555 "$work/closed"
"${somebody[@]}" "$work/bin/evenfall" log "$work/closed/lure.json" add dry_weight 30g --stage carved 2>"$work/err"
[ $? -eq 2 ] || fail "a reading was written into a closed folder"
expect_in err "cannot be written: Permission denied"
chmod 777 "$work/closed"
chmod 444 "$work/closed/lure.json"
"${somebody[@]}" "$work/bin/evenfall" log "$work/closed/lure.json" add dry_weight 30g --stage carved 2>"$work/err"
[ $? -eq 2 ] || fail "a reading was written into a file that may only be read"
expect_in err "cannot be written: Permission denied"
if [ "$(id -u)" -eq 0 ]; then
    # A file of somebody else's stays theirs: written by root it is, by a stranger it is not written at all.
    chmod 666 "$work/closed/lure.json"
    chown 12345:12345 "$work/closed/lure.json"
    "${somebody[@]}" "$work/bin/evenfall" log "$work/closed/lure.json" add dry_weight 30g --stage carved 2>"$work/err"
    [ $? -eq 2 ] || fail "a stranger's file was written anew as one's own"
    expect_in err "its owner"
    cmp -s "$work/closed/lure.json" "$presets/reedline-120.json" || fail "a refused writer changed the file"
    expect_status 0 log "$work/closed/lure.json" add dry_weight 30g --stage carved
    [ "$(stat -c %u:%g:%a "$work/closed/lure.json")" = 12345:12345:666 ] || fail "the file has another owner or mode now"
fi
[ "$(ls -A "$work/closed")" = lure.json ] || fail "a refused writer left something: $(ls -A "$work/closed")"

# A thousand leavings of writers of earlier versions stop nobody, and files of the user's own stay.
mkdir "$work/leavings"
cp "$presets/reedline-120.json" "$work/leavings/lure.json"
for k in $(seq 0 999); do echo mine >"$work/leavings/lure.json.new$k"; done
expect_status 0 log "$work/leavings/lure.json" add dry_weight 30g --stage carved
[ "$(ls "$work/leavings" | wc -l)" -eq 1001 ] || fail "a file of another name was removed"

# A file's name reaches the terminal without what could steer it.
name=$work/$'red\e[31m\u202e.json'
expect_status 2 weigh "$name"
expect_in err "red[31m.json"
grep -q $'\e' "$work/err" && fail "an escape code of a file's name reaches the terminal"
expect_status 0 new --length 120mm --write "$name"
grep -q $'\e' "$work/out" && fail "an escape code of a file's name reaches the terminal"
expect_status 2 weigh $'\e]0;title\a'
grep -q $'[\e\a]' "$work/err" && fail "an escape code of a file's name reaches the terminal"

wait "$waits"
[ "$(cat "$work/held/status")" = 2 ] || fail "a file that is held for good was written"
grep -q "in the hands of another evenfall" "$work/held/told" || fail "no sentence says that the file is held: $(cat "$work/held/told")"
cmp -s "$work/held/lure.json" "$presets/reedline-120.json" || fail "the held file was changed"
kill "$holder"
finish
