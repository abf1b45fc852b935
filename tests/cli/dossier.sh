#!/bin/sh
# The whole boat's story, and that of one fitting: nothing on record is passed over, what is not known is said, and a logbook
# that does not verify says so before all else.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python

# The lines of a dossier that say something, their blanks as one, without the feet of its pages.
bare() { tr '\f' '\n' <"$1" | tr -s ' ' | sed 's/^ //; s/ $//; /^$/d'; }

# dossier [OPTION...]: its text, without the feet, into out.
dossier()
{
	run 0 sp dossier "$@"
	grep -v 'page [0-9]* of [0-9]*$' out | tr -d '\f' >text && mv text out
}

about "a logbook of nothing but new gives an honest page"
run 0 sp new "Plain Jane" --kind jet --berth afloat --winter ashore --water fresh
dossier
fits
tells "Plain Jane: what is on record of the boat, 25 Nov 2026"
tells "This logbook verifies"
tells "Year built: nobody knows."
tells "before this log: nobody knows"
tells "no meter is on record"
tells "Nothing is on record: no season, no outing, no stay and nothing that happened."
tells "Nothing that was put on record as found is open."
tells "WHAT NOBODY KNOWS"
tells "What the engine main had run before this log."
tells "No record, and a failure can sink, burn or hurt:"
tells "Of 0 services on record"
tells "In all: no cost is on record."
tells "JOBS None is on record."
tells "SHEETS HANDED TO A YARD None is on record."
says_not "0.0 h on"
rm "$SPLITPIN_FILE"

about "everything that can be on record of a fitting is in its history, in order of time"
run 0 sp new --demo
echo picture >crack.jpg
bearing=drive/transom/gimbal-bearing
run 0 sp found $bearing "rough, growls in turns" --level hold --photo crack.jpg --by "Ann Other" --date 2026-11-20 --remark "on the hoist"
rough=$(sp found --list --csv | awk -F, '/rough/ { print $1 }')
run 0 sp ready --waive "$rough" --reason "greased at haul-out" --until 2026-12-24 --who "Ann Other"
run 0 sp season commissioning
n=$(sed -n 's/^ *\([0-9]*\) .*Grease the gimbal bearing.*/\1/p' out | head -n 1)
run 0 sp season commissioning --skip "${n:?}" --reason "no grease gun on board"
run 0 sp job start --template drive-off --date 2026-11-21 --who "Ann Other"
run 0 sp job --off "6 nuts 5/8 tray 2" --fitting $bearing
run 0 sp job --off "trim angle 3/8 in proud" --fitting $bearing
nuts=$(sp job --list --csv | awk -F, '/fastener,nuts/ { print $1 }')
run 0 sp job --back "$nuts" --count 5 --why "one was cracked"
run 0 sp did gimbal-bearing.renew --date 2026-11-22 --seen "turns smooth" --proof "grease seen" --by "Ann Other" \
	--cost "118.40 EUR" --number demo-9
run 0 sp found --mend "$rough" "new bearing" --date 2026-11-23
run 0 sp history --fitting gimbal-bearing
fits
tells "20 Nov 2026, found: rough, growls in turns; hold; Ann Other; photos: crack.jpg; on the hoist"
tells "let pass: rough, growls in turns; until 24 Dec 2026; because greased at haul-out; Ann Other"
tells "grease: passed over at commissioning; because no grease gun on board"
tells "job drive-off-2026, open"
tells "came off: 6 nuts 5/8 in; back 25 Nov 2026; 5 back: one was cracked"
tells "noted: trim angle, as found 3/8 in proud"
tells "22 Nov 2026, renew: renewed; seen: turns smooth; proof: grease seen; Ann Other; 118.40 EUR"
tells "22 Nov 2026, fitted: "
tells "taken out: gimbal bearing, greasable, demo-110"
tells "23 Nov 2026, mended: rough, growls in turns; left as new bearing"
tells "bearing-roughness 2 grade, stop: at grade 2 or above; finger, turned slowly; before: 1 grade on 7 Apr 2018"
tells "design put on record: greasable"
tells "; no proof"
run 0 sp history --fitting gimbal-bearing --csv
cp out story.csv
run 0 sp history --fitting gimbal-bearing --json
cp out story.json
run 0 python3 -B "$here/dossier_check.py" story story.csv story.json
run 2 sp history --fitting gimbal-bearing --limit 3
run 2 sp history --csv
run 2 sp history --fitting gimbal-bearing --csv --json
run 3 sp history --fitting no-such-thing

