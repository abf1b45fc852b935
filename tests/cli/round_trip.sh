#!/bin/sh
# Export, then import into an empty logbook, gives an equal logbook: byte by byte for every table, in each form of the
# files; a second import adds nothing; and Python's csv module sees the same cells.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"

# The order in which each finds what it refers to.
order="boats engines meters fittings tasks limits rates parts stays seasons outings happenings services measurements places climates"

# new_empty FILE: a logbook that holds nothing.
new_empty()
{
	SPLITPIN_FILE=$test_dir/$1
	run 0 sp_bare new Nobody --kind jet
	run 0 sp undo
	is 1 "$(sp export boats | wc -l)" "boats and a header"
}

read_all()	# folder
{
	python3 -B "$here/cells.py" count "$1" >rows || fail "$1"
	for table in $order; do
		about "import of $1/$table.csv"
		rows=$(sed -n "s/^$table //p" rows)
		run 0 sp import $table "$1/$table.csv"
		says "$rows row"
		says "$rows new, 0 altered, 0 there already"
	done
}

read_again()	# folder
{
	for table in $order; do
		about "second import of $1/$table.csv"
		run 0 sp import $table "$1/$table.csv"
		says " 0 new, 0 altered, "
	done
}

need_python

about "the demo"
demo_book=$SPLITPIN_FILE
run 0 sp new --demo
everything exact
everything guarded --for-spreadsheet
everything comma --decimal-comma
everything both --for-spreadsheet --decimal-comma
run 0 sp due --all --at launch
mv out due.txt

about "Python's csv module sees the same cells"
run 0 python3 -B "$here/cells.py" holds exact "$demo"
run 0 python3 -B "$here/cells.py" same exact comma
run 0 python3 -B "$here/cells.py" guarded exact guarded

for form in exact guarded comma both; do
	new_empty "$form.splitpin"
	read_all $form
	about "what was read from $form files is exported again byte by byte"
	everything again-$form
	run 0 diff -r exact again-$form
	run 0 sp due --all --at launch
	same due.txt out
	[ $form = exact ] || continue
	read_again $form
	everything twice
	run 0 diff -r exact twice
	about "the files may come in any order of rows and columns, and without keys"
	for table in outings services stays; do
		python3 -B "$here/cells.py" shuffle exact/$table.csv shuffled.csv
		run 0 sp import $table shuffled.csv
		says " 0 new, 0 altered, "
	done
	run 0 sp verify
done

about "a row that is altered is corrected by its key"
SPLITPIN_FILE=$test_dir/exact.splitpin
sed 's/Otter Bay/Heron Bay/' exact/stays.csv >altered.csv
run 0 sp import stays altered.csv
says "0 new, 1 altered, 3 there already"
run 0 sp history "$(entries)"
tells 'was "Otter Bay'
run 0 sp undo
run 0 sp export stays
same exact/stays.csv out

about "two boats in one logbook"
SPLITPIN_FILE=$demo_book
run 0 sp boat "Second, \"the\" Boat" --kind petrol-sterndrive --berth afloat --water salt \
	--meter port=10 --meter starboard=20 --since 2026-11-01
second() { sp --boat "Second, \"the\" Boat" "$@"; }
run 0 second outing --hours port=1.5 --hours starboard=1:20 "=HYPERLINK(1)" --date 2026-11-20
run 0 second outing --meter port=12.5 --meter starboard=22 "two
lines, \"quoted\"; and more" --water salt --rinsed --date 2026-11-21
run 0 second outing --no-engine "rowed" --date 2026-11-22
run 0 second did port-gimbal-bearing.grease --engine port --meter 12.5 --proof "-fresh grease" --cost "EUR 12.50"
run 0 second did starboard-bellows-ujoint.renew --number "+1/2" --made 2026-01-15
run 0 second happening grounding "@home"
run 0 second stay ashore --date 2026-11-23
run 0 sp place "=Salt, \"the\" quay" --salinity "42 mS/cm at 18 C" --air c4 --water-temp "39 - 43 48 55 62 68 70 64 57 48 43 F"
run 0 sp place Otter Lake --water fresh --air-temp "-1.5 0 4 9 14 17 19 18 14 9 4 0"
run 0 second boat --place "=Salt, \"the\" quay"
run 0 second plan port-gimbal-bearing.grease --every "1:30:01 h" --source "manual p. 41"
rm -rf exact both again-exact again-both
everything exact
everything both --for-spreadsheet --decimal-comma
run 0 sp due --all
mv out due.txt
for form in exact both; do
	new_empty "two-$form.splitpin"
	read_all $form
	about "two boats, read from $form files, are exported again byte by byte"
	everything again-$form
	run 0 diff -r exact again-$form
	run 0 sp due --all
	same due.txt out
done
read_again exact
run 0 sp verify
says "sound"
