#!/bin/sh
# The shipped catalogue holds together, and what checks it would see that it did not.

. "${top_srcdir:-.}/tests/lib.sh"
command -v python3 >/dev/null || skip "python3 is not installed"

check() { python3 -B "$top_srcdir/tests/demo/check_catalogue.py" "$1" "$top_srcdir/src/model/words.c"; }

about "the catalogue has no dangling reference, no task without a limit, no limit without a source"
run 0 check "$top_srcdir/share/catalogue"
quiet

# spoilt WHAT FILE SED-SCRIPT COMPLAINT: a copy changed that way is complained about.
spoilt()
{
	about "a catalogue with $1 is complained about"
	rm -rf copy
	cp -r "$top_srcdir/share/catalogue" copy
	chmod -R u+w copy
	sed "$3" copy/"$2" >changed
	! cmp -s changed copy/"$2" || fail "the change changes nothing"
	mv changed copy/"$2"
	run 1 check copy
	says "$4"
}

about "every kind of boat and each of its fuels is counted"
for boat in "petrol-sterndrive petrol" "diesel-sterndrive diesel" "inboard diesel" "inboard petrol" "outboard petrol" \
	"jet petrol" "jet diesel" "sail diesel" "sail petrol"; do
	says "$boat: "
done

spoilt "a task on no fitting" drive/tasks.csv \
	's,^gear-oil.level\,drive/gear-oil,gear-oil.level\,drive/gear,' "no such fitting: drive/gear"
spoilt "a circle of what must come off first" sterndrive/fittings.csv \
	'/^drive\/unit,/s/,no,no,no,,/,no,no,no,drive\/transom\/bell-housing,/' "goes round in a circle"
spoilt "needs-off that is not there" sterndrive/fittings.csv 's/,drive\/unit,/,drive\/units,/' \
	"needs off what there is not"
spoilt "opens-with that is not there" drive/fittings.csv 's/drive\/case-seals drive\/anodes/drive\/seals drive\/anodes/' \
	"opens what there is not: drive/seals"
spoilt "what each engine has named by what the boat has once" hull/fittings.csv \
	's,hull/hoses-below\,\,,engine/belts\,\,,' "of each engine"
spoilt "a task without a limit" drive/limits.csv '/^gear-oil.level,/d' "none for ['gear-oil.level']"
spoilt "a limit of no task" drive/limits.csv 's/^gear-oil.level,/gear-oil.levels,/' "a limit of no task"
spoilt "a torque" sterndrive/tasks.csv 's/^\(mounting-nuts.recheck.*\),stands,/\1 50 ft-lb,stands,/' \
	"belongs to the manual"
spoilt "a pressure" drive/tasks.csv 's/the figure comes from the drive maker/10 psi by the drive maker/' \
	"belongs to the manual"
spoilt "an unknown word" drive/tasks.csv 's/,galvanic,/,galvanisch,/' "is not one of the words"
spoilt "an unknown caution" drive/tasks.csv 's/,propeller stands,/,propellers stands,/' "an unknown caution"
spoilt "an unknown state" drive/tasks.csv 's/,key-out,/,key-in,/' "an unknown state"
spoilt "a running engine whose drive is off" sterndrive/tasks.csv \
	'/^gimbal-bearing.inspect,/s/,chocked,/,engine-running,/' "the engine can't run with drive/unit off"
spoilt "a source that is not its standing" sterndrive/limits.csv \
	's/,practice,"common practice, no source"/,published,"common practice, no source"/' \
	"source and standing differ"
spoilt "the same task twice" drive/tasks.csv 's/^gear-oil.change,/gear-oil.level,/' "name stands twice"
spoilt "a module that there is not" kinds.csv 's/,saildrive,/,sail-drive,/' "modules without a folder or kind"
spoilt "a module twice" kinds.csv 's/^jet,petrol,trailer,/jet,petrol,safety,/' "a module stands twice"
spoilt "a kind of boat that there is not" kinds.csv 's/^outboard,/outbord,/' "the kinds and their fuels"
spoilt "spark plugs on a diesel" kinds.csv 's/^inboard,diesel,diesel-engine,yes/&\ninboard,diesel,petrol-inboard,yes/' \
	"inboard diesel: has engine/ignition"
spoilt "a sealed bearing that is greased" sterndrive/tasks.csv \
	'/^gimbal-bearing.grease,/s/,greasable,/,greasable sealed,/' "is there for drive/transom/gimbal-bearing sealed"
spoilt "a line in the jet that makes no list" jet/limits.csv '/,line,/d' "jet petrol: 0 tasks after line"
