#!/bin/sh
# Bad input never crashes and loses nothing: a clear message, an exit code, and the logbook as it was, byte by byte.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
book=$SPLITPIN_FILE

# A logbook with the demo's boat and outings, to which nothing that follows may do harm.
new_heron
run 0 sp import meters "$demo/meters.csv"
run 0 sp import outings "$demo/outings.csv"
cp "$book" with-outings

# Byte by byte, so every table and the journal are as they were.
unchanged() { cmp -s with-outings "$book" || fail "the logbook was changed"; }

about "at most 20 errors are shown, and counted"
{ echo date,hours; yes 2026-02-30,1 | head -n 50; } >many.csv
run 3 sp import outings many.csv
is 20 "$(grep -c '^many.csv:[0-9]*:1: ' err)" "errors shown"
says_err "and 30 more errors"
unchanged

# Memory in bounds, where the shell and the build allow a bound at all.
# shellcheck disable=SC3045
bounded()
{
	if (ulimit -v 300000 && "$SPLITPIN" --version) >/dev/null 2>&1; then
		(ulimit -v 300000 && "$@")
	else
		"$@"
	fi
}

about "a line of 1 GB"
long_line() { printf 'date,hours,remark\n2026-05-01,1,'; head -c 1000000000 /dev/zero | tr '\0' a; }
long_line 2>/dev/null | run 3 bounded sp import outings - || exit 1
says_err "-:2:"
unchanged
head -c 1000000000 /dev/zero 2>/dev/null | tr '\0' , 2>/dev/null | run 3 bounded sp import outings - || exit 1
unchanged
truncate -s 1G sparse.csv
run 3 bounded sp import outings sparse.csv
says_err "sparse.csv:1"
rm sparse.csv
unchanged

about "files that are not there, and folders"
run 4 sp import outings none.csv
says_err "none.csv"
run 4 sp import outings home
says_err "home"
run 4 sp --file home due
says_err "is a folder, not a logbook"
run 4 sp --file none.splitpin due
says_err "splitpin new makes one"
[ ! -e none.splitpin ] || fail "a file was made"
run 4 sp --file none/none.splitpin new "Grey Heron"
run 4 sp export outings none/out.csv
run 4 sp backup none/copy.splitpin
run 2 sp import spoons spoons.csv
says_err "outings"
run 2 sp import outings
unchanged

about "an output that is full"
if [ -w /dev/full ]; then
	for command in "export outings" due "due --json" "due --csv" yard "why bellows-ujoint.renew" history plan fitting help \
		"help due" "outing --list" verify --version; do
		about "$command into a full output"
		code=0
		# shellcheck disable=SC2086  # a command and its words
		sp $command >/dev/full 2>err || code=$?
		is 4 $code "exit code"
		[ -s err ] || fail "no message"
	done
	unchanged
fi

about "a disk that is full"
size=$(wc -c <"$book")
# A block of ulimit is 512 bytes or 1024, as the shell will have it.
(trap '' XFSZ; ulimit -f 1; head -c 4096 /dev/zero >block 2>err) || :
unit=$(wc -c <block)
small() { (ulimit -f $(($1 * 512 / unit)) && shift && "$@"); }	# so many times 512 bytes
blocks=$((size / 512))
before=$(sp export services | wc -l)
for more in 0 8 40 200; do
	run 4 small $((blocks + more)) sp import services "$demo/services.csv"
	says_err "nothing was saved"
	[ ! -e "$book-journal" ] || run 0 sp due
	[ ! -e "$book-journal" ] || fail "the rollback journal is left over"
	unchanged
done
run 4 small $((blocks - 1)) sp backup copy.splitpin
run 4 small 8 sp export outings copy.csv
is "" "$(find . -maxdepth 1 -name 'copy*' -o -maxdepth 1 -name '.splitpin-*')" "left over"
run 4 small 200 sp --file new.splitpin new --demo
[ ! -e new.splitpin ] || fail "half a demo is left over"
run 0 sp verify
is "$before" "$(sp export services | wc -l)" "services"
run 0 sp import services "$demo/services.csv"
cp with-outings "$book"

about "a program killed while it writes: all of the file is there, or nothing"
for after in 0.01 0.02 0.03 0.05 0.08; do
	cp with-outings "$book"
	timeout -s KILL $after "$SPLITPIN" --today $today import services "$demo/services.csv" >out 2>err
	run 0 sp outing 0.1h "after the crash"
	count=$(sp export services | wc -l)
	[ "$count" -eq 1 ] || [ "$count" -gt 700 ] || fail "$count services"
	run 0 sp verify
	says "sound"
	[ ! -e "$book-journal" ] || fail "the rollback journal is left over"
