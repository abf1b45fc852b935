#!/bin/sh
# What falls due when, through the program: each kind of limit, each rule of what restarts a clock, each place in the
# list.  The days wanted are worked out by hand beside each claim.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python
export today=2026-03-01
book=$SPLITPIN_FILE

# Seasons of 183 days, 15 April to 15 October; in 2024 and 2025 ten outings of 2 h each, the fifth on 1 July.
new_plain
cat >seasons.csv <<END
launch,haul-out,planned
2024-04-15,2024-10-15,
2025-04-15,2025-10-15,
2026-04-15,2026-10-15,yes
2027-04-15,2027-10-15,yes
END
{
	echo date,hours
	for year in 2024 2025; do
		for day in 05-01 05-15 06-01 06-15 07-01 07-15 08-01 08-15 09-01 09-15; do echo $year-$day,2; done
	done
} >outings.csv
run 0 sp import seasons seasons.csv
run 0 sp import outings outings.csv

# task NAME KIND AMOUNT [RULE] [PLACE] [CONSEQUENCE] [FITTING]: rows of tasks.csv and limits.csv.
echo name,fitting,title,verb,place,mechanism,consequence,rule,minutes,variants >tasks.csv
echo task,kind,amount,hours,event,happening,standing,source >limits.csv
task()
{
	echo "$1,${7:-engine},Do $1,inspect,${5:-anywhere},none,${6:-costs},${4:-done},10," >>tasks.csv
	limit "$1" "$2" "$3"
}
limit()
{
	case $2 in
	hours|first-hours) echo "$1,$2,,$3,,,owner,own rule" ;;
	event) echo "$1,$2,,,$3,,owner,own rule" ;;
	happening) echo "$1,$2,,,,$3,owner,own rule" ;;
	*) echo "$1,$2,$3,,,,owner,own rule" ;;
	esac >>limits.csv
}
echo task,date,outcome,made >services.csv
done_on() { echo "$1,$2,${3:-done},${4-}" >>services.csv; }

# Months: the calendar day, the end of a month clamped.
task months.plain months 12; done_on months.plain 2025-06-30
task months.clamped months 11; done_on months.clamped 2025-03-31	# 31 Feb: the 28th
task months.leap months 12; done_on months.leap 2024-02-29
task months.short months 1; done_on months.short 2026-01-31
# Hours: 2 h on each of 1 and 15 May, 1 and 15 June, 1 July.
task hours.reached hours 10; done_on hours.reached 2024-10-20
# 5 h ahead: about 1 h in April and 5 in May are expected (half a year of 50 h presumed, two years' months on record), which
# is reached on 26 May in the mean, and, outings being lumps of 2 h, a week later as likely as not.
task hours.ahead hours 25; done_on hours.ahead 2024-10-20
task hours.first first-hours 4; limit hours.first hours 100; done_on hours.first 2024-10-20
task outings.three outings 3; done_on outings.three 2025-05-01	# then 15 May, 1 June, 15 June
task outings.each outings 1
task seasons.two seasons 2; done_on seasons.two 2024-11-01	# haul-outs of 2025, 2026
task seasons.past seasons 2; done_on seasons.past 2024-06-01	# haul-outs of 2024, 2025
# Events: work counts for the next fixed point when it was done after the one before.
task launch.counts event launch; done_on launch.counts 2025-11-01
task launch.early event launch; done_on launch.early 2025-05-01
task first-day.early event first-day; done_on first-day.early 2025-05-01
task mid.counts event mid-season; done_on mid.counts 2025-05-01
task mid.early event mid-season; done_on mid.early 2025-04-01
task haul.counts event haul-out; done_on haul.counts 2025-08-01
task haul.early event haul-out; done_on haul.early 2025-06-01
task lay-up.counts event lay-up; done_on lay-up.counts 2025-08-01
# Several: the first of them governs.
task both.months months 12; limit both.months hours 1000; done_on both.months 2025-06-30
task both.hours months 36; limit both.hours hours 10; done_on both.hours 2024-10-20
task happening.none happening grounding
task condition.none condition ""
task unknown.never months 12
# Places in the list.
task place.layup months 12; done_on place.layup 2025-12-01
task place.spring months 24; done_on place.spring 2025-06-01
task place.later months 60; done_on place.later 2025-06-01
task place.out months 12 "done" out; done_on place.out 2025-06-30
task place.hose months 12 "done" on-hose; done_on place.hose 2025-06-30
task place.shop months 12 "done" shop; done_on place.shop 2025-06-30
task place.afloat months 12 "done" afloat; done_on place.afloat 2025-02-01
task place.afloat-winter months 12 "done" afloat; done_on place.afloat-winter 2025-12-01
run 0 sp import tasks tasks.csv
run 0 sp import limits limits.csv
run 0 sp import services services.csv

