#!/bin/sh
# The launch check: its answer, its exit codes, letting pass and taking back, and what it gives to other programs.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python
book=$SPLITPIN_FILE
new_plain

about "a boat without anything that can hurt may be launched, and the answer says what it is worth"
run 0 sp ready
quiet
fits 80
[ "$(head -1 out)" = "Nothing on record holds the launch." ] || fail "the first line is $(head -1 out)"
tells "certifies nothing"
tells "licensed technician"

about "what nobody has on record holds, and its doing settles it"
run 0 sp plan --add pump.look --fitting engine/pump --cost sinks --every "24 months" --source "own rule" "Look"
run 1 sp ready
[ "$(head -1 out)" = "Hold the launch: 1 thing" ] || fail "the first line is $(head -1 out)"
tells "certifies nothing"
tells "1 task nobody has on record: one survey"
run 1 sp ready --all
tells "nobody has on record when it was last done (pump.look)"
run 0 sp did pump.look --outcome claimed
run 1 sp ready
tells "only claimed on 25 Nov 2026"
run 0 sp did pump.look
run 0 sp ready

about "what was passed over holds, with its reason"
run 0 sp plan --add pump.after --fitting engine/pump --cost burns --after grounding --source "own rule" "Look again"
run 0 sp happening grounding "a bar"
tells "1 task is due at once"
tells "Caution:"
tells "pump.after"
run 1 sp ready
tells "asked for since 25 Nov 2026 (grounding)"
run 3 sp happening grounding --close
tells_err "pump.after"
run 0 sp happening grounding --skip pump.after --reason "tide was wrong"
run 0 sp happening grounding --close
run 1 sp ready
tells "closed without it"
tells "passed over on 25 Nov 2026: tide was wrong"

about "it is let pass by name, reason and last day, and marked"
cp "$book" kept
for wrong in "--until 2026-12-01" "--reason soon" "--reason soon --until 2026-11-24" "--reason soon --until 2028-01-01"; do
	# shellcheck disable=SC2086  # options
	run 3 sp ready --waive pump.after $wrong
done
run 3 sp ready --waive nothing.there --reason soon --until 2026-12-01
same kept "$book"
run 0 sp --who Ann ready --waive pump.after --reason "the yard looks on Friday" --until 2026-12-01
run 0 sp ready
tells "Nothing on record holds the launch but what was let pass: 1 thing."
tells "let pass until 1 Dec 2026 by Ann: the yard looks on Friday"
run 1 sp ready --at 2026-12-02
run 0 sp ready --waivers
tells "pump.after; Ann: the yard looks on Friday"
run 0 sp ready --take-back pump.after
run 3 sp ready --take-back pump.after
run 1 sp ready
run 0 sp ready --waivers
says "taken back"
run 0 sp undo
run 0 sp ready

about "as CSV and as JSON, with the same exit code"
run 0 sp ready --csv
tr -d '\r' <out >plain.csv
[ "$(head -1 plain.csv)" = "boat,group,ground,fails,name,what,why,until,who,reason" ] || fail "the header is $(head -1 plain.csv)"
grep -q "^Plain Jane,hold,asked,burns,pump.after,.*,2026-12-01,Ann,the yard looks on Friday$" plain.csv || fail "$(cat plain.csv)"
run 1 sp ready --json --at 2026-12-02
python3 -c '
import json, sys
boat, = json.load(open(sys.argv[1]))
assert boat["boat"] == "Plain Jane" and boat["at"] == "2026-12-02" and boat["holds"] is True and boat["holding"] == 1, boat
item, = [i for i in boat["items"] if i["group"] == "hold"]
assert item["name"] == "pump.after" and item["ground"] == "asked" and item["until"] is None, item
assert "certifies nothing" in boat["caveat"]' out || fail "the JSON"
run 2 sp ready --csv --json
run 3 sp ready --at someday
run 4 sp --file none.splitpin ready

about "the demo: short enough for a screen of lines that say most, and everything when asked"
run 0 sp --file demo.splitpin new --demo
run 1 sp --file demo.splitpin ready
fits 80
short=$(wc -l <out)
run 1 sp --file demo.splitpin ready --all
[ "$(wc -l <out)" -gt "$short" ] || fail "--all shows no more"
run 1 sp --file demo.splitpin ready --at launch --csv
held=$(tr -d '\r' <out | grep -c "^Grey Heron,hold,")
run 1 sp --file demo.splitpin ready --at launch
[ "$(head -1 out)" = "Hold the launch: $held things" ] || fail "$held rows hold, and the answer is: $(head -1 out)"

about "who bought the boat takes nobody's word for it: of what sinks, burns or hurts only what was looked at passes"
run 0 sp --file demo.splitpin export everything handed --without-names
run 0 sp --file bought.splitpin new --from handed
run 1 sp --file bought.splitpin ready --csv
cp out before.csv
grep -q ",hold,claimed,burns,fuel-hoses.renew,.*only claimed" before.csv || fail "a claimed renewal passes by its part"
grep -q ",hold,claimed,hurts,tyres.pressure,.*a part said to be new on" before.csv || fail "a part passes for a look at it"
run 0 sp --file bought.splitpin did fuel-hoses.renew --outcome good
run 0 sp --file bought.splitpin did tyres.pressure
run 1 sp --file bought.splitpin ready --csv
! grep -Eq ",hold,[a-z-]*,[a-z]*,(fuel-hoses.renew|tyres.pressure)," out || fail "what was looked at holds: $(cat out)"
