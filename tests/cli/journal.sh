#!/bin/sh
# The journal: undo and redo from run to run, what a correction keeps, proof that the file is whole, backups, and two
# writers at once.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
book=$SPLITPIN_FILE

new_plain
add_task pump.look --every "10 h" --rule inspection
remarks() { sp export outings | sed 1d | sed 's/.*,//; s/\r$//' | tr '\n' ' '; }

about "undo and redo from run to run"
for place in one two three; do
	run 0 sp outing 1h "$place" --date 2026-05-01
	everything "after-$place"
done
is "one two three " "$(remarks)"
run 0 sp undo
says "taken back: outing 2026-05-01: 1 h, three"
everything undone-three
run 0 diff -r after-two undone-three
run 0 sp undo
says "taken back: outing 2026-05-01: 1 h, two"
is "one " "$(remarks)"
run 0 sp redo
says "brought back: outing 2026-05-01: 1 h, two"
is "one two " "$(remarks)"
run 0 sp redo
says "brought back: outing 2026-05-01: 1 h, three"
everything redone-three
run 0 diff -r after-three redone-three
cp "$book" kept
run 3 sp redo
[ -s err ] || fail "no message"
same kept "$book"

about "a new entry clears what redo would bring back"
run 0 sp undo
run 0 sp outing 2h four --date 2026-05-02
run 3 sp redo
is "one two four " "$(remarks)"
run 0 sp undo
says "four"
run 0 sp undo
says "two"
run 0 sp redo
run 0 sp redo
is "one two four " "$(remarks)"

about "undo stops at the beginning"
cp "$book" kept
for turn in 1 2 3 4 5 6 7 8 9; do
	sp undo >out 2>err || break
done
run 3 sp undo
[ -s err ] || fail "no message"
run 0 sp verify
says "sound"
run 3 sp outing 1h
[ "$turn" -lt 9 ] || fail "more was undone than there was"
for turn in 1 2 3 4 5 6 7 8 9; do
	sp redo >out 2>err || break
done
is "one two four " "$(remarks)"
run 0 sp verify
cp kept "$book"

about "what changes nothing makes no entry"
count=$(entries)
for command in due "due --json" "why pump.look" "plan pump.look" plan fitting boat history verify "outing --list" meter \
	"export outings" yard help; do
	about "no entry by $command"
	cp "$book" kept
	# shellcheck disable=SC2086  # a command and its words
	run 0 sp $command
	same kept "$book"
done
run 3 sp outing 1h --date 2027-01-01
run 3 sp did pump.look --date 2027-01-01
run 0 sp import fittings fittings.csv --dry-run
is "$count" "$(entries)" "entries"

about "a correction keeps the old in the history"
key=$(sp outing --list | awk '/four/ { print $1 }')
run 0 sp outing 2.5h five --date 2026-05-02 --place "the bay" --instead-of "$key"
is "one two five " "$(remarks)"
run 0 sp history --limit 1
says "outing corrected, 2026-05-02: 2.5 h, five"
number=$(awk '{ print $1 }' out)
run 0 sp history "$number"
tells "altered"
tells "hours 2.5 h, was 2 h"
tells 'remark "five", was "four"'
tells 'place "the bay", was nothing'
run 0 sp did pump.look --date 2026-05-03 --seen "all well"
key=$(last_key did)
run 0 sp did pump.look --date 2026-05-03 --outcome bad --seen "cracked" --instead-of "$key"
run 0 sp did --list
lines 1
says "cracked"
run 0 sp history "$((number + 2))"
tells "outcome bad, was good"
tells 'seen "cracked", was "all well"'
run 0 sp history "$((number + 1))"
tells 'seen "all well"'
run 0 sp outing --drop "$(sp outing --list | awk '/five/ { print $1 }')"
is "one two " "$(remarks)"
run 0 sp history "$(entries)"
tells "taken out"
tells 'remark "five"'
run 0 sp undo
is "one two five " "$(remarks)"
run 3 sp outing 1h --instead-of bcdfghjklmnpqrst
run 3 sp outing 1h --instead-of 17
says_err "sixteen letters"
run 3 sp outing --drop bcdfghjklmnpqrst
run 3 sp did pump.look --instead-of bcdfghjklmnpqrst
run 3 sp history 999
is "one two five " "$(remarks)"