done
cp with-outings "$book"

about "a folder and a file that can be read only"
other=
if [ "$(id -u)" -ne 0 ]; then
	other="env"
elif setpriv --reuid 65534 --clear-groups true 2>/dev/null; then
	other="setpriv --reuid 65534 --clear-groups"
fi
if [ -n "$other" ]; then
	mkdir locked
	cp with-outings locked/boat.splitpin
	chmod 755 "$test_dir" && chmod 555 locked && chmod 444 locked/boat.splitpin
	sp_locked() { $other "$SPLITPIN" --today "$today" --who tester --file "$test_dir/locked/boat.splitpin" "$@"; }
	if $other "$SPLITPIN" --version >/dev/null 2>&1; then
		run 4 sp_locked outing 1h
		says_err "locked/boat.splitpin"
		run 4 sp_locked undo
		run 0 sp_locked due
		run 0 sp_locked verify
		run 4 sp_locked backup "$test_dir/locked/copy"
		chmod 000 locked/boat.splitpin
		run 4 sp_locked due
		says_err "Permission denied"
		chmod 444 locked/boat.splitpin
		# A file that can be written in a folder that can't: there is no room for the rollback journal.
		chmod 666 locked/boat.splitpin
		run 4 sp_locked outing 1h
		chmod 755 locked
		same with-outings locked/boat.splitpin
		is boat.splitpin "$(ls locked)" "left in the folder"
	fi
fi

about "what is no logbook is refused and left as it is"
mkdir strange
: >strange/empty
head -c 20000 "$SPLITPIN" >strange/program
printf 'date,hours\n2026-05-01,1\n' >strange/table.csv
head -c 3000 with-outings >strange/cut-off
{ head -c 16 with-outings; head -c 100000 /dev/zero; } >strange/zeros
if command -v sqlite3 >/dev/null; then
	sqlite3 strange/foreign "PRAGMA application_id = 17; CREATE TABLE boat (id INTEGER PRIMARY KEY, name TEXT);"
	sqlite3 strange/nobody "CREATE TABLE boat (id INTEGER PRIMARY KEY, name TEXT);"
	sqlite3 strange/blank "VACUUM;"
	cp with-outings strange/newer && sqlite3 strange/newer "PRAGMA user_version = 99;"
	cp with-outings strange/older && sqlite3 strange/older "PRAGMA user_version = 0;"
	cp with-outings strange/trigger && sqlite3 strange/trigger \
		"CREATE TRIGGER t AFTER INSERT ON outing BEGIN DELETE FROM service; END;"
