#!/bin/sh
# On a terminal: the due list uses its width, and a new logbook is asked for.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python
python3 -c 'import pty; pty.openpty()' 2>/dev/null || skip "no terminal can be had here"
book=$SPLITPIN_FILE

# on COLUMNS [ANSWER...] -- ARGUMENT...
on()
{
	python3 -B "$here/terminal.py" "$@"
}

run 0 sp new --demo
about "the due list uses the terminal's width"
for columns in 80 100 132 200; do
	about "the due list on $columns columns"
	run 0 on $columns -- "$SPLITPIN" --today $today due --at launch
	fits $columns
	is $columns "$(awk '{ gsub(/[\200-\277]/, "") } length > m { m = length } END { print m }' out)" "columns used"
	run 0 on $columns -- "$SPLITPIN" --today $today why bellows-ujoint.renew
	fits $columns
done
run 0 on 132 -- "$SPLITPIN" --today $today due --at launch
says "bellows-ujoint.renew"
run 0 on 80 -- "$SPLITPIN" --today $today due --at launch
mv out terminal.txt
run 0 sp due --at launch
same out terminal.txt

about "data on a terminal does not steer it, and elsewhere is exact"
run 0 sp stay ashore --place "$(printf '\033[2Jquay \342\200\256\302\2331m')" --date 2026-11-20
run 0 sp plan --add oil.smell --fitting engine --every "1 month" --source own "$(printf 'Smell\033[31m it')"
for data in "due --csv --all" "due --json --all" "why oil.smell --json" "export stays" "export tasks" "yard --until 2030-01-01"; do
	about "$data on a terminal does not steer it, and elsewhere is exact"
	# shellcheck disable=SC2086
	run 0 on 80 -- "$SPLITPIN" --today $today $data
	harmless out
	wc -l <out >shown
	# shellcheck disable=SC2086
	run 0 sp $data
	is "$(wc -l <out)" "$(cat shown)" "lines"
done
run 0 sp export stays
grep -q "$(printf '\033')" out || fail "the export is not exact"
run 0 on 80 -- "$SPLITPIN" --today $today export stays
says '\x1b[2Jquay <U+202E>'

about "a new logbook is asked for"
rm "$book"
run 0 on 80 "Grey Heron" "" afloat "" salt 05-01 10-12 612.4 used 2019 "" "spring 2021" never q -- "$SPLITPIN" --today $today new
says "The boat's name: "
says "logbook made"
run 0 sp export boats
says "Grey Heron,petrol-sterndrive,afloat,roof,salt,05-01,10-12,,2026-11-25"
total 612.4
expect_due bellows-ujoint.renew last-done 2019-12-31
expect_due seawater-pump.renew when no-record
run 0 sp export services
lines 3
run 0 sp happening --list
says "bought"

about "what was given is not asked for"
rm "$book"
run 0 on 80 "" 10-12 "" new diesel -- "$SPLITPIN" --today $today new Heron --kind jet --berth afloat --winter ashore --water fresh
says_not "Kind of boat"
says "[10-15]: 10-12"
run 0 sp export boats
says "Heron,jet,afloat,ashore,fresh,04-15,10-12"

about "what only some boats of a kind have is asked, and a few designs; what is no answer is asked for again"
rm "$book"
run 0 on 80 "" saildrive maybe yes "" "" "" "" "" "" "" "" steam closed q -- "$SPLITPIN" --today $today new Tern --kind sail \
	--berth afloat --winter ashore --water salt --launch 05-01 --haul-out 10-01 --meter 5 --bought used
says "What carries the power to the propeller (shaft, saildrive; empty: not known)"
says "no design \"steam\""
run 0 sp export boats
says ",sail saildrive trailer,"
run 0 sp fitting engine/cooling
says "closed"
run 0 sp due --all --csv
says ",cooling.sea-plugs,"
says_not ",cooling.plugs-in,"
says_not ",cutless.measure,"

about "questions broken off make nothing"
rm "$book"
run 2 on 80 "Grey Heron" "" ^D -- "$SPLITPIN" --today $today new
says "nothing was made"
run 2 on 80 "" -- "$SPLITPIN" --today $today new
says "nothing was made"
run 2 on 80 ^D -- "$SPLITPIN" --today $today new
run 3 on 80 "Grey Heron" "" nowhere "" "" "" "" "" "" -- "$SPLITPIN" --today $today new
says "nowhere"
[ ! -e "$book" ] || fail "a logbook was made"

about "a renewal asks which design went in"
run 0 sp new Heron --kind petrol-sterndrive
run 0 on 80 sealed -- "$SPLITPIN" --today $today did gimbal-bearing.renew
tells "Which design went in? greasable, sealed; Enter: not known: sealed"
tells "sealed it is. Goes: "
run 3 sp why gimbal-bearing.grease
run 0 on 80 "" -- "$SPLITPIN" --today $today did gimbal-bearing.renew
tells "Enter: sealed as before"
run 3 sp why gimbal-bearing.grease
before=$(entries)
run 3 on 80 wooden -- "$SPLITPIN" --today $today did gimbal-bearing.renew
says "it is one of greasable, sealed"
run 3 on 80 ^D -- "$SPLITPIN" --today $today did gimbal-bearing.renew
is "$before" "$(entries)" "entries"
run 0 on 80 -- "$SPLITPIN" --today $today did gimbal-bearing.renew --variant greasable
tells "greasable it is. Comes: "

about "a job's cautions are read once a day, and that is on record"
run 0 on 80 "" -- "$SPLITPIN" --today $today job start --template anodes
says "Caution:"
says "Enter: they were read"
run 0 sp export heeded
says "anodes-2026"
run 0 on 80 -- "$SPLITPIN" --today $today job --pause "in the shed"
run 0 on 80 -- "$SPLITPIN" --today $today job --resume
says_not "Caution:"
