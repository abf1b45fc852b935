#!/bin/sh
# The filled sheet as the file it is: however a spreadsheet writes it, sorted, copied, cut off, or the power fails while it is read.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python

# edit SHEET FILLED DIALECT [LINE:COLUMN=TEXT...]: as yard_edit.py has it.
edit() { python3 -B "$here/yard_edit.py" "$@" || fail "the sheet could not be edited"; }

new_sheet()
{
	rm -f "$SPLITPIN_FILE" sheet.csv
	run 0 sp new --demo
	run 0 sp yard sheet.csv --task gimbal-bearing.grease --task steering.cable-grease --task cover.inspect
}

about "commas, semicolons, tabs of any line end, with and without a byte order mark, all quoted or not, say the same"
for dialect in comma,lf comma,crlf,bom semicolon,crlf semicolon,crlf,bom,quoted comma,cr tab,crlf; do
	new_sheet
	edit sheet.csv filled.csv "$dialect" '1:yard_result=good; "dry", vents open' 1:yard_date=2026-11-20 \
		'2:yard_result=not done' '2:yard_notes=first line
second line' 2:yard_date=2026-11-21 3:yard_result=renewed "3:yard_cost=85,50 EUR" 3:yard_date=2026-11-21
	run 0 sp yard read filled.csv
	tells "3 taken, 0 read before, 0 without an answer, 0 not taken"
	says "cost: 85.50 EUR"
	sed '/^cost/d' out | tr -s ' \n' '  ' >said
	[ -e first ] || cp said first
	same first said
	run 0 sp yard read filled.csv
	tells "0 taken, 3 read before"
	run 0 sp verify
done

about "rows in another order are the same sheet; ids moved to other rows are refused, every one"
new_sheet
edit sheet.csv filled.csv comma,crlf,shuffled '*:yard_result=done' '*:yard_date=2026-11-20'
run 0 sp yard read filled.csv
tells "3 taken"
new_sheet
before=$(entries)
edit sheet.csv filled.csv comma,crlf,ids-moved '*:yard_result=done' '*:yard_date=2026-11-20'
run 3 sp yard read filled.csv
tells "0 taken, 0 read before, 0 without an answer, 3 not taken"
is "$before" "$(entries)" "entries of the journal"

about "a row that stands twice is taken once; of two that say otherwise the second is refused"
edit sheet.csv filled.csv comma,crlf,twice '*:yard_result=done' '*:yard_date=2026-11-20'
run 0 sp yard read filled.csv
tells "3 taken, 3 read before"
new_sheet
edit sheet.csv filled.csv comma,crlf,twice-otherwise '*:yard_result=done' '*:yard_date=2026-11-20'
run 3 sp yard read filled.csv
tells "3 taken, 0 read before, 0 without an answer, 3 not taken"
tells_err "answered otherwise"

about "a column that stands twice is refused: which of the two would it be?"
new_sheet
edit sheet.csv filled.csv comma,crlf,column-twice '*:yard_result=done' '*:yard_date=2026-11-20'
run 3 sp yard read filled.csv
tells_err "two columns are called"

about "a file that is cut off anywhere is refused, or what is whole in it is taken: never half a line"
edit sheet.csv filled.csv comma,crlf '*:yard_result=done; all of it' '*:yard_date=2026-11-20' '*:yard_initials=JW'
bytes=$(wc -c <filled.csv)
for part in 0 1 3 5 7 8; do
	head -c $((bytes * part / 8)) filled.csv >short.csv
	before=$(entries)
	sp yard read short.csv --dry-run >out 2>err && code=0 || code=$?
	[ $code -eq 0 ] || [ $code -eq 3 ] || fail "exit code $code"
	! grep -q 'all of it' err || fail "an answer was cut"
	is "$before" "$(entries)" "entries of the journal"
done

about "killed while it is read, all of it is taken or nothing, and it can be read again"
power_cut yard read filled.csv
run 0 sp yard read filled.csv
tells "0 taken, 3 read before"
run 0 sp verify

about "undo takes services, findings and hours of one reading back together"
new_sheet
sp export services >services
sp export outings >outings
edit sheet.csv filled.csv comma,crlf '*:yard_result=worn; water in it' '*:yard_date=2026-11-20' '*:yard_meter=283' \
	"*:yard_cost=10" "*:currency=usd"
run 0 sp yard read filled.csv
says "cost: 30.00 USD"
run 0 sp found --list
tells "Gimbal bearing: water in it"
run 0 sp export outings
says "not logged"
run 0 sp export services
says ",10.00,USD,"
run 0 sp undo
run 0 sp export services
same services out
run 0 sp export outings
same outings out
run 0 sp found --list
says_not "water in it"

about "what is bad opens a finding once, and none on what the boat no longer has"
before_found=$(sp found --list | grep -c "water in it")
is 0 "$before_found" "findings"
run 0 sp yard read filled.csv
run 0 sp yard read filled.csv
tells "0 taken, 3 read before"
run 0 sp found --list
is 3 "$(grep -c "water in it" out)" "findings"
new_sheet
run 0 sp fitting hull/cover --none
edit sheet.csv filled.csv comma,crlf '*:yard_result=worn' '*:yard_date=2026-11-20'
run 3 sp yard read filled.csv
tells "2 taken, 0 read before, 0 without an answer, 1 not taken"
tells_err "hull/cover is not on this boat, by the log"

about "a meter that can hardly have shown that stands in the remark alone, and is said"
new_sheet
edit sheet.csv filled.csv comma,crlf 1:yard_result=done 1:yard_date=2026-11-20 1:yard_meter=9612.4 2:yard_result=done \
	2:yard_date=2026-11-20 2:yard_meter=283,1
run 0 sp yard read filled.csv
tells "the meter's 9612.4 h stands in the remark alone"
run 0 sp export services
says "; meter 9612.4 h"
says ",283.1,"
run 0 sp verify
edit sheet.csv filled.csv comma,crlf 3:yard_result=done 3:yard_date=2026-11-20 "3:yard_meter=lots"
run 3 sp yard read filled.csv
tells_err "yard_meter: "
