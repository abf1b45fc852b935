# shellcheck shell=sh disable=SC2034
# What the tests of the command line share; sourced after tests/lib.sh.

demo=$top_srcdir/share/demo
here=$top_srcdir/tests/cli
today=2026-11-25

# splitpin on a fixed day, by a fixed person.
sp() { splitpin --today "$today" --who tester "$@"; }

need_python() { command -v python3 >/dev/null || skip "python3 is not installed"; }

# The demo's boat as its owner would have begun it in spring 2018, with the catalogue's tasks and nothing else.
new_heron()
{
	run 0 sp new "Grey Heron" --kind petrol-sterndrive --berth trailer --winter roof --water fresh \
		--launch 04-15 --haul-out 10-12 --since 2018-03-10 --built 1998 --meter 223.8 "$@"
}

# The same of one that comes without any catalogue but the rates of wear.
sp_bare()
{
	mkdir -p "$test_dir/bare/catalogue"
	cp "$SPLITPIN_DATA/catalogue/rates.csv" "$test_dir/bare/catalogue"
	SPLITPIN_DATA=$test_dir/bare "$SPLITPIN" --today "$today" --who tester "$@"
}

# A boat without a catalogue: no task but those that the test adds; two fittings.  Spends the season in
# fresh water, the winter ashore.
new_plain()
{
	run 0 sp_bare new "Plain Jane" --kind jet --berth afloat --winter ashore --water fresh --launch 04-15 --haul-out 10-15 \
		--since 2024-01-01 --built 2010 --meter 100.0 "$@"
	printf 'path,title,variants\nengine,Engine,\nengine/pump,Pump,greasable sealed\n' >fittings.csv
	run 0 sp import fittings fittings.csv
}

# add_task NAME OPTION...: a task on the engine; worn by nothing and costing little unless said otherwise.
add_task()
{
	task_name=$1
	shift
	run 0 sp plan --add "$task_name" --fitting engine --source "own rule" "$@" "Do $task_name"
}

# due_of TASK FIELD [OPTION...]: one field of the task's line in `due --json`; the task must be there.
due_of()
{
	due_task=$1 due_field=$2
	shift 2
	sp due --json "$@" | python3 -B "$here/pick.py" "$due_task" "$due_field" ||
		{ echo "no such line or field: $due_task $due_field"; return 1; }
}

# expect_due TASK FIELD VALUE [OPTION...]
expect_due()
{
	due_want=$3 due_what="$1 $2"
	due_task=$1 due_field=$2
	shift 3
	is "$due_want" "$(due_of "$due_task" "$due_field" "$@")" "$due_what ($*)"
}

# The key of the newest record that `COMMAND --list` shows.
last_key() { sp "$@" --list | awk '/^[bcdfghjklmnpqrstvwxz]+  /{ key = $1 } END { print key }'; }

# How many entries the journal has.
entries() { sp history --limit 100000 | wc -l | tr -d ' '; }

# killed N COMMAND...: it is killed after so many turns of a loop, wherever it then is.
killed()
{
	killed_turns=$1
	shift
	"$@" >/dev/null 2>&1 &
	killed_pid=$!
	while [ "$killed_turns" -gt 0 ]; do killed_turns=$((killed_turns - 1)); done
	kill -9 $killed_pid 2>/dev/null
	wait $killed_pid 2>/dev/null
}

# power_cut COMMAND...: the power fails during it, some times over; it is wholly recorded or not at all, and is done once in the end.
power_cut()
{
	cut_before=$(entries)
	for cut_turns in 0 100 1000 4000 10000; do
		killed $cut_turns "$SPLITPIN" --today $today --who tester "$@"
		run 0 sp verify
		cut_now=$(entries)
		[ "$cut_now" -eq "$cut_before" ] || break
	done
	[ "$cut_now" -gt "$cut_before" ] || run 0 sp "$@"
	is $((cut_before + 1)) "$(entries)" "entries after $*"
}

records="boats engines meters fittings parts stays seasons outings happenings tasks limits services measurements bounds rates places climates"

# everything FOLDER [EXPORT-OPTION...]: all records as CSV files in a new folder.
everything()
{
	every_folder=$1
	shift
	mkdir "$every_folder" || fail "no folder $every_folder"
	for every in $records; do
		sp export "$every" "$@" >"$every_folder/$every.csv" 2>err || fail "export of $every"
	done
}

# Like says, of a text that may be broken into lines.
tells()
{
	tr -s ' \n' '  ' <"$test_dir/out" | grep -qF -e "$1" || fail "stdout does not say: $1"
}
tells_err()
{
	tr -s ' \n' '  ' <"$test_dir/err" | grep -qF -e "$1" || fail "stderr does not say: $1"
}

# No line of stdout is wider than 80 columns, and nothing in it steers a terminal.
fits()
{
	fits_wide=$(awk -v most="${1:-80}" '{ s = $0; gsub(/[\200-\277]/, "", s) } length(s) > most' "$test_dir/out" | head -n 3)
	[ -z "$fits_wide" ] || fail "wider than ${1:-80} columns: $fits_wide"
	harmless "$test_dir/out"
}

# No control byte but a tab or the line's end stands in the files, and none of the other characters that steer a terminal.
harmless()
{
	for harmless_file in "$@"; do
		[ "$(tr -d '\000-\010\013-\037\177' <"$harmless_file" | wc -c)" -eq "$(wc -c <"$harmless_file")" ] ||
			fail "a control byte in the output"
		! LC_ALL=C grep -q "$(printf '\302[\200-\237]')" "$harmless_file" || fail "a C1 control in the output"
		! LC_ALL=C grep -q "$(printf '\342\200[\252-\256]')" "$harmless_file" || fail "a turn of direction in the output"
	done
}

# total HOURS [ENGINE]: what the head of the due list gives as the engine's hours, with ~ when a guess is in them.
total()
{
	total_line=$(sp due | sed -n 1p)
	case $total_line in
	*"   ${2:-main} $1 h   "*|*"   ${2:-main} $1 h logged   "*) ;;
	*) fail "the hours of ${2:-main} are not $1: $total_line" ;;
	esac
}
