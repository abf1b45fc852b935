#!/bin/sh
# The stores: parts by any of their numbers, how old they are, who took them, and what to order by when.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python

# want_of ITEM FIELD [OPTION...]: one field of what is wanted of it, by CSV and by JSON, which must agree; nothing when none is.
want_of()
{
	want_item=$1 want_field=$2
	shift 2
	sp stores want --csv "$@" >want.csv && sp stores want --json "$@" >want.json || fail "stores want"
	python3 -B -c '
import csv, json, sys
item, field = sys.argv[1:]
row = next((r for r in csv.DictReader(open("want.csv", newline="")) if r["what"] == item and r["linked"] == "yes"), {})
line = next((w for w in json.load(open("want.json"))[0]["wanted"] if w["what"] == item), {})
for name, text in row.items():
    value = line.get(name)
    if name != "linked":
        assert str(value if value is not None else "") == text or float(text) == value, (name, text, value)
print(row.get(field, ""))' "$want_item" "$want_field"
}
# expect_want ITEM FIELD VALUE [OPTION...]
expect_want()
{
	want_is=$3 want_what="$1 $2"
	want_name=$1 want_column=$2
	shift 3
	is "$want_is" "$(want_of "$want_name" "$want_column" "$@")" "$want_what ($*)"
}
# day_less DAY DAYS
day_less() { python3 -c "from datetime import date, timedelta; print(date.fromisoformat('$1') - timedelta($2))"; }

run 0 sp new --demo

about "E24 numbers stay as typed, and an old one still finds the part"
run 0 sp stores add "bellows, U-joint" --number "RB-103@Quay Stores" --number "rb 103/A@Pier" --rubber --shelf 48 --lead 14
run 0 sp stores number bellows "RB-204@Quay Stores" --replaces RB-103
run 0 sp stores number bellows RB-305 --replaces RB-204
for old in RB-103 rb-103 RB-204 "RB 103/a" RB-305 "bellows joint"; do
	run 0 sp stores "$old"
	says "bellows, U-joint: none"
done
run 0 sp stores RB-103
says "RB-103 is superseded: RB-305 is current"
says "number RB-103 of Quay Stores, superseded: RB-305 is current"
says "number rb 103/A of Pier"
before=$(entries)
run 3 sp stores number bellows RB-103 --replaces RB-305
says_err "in a circle"
run 3 sp stores number bellows RB-999 --replaces RB-998
says_err 'has no number "RB-998"'
is "$before" "$(entries)" "entries after what was refused"

about "E24 two suppliers can have the same number for two things, and then it is asked which is meant"
run 0 sp stores add "gasket, thermostat" --number "RB-103@Pier"
run 3 sp stores RB-103
tells_err "gasket, thermostat"
tells_err "bellows, U-joint"
run 3 sp stores add washer --number "RB-103@Pier"
says_err "is already the number of gasket, thermostat"
run 3 sp stores washer
says_err "no item"

about "what lies where, and how old it is; rubber that is too old is told"
run 0 sp stores bought bellows 1 --price "61.80 EUR" --made 2021-09 --place "bow locker" --date 2026-03-01
run 0 sp stores bought bellows 2 --price "120,00 EUR" --made 2026-05 --supplier Pier --number "rb 103/A" --place shed
run 0 sp stores
says "bellows, U-joint: 3, 1 too old"
tells "1 on hand since 1 Mar 2026, made 2021-09, 62 months, may lie 48: too old, bow locker"
tells "rb 103/A, made 2026-05, 6 months, may lie 48, shed"
fits

about "work takes the oldest that is fresh, and what went in is known by its number and age"
run 0 sp did bellows-ujoint.renew --used bellows
tells "bellows, U-joint, out of the stores: 1, rb 103/A, made 2026-05"
run 0 sp stores
says "bellows, U-joint: 2, 1 too old"
run 0 sp export parts
grep 'bellows-ujoint,' out | grep -q 'rb 103/A' || fail "the part that went in has no number"
run 0 sp history --limit 1
run 0 sp undo
run 0 sp stores
says "bellows, U-joint: 3, 1 too old"

about "what is too old or not there is no part of any work before it is said to be sure, and then nothing is half recorded"
before=$(entries)
for how in bellows=3 bellows=4 "gasket"; do
	run 3 sp did bellows-ujoint.renew --used bellows --used "$how"
	tells_err "--yes takes it as it is"
