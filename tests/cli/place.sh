#!/bin/sh
# Places: what a meter or a hydrometer shows becomes a salinity and a water, contradictions and slips are refused with what
# would be right, and stays, outings and boats that name a place get what is known of it.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
book=$SPLITPIN_FILE

# no CODE WORDS PLACE-ARGUMENT...: refused with these words, and the logbook left as it was.
no()
{
	no_code=$1 no_words=$2
	shift 2
	cp "$book" kept
	run "$no_code" sp place "$@"
	tells_err "$no_words"
	same kept "$book"
}

about "a logbook begins without places"
new_plain
run 0 sp place
says_nothing

# 31.692 PSU: PSS-78 of 42 mS/cm at 18 C; the published rows are in tests/logbook/test_place.c.
about "a conductivity becomes a salinity, and its water follows"
run 0 sp place "town mooring" --salinity "42 mS/cm at 18 C" --air c4 --water-temp "4 4 6 9 13 17 20 21 18 14 9 6"
tells "town mooring: salt, 31.7 PSU, air c4"
tells "the salinity was read as 42 mS/cm at 18 C"
tells "water in C, January to December: 4 4 6 9 13 17 20 21 18 14 9 6"
fits
mv out told
run 0 sp place town mooring
same told out
run 0 sp export places
says "town mooring,salt,31.692,42 mS/cm at 18 C,c4,"

about "a hydrometer, a compensated meter, a word alone"
run 0 sp place sound --salinity "1.018 at 15 C"
tells "sound: brackish, 22.4 PSU"
run 0 sp place lake --salinity "480 uS/cm compensated" --air-temp "30 32 41 50 59 64 68 66 57 48 39 32 F"
tells "lake: fresh, 0.232 PSU"
tells "air in C, January to December: -1.11 0 5 10 15 17.8 20 18.9 13.9 8.89 3.89 0"
run 0 sp place yard --water none --air c3
tells "yard: water not known, air c3"
run 0 sp place
lines 4
fits
run 0 sp place --names
printf 'lake\nsound\ntown mooring\nyard\n' >names
same names out

about "slips are refused with what would be right"
no 3 "salt contradicts 22.4 PSU, which is brackish" sound --water salt
no 3 "fresh contradicts 12 PSU, which is brackish" sound --water fresh --salinity "12 ppt"
no 3 '"knots" is left over: write a salinity such as 18 PSU' sound --salinity "12 knots"
no 3 "at what temperature of the water?" sound --salinity "42 mS/cm"
no 3 "of what? write a salinity" sound --salinity 18
no 3 "are uS/cm meant?" sound --salinity "42000 mS/cm at 18 C"
no 3 "0 to 45 PSU" sound --salinity "50 PSU"
no 3 "--water-temp: 11 numbers: twelve are wanted" sound --water-temp "4 4 6 9 13 17 20 21 18 14 9"
no 3 "degrees Fahrenheit are written with F behind them" sound --water-temp "39 39 43 48 55 62 68 70 64 57 48 43"
no 3 "is no class of air" sound --air c9
no 3 'no place is called "lkae": is "lake" meant?' lkae
no 3 "a place wants a name" " " --water salt
no 2 "which place?" --water salt
no 2 "--drop stands alone" lake --drop --water salt

about "looking at a place records nothing"
cp "$book" kept
run 0 splitpin place lake --today 2026-11-25 --who someone
run 0 sp place
same kept "$book"

about "an outing at a known place is in its water, unless another is said"
run 0 sp outing 2h --place "town mooring" --date 2026-07-01
says "in salt water, as that place has"
run 0 sp outing 2h --place "town mooring" --water fresh --date 2026-07-02
says_not "as that place has"
run 0 sp outing 2h --place yard --date 2026-07-03
says_not "as that place has"
run 0 sp export outings
says ",salt,,,"
is 1 "$(grep -c ',salt,' out)" "outings in salt water"

about "a boat lies at a place, and one afloat takes its water"
run 3 sp boat --place "town moring"
says_err 'is "town mooring" meant?'
run 0 sp boat --place "town mooring"
tells "Plain Jane lies at town mooring"
tells "its usual water is salt now, as that place has; it was fresh"
run 0 sp boat
tells "afloat in salt water, town mooring"
run 0 sp due --all

about "a stay and a boat follow a new name, and hold the place"
run 0 sp stay afloat --place sound --date 2026-08-01 --until 2026-08-08
run 0 sp place sound --rename "the sound"
tells "the sound: brackish"
run 0 sp stay --list
tells "the sound"
no 3 'there is a place "lake" already' "the sound" --rename lake
no 3 "this place can't be removed while it has: stays (1)" "the sound" --drop
no 3 "boats (1)" "town mooring" --drop
no 3 "no place is called" sound --drop

about "what no stay and no boat names goes, with its months, and comes back by undo"
run 0 sp export climates
mv out months
run 0 sp place lake --drop
run 3 sp place lake
run 0 sp export climates
is 13 "$(wc -l <out)" "months of the one place left, and the header"
run 0 sp undo
run 0 sp place lake
tells "lake: fresh"
run 0 sp export climates
same months out
run 0 sp verify

about "a month that is no longer known goes"
run 0 sp place lake --air-temp "- 0 5 10 15 17.8 20 18.9 13.9 8.89 3.89 0"
run 0 sp export climates
is 24 "$(wc -l <out)" "eleven and twelve months and the header"
run 0 sp place lake --air-temp none
run 0 sp export climates
is 13 "$(wc -l <out)" "twelve months and the header"
run 0 sp undo

about "exported and imported it is the same"
sp export places >places.csv
sp export climates >climates.csv
sp export boats >boats.csv
SPLITPIN_FILE=$test_dir/other.splitpin
run 0 sp_bare new Nobody --kind jet
run 0 sp undo
run 0 sp import boats boats.csv
run 0 sp import places places.csv
run 0 sp import climates climates.csv
for table in boats places climates; do
	run 0 sp export $table
	same $table.csv out
	run 0 sp import $table $table.csv
	says " 0 new, 0 altered"
done
run 0 sp verify

about "a hand-made file is held to the same rules"
printf 'name,water,salinity\nfjord,,31\n' >in.csv
run 0 sp import places in.csv
run 0 sp place fjord
tells "fjord: salt, 31 PSU"
printf 'name,water\nfjord,fresh\n' >in.csv
run 3 sp import places in.csv
says_err "fresh contradicts 31 PSU"
printf 'name,salinity\nfjord,46\n' >in.csv
run 3 sp import places in.csv
says_err "0 to 45 PSU"
printf 'place,month,water\nfjord,13,4\n' >in.csv
run 3 sp import climates in.csv
says_err "month: it is 1 to 12"
printf 'place,month,water\nfjord,1,44\n' >in.csv
run 3 sp import climates in.csv
says_err "-2 to 40 C"
printf 'place,month,water\nnowhere,1,4\n' >in.csv
run 3 sp import climates in.csv
says_err 'no place is called "nowhere"'
printf 'place,month,water,air\nfjord,1,4,\nfjord,2,5,-1\n' >in.csv
run 0 sp import climates in.csv
says "2 new"
printf 'place,month,air\nfjord,1,-2\n' >in.csv
run 0 sp import climates in.csv
says "0 new, 1 altered"
run 0 sp place fjord
tells "water in C, January to December: 4 5 - -"
tells "air in C, January to December: -2 -1 - -"
