#!/usr/bin/env bash
# The square code of a link, read back from its drawing and from the paper by a reader of its own (zbar).
. "$(dirname "$0")/support.sh"

page=https://bench.example/evenfall/
read_code() { zbarimg --quiet --raw -Sdisable -Sqrcode.enable "$1" | tr -d '\n'; }

for file in millrace-170 reedline-120 quarry-230 estuary-150; do
    expect_status 0 link "$presets/$file.json"
    link=$(cat "$work/out")
    expect_status 0 link "$presets/$file.json" --code "$work/code.svg" --page "$page"
    [ "$(cat "$work/out")" = "$link" ] || fail "$file: the link is another one when its code is asked for"
    # 40 dots a millimetre would be a printer's; a camera has fewer.
    rsvg-convert --dpi-x 200 --dpi-y 200 "$work/code.svg" -o "$work/code.png"
    [ "$(read_code "$work/code.png")" = "$page#$link" ] || fail "$file: the drawn code reads other than the address"
    expect_status 0 sheet "$presets/$file.json" -o "$work/sheet.pdf" --page "$page"
    pdftoppm -r 250 -gray -png "$work/sheet.pdf" "$work/paper-$file"
    found=
    for paper in "$work/paper-$file"*.png; do found="$found$(read_code "$paper" || true)"; done
    [ "$found" = "$page#$link" ] || fail "$file: the code on the sheet reads other than the address: $found"
    rm -f "$work/paper-$file"*.png
done

# The fullest code there is.
link=$("$program" link "$presets/reedline-120.json" 2>/dev/null)
wide=$(printf "%$((2900 - ${#link}))s" | tr ' ' a)
expect_status 0 link "$presets/reedline-120.json" --code "$work/code.svg" --page "https://$wide.example/"
grep -q 'width="74.0mm"' "$work/code.svg" || fail "the fullest code is not 74 mm wide"
rsvg-convert --dpi-x 250 --dpi-y 250 "$work/code.svg" -o "$work/code.png"
[ "$(read_code "$work/code.png")" = "https://$wide.example/#$link" ] || fail "the fullest code reads other than its address"

expect_status 0 link "$presets/reedline-120.json" --code -
grep -q '^<svg' "$work/out" || fail "--code - does not hand out the drawing"
long=$(printf 'a%.0s' {1..2900})
expect_status 2 link "$presets/reedline-120.json" --code "$work/no.svg" --page "https://$long.example/"
expect_in err "do not fit into a square code"
[ ! -e "$work/no.svg" ] || fail "a refused code leaves a file"
expect_status 2 weigh "$presets/reedline-120.json" --page "$page"
expect_in err "has no option --page"
finish
