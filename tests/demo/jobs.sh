#!/bin/sh
# The shipped templates of jobs hold together, and what checks them would see that they did not.

. "${top_srcdir:-.}/tests/lib.sh"
command -v python3 >/dev/null || skip "python3 is not installed"

check() { python3 -B "$top_srcdir/tests/demo/check_jobs.py" "$1" "$top_srcdir/src/model/words.c"; }

about "each job does tasks that there are, warns of what they warn of, and ends with its proofs"
run 0 check "$top_srcdir/share/catalogue"
quiet

# spoilt WHAT FILE SED-SCRIPT COMPLAINT: a copy changed that way is complained about.
spoilt()
{
	about "a template with $1 is complained about"
	rm -rf copy
	cp -r "$top_srcdir/share/catalogue" copy
	chmod -R u+w copy
	sed "$3" copy/"$2" >changed
	! cmp -s changed copy/"$2" || fail "the change changes nothing"
	mv changed copy/"$2"
	run 1 check copy
	says "$4"
}

about "every kind of boat has its jobs counted, and what is left to a yard is named"
for boat in "petrol-sterndrive petrol" "diesel-sterndrive diesel" "inboard diesel" "outboard petrol" "jet petrol" \
	"sail diesel"; do
	says "$boat: "
done
says "left to a yard: ujoint-shaft.renew"

spoilt "a task that there is not" jobs.csv 's/ seal.drip,/ seal.drips,/' "none of its boats has: ['seal.drips']"
spoilt "a task of another kind of boat" jobs.csv '/^winches,/s/winches.grease/gimbal-bearing.grease/' "none of its tasks is on sail"
spoilt "a kind of boat that there is not" jobs.csv '/^primer,/s/,outboard,/,outbord,/' "no such kind of boat: outbord"
spoilt "a fitting that there is not" jobs.csv 's,drive/unit,drive/units,' "opens what petrol-sterndrive has not: drive/units"
spoilt "an unknown caution" jobs.csv '/^drive-off,/s/ propeller / propellers /' "an unknown caution: ['propellers']"
spoilt "a caution forgotten" jobs.csv '/^drive-off,/s/ lifting-drive / /' \
	"does not warn of what its tasks warn of: ['lifting-drive']"
spoilt "an unknown place" jobs.csv '/^sea-trial,/s/,afloat,/,at-sea,/' "an unknown place: at-sea"
spoilt "no crew" jobs.csv '/^sea-trial,/s/,afloat,2,/,afloat,,/' "a crew is a number of people"
spoilt "a title too long for its screen" jobs.csv 's/^heads,/&A very long title that does not fit on any screen of ours: /' \
	"the title has"
spoilt "the same job twice" jobs.csv 's/^jet-bucket,/jet-pump,/' "a name stands twice"
spoilt "a job forgotten" jobs.csv '/^gear-oil,/d' "missing: ['gear-oil']"
spoilt "lines of no job" job-lines.csv 's/^heads,/head,/' "lines of no job: ['head']"
spoilt "a number left out" job-lines.csv '/^drive-off,7,/d' "do not run from 1 without a gap"
spoilt "the same number twice" job-lines.csv 's/^drive-off,7,/drive-off,6,/' "do not run from 1 without a gap"
spoilt "an unknown kind of line" job-lines.csv '/^winches,1,/s/,tool,/,tools,/' "an unknown kind of line: tools"
spoilt "a part neither always nor on condition" job-lines.csv '/^drive-off,.*,part,/s/,always,/,often,/' "can't be when 'often'"
spoilt "nothing that comes off" job-lines.csv '/^belts,.*,off,/d' "has no off, and opens engine/belts"
spoilt "nothing written down as found" job-lines.csv '/^belts,.*,found,/d' "has no found, and opens engine/belts"
spoilt "no proof" job-lines.csv '/^sea-trial,.*,proof,/d' "sea-trial: has no proof"
spoilt "a task that nothing does" job-lines.csv '/,gearbox.listen,/d' "no step and no proof does ['gearbox.listen']"
spoilt "a renewal that nothing proves" job-lines.csv '/^impeller-engine,.*,proof,.*,seawater-pump.renew,/d' \
	"nothing proves ['seawater-pump.renew']"
spoilt "the trim angle forgotten" job-lines.csv '/^drive-off,.*Trim angle at rest/d' "does not ask for the as-found: trim angle"
spoilt "retainers nobody counts" job-lines.csv '/,off,retainer,/s/, count them//' "a retainer without a count"
spoilt "plugs nobody counts" job-lines.csv '/,off,plug,/s/, count them//' "a plug without a count"
spoilt "what comes off of no kind" job-lines.csv 's/,off,retainer,/,off,,/' "strip says what kind of thing comes off"
spoilt "a size that is none" job-lines.csv 's/,5\/8,16,/,10\/16,16,/' "no size in inches: 10/16"
spoilt "sizes that are no pair" job-lines.csv 's/,5\/8,16,/,5\/8,17,/' "5/8 and 17 are no pair"
spoilt "a size on a step" job-lines.csv '/^winches,.*,step,/s/,,,,,/,1\/2,13,,,/' "a step has no wrench size"
spoilt "a step for another job's task" job-lines.csv '/^drive-off,/s/,coupler.inspect,/,hubs.grease,/' \
	"the job does not do hubs.grease"
spoilt "a state that there is not" job-lines.csv 's/,state,,,key-out,/,state,,,key-in,/' "an unknown state: key-in"
spoilt "two sentences in a step" job-lines.csv "s/Count the vanes,/Count the vanes. Write it down,/" "is not one sentence"
spoilt "a torque" job-lines.csv "s/Torque wrench; the figure/Torque wrench at 50 ft-lb; the figure/" "belongs to the manual"
spoilt "a pressure" job-lines.csv "s/pump to the manual's figure/pump to 10 psi/" "belongs to the manual"
spoilt "a quantity of oil" job-lines.csv "s/Gear oil by type/Gear oil by type 2 quarts/" "belongs to the manual"
spoilt "a source that is not its standing" job-lines.csv \
	's/,practice,"common practice, no source"/,published,"common practice, no source"/' "source and standing differ"
spoilt "a renewal in no job" jobs.csv 's/ seawater-pump.renew / /' "in no job: ['seawater-pump.renew']"
spoilt "petrol's work on a diesel" jobs.csv '/^petrol-filter,/s/,vapour.sniff,/,,/' \
	"petrol-filter title: tells inboard diesel of what it has not"
spoilt "a line of petrol's on a diesel" job-lines.csv '/^fuel-hoses,.*weeps by eye/s/,vapour.sniff,/,,/;s/Look for weeps by eye/Petrol: look for weeps by eye/' \
	"tells diesel-sterndrive diesel of what it has not"
spoilt "a need that no boat fills" job-lines.csv '/^sea-trial,/s/,blower.test,/,blowers.test,/' "none of its boats has blowers.test"
