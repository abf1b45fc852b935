#!/bin/sh
# Readings that can hardly be right are questioned with the likely right figure, and taken with --yes, never altered;
# meters that are replaced, reset or dead; several engines; hours that nobody knows; and what corrections do to the sums.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
export today=2026-08-01
book=$SPLITPIN_FILE

# doubt WORDS OUTING-ARGUMENT...: questioned with these words, and the logbook left as it was.
doubt()
{
	doubt_words=$1
	shift
	cp "$book" kept
	run 3 sp outing "$@"
	tells_err "$doubt_words"
	says_err "--yes takes it as it is"
	same kept "$book"
}

about "an ordinary log raises no question"
new_plain
for row in 2026-05-03=102.4 2026-05-10=104.0 2026-05-17=106.1 2026-05-24=108.4; do
	run 0 sp outing --meter ${row#*=} --date ${row%=*}
	quiet
done
says "24 May 2026  main  2.3 h, now 108.4 h"
total 108.4

about "a slip of the pen is questioned with what was probably meant"
doubt "Is it 110.5" --meter 1105 --date 2026-05-31
doubt "more than there are" --meter 1105 --date 2026-05-31
doubt "110.5" --meter 101.5 --date 2026-05-31
doubt "backwards" --meter 101.5 --date 2026-05-31
doubt "the meter showed 108.4 h before" --meter 101.5 --date 2026-05-31
doubt "splitpin meter" --meter 101.5 --date 2026-05-31
doubt "Is it 2.4" 24h --date 2026-05-31
doubt "in 1 day, more than there are" 26h --date 2026-05-31
doubt "are usual" --meter 148.4 --date 2026-05-31
run 0 sp outing --meter 110,5 --date 2026-05-31
says "2.1 h, now 110.5 h"
cp "$book" ordinary

about "--yes takes it as it is"
run 0 sp outing 26h --date 2026-06-01 --yes
says "26 h, now 136.5 h"
run 0 sp undo
run 0 sp outing --meter 1105 --date 2026-06-07 --yes
says "now 1105 h"
run 0 sp undo
run 0 sp outing --meter 101.5 --date 2026-06-07 --yes
says "0 h, now 110.5 h"
run 0 sp outing --list
says "101.5 h"

about "what was taken once is not questioned again"
run 0 sp outing --meter 103.5 --date 2026-06-14
says "2 h, now 112.5 h"
run 0 sp outing 1h --date 2026-06-15
total 113.5

about "much, but possible: a word, no question"
cp ordinary "$book"
run 0 sp outing 9h --date 2026-06-01
says "9 h, now 119.5 h"

about "several outings on one day count in the order in which they were written down"
for start in ordinary ordinary ordinary; do	# keys are drawn anew each time
	cp $start "$book"
	run 0 sp outing --meter 112.5 --date 2026-06-01
	run 0 sp outing 0.5h --date 2026-06-01
	run 0 sp outing 0.5h --date 2026-06-01
	run 0 sp outing --meter 114.0 --date 2026-06-01
	says "0.5 h, now 114 h"
	run 0 sp outing 0.5h --date 2026-06-01
	says "0.5 h, now 114.5 h"
	total 114.5
done

about "a meter that was replaced"
cp ordinary "$book"
run 0 sp meter --replaced 0 --date 2026-06-05
says "meter replaced on 5 Jun 2026, showing 0 h; the engine has 110.5 h"
run 0 sp outing --meter 1.5 --date 2026-06-06
says "1.5 h, now 112 h"
doubt "the meter showed 1.5 h before" --meter 0.5 --date 2026-06-07
run 0 sp meter
lines 2
run 3 sp meter --replaced 0 --date 2026-06-01
says_err "2026-06-05"
run 0 sp outing --meter 110.9 --date 2026-06-01
says "now 112"
total 112.4

about "a meter recorded as replaced after outings were logged"
cp ordinary "$book"
run 0 sp outing 2h --date 2026-06-08
run 0 sp meter --replaced 3.0 --date 2026-06-05
says "the engine has 110.5 h"
total 112.5
run 0 sp outing --meter 6.0 --date 2026-06-09
says "1 h, now 113.5 h"
cp ordinary "$book"
run 0 sp outing --meter 112.5 --date 2026-06-08
run 3 sp meter --replaced 0 --date 2026-06-05
says_err "2026-06-08"
total 112.5

about "a meter that was reset, or dead"
cp ordinary "$book"
run 0 sp meter --reset 500 --date 2026-06-05
run 0 sp outing --meter 502 --date 2026-06-06
says "2 h, now 112.5 h"
run 0 sp meter --estimated 502 --date 2026-06-10
run 0 sp outing 3h --estimated --date 2026-06-11
says "now 115.5 h"
total "~115.5"
run 0 sp undo
run 0 sp undo
total 112.5

about "a log that begins earlier than it did"
cp ordinary "$book"
run 0 sp meter --first 90 --date 2023-06-01
total "~110.5"
run 0 sp outing --list
says "not logged"
run 0 sp outing --meter 95 --date 2023-07-01
says "5 h, now 110.5 h"
run 3 sp meter --first 95 --date 2023-08-01
run 3 sp outing --meter 89 --date 2023-05-01

about "hours typed between readings leave less for the next reading"
cp ordinary "$book"
run 0 sp outing 1h --date 2026-06-01
run 0 sp outing --meter 113.5 --date 2026-06-02
says "2 h, now 113.5 h"
run 0 sp outing --meter 112.0 --date 2026-06-01 "found on a slip of paper"
total 113.5

about "a correction is counted through to the end"
key=$(sp outing --list | awk '/2026-06-01  main  1 h/ { print $1 }')
run 0 sp outing 0.5h --date 2026-06-01 --instead-of "$key"
total 113.5
key=$(sp outing --list | awk '/113.5 h/ { print $1 }')
run 0 sp outing --meter 114.5 --date 2026-06-02 --instead-of "$key"
total 114.5
run 0 sp outing --drop "$key"
total 112

about "a correction that moves an outing to another meter's days"
cp ordinary "$book"
run 0 sp outing 1h --date 2026-06-01 "moves"
run 0 sp outing --meter 114.5 --date 2026-06-02
run 0 sp meter --replaced 0 --date 2026-06-10
run 0 sp outing --meter 2 --date 2026-06-12
total 116.5
key=$(sp outing --list | awk '/moves/ { print $1 }')
run 0 sp outing 1h --date 2026-06-13 "moves" --instead-of "$key"
total 117.5
run 0 sp outing --list
says "2026-06-02  main  4 h  114.5 h"

about "work with a reading above what the log tells"
cp ordinary "$book"
add_task oil.change --verb change --every "100 h"
run 0 sp did oil.change --meter 113.0 --date 2026-06-02
says "done on 2 Jun 2026 at 113 h"
tells "2.5 h that no outing tells of"
total "~113"
run 0 sp outing --list
says "2.5 h  113 h  estimated  not logged"
run 0 sp undo
total 110.5
run 3 sp did oil.change --meter 1130 --date 2026-06-02
tells_err "Is it 113"

about "work with a reading below what the meter showed at the end of the day"
run 0 sp outing --meter 113.5 --date 2026-06-01
run 0 sp did oil.change --meter 112.0 --date 2026-06-01
says "at 112 h"
run 0 sp export services
says ",112,1.5,"
run 0 sp outing --meter 115.5 --date 2026-06-03
expect_due oil.change "100 h.used" 3.5
run 3 sp did oil.change --meter 105 --date 2026-06-01
says_err "backwards"

about "a renewal that is corrected leaves one part"
run 0 sp plan --add pump.renew --fitting engine/pump --verb renew --rule renewal --every "24 months" --source "own rule" Renew
run 0 sp did pump.renew --date 2026-05-20 --number RB-204 --made 2026-01-15
expect_due pump.renew last-done 2026-05-20
key=$(last_key did)
run 0 sp did pump.renew --date 2026-05-22 --number RB-205 --instead-of "$key"
expect_due pump.renew last-done 2026-05-22
run 0 sp export parts
lines 2
says "RB-205,2026-05-22,,"
run 0 sp did pump.renew --date 2026-05-22 --outcome good --instead-of "$key"
expect_due pump.renew last-done none

about "two engines with two meters, and a generator without"
rm "$book"
run 0 sp_bare new Twin --kind jet --meter port=100 --meter starboard=200.5 --engine generator --since 2026-05-01
run 0 sp outing 2h --date 2026-05-02
says "port  2 h, now 102 h"
says "starboard  2 h, now 202.5 h"
says_not generator
run 0 sp outing --meter port=105 --meter starboard=204.5 --date 2026-05-03
says "port  3 h, now 105 h"
says "starboard  2 h, now 204.5 h"
run 0 sp outing --hours generator=1h30 --date 2026-05-03
run 0 sp outing --no-engine --date 2026-05-04 "rowed"
total 105 port
total 204.5 starboard
total 1.5 generator
cp "$book" twin
for wrong in "--meter 106" "--meter main=106" "--meter generator=2" "--hours port=1 --hours port=2" "--hours port=1 --hours 2" \
	"--meter port=1060 --meter starboard=205" "--meter port=106 --meter starboard=104" "--hours port"; do
	about "outing $wrong, with two engines"
	cp twin "$book"
	# shellcheck disable=SC2086  # options
	run 3 sp outing $wrong --date 2026-05-05
	same twin "$book"
done
cp twin "$book"
run 3 sp meter --replaced 0
says_err "which engine?"
run 0 sp meter --replaced 0 --engine port --date 2026-05-06
run 0 sp outing --meter port=1 --meter starboard=205.5 --date 2026-05-07
says "port  1 h, now 106 h"

about "a trip of two engines is corrected, and dropped, as one"
cp twin "$book"
trips() { sp export outings | sed 1d | wc -l | tr -d ' '; }
is 6 "$(trips)" "rows"
for engine in port starboard; do
	about "a trip corrected by the key of its $engine row"
	cp twin "$book"
	key=$(sp outing --list | awk -v e=$engine '$2 == "2026-05-02" && $3 == e { print $1 }')
	run 0 sp outing 3h --date 2026-05-02 --instead-of "$key"
	is 6 "$(trips)" "rows"
	total 105 port
	about "a trip dropped by the key of its $engine row"
	cp twin "$book"
	run 0 sp outing --drop "$key"
	is 4 "$(trips)" "rows"
done
run 0 sp verify

about "hours that nobody knows"
rm "$book"
run 0 sp_bare new Unknown --kind jet --since 2026-05-01
run 0 sp outing 2h --date 2026-05-02
says "main  2 h"
says_not "now"
run 0 sp due
says "main 2 h logged"
run 3 sp outing --meter 50 --date 2026-05-03
says_err "splitpin meter"
rm "$book"
run 0 sp_bare new Guess --kind jet --hours 400 --estimated --since 2026-05-01
run 0 sp outing 2h --date 2026-05-02
total "~402"
rm "$book"
run 0 sp_bare new Swapped --kind jet --meter 50 --hours 450 --since 2026-05-01
run 0 sp outing --meter 52 --date 2026-05-02
says "2 h, now 452 h"
run 0 sp verify
says "sound"