# Claims on the list as it stands, read once.
sp due --json | python3 -B "$here/pick.py" >due.tsv
wants() { is "$3" "$(awk -F '\t' -v t="$1" -v f="$2" '$1 == t && $2 == f { print $3 }' due.tsv)" "$1 $2"; }

about "each kind of limit falls due on its day"
while read -r name day; do wants $name due $day; done <<END
months.plain 2026-06-30
months.clamped 2026-02-28
months.leap 2025-02-28
months.short 2026-02-28
hours.reached 2025-07-01
hours.ahead 2026-06-02
outings.three 2025-06-15
outings.each none
seasons.two 2026-10-15
seasons.past 2025-10-15
launch.counts 2027-04-15
launch.early 2026-04-15
first-day.early 2026-04-15
mid.counts 2026-07-15
mid.early 2025-07-15
haul.counts 2026-10-15
haul.early 2025-10-15
lay-up.counts 2026-10-15
both.months 2026-06-30
both.hours 2025-07-01
happening.none none
condition.none none
unknown.never none
END
wants hours.ahead "25 h.used" 20
wants hours.ahead "25 h.share" 0.8
wants both.hours "10 h.governs" yes
wants both.hours "3 years.governs" no
wants both.hours share 2
wants months.short past yes
wants months.plain past no
wants months.plain early 2026-06-30
wants months.plain late 2026-06-30
early=$(awk -F '\t' '$1 == "hours.ahead" && $2 == "early" { print $3 }' due.tsv)
late=$(awk -F '\t' '$1 == "hours.ahead" && $2 == "late" { print $3 }' due.tsv)
[ "$(printf '%s\n' "$early" 2026-06-02 "$late" | sort | tr '\n' ' ')" = "$early 2026-06-02 $late " ] ||
	fail "early $early, late $late"
run 0 sp due
grep -q 'ahead .* ~2 Jun 2026' out || fail "no ~ before a day that is about"
! grep -q '~30 Jun 2026' out || fail "a ~ before a day that is certain"
wants hours.first "first at 4 h.due" none
wants hours.first "100 h.used" 20

about "each stands at its opportunity"
while read -r name when by; do wants $name when $when; wants $name by $by; done <<END
months.plain this-season 2026-06-30
months.clamped before-launch 2026-04-15
hours.reached before-launch 2026-04-15
hours.ahead this-season 2026-06-02
outings.each each-outing none
launch.early before-launch 2026-04-15
launch.counts next-spring 2027-04-15
mid.counts this-season 2026-07-15
haul.counts lay-up 2026-10-15
place.layup lay-up 2026-10-15
place.spring next-spring 2027-04-15
place.later later 2030-06-01
place.out before-launch 2026-04-15
place.hose before-launch 2026-04-15
place.shop before-launch 2026-04-15
place.afloat first-day 2026-04-15
first-day.early first-day 2026-04-15
place.afloat-winter this-season 2026-10-15
condition.none on-condition none
happening.none on-condition none
unknown.never no-record none
END
wants place.out misfit no
wants place.afloat misfit yes
run 0 sp due
says "FIRST DAY AFLOAT, 15 Apr 2026"

