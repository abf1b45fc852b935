#!/bin/sh
# What owners complain about or get wrong, first part: work done twice, unseen, early, by others, or not known when.  Each
# block is one case of a list of 48 and asserts what must happen.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python
book=$SPLITPIN_FILE
new_heron --variant drive/transom/gimbal-bearing=greasable
cp "$book" kept
afresh() { cp kept "$book"; }

about "E2 greased twice: both are kept, and who did it before is said"
run 0 sp did gimbal-bearing.grease --date 2026-10-01 --by "Yard Hand"
says_not "done already"
run 0 sp outing 4.2h --date 2026-10-05
run 0 sp did gimbal-bearing.grease --date 2026-10-20 --by Owner --proof "12 strokes, fresh grease seen"
tells "done already on 1 Oct 2026 by Yard Hand, 4.2 h ago; both are kept"
run 0 sp did --list gimbal-bearing.grease
is 2 "$(grep -c gimbal-bearing.grease out)" services
says "Yard Hand"
says "Owner"
run 0 sp verify

about "E2 after a month and ten hours it is no repeat; the older of the two may come in last"
afresh
run 0 sp did gimbal-bearing.grease --date 2026-06-01 --by Owner
run 0 sp outing 11h --date 2026-06-10 --yes
run 0 sp did gimbal-bearing.grease --date 2026-08-01 --by Owner
says_not "done already"
run 0 sp did gimbal-bearing.grease --date 2026-07-28 --by Yard
tells "done again on 1 Aug 2026 by Owner, 0 h later"
run 0 sp did gimbal-bearing.grease --date 2026-11-20 --outcome not-seen
says_not "done already"
run 0 sp did bellows.inspect --date 2026-11-20
run 0 sp did bellows.inspect --date 2026-11-21
says_not "done already"
afresh
run 0 sp did gimbal-bearing.grease --date 2025-04-20
run 0 sp did gimbal-bearing.grease --date 2026-04-20
says_not "done already"	# lay still for a year: by the calendar, no repeat

about "E3 grease that was not seen coming out restarts nothing; a sealed bearing has no grease task"
afresh
run 0 sp did gimbal-bearing.grease --date 2026-05-01
expect_due gimbal-bearing.grease last-done 2026-05-01
run 0 sp did gimbal-bearing.grease --date 2026-06-01 --outcome not-seen
tells "it stays due: fresh grease seen coming out of the bearing"
expect_due gimbal-bearing.grease last-done 2026-05-01
run 0 sp fitting drive/transom/gimbal-bearing --variant sealed
run 3 sp why gimbal-bearing.grease
says_err "not for this boat's design"
! sp due --all | grep -q "Gimbal bearing: grease" || fail "a sealed bearing is to be greased"

about "E22 the yard fitted another design: it is asked for, and the tasks follow"
afresh
run 0 sp did gimbal-bearing.renew --date 2026-05-01 --by Yard
tells "if another went in: --variant"
run 0 sp did gimbal-bearing.renew --date 2026-05-01 --by Yard --variant sealed
run 3 sp why gimbal-bearing.grease

about "E4 what was really used stays on record with its batch; an adhesive is only what the manual names"
afresh
run 0 sp plan bellows-ujoint.renew
tells "an adhesive only if the manual names one"
run 0 sp did bellows-ujoint.renew --date 2026-05-01 --seen "no adhesive; clamps dry, batch B-7"
run 0 sp did --list bellows-ujoint.renew
says "batch B-7"

about "E5 bellows of unknown age: neither zero nor never, first on the survey, roughly known from both ends"
afresh
expect_due bellows-ujoint.renew when no-record
expect_due bellows-ujoint.renew last-done none
run 0 sp due --survey
tells "sinks bellows-ujoint.renew"
run 0 sp why bellows-ujoint.renew
tells "Unknown is neither zero nor never"
run 0 sp did bellows-ujoint.renew --date 2016..2018 --estimated --by "seller" --proof "mould date felt"
tells "between 1 Jan 2016 and 31 Dec 2018"
expect_due bellows-ujoint.renew early 2021-01-01
expect_due bellows-ujoint.renew past yes

