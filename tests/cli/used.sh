#!/bin/sh
# A boat bought used: what nobody knows is one list, worst first; what is known roughly counts from both ends; and every
# change can be taken back without a trace in the due list.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python
export today=2026-11-25

about "nothing is known: the survey begins with what sinks, and says what to look at"
run 0 sp new Used --kind petrol-sterndrive --berth afloat --winter ashore --water salt --launch 04-15 --haul-out 10-15 \
	--built 1998
run 0 sp due
says "SURVEY: nobody knows when it was last done"
says "due --survey walks through them"
says "  hull  "
run 0 sp due --survey
tells "Spread every bellows fold and look for cracks"
says "splitpin did TASK"
grep -E '^  (sinks|burns|hurts|strands|wrecks|costs) ' out | awk '{print $1}' | uniq >order
is "sinks burns hurts strands wrecks costs" "$(tr '\n' ' ' <order | sed 's/ $//')" "worst first, each once"
n=$(grep -cE '^  (sinks|burns|hurts|strands|wrecks|costs) ' out)

about "one thing seen is one less"
run 0 sp did bellows.inspect --seen "soft, no crack"
run 0 sp due --survey
is $((n - 1)) "$(grep -cE '^  (sinks|burns|hurts|strands|wrecks|costs) ' out)" "left"

about "a spring is remembered, not a day"
run 0 sp did bellows-ujoint.renew --date "spring 2022"
says "between 1 Mar 2022 and 31 May 2022"
expect_due bellows-ujoint.renew early 2027-03-01
expect_due bellows-ujoint.renew due 2027-04-16
expect_due bellows-ujoint.renew late 2027-05-31
expect_due bellows-ujoint.renew estimated yes
run 0 sp why bellows-ujoint.renew
tells "Last done between 1 Mar 2022 and 31 May 2022"
tells "between 1 Mar 2027 and 31 May 2027"
# It sinks: by the early day it is for the winter before, by the likely one for the season after.
expect_due bellows-ujoint.renew when before-launch

about "what can't be meant is refused, and nothing is lost"
run 3 sp did bellows-ujoint.renew --date "winter 2022"
says_err "2021-12..2022-02 or 2022-12..2023-02"
run 3 sp did bellows-ujoint.renew --date 2030
run 3 sp did bellows-ujoint.renew --hours 350..300
says_err "the first figure is more than the second"
run 3 sp did bellows-ujoint.renew --hours 300..350
says_err "say about which days instead"

about "running hours are remembered: the log says when that was"
run 0 splitpin --file demo.splitpin --today $today new --demo
export SPLITPIN_FILE=$test_dir/demo.splitpin
run 0 sp did gimbal-bearing.grease --hours 520..560
says "between 26 Apr 2025 and 28 Sep 2025"
run 3 sp did gimbal-bearing.grease --hours 900
says_err "has run 612.4 h by now"
sp due --json >with.json
python3 -B -c '
import json
task = next(t for t in json.load(open("with.json"))[0]["tasks"] if t["task"] == "gimbal-bearing.grease")
hours = next(x for x in task["limits"] if x["kind"] == "hours")
assert abs(hours["used"] - (612.4 - 540)) < 0.05, hours  # from the middle of the two figures
months = next(x for x in task["limits"] if x["kind"] == "months")
assert months["early"] < months["due"] < months["late"], months
' || fail "hours from the middle, early and late"

about "undo brings every line of the due list back as it was"
run 0 sp undo
sp due --json >before.json
for change in "did bellows-ujoint.renew --date 2026-11-20" "outing 3.5h --date 2026-11-21 --water salt --not-rinsed" \
	"stay afloat --water salt --date 2026-11-01 --until 2026-11-20" "measure anode-left 40 %" \
	"did gimbal-bearing.grease --hours 590..600" "happening grounding --date 2026-11-22"; do
	# shellcheck disable=SC2086  # a command and its words
	run 0 sp $change
	sp due --json >changed.json
	! cmp -s before.json changed.json || fail "$change changes nothing"
	run 0 sp undo
	sp due --json >after.json
	cmp before.json after.json || fail "undo of: $change"
done
run 0 sp verify

about "the order in which paper is read in does not matter"
for order in forth back; do
	export SPLITPIN_FILE=$test_dir/$order.splitpin
	new_heron
	for table in meters fittings seasons stays parts outings happenings services measurements; do
		python3 -B -c '
import csv, sys
head, *rows = csv.reader(open(sys.argv[1], newline="", encoding="utf-8"))
day = next((head.index(name) for name in ("date", "fitted", "launch") if name in head), 0)
if sys.argv[2] == "back":  # the rows of one day in their order, since a meter goes forward
    rows.sort(key=lambda row: row[day], reverse=True)
csv.writer(sys.stdout, lineterminator="\n").writerows([head] + rows)
' "$demo/$table.csv" $order >$table.csv
		run 0 sp import $table $table.csv --yes
	done
	sp due --json >$order.json
done
cmp forth.json back.json || fail "the due list hangs on the order of import"