about "in season, what is past due is for now where it is grave"
cp "$book" kept
run 0 sp season --launch 2026-04-15 --today 2026-04-16
export today=2026-06-20
add_task grave.wet --every "12 months" --cost sinks --where anywhere
add_task light.wet --every "12 months"
add_task grave.out --every "12 months" --cost sinks --where out
add_task light.out --every "12 months" --where out
for name in grave.wet light.wet grave.out light.out; do
	run 0 sp did $name --date 2025-06-10 --outcome "done"
done
expect_due grave.wet when now
expect_due light.wet when this-season
expect_due grave.out when now
expect_due grave.out misfit yes
add_task haul.out --every "13 months" --cost sinks --where out
run 0 sp did haul.out --date 2025-07-10 --outcome "done"
expect_due haul.out when mid-season-haul
expect_due haul.out by 2026-07-15
expect_due haul.out misfit yes
expect_due light.out when lay-up
expect_due light.out misfit yes
run 0 sp due
says "NOW, before the boat is used again"
says "A HAUL IN MID-SEASON, by 15 Jul 2026"
cp kept "$book"
export today=2026-03-01

about "a first service holds once"
echo 'fitting,what,fitted
engine/pump,pump,2025-05-20' >parts.csv
run 0 sp import parts parts.csv
run 0 sp plan --add pump.run-in --fitting engine/pump --rule inspection --first 4h --every "100 h" --source "own rule" "Run in"
expect_due pump.run-in due 2025-06-15
expect_due pump.run-in "first at 4 h.governs" yes
run 0 sp did pump.run-in --date 2025-07-10
expect_due pump.run-in "first at 4 h.due" none
expect_due pump.run-in "100 h.used" 10

about "what happened asks at once, and until it is done or, passed over, closed"
expect_due happening.none when on-condition
run 0 sp happening grounding --date 2026-02-20 "touched the bar"
expect_due happening.none when now
expect_due happening.none due 2026-02-20
run 0 sp did happening.none --date 2026-02-10
expect_due happening.none when now
run 0 sp did happening.none --date 2026-02-20
expect_due happening.none when on-condition
run 0 sp happening grounding --date 2026-02-25
expect_due happening.none when now
run 3 sp happening grounding --close
says_err "happening.none"
expect_due happening.none when now
run 3 sp happening grounding --skip happening.none
run 3 sp happening grounding --skip happening.none --reason " "
run 0 sp happening grounding --skip happening.none --reason "no time"
expect_due happening.none when now
run 0 sp happening grounding --close
expect_due happening.none when on-condition
run 3 sp happening grounding --close
run 3 sp happening sunk
says_err "sunk"
cp kept "$book"

about "what restarts a clock, and what does not"
run 0 sp plan --add look.pump --fitting engine/pump --rule inspection --every "12 months" --source "own rule" "Look"
run 0 sp plan --add new.pump --fitting engine/pump --rule renewal --verb renew --every "60 months" --source "own rule" "Renew"
run 0 sp plan --add test.plug --fitting engine --rule "done" --cost sinks --every "12 months" --source "own rule" "Test"
run 0 sp plan --add new.flare --fitting engine --rule printed-date --verb renew --every "42 months" --source "own rule" "Renew"
run 0 sp did look.pump --date 2025-01-10 --outcome good
expect_due look.pump last-done 2025-01-10
run 0 sp did look.pump --date 2025-02-10 --outcome bad
says "it stays due"
expect_due look.pump last-done 2025-01-10
for outcome in topped-up not-seen; do
	run 0 sp did test.plug --date 2025-02-10 --outcome $outcome
	says "it stays due"
	expect_due test.plug last-done none
