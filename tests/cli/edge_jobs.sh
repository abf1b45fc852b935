#!/bin/sh
# What owners get wrong, continued: work taken apart, things found, lists passed over, figures, dates of the law.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
export today=2026-03-20
book=$SPLITPIN_FILE

afresh()
{
	rm -f "$book"
	run 0 sp new Tern --kind petrol-sterndrive --water salt --meter 412
}

about "E1 a forgotten retainer: the job does not close, and what is left over holds the launch"
afresh
run 0 sp job start --name off "Drive off"
run 0 sp job off --off "3 cotter pins bag 1"
run 3 sp job off --close
run 3 sp job off --back 1 --count 2
run 0 sp job off --back 1 --count 2 --why "one not found"
run 0 sp job off --left-over "1 nut 5/8"
run 1 sp ready
tells "left over"
run 3 sp job off --close

about "E10 figures in several units are kept as typed, with the other system beside"
afresh
run 0 sp figure drive/propeller torque "60 ft-lb" --source "manual p. 41"
run 0 sp figure drive/propeller
tells "60 ft-lb (81"
run 0 sp figure drive/gear-oil oil-quantity "2.2 L" --source "manual p. 12"
run 0 sp export figures
says "60 ft-lb"
says "2.2 L"
run 3 sp figure drive/propeller torque 60 --source "manual p. 41"
tells_err "twelve"

about "E13 begun in October and finished in April: the clock counts from the day of the line's own work"
afresh
run 0 splitpin --today 2025-10-04 job start --name winter --task gear-oil.change "Over the winter"
run 0 splitpin --today 2025-10-05 job winter --pause "in the shed"
run 0 sp job winter --resume
run 0 sp did gear-oil.change --date 2026-03-20
expect_due gear-oil.change last-done 2026-03-20

about "E14 a teardown that waits all winter is found again as it was"
afresh
run 0 splitpin --today 2025-11-01 job start --name apart "Apart"
run 0 splitpin --today 2025-11-01 job apart --off "6 nuts 5/8 tray 2"
run 0 splitpin --today 2025-11-01 job apart --off "trim angle 3/8 in proud"
run 0 splitpin --today 2025-11-01 job apart --pause "trays on the shelf"
run 0 sp job
tells "trays on the shelf"
run 0 sp job apart --resume
run 0 sp job apart --refit
tells "3/8 in proud"
tells "tray 2"
run 0 sp job apart --labels
tells "tray 2"

about "E15 what is found on the way is on record, and the job goes on"
run 0 sp found drive/transom/gimbal-bearing "rough, growls in turns"
run 0 sp job apart --refit
tells "nuts"
run 0 sp found --list
tells "growls in turns"

about "E18 a task passed over with a reason stays due"
afresh
run 0 sp season commissioning --skip bellows.inspect --reason "no light"
expect_due bellows.inspect when no-record
run 1 sp ready
run 0 sp season commissioning
tells "no light"
run 3 sp season commissioning --skip bellows.clamps --reason " "

about "E26 no torque is shipped; a figure has its source, and one that took another's place can be taken back"
run 0 sp plan check
run 0 sp figure drive/propeller torque "60 ft-lb" --source "manual p. 41"
run 0 sp figure drive/propeller torque "80 ft-lb" --source "parts list 2019"
run 0 sp figure drive/propeller
tells "80 ft-lb"
tells "parts list 2019"
run 0 sp undo
run 0 sp figure drive/propeller
tells "60 ft-lb"
tells "manual p. 41"

about "E28 E30 how it stood is asked for before the wrench goes on, and the gear that it was in"
afresh
run 0 sp job start --template drive-off --name off
run 0 sp job off --list
tells "gear"
run 3 sp job off --close

about "E29 after the drive was off the alignment is due"
run 0 sp job off --off "6 nuts 5/8 tray 2"
run 0 sp did alignment.measure --date 2026-01-10
run 0 sp happening drive-off --date 2026-03-01
expect_due alignment.measure when now

about "E31 plugs out that nobody counted in hold the launch"
afresh
run 0 sp measure plugs-out 7 --fitting engine/cooling --method counted --date 2026-03-01
run 1 sp ready
tells "plugs"
run 0 sp measure plugs-in 6 --fitting engine/cooling --method counted
run 1 sp ready --csv
says "plugs"

about "E33 a photo by any name is kept with its digest, and a change of its bytes is told"
printf one >"IMG 0001 (2).jpg"
run 0 sp found engine/exhaust "rust streak at the gasket" --photo "IMG 0001 (2).jpg"
sum=$(sha256sum "IMG 0001 (2).jpg" | cut -c1-64)
run 0 sp export photos
says "$sum"

about "E38 a finding that nobody mends is in its third season"
afresh
run 0 splitpin --today 2024-05-10 found hull/cover "torn at the bow" --date 2024-05-10
for year in 2024 2025 2026; do
	run 0 splitpin --today 2026-11-25 season --launch $year-04-15 --haul-out $year-10-10
done
run 0 splitpin --today 2026-11-25 found --list
tells "3rd season"

about "an extinguisher lasts to 31 December of its 12th year: 33 CFR 175 subpart E; a year is stamped on it"
afresh
run 0 sp did extinguishers.renew --made 2012
run 0 sp due --csv --all
grep extinguishers.renew out | grep -q ",2024-12-31," || fail "not to 31 December 2024: $(grep extinguishers.renew out)"

about "pyrotechnic signals serve 42 months from manufacture: 46 CFR 160.024-5 and 160.036-5"
run 0 sp did flares.renew --made 2023-10-20 --date 2024-05-01
expect_due flares.renew due 2027-04-20

about "a template is of the boats that have what it is about: of their fuel, and of their design"
rm -f "$book"
run 0 sp new Diesel --kind inboard --fuel diesel --berth afloat --winter ashore --water salt
run 0 sp job templates
tells "diesel-service:"
says_not "spark-plugs:"
says_not "petrol-filter:"
run 3 sp job start --template petrol-filter
tells_err "is not for this boat, which has no vapour.sniff"
run 0 sp job start --template lay-up-closed --name winter
says_not "vapour"
run 0 sp job winter --carry
tells "Biocide for diesel"
says_not "stabiliser"
says_not "Gear oil"
afresh
run 0 sp fitting drive/transom/gimbal-bearing --variant sealed
run 0 sp job start --template bellows-and-bearing --name sealed
run 0 sp job sealed --json
says_not "Grease gun"
says_not "Grease hole"
says_not "grease passage"
run 0 sp fitting drive/transom/gimbal-bearing --variant greasable
run 0 sp job start --template bellows-and-bearing --name greasable
run 0 sp job greasable --json
says "Grease gun"
says "grease passage"
