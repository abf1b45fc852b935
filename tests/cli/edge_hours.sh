#!/bin/sh
# What owners complain about or get wrong, second part: meters, hours that nobody knows, two engines, two waters, seasons and
# dates.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python
book=$SPLITPIN_FILE
new_plain
cp "$book" kept
afresh() { cp kept "$book"; }

about "E6 hours are a timeline of meters: replaced, reset and misread, and the total stays right"
afresh
run 0 sp outing --meter 104 --date 2026-05-01
run 3 sp outing --meter 98 --date 2026-05-10
says_err "would be backwards"
run 0 sp meter --replaced 0 --date 2026-05-20
run 0 sp outing --meter 3 --date 2026-06-01
total 107
run 0 sp meter --reset 10 --date 2026-06-10
run 0 sp outing --meter 12 --date 2026-06-20
total 109
run 0 sp verify

about "E6 more than 24 hours a day cannot be; what was a guess stays one in every sum"
afresh
run 3 sp outing 26h --date 2026-05-01
says_err "more than there are"
run 0 sp outing 14h --date 2026-05-02 --yes
run 3 sp outing 12h --date 2026-05-02
says_err "26.0 h in 1 day, more than there are"
run 0 sp undo
run 0 sp outing 3h --date 2026-05-01 --estimated
run 0 sp outing 2h --date 2026-05-10
total "~105"

about "E7 no meter, hours unknown: by the calendar alone, and no figure that nobody knows"
rm "$book"
run 0 sp new "Old Tub" --kind petrol-sterndrive --engine main --built 1975
run 0 sp did lubrication.change --date 2026-05-01
run 0 sp due --all
says "main hours unknown"
says_not "main 0 h"
run 0 sp why lubrication.change
tells "What this engine has run is not known: the calendar alone counts."
says_not "h run since"
says_not "h a day"
expect_due lubrication.change last-done 2026-05-01
sp why lubrication.change --json | python3 -c '
import json, sys
t = json.load(sys.stdin)[0]
hours = [x for x in t["limits"] if x["kind"] in ("hours", "first-hours")]
assert hours and all(x[k] is None for x in hours for k in ("used", "rated", "share", "due")), hours
assert any(x["kind"] == "months" and x["due"] for x in t["limits"]), t
' || fail "a figure of hours that nobody knows"
sp due --csv | grep lubrication.change >line
! grep -q '0\.0' line || fail "a figure of hours in the CSV"

about "E7 as soon as hours are logged they count, and the total is still not claimed"
run 0 sp outing 5h --date 2026-06-01
run 0 sp due
says "main 5 h logged"
run 0 sp why lubrication.change
tells "5.0 h run since: 5 % of 100.0 h"

about "E8 two engines with hours of their own: a trip of one ages the tasks of that one"
rm "$book"
run 0 sp new Twin --kind jet --engine port --engine starboard --built 2010
printf 'path,title,engine\nport,Port engine,port\nstarboard,Starboard engine,starboard\n' >fittings.csv
run 0 sp import fittings fittings.csv
for side in port starboard; do
	run 0 sp plan --add $side.oil --fitting $side --every "10 h" --source "own rule" --verb change "Change the oil"
	run 0 sp did $side.oil --date 2026-05-01
done
run 0 sp outing port=12 --date 2026-06-01 --yes
expect_due port.oil past yes
expect_due starboard.oil past no

about "E9 one salt trip of a lake boat brings on what salt wears, and nothing else"
rm "$book"
run 0 sp new Lake --kind jet --berth trailer --winter trailer --water fresh --launch 04-15 --haul-out 10-15 --meter 10 --since 2026-01-01
for wear in corrosion fluid; do
	run 0 sp plan --add $wear.look --fitting engine --source "own rule" --every "36 months" --mechanism $wear "Look"
	run 0 sp did $wear.look --date 2026-06-01
done
run 0 sp outing 2h --date 2026-06-10
lake=$(due_of corrosion.look due) fluid=$(due_of fluid.look due)
run 0 sp outing 2h --date 2026-07-10 --water salt --not-rinsed
salt=$(due_of corrosion.look due)
[ "$(printf "%s\n%s\n" "$salt" "$lake" | sort | head -n 1)" = "$salt" ] && [ "$salt" != "$lake" ] || fail "due $salt after salt, $lake without"
expect_due fluid.look due "$fluid"

