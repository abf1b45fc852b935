#!/bin/sh
# The yard sheet there and back: what Python's csv module and LibreOffice Calc filled in updates the log.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python

fill() { python3 -B "$here/yard_fill.py" "$@" || fail "the sheet could not be filled in"; }
# cell PATH ACTION: the number of that line.
cell() { python3 -c "
import csv, sys
rows = csv.DictReader(open('sheet.csv', newline='', encoding='utf-8'))
print(next(r['line_no'] for r in rows if r['component_path'] == '$1' and r['action'] == '$2'))"; }

# Four tasks of the demo's boat, and what was found.
# shellcheck disable=SC2120  # some say which tasks, some do not
new_sheet()
{
	rm -f "$SPLITPIN_FILE" sheet.csv filled.csv
	run 0 sp new --demo
	run 0 sp found drive/transom/gimbal-bearing "rough, growls in turns" --level hold
	key=$(sp found --list | grep -o '[b-df-hj-np-t]\{16\}' | head -n 1)
	run 0 sp yard sheet.csv --task bellows-ujoint.renew --task gimbal-bearing.grease --task steering.cable-grease \
		--task cover.inspect "$@"
}

about "a sheet is on record, and nothing that a yard wants is empty"
new_sheet
run 0 python3 -B "$here/yard_sheet.py" sheet.csv 4
run 0 sp history --limit 1
says "yard sheet of 4 lines"
run 0 sp export sheet-lines
is 5 "$(wc -l <out | tr -d ' ')" "lines of the sheet, with the header"
run 0 sp verify

about "what Python's csv module filled in is taken, columns in another order and others beside them"
bearing=$(cell drive/transom/gimbal-bearing grease) bellows=$(cell drive/transom/bellows-ujoint replace)
cover=$(cell hull/cover inspect) steering=$(cell steering grease)
for mark in comma semicolon; do
	new_sheet
	bearing=$(cell drive/transom/gimbal-bearing grease)
	fill sheet.csv filled.csv $mark \
		"$bearing" "done; fresh grease all round" 0.5 "20.10 USD" "" 2026-11-20 JW \
		"$bellows" "Replaced: all folds sound" 2,5 "1185,50 USD" "said \"tight\"; ok" "20 Nov 2026" JW \
		"$cover" "not done" "" "" "no time" 2026-11-21 JW
	run 0 sp yard read filled.csv --dry-run
	mv out dry
	run 0 sp history --limit 1
	says "yard sheet of 4 lines"
	run 0 sp yard read filled.csv
	sed 's/; nothing kept: a dry$//; s/^  run$//; s/; nothing kept: a dry run//' dry | sed '/^$/d' >dry.bare
	same dry.bare out
	tells "gimbal-bearing.grease: done on 20 Nov 2026 by JW, 20.10 USD"
	tells "bellows-ujoint.renew: renewed on 20 Nov 2026 by JW, 1185.50 USD"
	tells "cover.inspect: not done, and still due"
	says "cost: 1205.60 USD"
	tells "3 taken, 0 read before, 1 without an answer, 0 not taken"
	run 0 sp export services
	says "all folds sound"
	run 0 sp verify
done

about "what is still out is listed"
run 0 sp yard --list
says "25 Nov 2026: 4 lines, 3 answered"
says "line $(cell steering grease), steering.cable-grease"
says_not "cover.inspect"

about "a second reading of the same sheet changes nothing"
before=$(entries)
run 0 sp yard read filled.csv
tells "0 taken, 3 read before, 1 without an answer, 0 not taken"
is "$before" "$(entries)" "entries of the journal"

about "an answer that is another than before is a conflict, and stays as it was"
fill sheet.csv other.csv comma "$bearing" "done; fresh grease all round" 0.5 "25.00 USD" "" 2026-11-20 JW
run 3 sp yard read other.csv
tells_err "answered otherwise when it was read on 2026-11-25"
is "$before" "$(entries)" "entries of the journal"

about "undo takes the whole reading back, and it can be read again"
run 0 sp undo
says "yard sheet filled.csv read: 3 lines taken"
run 0 sp yard read filled.csv
tells "3 taken"

about "only claimed, what can sink stays due"
new_sheet
fill sheet.csv filled.csv comma "$bellows" "done" "" "" "" 2026-11-20 JW
run 0 sp yard read filled.csv
tells "claimed on 20 Nov 2026"
run 0 sp why bellows-ujoint.renew --at launch
says "Last done 12 Mar 2022"

about "a finding that holds the launch is mended by what was seen, and by nothing less"
for result in "done" "replaced; turns smooth by finger"; do
	rm -f sheet.csv filled.csv
	run 0 sp yard sheet.csv --task "$key"
	fill sheet.csv filled.csv comma 1 "$result" 2 "300 USD" "" 2026-11-25 JW
	run 0 sp yard read filled.csv
	case $result in
	done) tells "stays open: it holds the launch" ;;
	*) tells "mended on 25 Nov 2026 by JW, left as turns smooth by finger" ;;
	esac
