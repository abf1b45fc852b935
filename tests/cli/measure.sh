#!/bin/sh
# Measured values end to end: kept as read, held to limits, and what a stop makes due.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python
book=$SPLITPIN_FILE
new_heron
cp "$book" kept

# as_read WHAT: the text of its newest reading in the export.
as_read()
{
	sp export measurements | python3 -c 'import csv, sys
print([r for r in csv.DictReader(sys.stdin) if r["what"] == sys.argv[1]][-1][sys.argv[2]])' "$1" "${2:-as-read}"
}

about "percent of an anode: good, worth watching, stop, and the task due at once"
expect_due anodes.renew when on-condition
run 0 sp measure anode-left 80 % --fitting drive/anodes --date 2026-10-01
says "good"
run 0 sp measure anode-left 75 % --fitting drive/anodes --date 2026-10-10
tells "worth watching: at 75 % or below"
expect_due anodes.renew when on-condition
run 0 sp why anodes.renew
tells "Last read: anode-left 75 % on 10 Oct 2026, worth watching: at 75 % or below"
run 0 sp due
tells "WORTH WATCHING, as last read anode-left 75 % on 10 Oct 2026, worth watching: at 75 % or below (anodes.renew)"
run 0 sp measure anode-left 50 % --fitting drive/anodes --date 2026-10-20
tells "stop: at 50 % or below"
tells "boat owners' association"
tells "due at once: anodes.renew"
expect_due anodes.renew when now
expect_due anodes.renew due 2026-10-20
run 0 sp due
says "on condition"
says_not "WORTH WATCHING"
run 0 sp why anodes.renew
tells "on condition: anode-left"
tells "Last read: anode-left 50 % on 20 Oct 2026, stop: at 50 % or below (published: boat owners' association"
run 0 sp why anodes.renew --json
says '"verdict": "stop"'
says '"as-read": "50 %"'
says '"measured": "anode-left"'
expect_due anodes.renew when on-condition --at 2026-10-19

about "renewing clears it, on the same day too; work before it does not"
run 0 sp did anodes.renew --date 2026-10-19
expect_due anodes.renew when now
run 0 sp did anodes.renew --date 2026-10-20
expect_due anodes.renew when on-condition
run 0 sp why anodes.renew
tells "the work was done since"
run 0 sp undo
expect_due anodes.renew when now

about "a later good reading clears it, one that is not judged never does"
run 0 sp measure anode-left 120 % --fitting drive/anodes --yes
says "not judged"
expect_due anodes.renew when now
run 0 sp measure anode-left 95 % --fitting drive/anodes
expect_due anodes.renew when on-condition
run 0 sp undo
expect_due anodes.renew when now
run 0 sp redo
expect_due anodes.renew when on-condition
cp kept "$book"

about "one transaction and one journal entry; corrected, dropped and undone"
before=$(entries)
run 0 sp measure anode-left 45 % --fitting drive/anodes
is $((before + 1)) "$(entries)" entries
key=$(last_key measure)
run 0 sp measure anode-left 90 % --fitting drive/anodes --instead-of "$key"
is $((before + 2)) "$(entries)" entries
is "90 %" "$(as_read anode-left)" "the corrected reading"
expect_due anodes.renew when on-condition
run 0 sp undo
is "45 %" "$(as_read anode-left)" "the reading before"
expect_due anodes.renew when now
run 0 sp measure --drop "$key"
expect_due anodes.renew when on-condition
is 0 "$(sp measure --list | wc -l | tr -d ' ')" readings
run 0 sp undo
expect_due anodes.renew when now
run 3 sp measure --drop "$key"x
run 3 sp measure anode-left 60 % --instead-of bbbbbbbbbbbbbbbb
run 0 sp verify
cp kept "$book"

