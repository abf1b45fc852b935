#!/bin/sh
# The shipped catalogue holds together, and `plan check` would see that it did not: a copy spoilt in one way is refused by
# the message for that.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
unset SPLITPIN_FILE
shipped=$top_srcdir/share/catalogue

about "the shipped catalogues are sound, which wants no logbook"
run 0 sp plan check
quiet
says "petrol-sterndrive petrol: "
sed 1d "$shipped/kinds.csv" | cut -d, -f1,2 | sort -u >kinds
lines "$(wc -l <kinds)"
[ ! -e "$XDG_DATA_HOME" ] || fail "something was made"

# copied: a copy that can be spoilt.
copied()
{
	[ ! -e copy ] || rm -r copy
	cp -r "$shipped" copy && chmod -R u+w copy
}

# change TABLE SED-SCRIPT: in the copy, in whichever module it stands.
change()
{
	changed=
	for table in copy/"$1" copy/*/"$1"; do
		[ -e "$table" ] || continue
		sed "$2" "$table" >changed
		cmp -s changed "$table" || changed=yes
		cp changed "$table"
	done
	[ "$changed" ] || fail "the change changes nothing"
}

# spoilt WHAT TABLE SED-SCRIPT COMPLAINT: a copy changed that way is refused, and the complaint names file and line.
spoilt()
{
	about "a catalogue with $1 is refused"
	copied
	change "$2" "$3"
	run 3 sp plan check copy
	says "$4"
	grep -q "^[a-z/-]*\.csv:[0-9]*" out || fail "no place is named"
	says_err "copy: "
}

spoilt "a task on no fitting" tasks.csv 's,^gear-oil.level\,drive/gear-oil,gear-oil.level\,drive/gear,' \
	'is called "drive/gear"'
spoilt "a circle of what must come off first" fittings.csv \
	'/^drive\/unit,/s/,no,no,no,,/,no,no,no,drive\/transom\/bell-housing,/' "goes round in a circle"
spoilt "needs-off that is not there" fittings.csv 's/,drive\/unit,/,drive\/units,/' \
	"needs-off: no fitting has the path drive/units"
spoilt "another way in that is not there" fittings.csv 's/=drive\/unit,/=drive\/units,/' \
	"needs-off: no fitting has the path drive/units"
spoilt "another way in for no design of the fitting" fittings.csv 's/nose-compressed=/nose-squeezed=/' \
	"DESIGN=PATH for a design of the fitting, not nose-squeezed=drive/unit"
spoilt "another way in that goes round" fittings.csv '/^drive\/unit,/s/,,no,no,no,,/,old new,no,no,no,drive\/lower new=drive\/transom\/bell-housing,/' \
	"goes round in a circle"
spoilt "a module for each of what there is not" kinds.csv '/shaft/s/either/neither/' 'is "either" meant?'
spoilt "a fitting without its parent" fittings.csv '/^drive\/shift,/d' "its parent is missing"
spoilt "what needs to come off, in no time" fittings.csv '/^drive\/unit,/s/,90,/,,/' "off-minutes: wanted"

about "what hangs on a wrong row is not called wrong as well"
copied
change tasks.csv '/^gear-oil.level,/s/,inspect,/,inspekt,/'
run 3 sp plan check copy
lines 1
spoilt "a task without a limit" limits.csv '/^gear-oil.level,/d' "gear-oil.level has no limit"
spoilt "a limit of no task" limits.csv 's/^gear-oil.level,/gear-oil.levels,/' 'is called "gear-oil.levels"'
spoilt "a limit without a source" limits.csv 's/,practice,"common practice, no source"$/,practice,/' \
	"source: is empty"
spoilt "a source that is not its standing" limits.csv \
	's/,practice,"common practice, no source"/,published,"common practice, no source"/' "source and standing do not agree"
spoilt "a torque" tasks.csv 's/^\(mounting-nuts.recheck.*\),stands,/\1 50 ft-lb,stands,/' \
	"a figure that belongs to the manual: 50 ft-lb"
spoilt "a pressure" tasks.csv 's/the figure comes from the drive maker/10 psi by the drive maker/' \
	"a figure that belongs to the manual: 10 psi"
spoilt "a quantity of oil" tasks.csv '/^lubrication.change,/s/engine oil and/4.5 litres of &/' \
	"a figure that belongs to the manual: 4.5 litres"
spoilt "an unknown word" tasks.csv 's/,galvanic,/,galvanisch,/' '"galvanisch" is no mechanism'
spoilt "an unknown caution" tasks.csv 's/,stands,/,trestles,/' 'caution: none is called "trestles"'
spoilt "a design that its fitting has not" tasks.csv '/^gimbal-bearing.grease,/s/,greasable,/,greaseable,/' \
	'has no design "greaseable"'
spoilt "an event that is none" limits.csv 's/,event,,,,,launch,/,event,,,,,launching,/' '"launching" is no season event'
spoilt "an event without its word" limits.csv 's/,event,,,,,launch,/,event,,,,,,/' \
	"the columns filled are not those of its kind, event"
spoilt "a happening without its word" limits.csv 's/,happening,,,,,,[a-z-]*,/,happening,,,,,,,/' \
	"the columns filled are not those of its kind, happening"
spoilt "an unknown reading" limits.csv 's/,bearing-roughness,/,bearing-noise,/' "measured: a kind of reading"
spoilt "an unknown unit" rates.csv 's/,kJ\/mol,/,kcal\/mol,/' "the unit is kJ/mol"
spoilt "the same task twice in a module" tasks.csv 's/^gear-oil.change,/gear-oil.level,/' \
	"gear-oil.level stands twice: in drive/tasks.csv"
spoilt "the same fitting in two modules of a kind" fittings.csv 's/^engine\/coupler,/drive\/unit,/' \
	"drive/unit stands twice"
spoilt "a module that is not there" kinds.csv 's/,sterndrive,/,starndrive,/' "kinds.csv names the module starndrive"
spoilt "a kind that there is not" kinds.csv 's/^petrol-sterndrive,petrol,hull,/petrol-sterndriven,petrol,hull,/' \
	'"petrol-sterndriven" is no kind of boat'
spoilt "a column misspelt" fittings.csv '1s/needs-off/need-off/' 'is "needs-off" meant?'
spoilt "a wrench of no size" wrenches.csv 's/^5\/8,16,/5\/8,many,/' "metric-mm: "
spoilt "a wrench of an unknown hexagon" wrenches.csv 's/^5\/8,/5\/9,/' "no size of a hexagon"
spoilt "a wrench said to fit that does not" wrenches.csv 's/^3\/8,10,loose,no,/3\/8,10,fits,no,/' \
	'wrenches.csv:3: metric-on-inch: "fits" stands there, and "loose" is worked out'
spoilt "a wrench without its verdict" wrenches.csv 's/,keep apart,/,,/' "verdict is missing"
spoilt "a head of no size" heads.csv 's/^M10,16,17,14,/M10,16,17,-14,/' "heads.csv:3: jis-mm: "
spoilt "a thread that is none" heads.csv 's/^M12,/12,/' 'thread: "12" is none'
spoilt "a head by hearsay" heads.csv '/^M8,/s/,published,/,hearsay,/' "hearsay"
spoilt "an edition older than the one before" editions.csv '$s/^[0-9]*/1/' "editions are numbers that grow"

about "every problem is told, not the first alone"
copied
change tasks.csv 's/,stands,/,trestles,/; s/,galvanic,/,galvanisch,/'
change limits.csv 's/,launch,/,launching,/'
run 3 sp plan check copy
says galvanisch
says launching

about "a spoilt catalogue makes no boat, and the message names the place"
mkdir data
mv copy data/catalogue
SPLITPIN_DATA=$test_dir/data "$SPLITPIN" new Heron --kind petrol-sterndrive >out 2>err && fail "a boat was made"
grep -q '\.csv:[0-9]*:[0-9]*: ' err || fail "no place is named"
[ ! -e "$XDG_DATA_HOME/splitpin/boat.splitpin" ] || fail "a file was left"

about "every kind of boat that has a catalogue begins with a due list"
while IFS=, read -r kind fuel; do
	[ "$kind" != generator ] || continue
	SPLITPIN_FILE=$test_dir/$kind-$fuel.splitpin
	export SPLITPIN_FILE
	run 0 sp new Heron --kind "$kind" --fuel "$fuel" --meter 100
	run 0 sp due --all
	says "SURVEY"
	run 0 sp verify
	SPLITPIN_FILE=$test_dir/$kind-$fuel-twins.splitpin
	run 0 sp new Heron --kind "$kind" --fuel "$fuel" --meter port=100 --meter starboard=98 --engine generator
	run 0 sp due --all
	run 0 sp verify
done <kinds

about "a fuel that a kind has not is refused"
SPLITPIN_FILE=$test_dir/none.splitpin
run 3 sp new Heron --kind petrol-sterndrive --fuel diesel
says_err "has no petrol-sterndrive for diesel"
[ ! -e none.splitpin ] || fail "a file was left"

about "the demo has what the catalogue has: a newer edition finds nothing of the owner's in it"
SPLITPIN_FILE=$test_dir/demo.splitpin
run 0 sp new --demo
run 0 sp plan --news
says ": 0 lines"
run 0 sp plan
says_not "newer catalogue"

about "a newer edition is told of, and its lines are taken or left"
copied
rm -r data
mkdir data
mv copy data/catalogue
echo '99,2027-03-01,A test' >>data/catalogue/editions.csv
sed 's/^\(gear-oil.change,months,\)[0-9]*,/\17,/' "$shipped/drive/limits.csv" >data/catalogue/drive/limits.csv
newer() { SPLITPIN_DATA=$test_dir/data "$SPLITPIN" --today "$today" --who tester "$@"; }
run 0 newer plan
tells "a newer catalogue is there, edition 99: splitpin plan --news"
run 0 newer plan --names
says_not "newer catalogue"
run 0 newer plan --news
tells "changed gear-oil.change: "
tells "now 7 months ("
run 3 newer plan --take gear-oil.level
tells_err "is no news of the catalogue"
run 0 newer plan --take gear-oil.change
tells "1 taken over, 0 left"
run 0 newer plan gear-oil.change
tells "7 months"
run 0 newer plan
says_not "newer catalogue"
run 0 newer undo
run 0 sp plan gear-oil.change --every "9 months" --source "own rule"
run 0 newer plan --news
tells "yours is kept: gear-oil.change: "
run 0 newer plan --take-all
run 0 newer plan gear-oil.change
tells "9 months"
run 0 newer verify
