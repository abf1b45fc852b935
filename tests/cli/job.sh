#!/bin/sh
# A drive off and on again, from the template to the close, with a retainer forgotten, a count that is wrong, a figure that changed,
# and the power cut at each command.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python

new_heron

# open_of WHAT: numbers, or names, of what is open in the job: lines, proofs, aims.
open_of()
{
	sp job drive-off-2026 --json | python3 -c 'import json, sys
job = json.load(sys.stdin)[0]
what = sys.argv[1]
if what == "lines": print(*[r["number"] for r in job["list"] if not r["back"]])
if what == "blank": print(*[r["number"] for r in job["list"] if r["kind"] == "setting" and not r["as-found"]])
if what == "steps": print(*[s["number"] for s in job["steps"] if s["kind"] == "step" and not s["done"]])
if what == "proofs": print(*[s["number"] for s in job["steps"] if s["kind"] == "proof" and not s["done"]])
if what == "tasks": print(*[a["task"] for a in job["aims"] if "task" in a and a["state"] == "open"])
if what == "findings": print(*[a["finding"] for a in job["aims"] if "finding" in a and a["state"] == "open"])' "$1"
}

about "a template opens a job, and tells what to carry"
run 0 sp job templates
tells "drive-off: Take the drive off and put it back"
power_cut job start --template drive-off
run 0 sp job
tells "drive-off-2026: Take the drive off and put it back opened 25 Nov 2026, under way; 0 things off"
run 0 sp job --carry
says "5/8 in or 16 mm"
says "PARTS, ALWAYS"
says "PARTS, IF FOUND BAD"
tells "The drive is heavy"
tells "First: the maker's manual; the rating of the hoist."
says "BEFORE STARTING"
fits
run 0 sp job --offers
tells "6 x Mounting nuts, 5/8 in"
expect_due mounting-gasket.renew when on-condition

about "how it stood is written down before the wrench goes on"
power_cut job --correct 1 --as "3/8 in proud"
run 0 sp job --correct 2 --as "forward, jaw at 4 o'clock"
for n in $(open_of blank); do
	set -- "$@" --drop "$n"
done
run 0 sp job "$@"
run 0 sp job --list
tells "Trim angle at rest, found 3/8 in proud"
is "1 2" "$(open_of lines)" "lines"