about "play in 64ths stays as it was read"
run 0 sp measure steering-play 17/64 in --fitting gimbal-ring
tells "stop: above 6.35 mm"
tells "due at once: gimbal-ring.play"
is "17/64 in" "$(as_read steering-play)" "as read"
is 6.746875 "$(as_read steering-play value)" "in mm"
expect_due gimbal-ring.play when now
expect_due steering.inspect when no-record
run 0 sp did gimbal-ring.play
expect_due gimbal-ring.play when now
run 0 sp measure steering-play 3/64 in --fitting gimbal-ring
says good
[ "$(due_of gimbal-ring.play when)" != now ] || fail "still due at once"

about "compression: the spread of all cylinders"
run 0 sp measure compression 150 148 135 151 psi
tells "worth watching: above 10 %"
tells "the lowest is 10.6 % below the highest"
is "150 148 135 151 psi" "$(as_read compression-spread)" "as read"
expect_due block.oil-test when on-condition
run 0 sp measure compression 10,2 10,1 7,5 10,3 bar
tells "stop: above 25 %"
expect_due block.oil-test when now
run 3 sp measure compression -- 150 -3 psi
run 3 sp measure compression 150 psi

about "water in the gear oil asks for the seals of the case"
run 0 sp measure gear-oil-water .3 % --fitting drive/gear-oil
tells "stop: above 0.2 %"
tells "due at once: case-seals.pressure-test"
expect_due case-seals.pressure-test when now
run 0 sp measure gear-oil-water 0 % --fitting drive/gear-oil
[ "$(due_of case-seals.pressure-test when)" != now ] || fail "still due at once"

about "roughness from 0 to 3"
run 0 sp measure bearing-roughness 0
says good
run 0 sp measure bearing-roughness 1
tells "worth watching: at grade 1 or above"
run 0 sp measure bearing-roughness 2 grade
tells "stop: at grade 2 or above"
expect_due gimbal-bearing.renew when now
run 0 sp did gimbal-bearing.renew
expect_due gimbal-bearing.renew when on-condition
run 3 sp measure bearing-roughness 4
says_err "can hardly be"

about "half-cell readings in salt water only"
run 0 sp measure half-cell-aluminium-drive --water fresh -- -800 mV
tells "not judged: the limits hold in salt water only"
run 0 sp measure half-cell-aluminium-drive -- -800 mV
tells "not judged"
run 0 sp measure half-cell-aluminium-drive --psu 29 -- -800 mV
tells "not judged"
expect_due anodes.alloy when on-condition
run 0 sp measure half-cell-aluminium-drive --water salt -- -0.8 V
tells "stop: above -850 mV"
is "-0.8 V" "$(as_read half-cell-aluminium-drive)" "as read"
is -800 "$(as_read half-cell-aluminium-drive value)" "in mV"
expect_due anodes.alloy when now
run 0 sp measure half-cell-aluminium-drive --psu 35 -- -950 mV
says good
expect_due anodes.alloy when on-condition
run 3 sp measure half-cell-aluminium-drive --water salt 950 mV
says_err "-950 mV meant"
run 3 sp measure half-cell-aluminium-drive --water salt -- -0.95
says_err "write -950 mV"

about "battery volts"
run 0 sp measure rest-voltage 12.65 V
says good
run 0 sp measure rest-voltage 12,4
tells "worth watching: below 12.6 V"
run 0 sp measure rest-voltage 12100 mV
tells "stop: at 12.2 V or below"
is 12.1 "$(as_read rest-voltage value)" "in V"
expect_due batteries.load when now

about "what cannot be is questioned, and taken with --yes"
before=$(entries)
run 3 sp measure rest-voltage 1265 V
says_err "rest-voltage is read from 6 V to 14 V"
says_err "--yes takes it as it is"
is "$before" "$(entries)" entries
run 0 sp measure rest-voltage 1265 V --yes
tells "not judged: it lies outside 6 V to 14 V"

