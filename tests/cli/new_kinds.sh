#!/bin/sh
# A boat of each kind on its first day: what a mechanic of that kind expects on the list, and would laugh at.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
export today=2026-03-20

# afresh KIND [OPTION...]: a boat of that kind, and all its tasks' names in the file tasks.
afresh()
{
	rm -f "$SPLITPIN_FILE"
	kind=$1
	shift
	run 0 sp new Tern --kind "$kind" --water salt --meter 412 "$@"
	run 0 sp due --all --csv
	cut -d, -f2 out >tasks
}
has() { for task in "$@"; do grep -qx "$task" tasks || fail "$kind: $task is missing"; done; }
has_no() { for task in "$@"; do ! grep -qE "^$task" tasks || fail "$kind: $(grep -E "^$task" tasks | head -n 1) is no work of this boat"; done; }

for kind in petrol-sterndrive diesel-sterndrive inboard outboard jet sail; do
	about "a $kind has a first plan: chores, a first day, and one survey by the parts of the boat"
	afresh $kind
	run 0 sp due
	says "BEFORE LAUNCH, 15 Apr 2026"
	says "FIRST DAY AFLOAT, 15 Apr 2026"
	says "SURVEY: nobody knows when it was last done"
	says "  engine  "
	[ "$(wc -l <out)" -lt 75 ] || fail "the first page has $(wc -l <out) lines"
	! grep -q '^!' out || fail "something is overdue that nobody knows of"
	has bilge-pump.test drain-plug.inspect extinguishers.renew flares.renew batteries.rest-voltage lubrication.change
	run 1 sp ready
	says "Hold the launch: "
done

about "what belongs to each kind, and what does not"
afresh petrol-sterndrive
has bellows-ujoint.renew gimbal-bearing.inspect retainers.renew spark-plugs.inspect blower.test hubs.grease
has_no injectors diaphragm standing-rigging
afresh diesel-sterndrive
has bellows-ujoint.renew gimbal-bearing.inspect
has_no spark-plugs flame-arrestor vapour.sniff blower.test
afresh inboard
has seal.inspect cutless.measure seawater-pump.renew
has_no bellows-ujoint gimbal spark-plugs hubs tyres diaphragm
afresh inboard --fuel petrol
has spark-plugs.inspect vapour.sniff
has_no bellows-ujoint gimbal injectors
afresh outboard
has water-pump.renew spark-plugs.inspect hubs.grease
has_no bellows gimbal coupler risers cutless
afresh jet
has impeller.measure bucket.inspect
has_no bellows-ujoint gimbal propeller
afresh sail
has diaphragm.inspect standing-rigging.inspect seal.inspect
has_no bellows-ujoint gimbal spark-plugs hubs

about "an inboard or a sailing boat has a trailer where it lies on one or its owner says so, now or later"
afresh inboard --berth trailer
has hubs.grease
afresh sail --with trailer
has hubs.grease
afresh sail
run 0 sp boat --with trailer
run 0 sp plan --news
says "new hubs.grease: "
run 0 sp plan --take-all
expect_due hubs.grease when no-record
run 0 sp boat --with trailer
run 0 sp export boats
says ",sail trailer,"
run 3 sp boat --with boiler
says_err 'has no "boiler" for sail: what it leaves open is shaft, saildrive, trailer'
run 3 sp new Other --kind jet --with trailer --with rig --file other.splitpin
says_err 'has no "rig" for jet: what it leaves open is nothing'

about "a sailing boat has a shaft or a saildrive, as soon as its owner names one"
afresh sail --with saildrive
has diaphragm.inspect
has_no "seal\.inspect" cutless
run 0 sp plan --news
says "0 lines"
afresh sail --fuel petrol --with shaft
has seal.inspect spark-plugs.inspect
has_no diaphragm leg-oil

about "what must come off first follows the design; of one not known the longer way"
afresh petrol-sterndrive
run 0 sp fitting drive/transom/bellows-ujoint
says "first off or open: drive/transom/bell-housing"
afresh petrol-sterndrive --meter port=1 --meter starboard=1 --variant port/drive/transom/bellows-ujoint=nose-compressed
run 0 sp fitting port/drive/transom/bellows-ujoint
says "first off or open: port/drive/unit"
run 0 sp fitting starboard/drive/transom/bellows-ujoint
says "first off or open: starboard/drive/transom/bell-housing"

about "petrol vapour is no caution where there is no petrol"
afresh inboard
run 0 sp export tasks
says_not "fuel-vapour"

about "a boat bought used asks to be gone through; one that came new has nothing to look up"
afresh petrol-sterndrive --bought used
run 0 sp happening --list
says "bought"
expect_due boat.after-buying when now
expect_due bellows-ujoint.renew when no-record
afresh petrol-sterndrive --bought new
run 0 sp due
says_not "SURVEY"
expect_due bellows-ujoint.renew due 2031-03-20
expect_due lubrication.change when this-season
run 0 sp ready
run 3 sp new Other --bought perhaps --file other.splitpin
says_err "new, used"

about "twins have their own tasks and hours, a generator has its own"
rm "$SPLITPIN_FILE"
run 0 sp new Twin --kind inboard --water salt --meter port=412 --meter starboard=398.5 --meter generator=120
run 0 sp fitting
[ "$(grep -cxE "port|starboard" out)" -eq 2 ] || fail "the tree does not say once for each side what stands below"
run 0 sp did port-seawater-pump.renew --meter 412 --date 2026-03-20
expect_due port-seawater-pump.renew last-done 2026-03-20
expect_due starboard-seawater-pump.renew when no-record
run 0 sp due --all --csv
says "generator"