done
run 0 sp verify

about "what does not match, or can't be understood, is listed with its line and never guessed"
new_sheet
fill sheet.csv filled.csv comma \
	"$bearing" "looked fine to me" "" "" "" 2026-11-20 JW \
	"$bellows" "done; seen" "" "1,234" "" 2026-11-20 JW \
	"$cover" "ok; dry" "" "" "" 5/6/26 JW \
	"$steering" "done; wet" "" "" "" "" ""
run 3 sp yard read filled.csv
tells "0 taken, 0 read before, 0 without an answer, 4 not taken"
tells_err "filled.csv:"
tells_err "\"looked fine to me\" is not known"
tells_err "yard_cost: \"1,234\""
tells_err "yard_date: \"5/6/26\""
tells_err "yard_date: empty, and no day was said"
run 3 sp yard read filled.csv --date 2026-11-22
tells "1 taken"
tells "steering.cable-grease: done on 22 Nov 2026 by tester"
sed "s/,$bearing,/,99,/" sheet.csv >wrong.csv
run 3 sp yard read wrong.csv
tells_err "line_no says"
printf 'id,line_no\n' >empty.csv
run 3 sp yard read empty.csv
tells_err "the column \"yard_result\" is missing"
run 4 sp yard read nothing.csv

about "what LibreOffice Calc wrote is taken: semicolons, its own dates and decimals, American and German"
for calc in libreoffice libreoffice-de; do
	new_sheet
	fill --ids sheet.csv "$top_srcdir/tests/data/yard/$calc.csv" >filled.csv
	run 0 sp yard read filled.csv
	tells "4 taken, 0 read before"
	tells "line $(cell drive/transom/bellows-ujoint replace), bellows-ujoint.renew: renewed on 20 Nov 2026 by JW, 1185.50"
	says "cost: $(python3 -B "$here/yard_fill.py" --sum filled.csv)"
	run 0 sp yard read filled.csv
	tells "0 taken, 4 read before"
	run 0 sp export services
	says "sheds water, vents open"
	says "alt: Öl war trüb; \"\"milky\"\""
	run 0 sp verify
done

about "sums of money are exact"
new_sheet
fill sheet.csv filled.csv semicolon "$bearing" "done" "" "0,10" "" 2026-11-20 JW "$bellows" "done" "" "0,20" "" 2026-11-20 JW \
	"$cover" "done" "" "70000000,05" "" 2026-11-20 JW "$steering" "done" "" "1234567,89" "" 2026-11-20 JW
run 0 sp yard read filled.csv
says "cost: $(python3 -B "$here/yard_fill.py" --sum filled.csv)"

about "a sheet is listed on the day on which it is written, as things will stand on another"
run 0 sp yard ahead.csv --sheet ahead.txt --task cover.inspect --at 2027-04-15
says_in() { grep -q "$2" "$1" || fail "$1 does not say $2"; }
says_in ahead.csv ",2026-11-25,"
tr -s " \n" "  " <ahead.txt >flat.txt
says_in flat.txt "listed 25 Nov 2026, as things will stand on 15 Apr 2027"

about "the options of the one use are refused in the other"
run 2 sp yard read filled.csv --paper A4
run 2 sp yard sheet2.csv --dry-run
run 2 sp yard sheet2.csv --for owner
run 2 sp yard sheet2.csv --paper A4
run 2 sp yard read
run 2 sp yard sheet2.csv --list
[ ! -e sheet2.csv ] || fail "a sheet was written"
run 3 sp yard sheet2.csv --task no.such
[ ! -e sheet2.csv ] || fail "a sheet was written"

about "a sheet of nothing has its header, and leaves no entry behind"
rm -f "$SPLITPIN_FILE"
run 0 sp_bare new "Plain Jane" --kind jet --berth afloat --winter ashore --water fresh --since 2024-01-01 --built 2010
before=$(entries)
run 0 sp yard
is 1 "$(wc -l <out | tr -d ' ')" "lines of an empty sheet"
is "$before" "$(entries)" "entries of the journal"
