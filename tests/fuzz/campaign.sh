#!/bin/bash
# Runs every fuzzer at once for some seconds, from the committed corpora, and prints for each how many inputs it tried, in how much
# processor time, and how much of the program they reached. A fuzzer that found something begins anew until its time is over; the
# campaign then ends with an error. What broke a law is left in build/fuzz/finds, and running the fuzzer with that file as its only
# word shows it again. record.md beside this file keeps what long campaigns came to.
#
#   tests/fuzz/campaign.sh 3600                 all of them for an hour; what was learnt stays in build/fuzz/learnt
#   tests/fuzz/campaign.sh 3600 evaluate link   these
#   tests/fuzz/campaign.sh 0 --keep             nothing but: cut what was learnt down to the least that reaches as much of the program
#                                               (-set_cover_merge), and put its smallest files into tests/fuzz/corpus
#
# EVENFALL_FUZZ_BUILD   folder of a build with EVENFALL_FUZZ on; without it the preset "fuzz" is built
# EVENFALL_CORPUS_KB    how much --keep may add for one fuzzer, default 40
set -euo pipefail
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)"
. "$root/web/setup/common.sh"

seconds="${1:-60}"
shift || true
keep=false
names=()
for word in "$@"; do
    if [ "$word" = --keep ]; then keep=true; else names+=("$word"); fi
done
if [ ${#names[@]} -eq 0 ]; then
    for file in "$root"/tests/fuzz/fuzz_*.cpp; do
        name="$(basename "$file" .cpp)"
        names+=("${name#fuzz_}")
    done
fi

build="${EVENFALL_FUZZ_BUILD:-}"
if [ -z "$build" ]; then
    "$root/tests/fuzz/build.sh" "${names[@]/#/fuzz_}"
    build="$root/build/fuzz"
fi
learnt="$build/learnt"
finds="$build/finds"
export EVENFALL_SLOW="$build/slow" # where the fuzzer "slow" keeps the slowest input of each verb
mkdir -p "$learnt" "$finds" "$EVENFALL_SLOW"

# Words of the format, for the fuzzers that begin with text: the schema has them all.
grep -o '"[A-Za-z_0-9]*"' "$root/presets/schema/preset.schema.json" | sort -u | sed 's/"/\\"/g; s/.*/"&"/' >"$build/words.dict"

# options_of NAME: how long an input may be, and its words; what stands here goes before what stands in the call.
options_of() {
    case "$1" in
        preset) echo "-max_len=20000 -dict=$build/words.dict" ;;
        link) echo "-max_len=8000 -dict=$build/words.dict" ;;
        picture) echo "-max_len=12000" ;;
        number_text) echo "-max_len=64" ;;
        sequence) echo "-max_len=1500" ;;
        slow) echo "-max_len=1500 -timeout=900 -report_slow_units=900" ;; # to be slow is no find
        *) echo "-max_len=6000" ;;
    esac
}

# run_for NAME: one fuzzer till its time is over, a log a leg; then its processor time, own and system, in NAME.time.
run_for() {
    local name="$1" ends=$((SECONDS + seconds)) leg=0 left code=0
    rm -f "$build/$name."*.log
    while left=$((ends - SECONDS)); [ "$left" -gt 0 ] && [ "$leg" -lt 40 ]; do
        # Behind everything else that the machine has to do; so an input may wait long for its turn.
        # shellcheck disable=SC2046
        nice -n 19 "$build/tests/fuzz_$name" "$learnt/$name" "$root/tests/fuzz/corpus/$name" -timeout=60 $(options_of "$name") \
            -max_total_time="$left" -rss_limit_mb=2048 -print_final_stats=1 -artifact_prefix="$finds/$name-" \
            >"$build/$name.$leg.log" 2>&1 </dev/null && break
        code=1
        leg=$((leg + 1))
    done
    times >"$build/$name.time" # own, then its children's
    return $code
}

found=0
if [ "$seconds" -gt 0 ]; then
    declare -A process
    for name in "${names[@]}"; do
        mkdir -p "$learnt/$name"
        run_for "$name" &
        process[$name]=$!
    done
    printf '%-12s %12s %20s %9s %10s\n' fuzzer inputs processor edges features
    for name in "${names[@]}"; do
        verdict=
        wait "${process[$name]}" || { verdict="  FOUND: $(cat "$build/$name."*.log | grep -aoE 'broken: .*|runtime error: .*|ERROR: [A-Za-z]*: .*' | sort -u | head -n 3 | tr '\n' ';' || true)"; found=1; }
        inputs="$(cat "$build/$name."*.log | grep -aoE 'stat::number_of_executed_units: *[0-9]+' | awk '{sum += $2} END {print sum + 0}')"
        reached="$(cat "$build/$name."*.log | grep -aoE 'cov: [0-9]+ ft: [0-9]+' | sort -t' ' -k4n | tail -n 1 || true)"
        printf '%-12s %12s %20s %9s %10s%s\n' "$name" "$inputs" "$(awk 'NR == 2 {print $1 "+" $2}' "$build/$name.time")" \
            "$(awk '{print $2}' <<<"$reached")" "$(awk '{print $4}' <<<"$reached")" "$verdict"
    done
fi

if $keep; then
    limit=$((${EVENFALL_CORPUS_KB:-40} * 1024))
    for name in "${names[@]}"; do
        least="$(mktemp -d)"
        "$build/tests/fuzz_$name" -set_cover_merge=1 -use_counters=0 "$least" "$root/tests/fuzz/corpus/$name" "$learnt/$name" >"$build/$name-merge.log" 2>&1 </dev/null ||
            die "the corpus of $name could not be merged: $build/$name-merge.log"
        kept="$(sha256sum "$root/tests/fuzz/corpus/$name"/*)"
        size=0
        added=0
        # Files that somebody named stay; of what the machine found, the smallest while there is room.
        while read -r bytes file; do
            [ $((size + bytes)) -le "$limit" ] || break
            size=$((size + bytes))
            grep -qF "$(sha256sum <"$file" | cut -c1-64)" <<<"$kept" && continue
            cp "$file" "$root/tests/fuzz/corpus/$name/$(basename "$file" | cut -c1-12)"
            added=$((added + 1))
        done < <(find "$least" -type f -printf '%s %p\n' | sort -n)
        rm -rf "$least"
        say "$name: $added files added, $(du -sb "$root/tests/fuzz/corpus/$name" | cut -f1) bytes now"
    done
fi
exit $found