done
run 0 sp did test.plug --date 2025-02-11 --outcome claimed
says "it stays due: a failure can sink"
expect_due test.plug when no-record
run 0 sp did months.plain --date 2025-08-01 --outcome claimed
says_not "stays due"
expect_due months.plain last-done 2025-08-01
run 0 sp did new.pump --date 2025-02-12 --outcome good
says "does not move the renewal"
expect_due new.pump last-done none
run 0 sp did new.pump --date 2025-03-12
says "renewed on 12 Mar 2025"
expect_due new.pump due 2030-03-12
expect_due look.pump last-done 2025-03-12
expect_due look.pump due 2026-03-12
run 0 sp did look.pump --date 2025-06-12
expect_due look.pump due 2026-06-12
expect_due new.pump due 2030-03-12
run 0 sp did new.flare --date 2025-05-01 --made 2024-06-15
expect_due new.flare due 2027-12-15
expect_due new.flare last-done 2024-06-15
run 0 sp did new.flare --date 2025-06-01
expect_due new.flare due 2028-12-01
expect_due new.flare estimated yes
run 0 sp did test.plug --date 2025-05-01 --estimated --outcome "done"
expect_due test.plug estimated yes
expect_due test.plug due 2026-05-01
run 0 sp due --all
says "~"

about "a renewal read from a file restarts the looking, too"
cp kept "$book"
run 0 sp plan --add look.pump --fitting engine/pump --rule inspection --every "12 months" --source "own rule" "Look"
run 0 sp plan --add new.pump --fitting engine/pump --rule renewal --verb renew --every "60 months" --source "own rule" "Renew"
printf 'task,date,outcome\nlook.pump,2025-01-10,good\nnew.pump,2025-03-12,renewed\n' >two.csv
run 0 sp import services two.csv
expect_due new.pump due 2030-03-12
expect_due look.pump due 2026-03-12

about "work is seen from its own day on"
expect_due look.pump last-done 2025-01-10 --at 2025-02-01
expect_due new.pump last-done none --at 2025-02-01
run 0 sp did new.pump --date 2025-11-12
expect_due new.pump due 2030-11-12
expect_due new.pump due 2030-03-12 --at 2025-11-01
expect_due look.pump due 2026-03-12 --at 2025-11-01

about "a task, a fitting or a design that this boat has not"
cp kept "$book"
run 0 sp plan months.plain --retire
says "(retired)"
run 1 due_of months.plain due
run 3 sp why months.plain
says_err "retired"
run 0 sp plan months.plain --restore
expect_due months.plain due 2026-06-30
printf 'name,fitting,title,verb,place,mechanism,consequence,rule,variants\n%s\n%s\n' \
	"pump.grease,engine/pump,Grease,grease,anywhere,none,wrecks,done,greasable" \
	"pump.swap,engine/pump,Swap,renew,anywhere,none,wrecks,renewal,sealed" >design.csv
run 0 sp import tasks design.csv
printf 'task,kind,amount,source\npump.grease,months,12,x\npump.swap,months,60,x\n' >design-limits.csv
run 0 sp import limits design-limits.csv
expect_due pump.grease when no-record
expect_due pump.swap when no-record
run 0 sp fitting engine/pump --variant sealed
run 1 due_of pump.grease when
expect_due pump.swap when no-record
run 0 sp did pump.swap --variant greasable --date 2026-02-01
expect_due pump.grease when no-record
run 1 due_of pump.swap when
run 3 sp fitting engine/pump --variant wooden
says_err "greasable, sealed"
run 0 sp fitting engine/pump --none
run 1 due_of pump.grease when
run 0 sp fitting engine/pump --fitted
expect_due pump.grease when no-record