about "wrong units, unknown kinds, days that cannot be"
run 3 sp measure steering-play 12 V
says_err "write mm"
run 3 sp measure steering-play 3
run 3 sp measure rest-voltage 3 mm
says_err "write 12.65 V"
run 3 sp measure rest-voltage much V
run 3 sp measure anode-lift 50 %
says_err 'is "anode-left" meant'
says_err "measure --kinds"
run 3 sp measure half-cell 50 mV
says_err "half-cell-steel, half-cell-aluminium,"
run 2 sp measure
run 2 sp measure anode-left
run 3 sp measure anode-left 50 % --date 2027-01-01
says_err "ahead of today"
run 3 sp measure anode-left 50 % --date 1990-01-01
says_err "before the boat was built"
run 3 sp measure anode-left 50 % --fitting nowhere
run 3 sp measure half-cell-steel --psu 99 -- -950 mV

about "the history, oldest first, as read, with what it says"
run 0 sp measure --list bearing-rough
is "0 1 2" "$(awk '{ print $4 }' out | tr '\n' ' ' | sed 's/ $//')" "as read"
is "good watch stop" "$(awk '{ print $NF }' out | tr '\n' ' ' | sed 's/ $//')" "verdicts"
run 0 sp measure --list --fitting gimbal-ring
is 2 "$(wc -l <out | tr -d ' ')" "readings there"
run 0 sp measure --list --since 2026-11-26
is 0 "$(wc -l <out | tr -d ' ')" "readings later"
run 0 sp --file none measure --kinds
tells "anode-left, %: worth watching at 75 % or below, stop at 50 % or below"
run 0 sp --file none measure --names
is "$(($(wc -l <"$top_srcdir/share/catalogue/readings.csv") - 1))" "$(wc -l <out | tr -d ' ')" kinds
cp kept "$book"

about "limits out of the manual take the place of ours"
run 0 sp measure anode-left 60 % --fitting drive/anodes
tells "worth watching"
run 3 sp measure anode-left --stop-below "65 %"
says_err "--source is wanted"
run 0 sp measure anode-left --stop-below "65 %" --source "manual p. 41"
tells "stop below 65 % (manual p. 41)"
expect_due anodes.renew when now
run 0 sp why anodes.renew
tells "stop: below 65 % (manual p. 41)"
run 3 sp measure anode-left --watch-below "40 %" --source "manual p. 41"
says_err "contradict each other"
run 0 sp measure anode-left --watch-below "40 %" --stop-below "30 %" --source "own rule"
is 1 "$(sp export bounds | tail -n +2 | wc -l | tr -d ' ')" "limits of one value"
expect_due anodes.renew when on-condition
run 0 sp measure anode-left --stop-below "80 %" --fitting drive/anodes --source "manual p. 42"
expect_due anodes.renew when now
sp export bounds >bounds.csv
run 0 sp measure anode-left --no-limits --fitting drive/anodes
run 0 sp measure anode-left --no-limits
run 3 sp measure anode-left --no-limits
expect_due anodes.renew when on-condition
run 0 sp import bounds bounds.csv
expect_due anodes.renew when now
run 0 sp import bounds bounds.csv
is 2 "$(sp export bounds | tail -n +2 | wc -l | tr -d ' ')" "limits after reading them twice"
printf 'what,stop-below,source\nanode-lift,3,manual\n' >bad.csv
run 3 sp import bounds bad.csv
says_err 'is "anode-left" meant'
run 2 sp measure anode-left 3 % --no-limits
run 0 sp verify
cp kept "$book"

about "a task of one's own asks for a value"
run 0 sp plan --add belts.look --fitting engine/belts --measured belt-deflection --source "own rule" "Look at the belt"
expect_due belts.look when on-condition
run 0 sp measure belt-deflection 7/8 in
expect_due belts.look when now
run 3 sp plan belts.look --measured belt --source "own rule"

about "readings of a hand-made file count too"
printf 'date,what,as-read,fitting\n2026-11-20,anode-left,30 %%,drive/anodes\n2026-11-20,tightness,5,\n' >read.csv
run 0 sp import measurements read.csv
expect_due anodes.renew when now
run 0 sp measure --list
is "stop not judged" "$(grep 2026-11-20 out | sed -e 's/.* \(stop\).*/\1/' -e 's/.*\(not judged\).*/\1/' | tr '\n' ' ' | sed 's/ $//')" verdicts
