#!/bin/sh
# Damaged CSV files, and the same tables in other guises: what tests/data/demo/EXPECTED.tsv says comes of each.  All of
# a file is read in or nothing, and then the logbook is as it was, byte by byte.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
data=$top_srcdir/tests/data/demo
book=$SPLITPIN_FILE

# A logbook with the demo's boat and meters, one with its outings too, and what each table holds when it is read whole.
new_heron
run 0 sp import fittings "$demo/fittings.csv"
cp "$book" without-meter
run 0 sp import meters "$demo/meters.csv"
cp "$book" without-outings
run 0 sp import outings "$demo/outings.csv"
cp "$book" with-outings

base_for()
{
	case $1 in
	meters) echo without-meter ;;
	services) echo with-outings ;;
	*) echo without-outings ;;
	esac
}

# What a table holds, without the keys, which are drawn anew each time.
content() { sp export "$1" | sed -E 's/(^|,)[bcdfghjklmnpqrstvwxz]{16}(,|$)/\1KEY\2/g'; }

for table in outings services stays seasons happenings meters parts measurements; do
	cp "$(base_for $table)" "$book"
	content $table >"none.$table"
	run 0 sp import $table "$demo/$table.csv"
	content $table >"all.$table"
done

# unchanged BASE: byte by byte, so every table and the journal are as they were.
unchanged() { cmp -s "$1" "$book" || fail "the logbook was changed"; }

about "the damaged files of tests/data/demo"
tab=$(printf '\t')
while IFS=$tab read -r file code must; do
	about "import of $file"
	table=${file%%-*}
	base=$(base_for "$table")
	cp "$base" "$book"
	run "$code" sp import "$table" "$data/$file"
	cat out err >both
	rest=$must
	while [ -n "$rest" ]; do
		word=${rest%% & *}
		grep -qF -e "$word" both || fail "the message does not say: $word"
		[ "$word" = "$rest" ] && break
		rest=${rest#* & }
	done
	harmless both
	if [ "$code" -eq 3 ]; then
		unchanged "$base"
		grep -qF "nothing was read in" both || fail "the message does not say that nothing was read in"
		continue
	fi
	want=all
	case $file in *-header-only.csv) want=none ;; esac
	content "$table" >got
	same "$want.$table" got
done <"$data/EXPECTED.tsv"

about "an ambiguous date is refused with both readings"
cp with-outings "$book"
run 3 sp import outings "$data/outings-ambiguous-date.csv"
says_err "5 June 2018"
says_err "6 May 2018"
run 3 sp outing 1h --date 5/6/24
says_err "5 June 2024"
says_err "6 May 2024"
unchanged with-outings