fi
for file in strange/*; do
	cp "$file" kept
	for command in due "outing 1h" "import outings $demo/outings.csv" undo history verify "export outings" "backup $file.copy" \
		"boat Dinghy" yard; do
		about "$command with $file"
		# shellcheck disable=SC2086  # a command and its words
		run 4 sp --file "$file" $command
		says_err "${file#strange/}"
		same kept "$file"
	done
	run 4 sp --file "$file" new "Grey Heron"
	same kept "$file"
	[ ! -e "$file-journal" ] && [ ! -e "$file.copy" ] || fail "something was left beside $file"
done
[ ! -e strange/newer ] || { run 4 sp --file strange/newer due; says_err "newer"; }

about "control bytes in what was typed are shown harmlessly"
esc=$(printf 'red \033[31malarm\033[0m bell\007 tab\there cr\rback\010 del\177 c1\302\233 turn\342\200\256 mark\357\273\277.')
cp with-outings "$book"
run 0 sp outing 1h "$esc" --place "$esc"
run 0 sp did gimbal-bearing.grease --seen "$esc" --proof "$esc" --by "$esc" --number "$esc"
run 0 sp plan gimbal-bearing.grease --every "50 h" --source "$esc"
run 0 sp stay ashore "$esc" --place "$esc"
run 0 sp happening grounding "$esc"
run 0 sp season --launch 2027-05-01 --haul-out 2027-10-01 --planned
run 0 sp plan --add odd.look --fitting hull --every "1 months" --source "$esc" "$esc"
run 0 sp boat "$esc" --kind jet
newest=$(sp history --limit 1 | awk '{ print $1 }')
heron() { sp --boat "Grey Heron" "$@"; }
for command in "outing --list" "did --list" "stay --list" "happening --list" "meter --list" boat "history" "why odd.look" \
	"why gimbal-bearing.grease" "plan odd.look" "plan gimbal-bearing.grease" plan due "due --all" verify; do
	about "$command with control bytes in the logbook"
	# shellcheck disable=SC2086  # a command and its words
	run 0 heron $command
	cat out err >both
	harmless both
done
for command in "due --json" "why odd.look --json"; do
	# shellcheck disable=SC2086  # a command and its words
	run 0 heron $command
	mv out text
	run 1 grep -q "$(printf "\033")" text
done
while [ "$newest" -gt 0 ]; do
	run 0 sp history "$newest"
	harmless out
	newest=$((newest - 1))
	[ "$newest" -ne 4 ] || break
done
for command in "$esc" "--$esc" "due --$esc" "due --at $esc" "--boat $esc-none due" "--file $esc due" "help $esc" "why $esc" \
	"outing $esc" "outing --drop $esc" "stay $esc" "import outings $esc" "export $esc" "plan --every $esc" "--today $esc due"; do
	about "control bytes on the command line"
	code=0
	IFS=' ' eval 'sp $command' >out 2>err || code=$?
	[ $code -ge 2 ] && [ $code -le 4 ] || fail "exit code $code"
	cat out err >both
	harmless both
done

about "and come back from an export as they were"
run 0 sp export outings odd.csv
need_python
run 0 python3 -B -c '
import csv, sys
rows = list(csv.DictReader(open("odd.csv", newline="", encoding="utf-8")))
assert rows[-1]["remark"] == sys.argv[1] == rows[-1]["place"], rows[-1]
' "$esc"

about "bytes that are no UTF-8 are refused"
cp with-outings "$book"
bad=$(printf 'caf\351')
for option in "outing 1h $bad" "outing 1h --place $bad" "did bellows.clamps --seen $bad" "stay ashore $bad" "happening line $bad" \
	"plan --add a.b --fitting hull --every 10h --source $bad x" "boat $bad --kind jet" "--who $bad outing 1h"; do
	about "bytes that are no UTF-8: ${option%%caf*}"
	cp with-outings "$book"
	# shellcheck disable=SC2086  # a command and its words
	run 3 sp $option
	says_err "UTF-8"
	python3 -c 'open("err", encoding="utf-8").read()' || fail "the message is not UTF-8"
	unchanged
done
cp with-outings "$book"
run 3 sp why "$bad"
python3 -c 'open("err", encoding="utf-8").read()' || fail "the message is not UTF-8"

about "dates ahead of today"
for command in "outing 1h --date tomorrow" "outing 1h --date 2026-11-26" "did bellows.clamps --date 2026-12-01" \
	"happening grounding --date +1d" "meter --replaced 0 --date 2027-01-01" "season --launch 2027-04-01" \
	"did bellows.clamps --made 2026-11-26" "outing 1h --date 2026-02-30" "outing 1h --date 31/11/2026"; do
	about "$command"
	# shellcheck disable=SC2086  # a command and its words
	run 3 sp $command
	unchanged
done
run 3 sp --today 2026-13-01 due
says_err "--today"

about "hours below nothing, or none at all"
for command in "outing -- -1.5" "outing --meter=-5" "outing 1:75" "outing 1e3" "outing 0x10" "outing nan" "outing 1,200.5" \
	"outing 99999999999999999999" "outing --hours main" "outing --meter port=5" "did bellows.clamps --meter=-1" \
	"did bellows.clamps --cost 12.345" "did bellows.clamps --cost ten" "plan bellows.clamps --every 0h --source x" \
	"plan bellows.clamps --every -1h --source x" "plan bellows.clamps --every 12parsecs --source x" \
	"plan bellows.clamps --every 12months" "history -- -1" "history --limit ten" "outing 1h --water sea"; do
	about "$command"
	# shellcheck disable=SC2086  # a command and its words
	run 3 sp $command
	unchanged
done
run 2 sp outing -1.5
says_err "-1.5"

about "before the boat was built, or the log began"
run 3 sp did bellows.clamps --date 1990-06-01
says_err "1998"
printf 'task,date,outcome\nbellows.clamps,1990-06-01,done\n' >old-service.csv
run 3 sp import services old-service.csv
says_err "1998"
unchanged
run 3 sp outing 1h --date 1990-01-01
unchanged
printf 'date,hours\n1990-01-01,1\n' >old-outing.csv
run 3 sp import outings old-outing.csv
unchanged

run 0 sp verify
says "sound"