done
run 3 sp did bellows-ujoint.renew --used "no such thing"
run 3 sp did bellows-ujoint.renew --used bellows=0
is "$before" "$(entries)" "entries after doubts"
run 0 sp stores
says "bellows, U-joint: 3, 1 too old"

about "a service put right takes what it takes now, not both"
run 0 sp did bellows-ujoint.renew --used bellows=2
run 0 sp stores
says "bellows, U-joint: 1, 1 too old"
key=$(sp did --list bellows-ujoint.renew | grep -oE '\[?[b-df-hj-np-tv-z]{16}' | tail -n 1 | tr -d '[')
run 0 sp did bellows-ujoint.renew --used bellows=1 --instead-of "$key"
run 0 sp stores
says "bellows, U-joint: 2, 1 too old"
run 0 sp verify
run 0 sp undo
run 0 sp undo

about "E23 a part ordered wrong goes back: of what is too old first, and for no boat"
run 0 sp stores took bellows 1 --for "returned: the wrong side"
tells "made 2021-09"
run 0 sp stores bellows
says "1 taken: returned: the wrong side, 61.80 EUR"
run 0 sp stores took bellows 1 --for "returned: the wrong side" --back
run 3 sp stores took bellows 1 --for "returned: the wrong side" --back
says_err "less than 1 bellows, U-joint was taken"

about "a job takes what it needs by its name"
run 0 sp job start --template drive-off
run 0 sp stores took bellows 1 --for drive-off-2026
sp export jobs >jobs.out
run 0 sp export taken
job=$(awk -F, '/,drive-off-2026,/ { print $1 }' jobs.out)
grep -q ",$job," out || fail "no taking of the job"
run 0 sp stores bellows
says "1 taken for Grey Heron: drive-off-2026, 60.00 EUR"
run 0 sp undo

about "before a job it is told what is there for it and where, and what lies ready"
run 0 sp stores need mounting-gasket.renew bellows 2
run 0 sp job --carry
says "OUT OF THE STORES"
tells "2 bellows, U-joint: 1 on hand since 1 Mar 2026, made 2021-09, 62 months, may lie 48: too old, bow locker; 2 on hand"
fits
run 0 sp stores took bellows 1 --for drive-off-2026
run 0 sp job --carry
tells "2 bellows, U-joint: taken for this job: 1; 1 on hand"
run 0 sp stores took bellows 1 --yes
run 0 sp stores need mounting-gasket.renew bellows 3
run 0 sp job --carry
tells "taken for this job: 1; TOO FEW, none on hand that is not too old"
for _ in 1 2 3 4; do run 0 sp undo; done

about "what the work of a job takes is of the service and of the job, and is put right with it"
run 2 sp job --done mounting-gasket.renew --done coupler.grease --used bellows
run 2 sp job --carry --used bellows
before=$(entries)
run 3 sp job --done mounting-gasket.renew --used bellows=9
tells_err "--yes takes it as it is"
is "$before" "$(entries)" "entries after a doubt"
power_cut job --done mounting-gasket.renew --used bellows
taken_of() { sp export taken | awk -F, -v job="$job" '$6 == job && $7 != "" { n++; day = $3; some += $4 } END { print n + 0, day, some + 0 }'; }
is "1 $today 1" "$(taken_of)" "taken by the job's service"
key=$(last_key did mounting-gasket.renew)
run 3 sp did mounting-gasket.renew --instead-of "$key" --date 2026-01-10
tells_err "came in on"
run 0 sp did mounting-gasket.renew --instead-of "$key" --used bellows=2
is "1 $today 2" "$(taken_of)" "taken by the service put right"
run 2 sp did mounting-gasket.renew --instead-of "$key" --used bellows --used none
run 0 sp did mounting-gasket.renew --instead-of "$key" --used none
is "0  0" "$(taken_of)" "taken by a service that took nothing"
run 0 sp stores
says "bellows, U-joint: 3, 1 too old"
run 0 sp undo
is "1 $today 2" "$(taken_of)" "taken as before"
run 0 sp stores took bellows 1 --for mounting-gasket.renew --back
is "2 $today 1" "$(taken_of)" "taken and put back"
run 3 sp stores took bellows 1 --for coupler.grease --back
says_err "less than 1 bellows, U-joint was taken for that"
run 0 sp verify
for _ in 1 2 3; do run 0 sp undo; done

