#!/bin/sh
# The picture in the README is what the program shows of the demo logbook.  After a wanted change: make tests/tui/picture
# and write its output to share/home.svg.

. "${top_srcdir:-.}/tests/lib.sh"
about "the picture of the home screen is current"
picture=${PICTURE:-$top_builddir/tests/tui/picture}
[ -x "$picture" ] || skip "libvterm is not here"
run 0 splitpin new --demo
run 0 "$picture" "$SPLITPIN" "$SPLITPIN_FILE"
[ "$(wc -l <out)" -gt 30 ] || fail "there is little on the picture"
cmp -s out "$top_srcdir/share/home.svg" || {
	diff out "$top_srcdir/share/home.svg" | head -n 20
	fail "share/home.svg is not that picture"
}
