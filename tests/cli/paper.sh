#!/bin/sh
# The sheet on paper: what the PDF says is what the plain sheet says.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"

# The lines of a sheet that say something, their blanks as one: how far apart columns stand is the printer's.
bare() { tr '\f' '\n' <"$1" | tr -s ' ' | sed 's/^ //; s/ $//; /^$/d'; }

about "the plain sheet is there without any module, on pages that say how many they are"
run 0 sp new --demo
run 0 sp found drive/transom/gimbal-bearing "rough, growls in turns" --level hold
for size in A4 Letter; do
	run 0 sp yard --sheet "$size.txt" --paper "$size"
	pages=$(tr -dc '\f' <"$size.txt" | wc -c)
	pages=$((pages + 1))
	run 0 grep -c "page [0-9]* of $pages\$" "$size.txt"
	is "$pages" "$(cat out)" "feet of pages on $size"
	! awk '{ sub(/^\f/, "") } length($0) > 80' "$size.txt" | grep -q . || fail "a line is wider than the page"
done
is 58 "$(awk '/\f/ { exit } { n++ } END { print n }' Letter.txt)" "rows of a Letter page"
is 64 "$(awk '/\f/ { exit } { n++ } END { print n }' A4.txt)" "rows of an A4 page"
run 0 sed -n 1,40p A4.txt
says "Caution:"
says "First: the maker's manual"
run 0 grep -c '^\[ \] ' A4.txt
[ "$(cat out)" -gt 5 ] || fail "no boxes to tick"

about "without the module the text is named, and no file is left"
run 4 env SPLITPIN_MODULES="$test_dir/nowhere" "$SPLITPIN" --today "$today" yard --pdf none.pdf
tells_err "the sheet as text can be printed, too"
[ ! -e none.pdf ] || fail "a file is left"

SPLITPIN_MODULES=$top_builddir
export SPLITPIN_MODULES
[ -e "$SPLITPIN_MODULES/splitpin-pdf.so" ] || skip "the module is not built"
command -v pdftotext >/dev/null || skip "pdftotext is not installed"

# What fontconfig and Pango keep until the program ends is theirs.
printf 'leak:libfontconfig\nleak:libpango\nleak:libcairo\n' >leaks
export LSAN_OPTIONS="suppressions=$test_dir/leaks:print_suppressions=0${LSAN_OPTIONS:+:$LSAN_OPTIONS}"

about "the PDF says what the plain sheet says, on paper of that size, words wider than it broken"
run 0 sp found hull/cover "Naht gerissen: $(printf 'Öse%.0s' 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21 22 23 24 25 26 27 28 29 30)." \
	--level mend
for size in A4 Letter; do
	rm -f sheet.txt sheet.pdf
	run 0 sp yard --sheet sheet.txt --pdf sheet.pdf --paper "$size"
	run 0 pdftotext -layout sheet.pdf from-pdf.txt
	bare sheet.txt >want
	bare from-pdf.txt >got
	same want got
	run 0 tr -d '\f' <sheet.txt
	fits
	run 0 pdfinfo sheet.pdf
	case $size in A4) says "595 x 842 pts" ;; *) says "612 x 792 pts" ;; esac
	is "$(tr -dc '\f' <sheet.txt | wc -c)" "$(($(sed -n 's/^Pages: *//p' out) - 1))" "form feeds between the pages"
done
run 4 sp yard --pdf sheet.pdf
tells_err "is not written over"

about "letters that no font has are said, and no file is left"
run 0 sp found hull/cover "$(printf '\363\277\277\275')" --level mend
run 4 sp yard --pdf boxes.pdf
tells_err "no font of this computer has all letters of"
[ ! -e boxes.pdf ] || fail "a file is left"
run 0 sp undo

about "a sheet of nothing is a page that says so much"
run 0 sp_bare --file bare.splitpin new "Plain Jane" --kind jet --berth afloat --winter ashore --water fresh --since 2024-01-01 \
	--built 2010
run 0 sp_bare --file bare.splitpin yard --sheet nothing.txt --pdf nothing.pdf
run 0 pdftotext -layout nothing.pdf from-pdf.txt
bare nothing.txt >want
bare from-pdf.txt >got
same want got

about "the season's sheet, too"
run 0 sp season sheet --out season.txt --pdf season.pdf --paper Letter
run 0 pdftotext -layout season.pdf from-pdf.txt
bare season.txt >want
bare from-pdf.txt | sed '/page [0-9]* of [0-9]*$/d' >got
same want got

about "the program itself links none of it"
! ldd "$SPLITPIN" 2>/dev/null | grep -qi 'pango\|cairo' || fail "the program links Pango"
