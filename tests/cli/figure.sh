#!/bin/sh
# Figures of the manual and the choice of units, end to end.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python
new_heron

about "a figure is kept with its page, and shown in both systems"
run 0 sp why mounts.tighten
tells "How tight, the maker's manual says: splitpin figure engine/mounts torque"
run 3 sp figure engine/mounts torque 60 ft-lb
says_err "which manual, which page?"
run 0 sp figure engine/mounts torque 60 ft-lb --source "manual p. 41"
tells "engine/mounts: torque 60 ft-lb (81 N·m) (manual p. 41)"
run 0 sp why mounts.tighten
tells "Figures: manual p. 41: torque 60 ft-lb (81 N·m)."
says_not "How tight"
run 0 sp figure
tells "engine/mounts: torque 60 ft-lb (81 N·m) (manual p. 41)"
run 0 sp figure propeller-shaft
says_nothing

about "a torque without its unit is refused, an unlikely one questioned"
run 3 sp figure engine/mounts torque 60 --source "manual p. 41"
says_err "ft-lb and in-lb differ twelve times"
run 3 sp figure drive/propeller torque 60 in-lb --source "manual p. 41"
says_err "--yes takes it as it is"
run 0 sp figure drive/propeller torque 60 in-lb --source "manual p. 41" --yes
run 2 sp figure drive/propeller --drop
run 0 sp figure drive/propeller torque --drop
run 3 sp figure drive/propeller torque --drop
run 3 sp figure nowhere torque 60 ft-lb --source "manual p. 41"

about "figures go out and come back, and a bad one is refused with its line"
run 0 sp export figures
cp out figures.csv
run 0 sp import figures figures.csv
says "0 new, 0 altered"
sed 's/60 ft-lb/60/' figures.csv >bad.csv
run 3 sp import figures bad.csv
tells_err "ft-lb and in-lb differ twelve times"

about "the chosen system stands first in limits, and what was typed stays"
run 0 sp measure steering-play 17/64 in --fitting gimbal-ring
tells "steering-play 17/64 in on 25 Nov 2026: stop: above 6.35 mm limits"
run 0 sp boat --units inch
run 0 sp measure steering-play 17/64 in --fitting gimbal-ring
tells "steering-play 17/64 in (6.75 mm) on 25 Nov 2026: stop: above 1/4 in (6.35 mm)"
run 0 sp boat --units metric
run 0 sp measure steering-play 9.5 mm --fitting gimbal-ring
tells "steering-play 9.5 mm (0.374 in; nearest 3/8 in) on 25 Nov 2026: stop: above 6.35 mm (1/4 in)"
run 0 sp why gimbal-ring.play
tells "Last read: steering-play 9.5 mm (0.374 in; nearest 3/8 in) on 25 Nov 2026, stop: above 6.35 mm (1/4 in)"
run 0 sp measure --list steering-play
tells "17/64 in (6.75 mm)"
run 0 sp boat
says ", metric units"
run 3 sp boat --units feet
says_err "inch, metric"
run 0 sp verify