about "an interval of the manual takes the place of the one shipped"
run 0 sp plan months.plain --every "6 months" --source "manual p. 41"
says "6 months (manual p. 41)"
expect_due months.plain due 2025-12-30
expect_due months.plain "6 months.standing" manual
run 3 sp plan months.plain --every "6 months"
says_err "--source is wanted"
run 0 sp plan months.plain --drop months
expect_due months.plain due none
run 3 sp plan months.plain --drop months
cp kept "$book"

about "up to a day"
names() { sp due --csv "$@" | sed 1d | cut -d, -f2 | sort; }
run 0 sp due --until launch --csv
mv out until.csv
for name in months.clamped launch.early place.out unknown.never; do
	grep -q ",$name," until.csv || fail "$name is not in the list until the launch"
done
for name in months.plain mid.counts haul.counts place.later outings.each condition.none; do
	! grep -q ",$name," until.csv || fail "$name is in the list until the launch"
done
names --until launch >launch.names
names --until mid-season >mid.names
names --until haul-out >haul.names
names >all.names
[ "$(comm -23 launch.names mid.names)$(comm -23 mid.names haul.names)$(comm -23 haul.names all.names)" = "" ] ||
	fail "a later day leaves something out"
grep -qx mid.counts mid.names || fail "until mid-season"
! grep -qx haul.counts mid.names || fail "until mid-season"
grep -qx haul.counts haul.names || fail "until haul-out"
names --until 2026-04-15 >day.names
same launch.names day.names
names --at lay-up >lay-up.names
names --at haul-out >haul-out.names
same haul-out.names lay-up.names
for wrong in nonsense 2026-13-01 5/6/26; do
	run 3 sp due --at $wrong
	says_err "--at"
	run 3 sp due --until $wrong
	says_err "--until"
done

about "the exit code tells of what is past due, when asked"
run 0 sp due
run 1 sp due --exit-code
run 1 sp due --exit-code --json
rm "$book"
new_plain
add_task only.one --every "12 months"
run 0 sp due --exit-code
run 0 sp did only.one --date 2025-03-02
run 0 sp due --exit-code
run 1 sp due --exit-code --at 2026-03-02
run 2 sp due --csv --json
cp kept "$book"

about "text, CSV and JSON tell of the same tasks"
run 0 sp due --all
fits 80
mv out due.txt
run 0 sp due --csv
mv out due.csv
run 0 sp due --json
mv out due.json
run 0 python3 -B "$here/due_forms.py" due.txt due.csv due.json
says "tasks in three forms"
run 0 sp --file demo.splitpin new --demo --today 2026-11-25
for at in 2026-11-25 launch mid-season haul-out 2020-07-01; do
	about "the demo's due list at $at: text, CSV and JSON"
	run 0 splitpin --today 2026-11-25 --file demo.splitpin due --all --at $at
	quiet
	fits 80
	mv out due.txt
	run 0 splitpin --today 2026-11-25 --file demo.splitpin due --csv --at $at
	mv out due.csv
	run 0 splitpin --today 2026-11-25 --file demo.splitpin due --json --at $at
	mv out due.json
	run 0 python3 -B "$here/due_forms.py" due.txt due.csv due.json
done
for task in $(splitpin --file demo.splitpin plan --names | awk 'NR % 20 == 1'); do
	about "why $task"
	code=0
	splitpin --today 2026-11-25 --file demo.splitpin why "$task" >out 2>err || code=$?
	[ $code -eq 0 ] || { [ $code -eq 3 ] && grep -q "not for this boat's design" err; } || fail "exit code $code"
	fits 80
done

about "without UTF-8 nothing is printed that is not ASCII"
for command in due "due --all" "due --at launch" "why bellows-ujoint.renew" plan fitting help "help due" history verify; do
	# shellcheck disable=SC2086  # a command and its words
	LC_ALL=C run 0 splitpin --today 2026-11-25 --file demo.splitpin $command
	[ "$(LC_ALL=C tr -d '\200-\377' <out | wc -c)" -eq "$(wc -c <out)" ] || fail "$command prints what is not ASCII"
done