about "what comes off is understood, counted, and shown in full"
power_cut job --off "6 nuts 5/8 tray 2"
run 0 sp job --list
tells "6 nuts 5/8 in, tray 2"
last=$(open_of lines)
nuts=${last##* }
run 0 sp job --offers
tells "[x] 6 x Mounting nuts, 5/8 in line $nuts: 6 nuts 5/8 in"
run 0 sp job --correct "$nuts" --as 5x
tells "taken for what is offered as 12: Mounting nuts."
tells "usual are 6, and here are 5"
run 0 sp undo
power_cut job --again "6 washers"
run 0 sp job --off "cotter pins of the shift joint bag 3 renew"
tells "retainer, count not said, bag 3, to be renewed"
tells "how many?"
last=$(open_of lines)
pins=${last##* }
printf 'noise of a drill' >note.ogg
run 0 sp job --off "thrust washer bevel forward 1x" --photo note.ogg
power_cut job --off "1 retainer trim pin missing"
run 0 sp found --list
tells "missing as found: 1 retainer trim pin"
run 0 sp job --take 14
tells "1 Drive unit; part"
run 3 sp job --take 14
tells_err "on the list already"
run 0 sp job --off "coter pin of the rudder"
tells "coter: is cotter meant? Like this it is only a part of the name."
run 0 sp undo
run 3 sp job --off ""
run 3 sp job --off "5/8 tray 2"
run 4 sp job --off "1 hose" --photo nowhere.jpg
tells_err "nowhere.jpg"

about "the drive was off: what that disturbs is due, once"
run 0 sp happening --list
is 1 "$(grep -c drive-off out)" "happenings"
expect_due mounting-gasket.renew when now
expect_due retainers.renew when now
expect_due alignment.measure when now
expect_due linkage.travel when now
expect_due mounting-nuts.recheck when now

about "it rests for the winter, holds the launch, and is found again"
power_cut job --pause "drive in the shed, trays on the shelf"
run 3 sp job --off "1 bolt"
tells_err "rests since"
run 1 sp ready
tells "it rests since 25 Nov 2026; 8 things not put back; 2 lines of retainers not renewed and counted in"
today=2027-04-02
run 0 sp job
tells "things lie: drive in the shed, trays on the shelf"
power_cut job --resume
run 0 sp job --labels
says "| bag 3"
says "| tray 2"

about "it goes back in reverse, counted and as it was"
run 0 sp job --refit
first=$(awk '/\[ \]/ { print $1; exit }' out)
is "${first}" "$(open_of lines | awk '{ print $NF }')" "the first line of the refit"
tells "Trim angle at rest, found 3/8 in proud left: ____"
run 3 sp job --back "$nuts" --count 5
tells_err "6 off and 5 back. Why?"
run 3 sp job --back "$pins" --count 2
tells_err "how many came off is not known"
run 0 sp job --correct "$pins" --as 2x
run 3 sp job --back "$pins"
tells_err "how many are in?"
run 3 sp job --back 1
tells_err "how is it left?"
run 3 sp job --back 1 --left "1/2 in proud"
tells_err "found 3/8 in proud and left 1/2 in proud. Why?"
power_cut job --back 1 --left "1/2 in proud" --why "set by the manual, page 12"
power_cut job --back "$nuts" --count 5 --why "one stud pulled; a new one on Monday"
run 1 sp ready
tells "1 count unequal"
run 0 sp job --back 2 --left same
tells "left forward, jaw at 4 o'clock"
run 0 sp undo
run 0 sp job --back 2 --left "Forward,  jaw at 4 o'clock"

about "retainers that did not all go back are missing, whatever the reason"
run 0 sp job --off "3 cotters of the steering pin tray 7 renew"
short=$(sp job --list --csv | awk -F, '/steering pin/ { print $1 }')
run 0 sp job --back "$short" --count 2 --why "one fell overboard"
tells "what did not go back is missing: a finding, which holds the launch"
run 0 sp found --list
tells "missing: 1 of 3 cotters of the steering pin not put back"
run 0 sp undo
run 0 sp job --back "$short" --count 3

about "a job does not close while a retainer is forgotten"
for n in $(open_of lines); do
	[ "$n" -eq "$pins" ] || run 0 sp job --back "$n" --count 1 --why "seen in its place"
done
run 3 sp job --close
tells_err "line $pins, 2 cotter pins of the shift joint, bag 3: not put back"
tells_err "proof: No drip at the joint after 15 min"
tells_err "mounting-gasket.renew, Fit a new mounting gasket and water O-ring: open"
power_cut job --back "$pins" --count 2

about "without its proof seen, work does not count"
run 0 sp job --done mounting-gasket.renew
tells "mounting-gasket.renew: not-seen it stays due: not proved"
expect_due mounting-gasket.renew when now
first=$(open_of proofs)
run 3 sp job --step ${first%% *} --step ${first##* }
tells_err "is a proof"
for n in $first; do
	run 0 sp job --step "$n" --seen "looked at"
done
is "" "$(open_of proofs)" "proofs open"
power_cut job --done mounting-gasket.renew
run 0 sp due --json
is 0 "$(sp due --json --until today | grep -c '"mounting-gasket.renew"')" "lines of the gasket"

about "several tasks of one command are one entry, and all of them or none"
before=$(entries)
run 3 sp job --done coupler.grease --done alignment.measure --done nonsense
tells_err "none of them is recorded: drive-off-2026 is for no task or finding like"
is "$before" "$(entries)" "entries"
expect_due coupler.grease when now
run 3 sp job --done coupler.grease --done coupler.grease
tells_err "coupler.grease is done already"
run 3 sp job --undone coupler.grease --undone nonsense --reason "no time"
is "$before" "$(entries)" "entries"
power_cut job --done coupler.grease --done coupler.inspect
run 0 sp undo
run 3 sp job --drop 1 --drop 9999

about "each task is done or told why not, and each finding put right"
power_cut job --undone trim.sender --reason "no gauge fitted"
for task in $(open_of tasks); do
	run 0 sp job --done "$task"
	says_not "stays due"
done
run 3 sp job --close
tells_err "missing as found"
power_cut job --done "$(open_of findings)" --seen "new retainer, bent both ways"
run 0 sp found --list
says_not "missing as found"

about "it does not close while steps are not ticked, and names them; a range ticks what is always done, all or nothing"
# shellcheck disable=SC2046  # numbers, a word each
set -- $(open_of steps)
run 3 sp job --close
tells_err "step $1, Photograph the drive from both sides"
run 3 sp job --step "$1" --step 9999
run 3 sp job --step x
run 3 sp job --skip-step "$2" --reason " "
power_cut job --skip-step "$2" --reason "no trailer, the boat stands in a yard"
power_cut job --step "$1-9999"
run 3 sp job --step "$1-9999"
tells_err "is open"
run 0 sp job drive-off-2026 --json
says '"seen": "no trailer, the boat stands in a yard"'

about "then it closes, tells what comes after the first run, and holds the launch no more"
power_cut job --close
run 0 sp job
tells "No job is open."
run 0 sp job --all
tells "closed 2 Apr 2027"
run 1 sp ready
says_not "job drive-off-2026"
tells "Drive mounting nuts: recheck: asked for since 25 Nov 2026 (drive-off); it is done after the first run"
run 3 sp job drive-off-2026 --off "1 bolt"
tells_err "was closed on"
run 0 sp job drive-off-2026
tells "After the first run, due by themselves: mounting-nuts.recheck, propeller.recheck."
run 0 sp job drive-off-2026 --list --csv
python3 - out <<'PY' || fail "the CSV"
import csv, sys
rows = list(csv.DictReader(open(sys.argv[1], newline="")))
assert [r["as-left"] for r in rows if r["number"] == "1"] == ["1/2 in proud"], rows
assert all(r["back"] for r in rows), rows
PY
run 0 sp verify

about "a second job behind an open one is told of it, and joins it where that is wanted"
cp "$SPLITPIN_FILE" before-join
run 0 sp job start --template drive-off --name first
says_not "counts once"
run 0 sp job first --carry
one=$(sed -n 's/^About \([0-9]*\) min to open.*/\1/p' out)
run 0 sp job start --template linkage-and-retainers --name second
tells "Drive unit, in the job first. In one job that counts once."
tells "splitpin job first --add-template NAME"
run 0 sp undo
run 0 python3 -B "$here/terminal.py" 80 "" "" -- "$SPLITPIN" --today $today job start --template linkage-and-retainers
tells "Join them [yes]"
run 0 sp job --names
is first "$(cat out)" "jobs"
run 0 sp job first --carry
is "$one" "$(sed -n 's/^About \([0-9]*\) min to open.*/\1/p' out)" "minutes to open"
run 0 python3 -B "$here/terminal.py" 80 no "" -- "$SPLITPIN" --today $today job start --task coupler.grease --name own
run 0 sp job --names
is "first own" "$(tr '\n' ' ' <out | sed 's/ $//')" "jobs"
cp before-join "$SPLITPIN_FILE"

about "uses that contradict each other are refused"
run 2 sp job start Odd --off "1 bolt"
run 2 sp job --off "1 bolt" --close
run 2 sp job --count 3
run 2 sp job --off "1 bolt" --off "2 nuts"
tells_err "--off stands there twice"
run 2 sp job --csv --json
run 2 sp job drive-off-2026 bolts
run 3 sp job start
run 3 sp job start --template nonsense
run 3 sp job start --template driveoff
tells_err "is drive-off meant?"
run 3 sp job start drive-off
tells_err "drive-off is a template: splitpin job start --template drive-off"
run 3 sp job start --template shaft-gland
tells_err "is not for a boat of the kind petrol-sterndrive"
run 3 sp job start Odd --name "two words"
run 3 sp job start Odd --name drive-off-2026
tells_err "already"

about "an aim that is read in is of one task or of one finding"
run 0 sp export aims
cp out aims.csv
python3 - <<'PY'
import csv
rows = list(csv.reader(open("aims.csv", newline="")))
task, finding = rows[0].index("task"), rows[0].index("finding")
one, other = next(r for r in rows[1:] if r[task]), next(r for r in rows[1:] if r[finding])
both, none = list(one), list(one)
both[finding], none[task] = other[finding], ""
for name, row in (("both", both), ("none", none)):
    row[0] = ""
    csv.writer(open(name + ".csv", "w", newline="")).writerows([rows[0], row])
PY
for kind in both none; do
	run 3 sp import aims $kind.csv
	tells_err "$kind.csv:2:1: a job's aim is a task or a finding: one of them is wanted"
done

about "on a boat with two drives one of them can be meant"
export SPLITPIN_FILE=$test_dir/home/twins.splitpin
run 0 sp new "Twin Duck" --kind petrol-sterndrive --berth trailer --winter roof --water fresh --since 2018-03-10 --built 1998 \
	--engine port --engine starboard
run 3 sp job start --template drive-off --engine middle
run 0 sp job start --template drive-off --engine starboard
says_not "port-"
tells "starboard-mounting-nuts.recheck"
one=$(sp job --carry | sed -n 's/^About \([0-9]*\) min to open.*/\1/p')
run 0 sp job start --template drive-off --name both
both=$(sp job both --carry | sed -n 's/^About \([0-9]*\) min to open.*/\1/p')
is $((2 * one)) "$both" "minutes to open both"
run 3 sp job --carry
tells_err "which job? open are both, drive-off"

about "the drive that came off is told by its side, and asked for where nobody said it"
run 3 sp job both --off "drive unit"
tells_err "of which drive? write port or starboard into the line"
run 0 sp job both --off "port drive unit"
tells "the port drive is off"
run 0 sp job both --off "gimbal bearing, starboard"
tells "the starboard drive is off"
run 0 sp job drive-off-2027 --off "1 drive unit"
tells "the starboard drive is off"
run 0 sp happening --list
says "job both, port"
says "job both, starboard"
says "job drive-off-2027, starboard"

about "at a terminal the steps that are not ticked are asked for when the job is closed"
export SPLITPIN_FILE=$test_dir/home/asked.splitpin
on() { python3 -B "$here/terminal.py" 80 "$@"; }
run 0 sp new Asker --kind outboard --berth trailer --winter roof --water fresh
run 0 sp job start --template anodes
for n in $(sp job anodes-2027 --json | python3 -c 'import json, sys
print(*[r["number"] for r in json.load(sys.stdin)[0]["list"]])'); do
	run 0 sp job --drop "$n"
done
for n in $(sp job anodes-2027 --json | python3 -c 'import json, sys
print(*[s["number"] for s in json.load(sys.stdin)[0]["steps"] if s["kind"] == "proof"])'); do
	run 0 sp job --step "$n" --seen "looked at"
done
for task in $(sp job anodes-2027 --json | python3 -c 'import json, sys
print(*[a["task"] for a in json.load(sys.stdin)[0]["aims"]])'); do
	run 0 sp job --done "$task"
done
run 3 sp job --close
tells_err "Name each anode"
run 3 on "" "too small" ^D -- "$SPLITPIN" --today $today job --close
tells "7 steps are not ticked."
tells "stays open: 5 steps are not ticked"
run 0 on all -- "$SPLITPIN" --today $today job --close
tells "5 steps are not ticked."
tells "is closed"
run 0 sp job anodes-2027 --json
says '"seen": "too small"'
