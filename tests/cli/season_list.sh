#!/bin/sh
# The season's lists through the program: what is ticked and passed over stays so from run to run, and what is wrong changes
# nothing.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python
export today=2027-03-10

run 0 splitpin --today 2026-11-25 new --demo

# field TASK NAME: of a line of the list as JSON
field()
{
	sp season commissioning --json | python3 -c '
import json, sys
lines = {l["task"]: l for l in json.load(sys.stdin)[0]["tasks"]}
print(lines[sys.argv[1]][sys.argv[2]])' "$1" "$2"
}
number_of() { field "$1" number; }

run 0 sp season commissioning
fits
says "Commissioning, launch 15 Apr 2027: "
says "[ ]"
says "[x]"
tells "(bellows.inspect, out, sinks)"
tells "plan TASK --retire"
tells "Caution"

# One at a time, each in a run of its own; by number and by name.
is open "$(field bellows.inspect state)"
run 0 sp season commissioning --tick "$(number_of bellows.inspect)" --seen "two folds dull"
tells "bellows.inspect: done on 10 Mar 2027"
is "done" "$(field bellows.inspect state)"
is "two folds dull" "$(field bellows.inspect words)"
is tester "$(field bellows.inspect who)"
run 0 sp did bellows.inspect --list
says "two folds dull"
run 0 sp season commissioning --tick drain-plug.inspect --date 2027-03-09
tells "what proves it"
is 2027-03-09 "$(field drain-plug.inspect date)"

# Several at once, each an entry of its own; the numbers are those that were printed.
before=$(entries)
a=$(number_of bellows.clamps) b=$(number_of batteries.load)
run 0 sp season commissioning --tick "$a" --tick "$b"
is $((before + 2)) "$(entries)"
is "done" "$(field bellows.clamps state)"
is "done" "$(field batteries.load state)"
is "$a" "$(number_of bellows.clamps)" "a line keeps its number when it is ticked"

# Passed over: it says why, and stays open and due; done later it is done.
run 0 sp season commissioning --skip alarms.test --reason "no key on board"
tells "still due: no key on board"
is passed-over "$(field alarms.test state)"
run 0 sp season commissioning --open
tells "[-]"
tells "passed over, still due: 10 Mar 2027, tester: no key on board"
says_not "(bellows.clamps"
run 0 sp export skips
says "no key on board"
run 0 sp --today 2027-03-12 season commissioning --tick alarms.test
is "done" "$(today=2027-03-12 field alarms.test state)"

# u takes a tick back as it does any entry.
run 0 sp undo
is passed-over "$(today=2027-03-12 field alarms.test state)"

# What is wrong is said, and nothing of it is kept.
before=$(entries)
refused()
{
	refused_code=$1 refused_words=$2
	shift 2
	run "$refused_code" sp season "$@"
	tells_err "$refused_words"
	is "$before" "$(entries)" "entries after: $*"
}
refused 2 "wants --reason" commissioning --skip extinguishers.inspect
refused 3 "a reason is wanted" commissioning --skip extinguishers.inspect --reason "  "
refused 3 "was done on" commissioning --skip bellows.inspect --reason no
refused 3 "has lines 1 to" commissioning --tick 999
refused 3 "has lines 1 to" commissioning --tick 0
refused 3 "has lines 1 to" commissioning --tick 99999999999999999999
refused 3 "is not on the list" commissioning --tick trim.storage
refused 3 "lies ahead" commissioning --tick extinguishers.inspect --date 2027-03-11
refused 3 "does not count for this list" commissioning --tick extinguishers.inspect --date 2026-10-12
refused 3 "no such" commissioning --tick extinguishers.inspect --tick "no such thing"
refused 2 "of one --tick" commissioning --tick 1 --tick 2 --seen both
refused 2 "--reason is of --skip" commissioning --tick 1 --reason why
refused 2 "--date is of --tick" commissioning --date today
refused 2 "--launch is of launch and haul-out" commissioning --launch today
refused 2 "--tick is of a list" --tick 1
refused 2 "--width is of" commissioning --width 60
refused 2 "is too much" commissioning lay-up
refused 2 "autumn" autumn
refused 2 "autumn" sheet autumn
refused 2 "--csv and --json" commissioning --csv --json
refused 3 "40 to 200" sheet --width 39

# Killed between ticks, or while one is made, nothing that was said to be done is lost.
n=0
for task in extinguishers.inspect controls.neutral blower.test float-switch.test bilge-pump.test; do
	: >tick
	"$SPLITPIN" --today "$today" --who tester season commissioning --tick "$task" >tick 2>/dev/null &
	pid=$!
	[ $n -gt 2 ] || kill -9 $pid 2>/dev/null
	wait $pid 2>/dev/null
	if grep -q "done on" tick; then is "done" "$(field $task state)" "$task"; fi
	n=$((n + 1))
done
is "done" "$(field bilge-pump.test state)"
is "done" "$(field bellows.inspect state)"
run 0 sp verify

# All tasks of a list stand in its CSV, a row each.
run 0 sp season commissioning --csv
python3 - "$test_dir/out" <<'END' || fail "the CSV is not whole"
import csv, sys
rows = list(csv.DictReader(open(sys.argv[1], newline="")))
assert [int(r["number"]) for r in rows] == list(range(1, len(rows) + 1)), "numbers"
assert {r["state"] for r in rows} <= {"open", "done", "passed-over"}
assert any(r["task"] == "bellows.inspect" and r["state"] == "done" for r in rows)
END

# The sheet for paper: by the boat's year, cautions first, boxes, lines to write on, no line wider than the page.
run 0 sp season sheet
fits 72
says "Commissioning, launch 15 Apr 2027"
says "Caution"
says "First: "
says "TO HAVE AT HAND"
says "[ ]"
says "________"
[ "$(grep -n Caution out | head -n 1 | cut -d: -f1)" -lt "$(grep -n '  1 \[' out | head -n 1 | cut -d: -f1)" ] || fail "cautions come first"
is 1 "$(grep -cF 'first off or open: Drive unit (90 min)' out)" "what comes off is told once"
run 0 sp --today 2026-11-01 season sheet
says "Lay-up, haul-out 12 Oct 2026"
for width in 40 53 200; do
	run 0 sp season sheet haul-out --width $width
	fits $width
done
run 0 sp --today 2027-08-10 season sheet haul-out
says "anode-left: ________ %"
! grep -q ' $' out || fail "blanks at the end of a line"
run 0 sp season sheet lay-up --out sheet.txt
grep -q "Lay-up" sheet.txt || fail "no sheet in the file"
before=$(entries)
refused 4 "is there already" sheet lay-up --out sheet.txt

# Launch and haul-out are recorded as before.
run 0 sp --today 2027-04-16 season --launch 2027-04-16
says "launch 16 Apr 2027"