about "the dossier tells all of it, and its sums are those of the records"
run 0 sp found hull/bottom "blister by the keel" --level hold --by Bob
blister=$(sp found --list --csv | awk -F, '/blister/ { print $1 }')
run 0 sp ready --waive "$blister" --reason "dry so far" --until 2026-12-24 --who Bob
run 0 sp yard sheet.csv --task gimbal-bearing.grease
run 0 sp outing 2.5 --date 2026-11-01 --place "Ferryman's Gat"
run 0 sp undo
run 0 sp outing 2.5 --date 2026-11-02 --place "Ferryman's Gat"
run 0 sp outing 3.5 --date 2026-11-02 --instead-of "$(last_key outing)"
dossier
fits
for heading in "THE JOURNAL" "THE BOAT" ENGINES SEASONS "FOUND WRONG AND OPEN" "TO BE DONE" "WHAT NOBODY KNOWS" "PART OF THE BOAT: HULL" \
	"PART OF THE BOAT: DRIVE" JOBS "SHEETS HANDED TO A YARD" COSTS "HOW THIS LOGBOOK WAS KEPT"; do
	grep -qx "$heading" out || fail "no heading $heading"
done
tells "main: ~"
tells "before this log: 223.8 h"
tells "Season of 2018: launched 5 May 2018, hauled out 13 Oct 2018"
tells "hold: Bottom, found on 25 Nov 2026: blister by the keel"
tells "Let pass until 24 Dec 2026 by Bob: blister by the keel; because dry so far"
says_not "Let pass until 24 Dec 2026 by Ann Other"
tells "Mended: 1"
tells "strip-down list:"
tells "is back otherwise than found: one was cracked"
tells "not answered: line 1, gimbal-bearing.grease"
tells "Entries taken back and not brought back: 1."
tells "otherwise now than when it was entered: 1 outing."
tells "22 Nov 2026, renew: renewed"
cp out dossier.txt
run 0 sp export services
cp out services.csv
run 0 sp export outings
cp out outings.csv
run 0 python3 -B "$here/dossier_check.py" sums dossier.txt services.csv
run 0 python3 -B "$here/dossier_check.py" outings dossier.txt outings.csv

about "what was taken out of the stores counts as it does there, by the same years"
cp "$SPLITPIN_FILE" kept.splitpin
run 0 sp stores add "impeller, six vanes"
run 0 sp stores bought impeller 3 --price "100.00 EUR" --date 2026-11-01
run 0 sp stores took impeller 1 --for seawater-pump.renew
dossier
tells "2027: work 118.40 EUR, parts out of the stores 33.33 EUR"
mv kept.splitpin "$SPLITPIN_FILE"

about "every record of services and readings has its line"
run 0 sp export measurements
cp out measurements.csv
run 0 python3 -B "$here/dossier_check.py" whole dossier.txt services.csv measurements.csv

about "the last entry and its hash are what verify and history name"
run 0 sp verify
last=$(sed -n 's/^last entry \([0-9]*\), .*/\1/p' out) hash=$(sed -n 's/^last entry .* hash //p' out)
is "$(entries)" "$last" "the last entry"
grep -qxF "  $hash" dossier.txt || fail "the dossier has another hash"
run 0 sp history "$last"
says "hash $hash"

