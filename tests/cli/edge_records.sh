#!/bin/sh
# What owners complain about or get wrong, third part: units, words and files, two at one logbook, a boat that is sold, and
# readings that cannot be compared.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python
book=$SPLITPIN_FILE
new_heron
cp "$book" kept
afresh() { cp kept "$book"; }

about "E10 a log in other units: what was read stays as it was read, and is compared in one"
afresh
printf 'date,what,as-read,fitting\n2025-05-01,steering-play,1/8 in,drive/transom/gimbal-ring\n2026-05-01,steering-play,4 mm,drive/transom/gimbal-ring\n' >old.csv
run 0 sp import measurements old.csv
run 0 sp export measurements
says "1/8 in"
says "4 mm"
run 0 sp measure --list steering-play
is "watch watch" "$(awk '{ for (i = 1; i <= NF; i++) if ($i == "watch" || $i == "good" || $i == "stop") printf "%s ", $i }' out | sed 's/ $//')" verdicts

about "E10 torques and quantities stay as they were typed, in either system, and one figure in two systems is no conflict"
afresh
printf 'boat,fitting,what,as-read,source\nGrey Heron,drive/propeller,torque,60 ft-lb,manual p. 41\nGrey Heron,drive/propeller,torque,81 Nm,translated manual p. 44\nGrey Heron,engine/lubrication,oil-quantity,5 qt,manual p. 12\nGrey Heron,drive/gear-oil,quantity,1.9 litres,translated manual p. 20\n' >old.csv
run 0 sp import figures old.csv
run 0 sp figure
tells "torque 60 ft-lb (81 N·m) (manual p. 41)"
tells "torque 81 Nm (60 ft-lb) (translated manual p. 44)"
tells "oil-quantity 5 qt (4.73 L)"
tells "quantity 1.9 litres (2 qt)"
says_not differs
run 0 sp export figures
says ",60 ft-lb,"
says ",81 Nm,"
says ",1.9 litres,"
run 0 sp measure oil-drained 4.5 qt --date 2025-10-01
run 0 sp measure oil-drained 4.3 L --date 2026-10-01
run 0 sp measure riser-temperature 160 F --date 2025-10-01
run 0 sp measure riser-temperature 71 C --date 2026-10-01
run 0 sp boat --units metric
run 0 sp measure riser-temperature-difference 50 F
tells "50 F (27.8 C)"	# of a difference
run 0 sp measure --list
says "4.5 qt (4.26 L)"
says "160 F (71 C)"
says "71 C (160 F)"
run 0 sp export measurements
says ",4.5 qt,"
says ",160 F,"
printf 'boat,fitting,what,as-read,source\nGrey Heron,drive/propeller,torque,60,manual p. 9\n' >bare.csv
run 3 sp import figures bare.csv
tells_err "bare.csv:2"
tells_err "ft-lb and in-lb differ twelve times"
run 0 sp verify

about "E25 what it cost stays with the work, with its currency"
afresh
run 0 sp did lubrication.change --date 2026-05-01 --cost "EUR 64.90" --proof "receipt 17, shoebox"
run 0 sp did gear-oil.change --date 2026-05-02 --cost "49,50"
run 0 sp export services
says "64.90,EUR"
says "49.50,"
says "receipt 17, shoebox"
run 3 sp did gear-oil.change --cost "1,234"

about "E34 two people at one logbook: who is said, and neither overwrites the other in silence"
afresh
run 0 splitpin --today $today --who Ann did lubrication.change --date 2026-11-01
run 0 splitpin --today $today --who Ben did lubrication.change --date 2026-11-01
tells "done already on 1 Nov 2026 by Ann"
run 0 sp did --list lubrication.change
lines 2
says Ann
says Ben
run 0 sp history --limit 2
says Ann
says Ben

about "E36 accents, quotes, commas, line breaks and formulas come back from a CSV as they were"
afresh
nasty='=SUM(A1) "quoted", naïve
second line; +1 @home -2'
run 0 sp outing 2h "$nasty" --date 2026-06-01
run 0 sp export outings exact.csv
run 0 sp export outings guarded.csv --for-spreadsheet
NASTY=$nasty python3 -c '
import csv, os
def remark(name):
    return [r["remark"] for r in csv.DictReader(open(name, newline="", encoding="utf-8-sig"))][-1]
assert remark("exact.csv") == os.environ["NASTY"], remark("exact.csv")
assert remark("guarded.csv")[0] not in "=+-@", remark("guarded.csv")
' || fail "the remark is not as it was"
run 0 sp import outings exact.csv
says "0 new, 0 altered"
run 0 sp import outings guarded.csv
says "0 new, 0 altered"