about "E11 only a year, and told: it counts from the earliest credible day, and what was told is looked at first"
afresh
run 0 sp did bellows-ujoint.renew --date 2023 --by "last owner" --estimated
expect_due bellows-ujoint.renew early 2028-01-01
expect_due bellows-ujoint.renew late 2028-12-31
run 0 sp did bellows.inspect --date 2026-10-01 --outcome claimed --by "last owner"
expect_due bellows.inspect when no-record

about "E12 years of paper in one evening: the day of the work, not of the entry"
afresh
printf 'task,date,outcome,who\nbellows-ujoint.renew,2015-03-01,renewed,Yard\nbellows-ujoint.renew,2019-03-01,renewed,Yard\nlubrication.change,2024-10-10,done,Owner\n' >paper.csv
run 0 sp import services paper.csv
expect_due bellows-ujoint.renew last-done 2019-03-01
expect_due lubrication.change last-done 2024-10-10
run 0 sp history --limit 1
says "import of services"
! sp export services | grep -q "$today" || fail "something was done today"

about "E12 a renewal written down late went out when the next one went in"
afresh
run 0 sp did bellows-ujoint.renew --date 2020-03-01
run 0 sp did bellows-ujoint.renew --date 2015-03-01
expect_due bellows-ujoint.renew last-done 2020-03-01
sp export parts | python3 -c '
import csv, sys
p = {r["fitted"]: r["removed"] for r in csv.DictReader(sys.stdin) if r["fitting"] == "drive/transom/bellows-ujoint"}
assert p == {"2015-03-01": "2020-03-01", "2020-03-01": ""}, p
' || fail "the bellows of 2015 did not leave in 2020"

about "E16 early or late, the real day restarts: neither drift nor compounding"
afresh
add_task test.yearly --every "12 months"
run 0 sp did test.yearly --date 2024-05-01
run 0 sp did test.yearly --date 2025-03-10
expect_due test.yearly due 2026-03-10
run 0 sp did test.yearly --date 2026-06-20
expect_due test.yearly due 2027-06-20

about "E17 a look that found it good never moves the renewal"
afresh
run 0 sp did bellows-ujoint.renew --date 2020-03-01
run 0 sp did bellows.inspect --date 2026-10-01 --seen "soft, no crack"
run 0 sp did bellows-ujoint.renew --date 2026-10-01 --outcome good
tells "it stays due: a look that found it good does not move the renewal"
expect_due bellows-ujoint.renew last-done 2020-03-01
expect_due bellows-ujoint.renew past yes

about "E18 what was left undone stays due, season after season, and is never done by itself"
afresh
run 0 sp did bellows.inspect --date 2024-04-10
for day in 2026-11-25 2027-11-25 2028-11-25; do
	expect_due bellows.inspect past yes --at $day
	expect_due bellows.inspect last-done 2024-04-10 --at $day
done

about "E21 the yard's paper says serviced: claimed, task by task; what can sink, burn or hurt is looked at"
afresh
for task in bellows.inspect lubrication.change gear-oil.change; do
	run 0 sp did $task --date 2026-10-10 --outcome claimed --by "Yard, serviced drive"
done
expect_due bellows.inspect when no-record
expect_due lubrication.change last-done 2026-10-10
run 0 sp did bellows.inspect --date 2026-10-12 --outcome claimed
tells "it stays due: a failure can sink, burn or hurt: what was only claimed is looked at first"

about "E23 a part by its number as typed, with the date printed on it and its price; none is shipped"
afresh
run 0 sp did bellows-ujoint.renew --date 2026-05-01 --number RB-204 --made 2026-01-01 --cost "EUR 85.00"
sp export parts >parts.csv
grep -q ',RB-204,2026-05-01,,2026-01-01,' parts.csv || fail "the part is not as it was typed"
sp export services | grep -q '85.00,EUR' || fail "the price is lost"

