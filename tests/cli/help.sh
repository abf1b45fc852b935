#!/bin/sh
# What the program says of itself; wrong use and what was probably meant; every exit code; and output that is the same
# each time, without colours.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
book=$SPLITPIN_FILE
commands=$(splitpin help --commands)

about "help lists every command"
run 0 splitpin help
quiet
fits 80
cp out help.txt
for command in $commands; do
	grep -qE "^  $command +[a-z]" out || fail "help does not list $command"
done
for command in new boat outing stay season happening meter did due why ready plan fitting import export yard undo redo history \
	verify backup help; do
	printf '%s\n' "$commands" | grep -qx $command || fail "there is no command $command"
done
run 0 splitpin
same help.txt out
run 0 splitpin --help
same help.txt out

about "help COMMAND tells what it does and takes"
for command in $commands; do
	about "help $command"
	run 0 splitpin help $command
	quiet
	fits 80
	says "splitpin $command"
	cp out one.txt
	run 0 splitpin $command --help
	same one.txt out
	run 0 splitpin help --options $command
	options=$(cat out)
	for option in $options; do
		grep -qE -e "^  --$option( |$)" one.txt || fail "help does not tell of --$option"
	done
	for option in file boat today who help version; do
		printf '%s\n' "$options" | grep -qx $option || fail "help --options does not tell of --$option"
	done
done
[ ! -e "$book" ] || fail "asking for help made a logbook"

about "the version"
run 0 splitpin --version
lines 1
grep -qxE 'splitpin [0-9]+\.[0-9]+\.[0-9]+' out || fail "not a version"
cp out version
run 0 splitpin due --version
same version out

# wrong WORDS ARGUMENT...: wrong use, exit code 2, nothing on stdout, a message with these words.
wrong()
{
	wrong_words=$1
	shift
	run 2 sp "$@"
	says_nothing
	tells_err "$wrong_words"
	harmless err
}

about "wrong use is told of, with what was probably meant"
new_plain
add_task pump.look --every "10 h"
cp "$book" kept
wrong 'is "due" meant?' deu
wrong 'is "outing" meant?' outting --meter 5
wrong 'is "history" meant?' histroy
wrong "splitpin help lists them" fly
wrong "splitpin help lists them" ""
wrong 'is "due" meant?' help deu
wrong "is --meter meant?" outing --meetr 5
wrong "is --boat meant?" --baot x due
wrong "is --exit-code meant?" due --exitcode
wrong "--fly" due --fly
wrong "-x" due -x
wrong "-1.5" outing -1.5
wrong "--at" due --at
wrong "--all" due --all=yes
! grep -q "is --all meant" err || fail "--all is what was typed"
wrong "--csv" due --csv --json
wrong "why what?" why
wrong "at a time" ready --csv --json
wrong "at a time" ready --waivers --waive x
wrong "which task?" did
wrong "how many hours?" outing
wrong "where?" stay
wrong "what happened?" happening
wrong "which day?" season
wrong "splitpin import" import
wrong "splitpin import" import outings
wrong "outings" import spoons x.csv
wrong "splitpin export" export
wrong "outings" export spoons
wrong "which file?" backup
wrong "name" --file none.splitpin new
wrong "--rinsed" outing 1h --rinsed --not-rinsed
wrong "--separator" import outings x.csv --separator x
wrong "--decimal" import outings x.csv --decimal x
same kept "$book"

about "words too many are not passed over"
for command in "due launch" "undo 5" "redo 5" "verify other.splitpin" "yard list.csv more" "export outings out.csv more" \
	"import outings in.csv more" "backup copy.splitpin more" "history 1 2" "season 2026-05-01" "meter 614.8" "fitting a b c"; do
	about "splitpin $command"
	cp kept "$book"
	# shellcheck disable=SC2086  # a command and its words
	run 2 sp $command
	same kept "$book"
done
rm -f list.csv out.csv copy.splitpin