about "E23 what is bought by its number is of that number, and a remark keeps what it fits"
run 0 sp stores bought RB-305 1 --remark "fits serials from 1998 on; left side" --price "9.99 EUR" --supplier "Quay Stores"
run 0 sp stores bellows
tells "1 came in, RB-305, Quay Stores, 9.99 EUR, fits serials from 1998 on; left side"
run 0 sp undo

about "E25 what is in the shoebox is summed up by year, each currency by itself, with the receipt's words"
run 0 sp stores add "plug, drain"
run 0 sp stores bought plug 1 --price "1.10 EUR" --date 2019-05-01 --remark "receipt 17, shoebox"
run 0 sp stores bought plug 1 --price "2.20 EUR" --date 2019-12-31 --remark "receipt 18, shoebox"
run 0 sp stores bought plug 1 --price "4.40 CAD" --date 2019-07-01
run 0 sp stores bought plug 1 --date 2019-08-01
run 0 sp stores costs --by year --csv
says "2019,EUR,0.00,3.30,3.30,"
says "2019,CAD,0.00,4.40,4.40,"
run 0 sp stores costs --by year
says "1 lot has no price, and is in no sum."
run 0 sp stores costs --by year --json
python3 -m json.tool out >/dev/null || fail "costs --json"
run 0 sp stores plug
says "receipt 17, shoebox"
for _ in 1 2 3 4 5; do run 0 sp undo; done

about "what the coming opportunity needs, less what is there and fresh by then; ordered in time"
by=$(due_of bellows-ujoint.renew early)
run 0 sp stores need bellows-ujoint.renew bellows 3
expect_want "bellows, U-joint" on-hand 3
expect_want "bellows, U-joint" too-old 1
expect_want "bellows, U-joint" quantity 1
expect_want "bellows, U-joint" needed "$by"
expect_want "bellows, U-joint" order-by "$(day_less "$by" 14)"
expect_want "bellows, U-joint" tasks bellows-ujoint.renew
run 0 sp stores want
tells "1 bellows, U-joint"
tells "for bellows-ujoint.renew"
fits
# Fresh today, and too old on the day that it is needed.
run 0 sp stores set bellows --shelf 7
expect_want "bellows, U-joint" too-old 3
expect_want "bellows, U-joint" quantity 3
run 0 sp stores
says "bellows, U-joint: 3, 1 too old"
run 0 sp undo

about "what is ordered is not wanted again, and what arrived is there"
run 0 sp stores ordered bellows 1
run 0 sp stores
tells "1 to come, expected 9 Dec 2026"
expect_want "bellows, U-joint" quantity ""
run 0 sp stores arrived bellows --price "60.00 EUR" --made 2026-10 --place shed
run 3 sp stores arrived bellows
says_err "nothing of bellows, U-joint is to come"
run 0 sp stores
says "bellows, U-joint: 4, 1 too old"

about "several tasks need one item: the first day counts, and what is on condition is only perhaps"
run 0 sp stores need bellows-exhaust.renew bellows 2
expect_want "bellows, U-joint" quantity 2
expect_want "bellows, U-joint" perhaps 0
run 0 sp stores need retainers.renew bellows 1 --on-condition
expect_want "bellows, U-joint" quantity 2
expect_want "bellows, U-joint" perhaps 1
expect_want "bellows, U-joint" needed $today	# the retainers are due now
expect_want "bellows, U-joint" order-by "$(day_less $today 14)"
run 0 sp stores want
tells "! 2, perhaps 1 bellows, U-joint"
tells "order now"
run 0 sp stores need retainers.renew bellows 0
run 3 sp stores need retainers.renew bellows 0
says_err "there is nothing to take away"

about "how long it takes to come is not known: no day is guessed"
run 0 sp stores need thermostat.test gasket 1
expect_want "gasket, thermostat" quantity ""	# nobody needs it before the launch
expect_want "gasket, thermostat" quantity 1 --until lay-up
expect_want "gasket, thermostat" order-by "" --until lay-up
run 0 sp stores want --until lay-up
tells "how long it takes to come is not known"
run 0 sp stores add impeller --keep 2 --lead 5
expect_want impeller quantity 2
expect_want impeller order-by ""

about "tasks that want something nobody linked an item to stand apart"
run 0 sp stores want
tells "steering.cable-grease: marine grease"
says_not "bellows-exhaust.renew: "
run 2 sp stores want --csv --json
run 2 sp stores want --price 3