about "E26 no torque is shipped: the owner types the manual's"
! grep -riE '[0-9] ?(ft-lb|lb-ft|lbf|in-lb|nm|n·m|newton)' "$top_srcdir/share/catalogue" >shipped || {
	cat shipped >out
	fail "a torque in the catalogue"
}
afresh
run 0 sp figure
says_nothing
run 0 sp why propeller.recheck
tells "How tight, the maker's manual says"

about "E26 two sources for one figure: both are kept, and that they differ is shown wherever they stand"
afresh
run 0 sp figure drive/propeller torque 60 ft-lb --source "manual p. 41"
says_not differs
run 0 sp figure drive/propeller torque 100 ft-lb --source "page on the web, another drive"
tells "torque 100 ft-lb (136 N·m) (page on the web, another drive); differs from manual p. 41"
tells "Both are kept."
run 0 sp figure drive/propeller
is 2 "$(tr -s ' \n' '  ' <out | grep -o 'differs from' | wc -l | tr -d ' ')" "lines that differ"
run 0 sp why propeller.recheck
tells "manual p. 41: torque 60 ft-lb (81 N·m); page on the web, another drive: torque 100 ft-lb (136 N·m)"
tells "The sources differ on torque: the manual of this very design holds."
run 3 sp figure drive/propeller torque --drop
tells_err "--source says which"
run 0 sp figure drive/propeller torque --drop --source "page on the web, another drive"
run 0 sp figure
tells "torque 60 ft-lb (81 N·m) (manual p. 41)"
says_not differs
run 0 sp figure drive/propeller torque 65 ft-lb --source "manual p. 41"
run 0 sp figure
lines 1
run 0 sp verify

about "E27 what was filled in by type and quantity; another type is told, and mixing by a top-up too"
afresh
run 0 sp did lubrication.change --date 2025-10-10 --filled "mineral 15W-40, 4.2 L"
says_not "do not mix"
run 0 sp did lubrication.change --date 2026-10-10 --filled "Mineral  15W-40, 4 qt"
says_not "do not mix"
run 0 sp did lubrication.level --date 2026-10-20 --outcome topped-up --filled "synthetic 5W-30, 0.5 L"
tells "last time it was Mineral 15W-40, 4 qt (10 Oct 2026): do not mix types; drain fully"
tells "a top-up restarts nothing"
sp export parts >parts.csv
grep -q '"fluid: mineral 15W-40, 4.2 L",,2025-10-10,2026-10-10' parts.csv || fail "the old oil is not out"
run 3 sp did gimbal-bearing.grease --filled "blue grease"
says_err "no work on a fluid"
run 3 sp did lubrication.level --filled "mineral 15W-40"
says_err "topped-up is meant"

about "E27 a fluid is no part that another task counts from"
afresh
run 0 sp fitting engine/cooling --variant closed
run 0 sp did cooling.coolant-change --date 2026-10-10 --filled "type A, 8 L"
expect_due cooling.exchanger-anode when no-record
run 0 sp undo
run 0 sp verify

about "E32 the trailer is part of the boat; a tyre counts from the date printed on it"
afresh
run 0 sp did tyres.renew --date 2026-04-01 --made 2021-11-22
expect_due tyres.renew due 2026-11-22
expect_due tyres.renew fails hurts
run 0 sp due --survey
tells "hurts hubs.grease"

about "E39 a notice of the maker is a remark of a happening"
afresh
run 0 sp happening other "maker's notice: look at the fuel hose clamps" --date 2026-09-01
run 0 sp happening --list
says "maker's notice"

about "E40 hit in July, forgotten by October: what it asks for stays due until it is done and closed"
afresh
run 0 sp did boat.after-grounding --date 2026-05-01
run 0 sp happening grounding "log at the river mouth" --date 2026-07-10
expect_due boat.after-grounding when now
expect_due boat.after-grounding when now --at 2027-04-01
run 0 sp did boat.after-grounding --date 2026-10-20
expect_due boat.after-grounding when on-condition

about "E41 a steering cable is greased drawn in, and that stands where the work is asked for"
afresh
run 0 sp why steering.cable-grease
tells "cable drawn in"
tells "To heed: Greased with the ram out it can lock the steering."
