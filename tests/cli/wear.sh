#!/bin/sh
# Salt water, lying afloat, and rinsing: they move due days earlier, never later, by the rates of the table, and why
# shows the sum.  The rates meant here are those shipped for raw water: salt 2, brackish 1.5, afloat and rinsed 4/3, fresh 1.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python
export today=2026-03-01
book=$SPLITPIN_FILE

run 0 sp_bare new Trailered --kind jet --berth trailer --winter roof --water fresh --launch 04-15 --haul-out 10-15 \
	--since 2025-01-01 --meter 0
printf 'path,title\nengine,Engine\n' >fittings.csv
run 0 sp import fittings fittings.csv
cat >tasks.csv <<END
name,fitting,title,verb,place,mechanism,consequence,rule
case.look,engine,Look,inspect,anywhere,raw-water,costs,done
case.hours,engine,Look,inspect,anywhere,raw-water,costs,done
plain.look,engine,Look,inspect,anywhere,none,costs,done
rubber.look,engine,Look,inspect,anywhere,rubber,costs,done
date.look,engine,Look,inspect,anywhere,raw-water,costs,printed-date
END
cat >limits.csv <<END
task,kind,amount,hours,source
case.look,months,12,,x
case.hours,hours,,100,x
plain.look,months,12,,x
rubber.look,months,12,,x
date.look,months,12,,x
END
cat >services.csv <<END
task,date,outcome,made
case.look,2025-05-01,done,
case.hours,2025-05-01,done,
plain.look,2025-05-01,done,
rubber.look,2025-05-01,done,
date.look,2025-06-01,done,2025-05-01
END
for table in tasks limits services; do run 0 sp import $table $table.csv; done
cp "$book" dry

# The calendar year after 1 May 2025 has 365 days.
about "with rate 1 throughout, the calendar's day"
for task in case.look plain.look rubber.look date.look; do expect_due $task due 2026-05-01; done

about "a fortnight afloat in salt water counts double for raw water, and not for a printed date; a cold winter stretches nothing"
run 0 sp stay afloat --water salt --date 2025-08-01 --until 2025-08-15
expect_due case.look due 2026-04-17
expect_due rubber.look due 2026-05-01
expect_due plain.look due 2026-05-01
expect_due date.look due 2026-05-01
run 0 sp why case.look
tells "14 days afloat in salt water at 19 C x 2"
run 0 sp why case.look --json
mv out why.json
run 0 python3 -B -c '
import json, sys
why = json.load(open("why.json"))[0]
limit = why["limits"][0]
terms = why["exposure"]
assert sum(t["days"] for t in terms) == limit["used"] == 304, terms  # 1 May 2025 to 1 March 2026
assert abs(sum(t["days"] * t["rate"] for t in terms) - limit["rated"]) < 1e-6
assert limit["rated"] == 318 and limit["allowed"] == 365, limit
'
cp "$book" salt

about "the owner's rate takes the place of the one shipped"
printf 'name,value,standing,source\nraw-water.salt,3,owner,own rule\n' >rates.csv
run 0 sp import rates rates.csv
says "0 new, 1 altered"
expect_due case.look due 2026-04-03
printf 'name,value,standing,source\nraw-water.salt,0.1,owner,own rule\n' >rates.csv
run 3 sp import rates rates.csv
says_err "raw-water.salt is from 1 to 12, not 0.1"
printf 'name,value,standing,source\nrawwater.salt,2,owner,own rule\n' >rates.csv
run 3 sp import rates rates.csv
says_err "is raw-water.salt meant?"

