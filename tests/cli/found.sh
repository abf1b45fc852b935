#!/bin/sh
# Findings from the command line: what is recorded, what falls due by it, how it ends, and its photo files.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python

new_heron
found_key() { sp found --list --all --json | python3 -c 'import json, sys
print([f["finding"] for f in json.load(sys.stdin) if sys.argv[1] in f["words"]][0])' "$1"; }

about "a finding says its level and why, and what it makes due is due now"
run 0 sp found gimbal-bearing "rough, growls in turns" --date 2026-06-01
tells "Gimbal bearing, 1 Jun 2026: rough, growls in turns"
tells "level: mend;"
tells "due at once: ujoint-shaft.inspect,"
fits
expect_due ujoint-shaft.inspect when now
expect_due ujoint-shaft.inspect due 2026-06-01
run 0 sp due
tells "found on 1 Jun 2026: rough, growls in turns"
run 0 sp why ujoint-shaft.inspect
tells "Asked for at once by what was found on 1 Jun 2026"
rough=$(found_key growls)

about "doing it ends the asking, and says which finding asked"
run 0 sp did ujoint-shaft.inspect --outcome good --date 2026-06-02
tells "splitpin found --mend $rough"
run 0 sp why ujoint-shaft.inspect
says_not "Asked for"

about "a sentence names its fitting, and what could be several is refused with the nearest"
run 0 sp found "gear oil milky"
tells "Gear oil, 25 Nov 2026: gear oil milky"
tells "level: hold;"
before=$(entries)
run 3 sp found "fuel smell in the bilge"
tells_err "hull/bilge"
tells_err "fuel/"
run 3 sp found "it rattles"
tells_err "name no fitting"
run 3 sp found propeller "bent" --due nonsense.task
tells_err "--due: "
run 3 sp found propeller "bent" --level grave
tells_err "hold"
run 2 sp found
run 2 sp found --list --mend "$rough"
is "$before" "$(entries)" "entries after what was refused"

about "on a terminal it is asked which fitting is meant"
if python3 -c 'import pty; pty.openpty()' 2>/dev/null; then
	run 0 python3 -B "$here/terminal.py" 80 1 -- "$SPLITPIN" --today $today found "fuel smell in the bilge"
	says "On which? A number, or words: "
	tells "Fuel system, 25 Nov 2026: fuel smell in the bilge"
	tells "level: hold;"
	run 0 sp undo
fi

about "another level is taken, and the list shows what was proposed"
run 0 sp found drive/gear-oil "chips on the magnet" --level watch --until 2026-12-24 --allowed "not run"
tells "proposed was hold"
run 0 sp found --list
tells "proposed was hold"
tells "by 24 Dec 2026"
tells "until then not run"
fits

about "the list is worst first, and comes as CSV and JSON"
sp found --list --csv | python3 -c 'import csv, sys
rows = list(csv.DictReader(sys.stdin))
assert [r["level"] for r in rows] == ["hold", "mend", "watch"], rows
assert rows[1]["fitting"] == "drive/transom/gimbal-bearing" and rows[1]["season"] == "1", rows' || fail "the CSV"
run 0 sp found --list --since 2026-11-01 --json
says_not "growls"
run 2 sp found --list --csv --json --all --show x

about "a season begun since shows in the list"
run 0 sp season --launch 2026-10-01
run 0 sp found --list
tells "(2nd season)"

about "it is mended with words on how it was left, once; reopened and dropped and brought back"
run 3 sp found --mend "$rough"
tells_err "how was it left"
run 0 sp found --mend "$(echo "$rough" | cut -c 9-)" "new bearing, turns smooth" --date 2026-06-03
run 0 sp found --show "$rough"
tells "Mended on 3 Jun 2026, left as new bearing, turns smooth; by ujoint-shaft.inspect on 2 Jun 2026"
run 3 sp found --mend "$rough" "again"
run 0 sp found --list
says_not "growls"
run 0 sp found --list --all
says "growls"
run 0 sp found --reopen "$rough"
run 0 sp found --list
says "growls"
run 0 sp found --drop "$rough"
run 3 sp found --show "$rough"
run 0 sp undo
run 0 sp found --show "$rough"

about "photos are opened in the owner's viewer; one that changed or is gone is said"
printf 'a picture' >'bent blade.jpg'
run 0 sp found propeller "one blade bent" --photo 'bent blade.jpg' --measured "shaft-runout 0.2 mm"
bent=$(found_key blade)
mkfifo shown
printf '#!/bin/sh\ncat "$1" >shown\n' >viewer
chmod +x viewer
SPLITPIN_VIEWER=./viewer run 0 sp found --view "$bent"
cat shown >seen
cmp seen 'bent blade.jpg' || fail "the viewer did not get the file"
printf 'touched up' >>'bent blade.jpg'
SPLITPIN_VIEWER=./viewer run 0 sp found --view "$bent"
cat shown >seen
tells "has changed since"
rm 'bent blade.jpg'
SPLITPIN_VIEWER=./viewer run 4 sp found --view "$bent"
tells "not there any more"
run 3 sp found --view "$rough"
tells_err "no photo"
run 4 sp found propeller "cracked" --photo nowhere.jpg
tells_err "nowhere.jpg"
run 0 sp found --show "$bent"
tells "Measured: shaft-runout 0.2 mm"

about "what was found is exported and read back, and what cannot be is refused"
run 0 sp export findings findings.csv
run 0 sp import findings findings.csv
tells "4 there already"
printf 'fitting,date,words\ndrive/propeller,2027-01-01,bent\n' >ahead.csv
run 3 sp import findings ahead.csv
tells_err "ahead of today"
printf 'fitting,date,words\ndrive/propeller,2026-01-01,nicked\n' >plain.csv
run 0 sp import findings plain.csv
run 0 sp found --list
tells "mend 1 Jan 2026, Propeller: nicked"
run 0 sp verify

about "what holds the launch is let pass by its key, with a reason and a last day"
rm -f "$SPLITPIN_FILE"
run 0 sp new Tern --kind petrol-sterndrive --meter 412
run 0 sp found hull/bottom "crack below the waterline" --level hold
run 0 sp found --list --csv
key=$(sed -n '2s/,.*//p' out)
run 3 sp found --waive "$key" --until 2026-12-31
run 0 sp found --waive "$key" --reason "seen by a surveyor, laminate sound" --until 2026-12-31
tells "It is not mended by that"
run 0 sp ready --waivers
tells "laminate sound"
