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

petrol="petrol-sterndrive"
spoilt "a task on no fitting" $petrol/tasks.csv \
	's,^gear-oil.level\,drive/gear-oil,gear-oil.level\,drive/gear,' "no such fitting: drive/gear"
spoilt "a circle of what must come off first" $petrol/fittings.csv \
	'/^drive\/unit,/s/,no,no,no,,/,no,no,no,drive\/transom\/bell-housing,/' "goes round in a circle"
spoilt "needs-off that is not there" $petrol/fittings.csv 's/,drive\/unit,/,drive\/units,/' \
	"needs off what there is not"
spoilt "a task without a limit" $petrol/limits.csv '/^gear-oil.level,/d' "none for ['gear-oil.level']"
spoilt "a limit of no task" $petrol/limits.csv 's/^gear-oil.level,/gear-oil.levels,/' "a limit of no task"
spoilt "a torque" $petrol/tasks.csv 's/^\(mounting-nuts.recheck.*\),stands,/\1 50 ft-lb,stands,/' \
	"belongs to the manual"
spoilt "a pressure" $petrol/tasks.csv 's/the figure comes from the drive maker/10 psi by the drive maker/' \
	"belongs to the manual"
spoilt "an unknown word" $petrol/tasks.csv 's/,galvanic,/,galvanisch,/' "is not one of the words"
spoilt "a source that is not its standing" $petrol/limits.csv \
	's/,practice,"common practice, no source"/,published,"common practice, no source"/' \
	"source and standing differ"
spoilt "the same task twice" $petrol/tasks.csv 's/^gear-oil.change,/gear-oil.level,/' "name stands twice"