about "what must have a name has one"
nameless() { cp kept "$book"; run 3 sp "$@"; same kept "$book"; }
nameless boat "" --kind jet
nameless boat "  " --kind jet
nameless boat "Plain Jane" --kind jet
says_err "same name"
nameless plan --add "" --fitting engine --every 10h --source x "Look"
nameless plan --add a.b --fitting engine --every 10h --source "" "Look"
nameless plan --add a.b --fitting engine --every 10h --source x ""
nameless plan --add pump.look --fitting engine --every 10h --source x "Look"
for wrong in "" "X --meter =5" "X --engine =" "X --built 3000"; do
	rm -f none.splitpin
	# shellcheck disable=SC2086  # options
	case $wrong in
	"") run 3 sp --file none.splitpin new "" ;;
	*) run 3 sp --file none.splitpin new $wrong ;;
	esac
	[ ! -e none.splitpin ] || fail "a logbook was made"
done
cp kept "$book"

about "names in part, and names that several have"
add_task pump.grease --every "10 h"
run 0 sp why look
says "pump.look"
run 0 sp why LOOK Pump
says "pump.look"
run 3 sp why pump
tells_err "pump.grease, pump.look: name one"
run 3 sp why nowhere
says_err "splitpin plan lists them"
run 3 sp plan --add x.y --fitting nowhere --every 10h --source x "Look"
says_err "splitpin fitting lists them"
run 3 sp outing 1h --water slat
says_err 'is "salt" meant?'
run 3 sp --boat Nobody due
says_err "splitpin boat lists them"

about "every exit code"
run 0 sp due
run 0 sp did pump.look --date 2026-01-01 --outcome "done"
run 0 sp outing --meter 111 --date 2026-02-01
run 1 sp due --exit-code
run 2 sp fly
run 3 sp outing 1h --date 5/6/24
run 4 sp --file nowhere.splitpin due
cp "$book" damaged.splitpin
if command -v sqlite3 >/dev/null; then
	sqlite3 damaged.splitpin "UPDATE task SET title = 'nothing'"
	run 1 sp --file damaged.splitpin verify
fi

about "where the logbook lies"
mkdir elsewhere
at_home() { env -u SPLITPIN_FILE XDG_DATA_HOME="$test_dir/elsewhere" "$SPLITPIN" --today $today "$@"; }
run 4 at_home due
says_err "elsewhere/splitpin/boat.splitpin"
run 0 at_home new Home --kind jet
says "elsewhere/splitpin/boat.splitpin"
is 600 "$(stat -c %a elsewhere/splitpin/boat.splitpin)" "mode of the logbook"
is 700 "$(stat -c %a elsewhere/splitpin)" "mode of its folder"
run 0 at_home boat
says "Home"
run 0 env SPLITPIN_FILE="$book" XDG_DATA_HOME="$test_dir/elsewhere" "$SPLITPIN" boat
says "Plain Jane"
run 0 env SPLITPIN_FILE="$book" "$SPLITPIN" --file elsewhere/splitpin/boat.splitpin boat
says "Home"

about "options may stand before and after the command"
run 0 sp --file "$book" due
cp out before
run 0 sp due --file "$book"
same before out
run 0 sp due --today=2026-11-25 --file="$book"
same before out
run 0 sp outing 1h -- "-- fog, turned back"
run 0 sp outing --list
says "-- fog, turned back"

about "the same each time, and never a colour"
run 0 sp --file demo.splitpin new --demo
for command in due "due --all --at launch" "due --json" "due --csv" "why bellows-ujoint.renew" plan fitting "plan bellows-ujoint.renew" \
	"outing --list" "did --list" "stay --list" "season --list" "happening --list" meter boat help; do
	about "$command, twice"
	# shellcheck disable=SC2086  # a command and its words
	TERM=xterm-256color run 0 sp --file demo.splitpin $command
	quiet
	cp out first
	# shellcheck disable=SC2086  # a command and its words
	TERM=dumb run 0 sp --file demo.splitpin $command
	same first out
	tr -d '\r' <out >text
	harmless text
done

about "a reader that goes away early is no error to speak of"
sp --file demo.splitpin export outings 2>err | head -n 1 >first
is 1 "$(wc -l <first)" "lines"
