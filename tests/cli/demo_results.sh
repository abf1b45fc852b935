#!/bin/sh
# The demo's engine hours and due dates against tests/demo/independent.py, which works them out from the same files
# in another way: hours as differences of the meters' curve, calendar dates by python-dateutil.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python
python3 -c 'import dateutil' 2>/dev/null || skip "python3-dateutil is not installed"
catalogue=$test_dir/petrol-sterndrive
independent=$top_srcdir/tests/demo/independent.py
run 0 python3 -B "$top_srcdir/tests/demo/union.py" "$top_srcdir/share/catalogue" petrol-sterndrive petrol "$catalogue"

run 0 sp new --demo

about "the engine's hours, in all and season by season"
run 0 python3 -B "$independent" --hours "$catalogue" "$demo"
mv out hours.tsv
run 0 sp due
says "main ~$(sed -n 's/^total	//p' hours.tsv) h"
run 0 sp export outings outings.csv
run 0 sp export seasons seasons.csv
run 0 python3 -B "$here/demo_results.py" seasons hours.tsv outings.csv seasons.csv
says "8 seasons agree"

# On the day the demo ends, in the middle of a season, in one that nobody wrote down, and on a launch day to come.
for day in 2026-11-25 2023-08-12 2020-07-01 2027-04-15; do
	about "hours since, and calendar due dates, as of $day"
	run 0 python3 -B "$here/demo_results.py" until $day "$demo" "demo-$day"
	run 0 python3 -B "$independent" "$catalogue" "demo-$day" $day
	mv out wanted.tsv
	run 0 sp due --at $day --json
	mv out due.json
	run 0 python3 -B "$here/demo_results.py" due wanted.tsv due.json
	says "tasks agree"
	cat out
done

about "why says the same as the list"
run 0 sp due --at launch --json
mv out due.json
for task in bellows-ujoint.renew gimbal-bearing.grease lubrication.change seawater-pump.renew alignment.measure; do
	run 0 sp why $task --at launch --json
	mv out why.json
	run 0 python3 -B "$here/demo_results.py" why due.json why.json
	says "agrees"
done