about "E19 a year in the shed stops the hours, and neither rubber nor dates"
afresh
add_task rubber.renew --every "12 months" --mechanism rubber
add_task oil.hours --every "10 h"
run 0 sp did rubber.renew --date 2025-06-01
run 0 sp did oil.hours --date 2025-06-01
run 0 sp stay ashore --date 2025-06-02
expect_due oil.hours past no
expect_due rubber.renew past yes

about "E20 the day of laying up is the boat's own"
for haul_out in 09-20 11-30; do
	rm "$book"
	run 0 sp new North --kind petrol-sterndrive --launch 04-15 --haul-out $haul_out --berth afloat --winter ashore --meter 10
	run 0 sp did lubrication.change --date 2026-05-01
	expect_due lubrication.change due 2026-$haul_out --at 2026-06-01
done
rm "$book"
run 0 sp new South --kind petrol-sterndrive --launch 01-01 --haul-out 12-31 --berth afloat --winter afloat --meter 10
run 0 sp due

about "E35 29 February, the end of the year, and a date that two read otherwise"
afresh
add_task leap.look --every "12 months"
run 0 sp did leap.look --date 2024-02-29
expect_due leap.look due 2025-02-28
run 3 sp did leap.look --date 2025-02-29
says_err "29"
run 3 sp did leap.look --date 5/6/24
says_err "2024-05-06"
says_err "2024-06-05"
run 0 sp did leap.look --date 13/5/2026
run 0 sp did --list leap.look
says 2026-05-13
run 3 sp did leap.look --date 6.5.26
says_err "write 2026-05-06 or 2026-06-05"
run 0 splitpin --today 2026-12-31 --who tester outing 1h
run 0 splitpin --today 2027-01-01 --who tester outing 1h --date yesterday
run 0 splitpin --today 2027-01-01 --who tester outing 1h
run 0 sp export outings
is 2 "$(grep -c ,2026-12-31, out)" "outings on the last day of the year"
is 1 "$(grep -c ,2027-01-01, out)" "outings on the first"

about "E35 the day is the same in every time zone"
for zone in Pacific/Kiritimati UTC Etc/GMT+12; do
	TZ=$zone run 0 sp due --json
	cp out "zone-$(echo $zone | tr / -)"
done
same zone-UTC zone-Pacific-Kiritimati
same zone-UTC zone-Etc-GMT+12

about "E44 a used boat on its first day: what nobody knows is one survey, the worst first, not a list all red"
rm "$book"
run 0 sp new Used --kind petrol-sterndrive --meter 612.4 --built 1998
run 0 sp due
says "SURVEY: nobody knows when it was last done"
! grep -q '^!' out || fail "something is overdue that nobody knows of"
[ "$(wc -l <out)" -lt 60 ] || fail "the first page is $(wc -l <out) lines"

about "E45 at the ramp an outing is hours, water and any trouble, in one line without a question"
run 0 sp outing 2.5h "hard to shift into reverse" --water salt </dev/null
lines 1
run 0 sp outing --list
says "hard to shift into reverse"

about "E48 two gauges of one engine: the log's meter is the master, and the other is a reading beside it"
rm "$book"
new_heron
run 0 sp measure second-meter 212.0 h --date 2026-05-01 --method "engine computer"
tells "11.8 h below the log's own meter, which has 223.8 h"
total 223.8
run 0 sp outing --meter 233.8 --date 2026-06-01
run 0 sp measure second-meter 222.1 h --date 2026-06-02 --method "engine computer"
tells "11.7 h below the log's own meter, which has 233.8 h; on 1 May 2026 it was 11.8 h below"
says_not "drift"
run 0 sp outing --meter 253.8 --date 2026-06-20 --yes
run 0 sp measure second-meter 239.7 h --date 2026-06-21 --method "engine computer"
tells "They drift apart: 2.3 h in 30.0 h run, so one of the two counts wrong"
run 0 sp measure second-meter 253.9 h --date 2026-06-22 --method "helm gauge"
says_not "drift"
total 253.8
run 0 sp outing --list
lines 2
run 3 sp measure second-meter 12 V
says_err "write 598.2 h"

about "E47 nought is a value, and what is unknown is left empty"
rm "$book"
run 0 sp new Fresh --kind jet --engine port --hours starboard=0
run 0 sp due
says "port hours unknown"
says "starboard 0 h"
says_not "starboard 0 h logged"
sp export engines >engines.csv
grep -q ',port,,' engines.csv || fail "unknown hours are not empty"
grep -q ',starboard,0,' engines.csv || fail "nought is lost"