about "a count is held against what was there that day"
run 0 sp stores bought impeller 5 --date 2026-11-01
run 0 sp stores took impeller 1 --date 2026-11-20
run 0 sp stores count impeller 5 --date 2026-11-10
says "as on record"
run 0 sp stores count impeller 3
says "1 missing, taken off the record"
run 0 sp stores
says "impeller: 3, to keep 2"

about "each command is wholly recorded or not at all, wherever the power fails"
power_cut stores add "hose, raw water" --unit m --number H-1@Quay --number H-2@Pier
power_cut stores number hose H-3@Quay --replaces H-1
power_cut stores bought hose 2.5 --price "10.01 EUR"
power_cut stores took hose 3 --yes
power_cut did bellows-exhaust.renew --used bellows=2 --used impeller
run 0 sp verify

about "all of it is written out and read in again, just so"
names="items numbers lots taken needs"
for name in $names; do sp export $name >"$name.csv"; done
for name in $names; do
	run 0 sp import $name "$name.csv"
	sp export $name >"$name.again"
	same "$name.csv" "$name.again"
done

about "the list, and what is wanted, is read by other programs"
sp stores --json >list.json && python3 -m json.tool list.json >/dev/null || fail "stores --json"
sp stores --csv >list.csv
python3 -B - <<-'END' || fail "the list as CSV and as JSON differ"
	import csv, json, sys
	rows, objects = list(csv.DictReader(open("list.csv"))), json.load(open("list.json"))
	same = [(r["what"], float(r["quantity"]), r["place"] or None) for r in rows] == [
	    (o["what"], o["quantity"], o.get("place")) for o in objects]
	sys.exit(not (same and len(rows) > 3))
END

about "another logbook has the same stores, replaced numbers too"
run 0 sp export everything handed-over
run 0 sp --file other.splitpin new --from handed-over
sp --file other.splitpin stores --csv | cut -d , -f 1-11 >other.csv
sp stores --csv | cut -d , -f 1-11 >own.csv
same own.csv other.csv
run 0 sp --file other.splitpin stores RB-204
tells "RB-204 is superseded: RB-305 is current"

about "what is ordered too late for the work covers no need"
run 0 sp stores add "belt, late" --lead 10
run 0 sp stores need belts.renew "belt, late"
run 0 sp stores ordered "belt, late" 1 --expected 2036-12-01
run 0 sp stores want --until 2036-11-30
tells "ordered, but too late for that: 1"

about "what can not have been is refused, and nothing is recorded"
run 0 sp stores add cap --number Z9@Quay
run 0 sp stores bought cap 2 --date 2026-11-10
run 0 sp stores took cap 1 --date 2026-11-12
before=$(entries)
run 3 sp stores took cap 1 --back --date 2020-01-01
says_err "less than 1 cap was taken"
run 3 sp stores bought cap 1 --price "-5.00 EUR"
says_err "a price is not below nothing"
for numbers in "--number Z8 --number Z8" "--number Z8@Quay --number z8@quay" "--number @" "--number @Quay"; do
	run 3 sp stores add dup $numbers
done
says_err '"@Quay" is no number'
run 3 sp stores number cap @Quay --replaces Z9
run 3 sp stores count cap 1 --date 2030-01-01
says_err "lies ahead of today"
run 3 sp stores ordered cap 1 --date 2026-11-20 --expected 2026-11-19
says_err "before it was ordered"
run 3 sp stores took cap 1 --for bellows-ujoint.renw
says_err "is bellows-ujoint.renew meant?"
is "$before" "$(entries)" "entries after what was refused"
run 0 sp stores took cap 1 --for spare --yes

about "a count keeps its remark whatever it finds, and a late order is said to be late"
run 0 sp stores count cap 4 --remark "under the berth"
run 0 sp stores cap
tells "found, not on record before: under the berth"
run 0 sp stores ordered cap 1 --date 2026-09-01 --expected 2026-10-01
run 0 sp stores cap
tells "1 to come, overdue since 1 Oct 2026"

about "a need keeps its quantity and condition when only named again"
run 0 sp stores need belts.renew cap 3 --on-condition
run 0 sp stores need belts.renew cap
says "belts.renew needs 3 of cap, when it is found bad"

about "names and places stand on one line, and what is not to be kept is empty in the list"
run 0 sp stores add "$(printf 'two\nlines')"
run 0 sp stores bought "two lines" 1 --place "$(printf 'shed\nleft')"
run 0 sp stores --csv
says "shed left,,"
run 0 sp export everything all-of-it
run 0 sp --file restored.splitpin new --from all-of-it
