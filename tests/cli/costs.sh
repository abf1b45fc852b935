#!/bin/sh
# What things cost, to the cent: Python's decimal comes to the same sums by season, by fitting, by engine hour and by year.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python

sums() { run 0 python3 -B "$here/costs.py" "$@"; }
out_of() { for out_name in "$@"; do sp export "$out_name" >"$out_name.out" 2>err || fail "export of $out_name"; done; }

about "a lot's price is shared out to the cent, whatever was taken of it, lost or put back"
for seed in 1 2 3; do
	rm -f "$SPLITPIN_FILE"
	run 0 sp new --demo
	printf 'what,unit\nplug,\nhose,m\nbellows,\n' >items.csv
	run 0 sp import items items.csv
	out_of items
	sums lots $seed
	run 0 sp import lots lots.csv
	out_of lots services
	sums taken $seed
	run 0 sp import taken taken.csv
	out_of boats seasons outings tasks taken
	for by in season fitting hour year; do
		run 0 sp stores costs --by $by --csv
		mv out costs-$by.csv
	done
	sums check
	run 0 sp verify
done

about "the shares of a lot that is used up are its price, the odd cents going to who was first"
rm -f "$SPLITPIN_FILE"
run 0 sp new --demo
run 0 sp stores add plug
run 0 sp stores bought plug 3 --price "10.00 EUR"
for _ in 1 2 3; do run 0 sp stores took plug 1; done
run 0 sp stores plug
is "3.34 3.33 3.33" "$(awk '/ taken for / { printf "%s%s", sep, $(NF - 1); sep = " " }' out)" "shares of ten by three"

about "currencies are never added up, and a taking without a price is told, not counted as nothing"
run 0 sp stores bought plug 1 --price "5.00 USD"
run 0 sp stores took plug 1
run 0 sp stores bought plug 1
run 0 sp stores took plug 1
run 0 sp stores costs --csv
says "2027,EUR,0.00,10.00,10.00,0.00,"
says "2027,USD,0.00,5.00,5.00,0.00,"
run 0 sp stores costs
says "1 taking has no price, and is in no sum."

about "a season without hours has no price of an hour"
run 0 sp stores costs --by hour --csv
tr -d '\r' <out | grep -q '^2027,EUR,.*,0,$' || fail "an hour of no hours has a price"

about "what was thrown away or sent back is in no sum of the boat's"
run 0 sp stores bought plug 1 --price "7.77 EUR"
run 0 sp stores took plug 1 --for "returned: the wrong thread"
run 0 sp stores costs --csv
says "2027,EUR,0.00,10.00,10.00,7.77,"

about "the sum by receipts has what was bought, used or not, in the year that it came"
run 0 sp stores bought plug 4 --price "8.01 EUR" --date 2020-12-31
run 0 sp stores costs --by year --csv
says "2020,EUR,0.00,8.01,8.01,"
says "2026,EUR,0.00,17.77,17.77,"

about "money that can't be meant is refused and changes nothing"
before=$(entries)
for bad in "12.345 EUR" "1,234.5 EUR" "EUR" "12 EURO" "1e5 EUR" "10000000000.01 EUR"; do
	run 3 sp stores bought plug 1 --price "$bad"
done
is "$before" "$(entries)" "entries after refused prices"
run 0 sp verify