about "without names no name is left, in whatever field it stands; the same name is the same number"
run 0 sp stay afloat --date 2026-11-03 --until 2026-11-05 --place "Ferryman's Gat" "Ann Other towed Grey Heron there"
dossier --without-names
cp out nameless.txt
run 0 python3 -B "$here/dossier_check.py" names nameless.txt services.csv outings.csv "$demo/stays.csv"
cp nameless.txt out
for name in "Grey Heron" "Ann Other" tester "Ferryman's Gat" "Otter Bay" "Pelican Sound" "the yard" "behind the barn" helper "$(uname -n)"; do
	says_not "$name"
done
tells "person 1"
tells "towed the boat there"
tells "Left out: names of people, places and the boat."
tells "the names that the logbook knows are left out; others may stand in it."
says "owner"

about "without costs and without remarks neither is told"
dossier --without-costs
says_not "COSTS"
says_not "118.40"
tells "on the hoist"
dossier --without-remarks
says_not "on the hoist"
says_not "crack.jpg"
says_not "An invented boat"
tells "turns smooth"
tells "Left out: remarks, and names of photo files."

about "from a day on only what came then is told, and it says so"
dossier --since 2026-01-01
tells "Left out: what was before 1 Jan 2026."
says_not "Season of 2019"
tells "Season of 2026"
says_not "12 Mar 2022"
tells "Nothing since 1 Jan 2026 of:"
cp out late.txt
run 0 python3 -B "$here/dossier_check.py" sums late.txt services.csv 2026-01-01

about "wrong use is refused, and an existing file is not written over"
run 2 sp dossier --text - --pdf -
run 2 sp dossier --paper A5
run 3 sp dossier --since "some day"
echo mine >mine.txt
run 4 sp dossier --text mine.txt
tells_err "is not written over"
is mine "$(cat mine.txt)"
run 4 env SPLITPIN_MODULES="$test_dir/nowhere" "$SPLITPIN" --today "$today" dossier --pdf none.pdf
[ ! -e none.pdf ] || fail "a file is left"

about "a logbook that was tampered with says so first, and the exit code is 1"
cp "$SPLITPIN_FILE" sound.splitpin
run 0 python3 -B "$here/dossier_check.py" tamper "$SPLITPIN_FILE"
run 1 sp dossier
tells_err "does not verify"
head -n 2 out >first
grep -q "^THIS LOGBOOK DOES NOT VERIFY" first || fail "it does not say so first"
tells "It does not verify, as said above."
says_not "This logbook verifies"
tells "PART OF THE BOAT: DRIVE"
run 1 sp dossier --without-names
says_not "Ann Other"
cp sound.splitpin "$SPLITPIN_FILE"

about "names with odd letters, and remarks that steer a terminal, do no harm"
run 0 sp found hull/bottom "$(printf 'blister \033[31m by (the) keel.*')" --by 'A. (B) [C]*' --remark "$(printf 'a%.0s' $(seq 1 300))"
dossier
fits
run 0 sp dossier --without-names
says_not 'A. (B) [C]*'

SPLITPIN_MODULES=$top_builddir
export SPLITPIN_MODULES
[ -e "$SPLITPIN_MODULES/splitpin-pdf.so" ] || skip "the module is not built"
command -v pdftotext >/dev/null || skip "pdftotext is not installed"

# What fontconfig and Pango keep until the program ends is theirs.
printf 'leak:libfontconfig\nleak:libpango\nleak:libcairo\n' >leaks
export LSAN_OPTIONS="suppressions=$test_dir/leaks:print_suppressions=0${LSAN_OPTIONS:+:$LSAN_OPTIONS}"

about "the PDF says what the text says, on paper of that size"
for size in A4 Letter; do
	rm -f dossier.txt dossier.pdf
	run 0 sp dossier --text dossier.txt --pdf dossier.pdf --paper "$size"
	run 0 pdftotext -layout dossier.pdf from-pdf.txt
	bare dossier.txt >want
	bare from-pdf.txt >got
	same want got
	run 0 pdfinfo dossier.pdf
	case $size in A4) says "595 x 842 pts" ;; *) says "612 x 792 pts" ;; esac
done
