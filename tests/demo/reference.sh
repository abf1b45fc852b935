#!/bin/sh
# The shipped reference tables hold together and fit the catalogue, and what checks them would see that they did not.

. "${top_srcdir:-.}/tests/lib.sh"
command -v python3 >/dev/null || skip "python3 is not installed"

check() { python3 -B "$top_srcdir/tests/demo/check_reference.py" "$1"; }

about "every row has a source that agrees with its standing, and names only what there is"
run 0 check "$top_srcdir/share/catalogue"
quiet

# spoilt WHAT FILE SED-SCRIPT COMPLAINT: a copy changed that way is complained about.
spoilt()
{
	about "a table with $1 is complained about"
	rm -rf copy
	cp -r "$top_srcdir/share/catalogue" copy
	chmod -R u+w copy
	sed "$3" copy/"$2" >changed
	! cmp -s changed copy/"$2" || fail "the change changes nothing"
	mv changed copy/"$2"
	run 1 check copy
	says "$4"
}

spoilt "a task that there is not" findings.csv 's/case-seals.pressure-test/case-seals.press/' "makes due what no catalogue has"
spoilt "a source that is not its standing" readings.csv 's/,practice,"common/,published,"common/' "source and standing differ"
spoilt "no source" cautions.csv 's/,practice,"common practice, no source"$/,practice,/' "source: it is empty"
spoilt "a pressure" readings.csv "s/,the manual's pressure/,10 psi/; s/at the manual's pressure/at 10 psi/" "belongs to the manual"
spoilt "a caution that tasks name and it has not" cautions.csv 's/^stands,/stand,/' "no caution of that name: ['stands']"
spoilt "a reading that limits go by and it has not" readings.csv 's/^anode-left,/anodes-left,/' "no reading: anode-left"
spoilt "sections in disorder" lists.csv 's/^lay-up,2,/lay-up,3,/' "not numbered in order"
spoilt "power before plugs" lists.csv 's/^\(commissioning,2,.*,\)drive\/shift\/linkage/\1electrical/' "are not in order"