about "E37 a boat is sold: all goes over, and it is the same logbook"
afresh
run 0 sp new --demo --file demo.splitpin
export SPLITPIN_FILE=$test_dir/demo.splitpin
run 0 splitpin --today $today --who "Ann Seller" stay afloat --place "Willow Harbour" --date 2026-11-01 --until 2026-11-02
run 0 splitpin --today $today --who "Ann Seller" did lubrication.change --date 2026-11-02 --proof "seen"
run 0 sp export everything whole
says "written to whole"
run 4 sp export everything whole
says_err "File exists"
run 2 sp export everything
sp due --all >before
run 0 sp --file same.splitpin new --from whole
sp --file same.splitpin due --all >after
same before after
run 0 sp --file same.splitpin export everything twice
run 0 diff -r whole twice
run 0 sp --file same.splitpin verify
run 4 sp --file same.splitpin new --from whole
run 4 sp --file none.splitpin new --from nowhere
[ ! -e none.splitpin ] || fail "a logbook was made of nothing"

about "E37 without names nobody and no place is named, and what is known of the water stays"
run 0 sp export everything sold --without-names
! grep -rq "Ann Seller\|Willow\|owner," sold || fail "a name goes over: $(grep -rl 'Ann Seller\|Willow' sold)"
grep -q "place 1" sold/stays.csv || fail "the place is lost"
run 0 sp export services --without-names
says_not "Ann Seller"
sp --file demo.splitpin export services | grep -q "Ann Seller" || fail "the seller's own logbook lost a name"

about "E37 the new owner sees what was done as claimed: what can sink, burn or hurt is looked at first"
run 0 sp --file sold.splitpin new --from sold
run 0 sp --file sold.splitpin verify
python3 -c '
import csv
rows = list(csv.DictReader(open("sold/services.csv", newline="", encoding="utf-8")))
assert rows and all(r["who"] == "" for r in rows)
assert {r["outcome"] for r in rows} <= {"claimed", "bad", "topped-up", "not-seen", "good"}, {r["outcome"] for r in rows}
' || fail "services that are not claimed"
SPLITPIN_FILE=$test_dir/sold.splitpin
expect_due bilge-pump.test when before-launch
expect_due hoses-below.inspect when no-record
expect_due lubrication.change last-done 2026-11-02
run 0 sp history
lines 1
SPLITPIN_FILE=$book

about "E42 hot and cold, on the hose and afloat: readings in another way are not compared"
afresh
run 0 sp measure rest-voltage 12.7 V --date 2026-05-01 --method "meter A, at 20 C"
says_not "before:"
run 0 sp measure rest-voltage 12.65 V --date 2026-06-01 --method "Meter A, at 20 C"
tells "before: 12.7 V on 1 May 2026"
says_not "not compared"
run 0 sp measure rest-voltage 12.5 V --date 2026-07-01 --method "meter A, at 2 C"
tells "read another way (meter A, at 2 C; before: Meter A, at 20 C): not compared with 12.65 V on 1 Jun 2026"
run 0 sp why batteries.load
tells "rest-voltage 12.5 V on 1 Jul 2026, worth watching: below 12.6 V"
tells "read another way than before: not compared"

about "E42 where it is not said how it was read, that is asked for"
run 0 sp measure rest-voltage 12.6 V --date 2026-08-01
tells "How was this one read? --method says it."

about "E43 another gauge is another way of reading, with a baseline of its own"
run 0 sp measure rest-voltage 12.4 V --date 2026-09-01 --method "meter B, at 20 C"
tells "not compared with 12.6 V on 1 Aug 2026"
run 0 sp measure rest-voltage 12.41 V --date 2026-09-10 --method "meter B, at 20 C"
tells "before: 12.4 V on 1 Sep 2026"
run 0 sp measure --list rest-voltage
lines 6

about "E46 each entry is in the file when its command ends: killed after that, nothing is lost"
afresh
run 0 sp outing 2h --date 2026-06-01
cp "$book" pulled	# as the disk has it, without the program's leave
SPLITPIN_FILE=$test_dir/pulled
run 0 sp verify
run 0 sp outing --list
lines 1
SPLITPIN_FILE=$book
run 0 sp backup plain.splitpin
run 0 sp undo
run 0 sp outing --list
lines 0
run 0 sp --file plain.splitpin outing --list
lines 1