about "a source's own figure for salt water is used, and no rate of ours"
cp dry "$book"
cat >tasks.csv <<END
name,fitting,title,verb,place,mechanism,consequence,rule
pair.grease,engine,Grease,grease,anywhere,corrosion,costs,done
pair.bellows,engine,Renew,renew,anywhere,rubber,sinks,renewal
END
printf 'task,kind,amount,salt,source\npair.grease,months,12,6,x\npair.bellows,months,60,,x\n' >limits.csv
printf 'task,date,outcome\npair.grease,2025-05-01,done\npair.bellows,2025-05-01,renewed\n' >services.csv
for table in tasks limits services; do run 0 sp import $table $table.csv; done
expect_due pair.grease due 2026-05-01
expect_due pair.bellows due 2030-05-01	# five years on a trailer in fresh water: the calendar's; common practice, no source
run 0 sp stay afloat --water salt --date 2025-05-01
# Grease points in salt water at half the interval: common practice, no source; here 183 of 365 days.
expect_due pair.grease due 2025-10-31
run 0 sp why pair.grease
tells "12 months, 6 months in salt water"
tells "2 for 1 in salt water"
run 0 sp plan pair.grease --every "12 months/4 months" --source "manual p. 41"
expect_due pair.grease due 2025-08-31	# the 122nd of 365 days
run 3 sp plan pair.grease --every "12 months/14 months" --source "manual p. 41"
says_err "the shorter of the two"
run 3 sp plan pair.grease --every "12 months/50 h" --source "manual p. 41"

about "afloat in fresh water"
cp dry "$book"
run 0 sp stay afloat --water fresh --date 2025-08-01 --until 2025-08-15
expect_due case.look due 2026-04-27
run 0 sp undo
expect_due case.look due 2026-05-01

# outing_due WATER RINSED: the day after one outing in that water, the next, in fresh water, 20 days later.
outing_due()
{
	cp dry "$book"
	# shellcheck disable=SC2086  # options
	sp outing 10h --date 2025-08-01 --water $1 $2 --yes >/dev/null || fail "no outing"
	sp outing 1h --date 2025-08-21 --water fresh >/dev/null || fail "no outing"
	due_of case.look due
}

about "an outing in salt water: rinsed, it costs a day; not rinsed, the days until it is washed off"
fresh=$(outing_due fresh --not-rinsed)
salt=$(outing_due salt --not-rinsed)
silent=$(outing_due salt "")
expect_due case.hours "100 h.used" 11
expect_due case.hours "100 h.rated" 21
rinsed=$(outing_due salt --rinsed)
is 14.3333 "$(due_of case.hours "100 h.rated")" "10 h rinsed, at 4/3, and 1 h"
brackish=$(outing_due brackish --not-rinsed)
is 2026-05-01 "$fresh" "fresh water"
is "$salt" "$silent" "what is not said was not rinsed"
for pair in "$salt<$rinsed" "$salt<=$brackish" "$rinsed<=$fresh" "$brackish<=$fresh" "$salt>=2026-04-11"; do
	run 0 python3 -c 'import sys, re
a, op, b = re.split("(<=|>=|<)", sys.argv[1])
sys.exit(not {"<": a < b, "<=": a <= b, ">=": a >= b}[op])' "$pair"
done

about "in the demo's logbook no due day moves later by salt water, nor earlier by rinsing"
run 0 splitpin --file demo.splitpin --today 2026-11-25 new --demo
export SPLITPIN_FILE=$test_dir/demo.splitpin today=2026-11-25
for variant in "as-it-is" "stay afloat --water fresh --date 2026-06-01 --until 2026-06-20" \
	"stay afloat --water brackish --date 2026-06-01 --until 2026-06-20" \
	"stay afloat --water salt --date 2026-06-01 --until 2026-06-20" \
	"outing --no-engine --date 2026-06-03 --water salt --rinsed" \
	"outing --no-engine --date 2026-06-03 --water salt --not-rinsed"; do
	# shellcheck disable=SC2086  # a command and its words
	[ "$variant" = as-it-is ] || run 0 sp $variant
	run 0 sp due --json
	mv out "$(printf '%s' "$variant" | tr -c 'a-z' _).json"
	[ "$variant" = as-it-is ] || run 0 sp undo
done
compare() { run 0 python3 -B "$here/not_later.py" "$1" "$2"; says "tasks"; }
# Lying in fresh water washes off what salt was left on, so that is compared with what is saltier only.
compare stay_afloat_*fresh*.json stay_afloat_*brackish*.json
compare stay_afloat_*fresh*.json stay_afloat_*salt*.json
compare as_it_is.json outing_*__rinsed.json
compare outing_*__rinsed.json outing_*not_rinsed.json
