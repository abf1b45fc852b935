#!/bin/sh
# Services listed by task; and what a corrected reading takes back that the wrong one had put into the log.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"

new_plain
add_task pump.look --verb inspect --every "100 h"
add_task oil.change --verb change --every "100 h"
run 0 sp outing 2h --date 2026-05-02
run 0 sp did pump.look --date 2026-05-03 --seen "six vanes"
run 0 sp did oil.change --date 2026-05-04 --seen "amber"
run 0 sp did pump.look --date 2026-06-03 --seen "five vanes"

about "did --list TASK lists that task's services, and without a task all"
run 0 sp did --list
lines 3
run 0 sp did --list pump.look
lines 2
says "six vanes"
says "five vanes"
says_not "amber"
run 0 sp did --list pump look --since 2026-06-01
lines 1
says "five vanes"
run 3 sp did --list rudder
says_err "rudder"

about "a corrected reading takes back the hours that the wrong one put into the log"
total 102
run 0 sp did oil.change --date 2026-07-01 --meter 107 --yes
tells "the meter showed 5 h that no outing tells of"
total "~107"
key=$(last_key did oil.change)
run 0 sp did oil.change --date 2026-07-01 --meter 103 --yes --instead-of "$key"
tells "the meter showed 1 h that no outing tells of"
total "~103"
run 0 sp outing --list
is 1 "$(grep -c 'not logged' out)" "rows not logged"
run 0 sp undo
total "~107"
run 0 sp redo

about "the row moves with the day"
run 0 sp did oil.change --date 2026-06-20 --meter 103 --yes --instead-of "$key"
total "~103"
run 0 sp outing --list
is 1 "$(grep -c 'not logged' out)" "rows not logged"
tells "2026-06-20"

about "it stays while the reading does, and while another service has it"
run 0 sp outing --list
mv out before
run 0 sp did oil.change --date 2026-06-20 --meter 103 --proof "a receipt" --instead-of "$key"
run 0 sp outing --list
same before out
run 0 sp did pump.look --date 2026-06-20 --meter 103
run 0 sp did oil.change --date 2026-06-20 --instead-of "$key"
run 0 sp outing --list
same before out

about "a reading that is left out takes its hours along"
run 0 sp undo
run 0 sp undo
run 0 sp did oil.change --date 2026-06-20 --instead-of "$key"
total 102
run 0 sp outing --list
says_not "not logged"
run 0 sp verify

about "a renewal says that the design stays, and how to say another"
printf 'name,fitting,title,verb,place,mechanism,consequence,rule,variants\n%s\n%s\n%s\n' \
	"pump.swap,engine/pump,Swap the pump,renew,anywhere,none,costs,renewal," \
	"pump.grease,engine/pump,Grease the pump,grease,anywhere,none,costs,done,greasable" \
	"pump.listen,engine/pump,Listen to the pump,inspect,anywhere,none,costs,inspection,sealed" >tasks.csv
run 0 sp import tasks tasks.csv
printf 'task,kind,amount,source\npump.swap,months,12,x\npump.grease,months,12,x\npump.listen,months,12,x\n' >limits.csv
run 0 sp import limits limits.csv
run 0 sp why pump.grease
tells "The design is not known, and this task is for: greasable. splitpin fitting engine/pump --variant DESIGN"
run 0 sp why pump.swap
says_not "design"
run 0 sp did pump.swap --date 2026-08-01
tells "the design is not known; if another went in: --variant greasable, sealed"

about "what another design brings and takes away is told"
run 0 sp fitting engine/pump --variant greasable
tells "Goes: Listen to the pump."
run 0 sp why pump.grease
says_not "design"
run 3 sp why pump.listen
run 0 sp did pump.swap --date 2026-08-02
tells "the design stays greasable"
run 0 sp did pump.swap --date 2026-08-03 --variant sealed
tells "sealed it is. Comes: Listen to the pump. Goes: Grease the pump."
says_not "stays"
run 0 sp why pump.listen
run 3 sp why pump.grease
run 0 sp undo
run 0 sp why pump.grease

about "a design that there is not is refused, and nothing is recorded"
before=$(entries)
run 3 sp did pump.swap --date 2026-08-03 --variant wooden
tells_err "it is one of greasable, sealed"
is "$before" "$(entries)" "entries"

about "looking at it asks for no design"
run 0 sp did pump.swap --date 2026-08-04 --outcome good
says_not "design"