about "an entry says who"
run 0 sp --who "Anna B" outing 1h six --date 2026-05-04
run 0 sp history --limit 1
says "Anna B"
run 0 sp history --limit 2
lines 2

about "verify"
run 0 sp verify
says "sound"
quiet
need_python
cp "$book" kept
places=$(python3 -B "$here/flip.py" "$book" "the bay")
[ "$places" -ge 2 ] || fail "the text stands in $places places: in a row, and in the journal"
place=0 rows=0
while [ "$place" -lt "$places" ]; do
	about "a bit flipped in place $place"
	cp kept "$book"
	python3 -B "$here/flip.py" "$book" "the bay" "$place"
	sp verify >out 2>err
	code=$?
	is 1 $code "exit code"
	tells "keep this file, and go on from a backup that verifies"
	! grep -q 'the file says "uhe bay"' out || { tells 'the journal says "the bay"'; rows=$((rows + 1)); }
	place=$((place + 1))
done
is 1 $rows "places that are a row of the table"
cp kept "$book"
if command -v sqlite3 >/dev/null; then
	for change in "UPDATE outing SET hours = hours + 360 WHERE remark = 'one';one:hours" "DELETE FROM outing WHERE remark = 'two';" \
		"UPDATE entry SET what = 'nothing' WHERE seq = 3;" "DELETE FROM entry WHERE seq = 4;" \
		"UPDATE entry SET who = 'nobody' WHERE seq = (SELECT max(seq) FROM entry);" \
		"INSERT INTO happening (id, boat, date, kind) SELECT 5, id, 20000, 'line' FROM boat;"; do
		about "behind the program's back: ${change%;*}"
		cp kept "$book"
		sqlite3 "$book" "${change%;*};"
		run 1 sp verify
		says "problem"
	done
	cp kept "$book"
	sqlite3 "$book" "UPDATE outing SET hours = 7200 WHERE remark = 'one';"
	run 1 sp verify
	tells "hours"
	tells "the file says 2 h, the journal says 1 h"
	cp kept "$book"
fi

about "a backup is a logbook, and is never written over another file"
run 0 sp backup copy.splitpin
says "backed up to copy.splitpin"
is 600 "$(stat -c %a copy.splitpin)" "mode"
everything here
mv "$book" away
cp copy.splitpin "$book"
everything copied
run 0 diff -r here copied
run 0 sp verify
run 0 sp undo
mv away "$book"
cp copy.splitpin kept
run 4 sp backup copy.splitpin
says_err "copy.splitpin is there already"
same kept copy.splitpin
ln -s nowhere link
run 4 sp backup link
[ ! -e nowhere ] || fail "a backup went through a link"
run 4 sp backup "$book"
run 4 sp backup .
run 2 sp backup

about "two writers at once: the second is told who holds the logbook"
command -v sqlite3 >/dev/null || skip "sqlite3 is not installed"
mkfifo ask tell
sqlite3 "$book" <ask >tell 2>&1 &
exec 3>ask 4<tell
echo "BEGIN IMMEDIATE; SELECT 'held';" >&3
read -r word <&4
is held "$word"
cp "$book" kept
run 4 sp outing 1h --date 2026-05-05
says_err "boat.splitpin is being written by sqlite3 (process $!)"
same kept "$book"
run 0 sp due
run 0 sp outing --list
echo "COMMIT;" >&3
echo ".quit" >&3
exec 3>&-
wait
run 0 sp outing 1h --date 2026-05-05 seven
is "one two five six seven " "$(remarks)"

about "many writers one after the other lose nothing"
for n in 1 2 3 4; do
	for m in 1 2 3; do
		sp outing 0.1h "w$n$m" --date 2026-05-06 >"out.$n" 2>&1 || echo failed >failed
	done &
done
wait
[ ! -e failed ] || { cat out.*; fail "a writer was turned away"; }
is 12 "$(sp export outings | grep -c ',w[1-4][1-3]')" "outings"
run 0 sp verify
says "sound"
