#!/bin/sh
# The flow that README describes, as a person types it: a new logbook, the demo's files one by one, today's outing,
# the due list at the coming launch, the reason for its first line, work done, undone, and a list for the yard.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"

about "a new logbook holds the catalogue's tasks"
new_heron
says "logbook made: $SPLITPIN_FILE"
says "$(($(sp plan --names | wc -l))) tasks on $(($(sp fitting --names | wc -l))) fittings"
[ "$(sp plan --names | wc -l)" -ge 80 ] || fail "fewer than 80 tasks"
is 600 "$(stat -c %a "$SPLITPIN_FILE")" "mode of the logbook"

about "a logbook that is there is not made anew"
cp "$SPLITPIN_FILE" kept
run 4 sp new "Grey Heron"
says_err "is there already"
same kept "$SPLITPIN_FILE"

about "a dry run reads all and keeps nothing"
run 0 sp import seasons "$demo/seasons.csv" --dry-run
says "9 rows read: 9 new"
says "dry run"
same kept "$SPLITPIN_FILE"

about "the demo's files are read in, one by one"
for table in fittings meters seasons stays parts outings happenings services measurements; do
	run 0 sp import $table "$demo/$table.csv"
	says "rows read: "
	quiet
done
run 0 sp export services services.out.csv
says "722 services written to services.out.csv"
run 0 sp export outings outings.out.csv
says "342 outings written to outings.out.csv"

about "they make the logbook that new --demo makes, on any day"
run 0 splitpin --today 2020-01-01 --file demo.splitpin new --demo
says "demo logbook made: demo.splitpin"
run 0 sp due --json
mv out due-by-hand
run 0 sp --file demo.splitpin due --json
same due-by-hand out

about "today's outing, by the meter"
run 0 sp outing --meter 284.6 --rinsed "to the lighthouse"
says "25 Nov 2026  main  2.4 h, now 614.8 h"

about "the due list at the launch"
run 0 sp due --at launch
quiet
fits 100
cp out due.txt
says "Grey Heron   main ~614.8 h   as of 15 Apr 2027"
says "BEFORE LAUNCH, 15 Apr 2027"
says "THIS SEASON, until 10 Oct 2027"
says "AT LAY-UP, 10 Oct 2027"
says "SURVEY"
says "first off or open: Drive unit, Bell housing"
for line in "! Gimbal bearing: grease" "! U-joint bellows: renew" "Steering: cable grease" "Shift retainers: renew"; do
	says "$line"
done
run 0 sp due
says_not "! U-joint bellows: renew"
run 0 sp due --at 2027-04-15
same due.txt out

about "why its first line"
first=$(sp due --at launch --csv | sed -n 2p | cut -d, -f2)
label=$(sed -n 's/^! //p' due.txt | sed -n '1s/   *[a-z]* .*//p')
run 0 sp why "$first" --at launch
quiet
says "$label ($first)"
tells "after drive-off (common practice, no source): reached on 22 Mar 2025. This one governs."
says "It is wanted now"
says "no lateness is given"
says "First off or open: Drive unit."
says "The maker's manual wins"
run 0 sp why "${label%%:*} renew" --at launch
says "($first)"

about "the bellows' reason names its terms"
run 0 sp why bellows-ujoint.renew --at launch
says "Last done 12 Mar 2022"
says "afloat in salt water"
tells "This one governs."
tells "before the launch on 15 Apr 2027"

about "work done takes its line away"
run 0 sp did "$first" --proof "each one seen seated"
run 0 sp due --at launch
says_not "$label"
run 0 sp did gimbal-bearing.grease --meter 284.6 --proof "fresh grease seen"
says "gimbal-bearing.grease: done on 25 Nov 2026 at 614.8 h"
run 0 sp due --at launch
says_not "Gimbal bearing: grease"

about "undo brings it back"
run 0 sp undo
says "taken back: gimbal-bearing.grease: done on 2026-11-25"
run 0 sp undo
run 0 sp due --at launch
same due.txt out
run 0 sp history --limit 4
says "(taken back)"

about "a list for the yard"
run 0 sp yard list.csv
says "for the yard written to list.csv"
count=$(sed 's/ .*//' out)
[ "$count" -gt 20 ] || fail "only $count lines for the yard"
run 4 sp yard list.csv
says_err "list.csv"
need_python
run 0 python3 -B "$here/yard_sheet.py" list.csv "$count"
run 0 sp yard sheet.csv --for-spreadsheet --without-name --task bellows-ujoint.renew --task gimbal-bearing.grease
says "2 lines"
run 0 python3 -B "$here/yard_sheet.py" sheet.csv 2
run 1 grep -q "Grey Heron" sheet.csv
run 0 sp verify
says "sound"

about "what README shows runs as it stands there"
[ -f "$top_srcdir/README.md" ] || exit 0
ln -s "$top_srcdir/share" share
rm -f "$SPLITPIN_FILE" list.csv
run 0 python3 -B "$here/readme_runs.py" "$top_srcdir/README.md" "$today"
cat out
about "the engine's hours are then those of its meters: 330.2 h on the first, and what the second shows"
run 0 sp due
says "main ~615.6 h"
