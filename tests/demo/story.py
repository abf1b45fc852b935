"""The demo's story: one invented boat, "Grey Heron", from 2018 to the autumn of 2026.

Nobody and nothing in it is real.  Dates of services are days without an outing,
except where AFTER says how long the
engine ran later that day.  make_demo.py turns these tables into share/demo/*.csv.
"""

BOAT = "Grey Heron"
SINCE = "2018-03-10"
HOURS_NOW = 6124	# tenths of an hour after the last outing; the start follows from it
UNLOGGED = ("2021-04-10", 175,
"Hours of 2020, which nobody wrote down: found on the meter before it was changed")
NEW_METER = "2021-04-17"

# launch, haul-out, outings that season; nothing at all is written down of 2020
SEASONS = [
    ("2018-05-05", "2018-10-13", 38, "First season"),
    ("2019-04-27", "2019-10-05", 41, ""),
    ("2021-05-15", "2021-10-09", 37, "Late: waited for the new meter and for the ramp to be mended"),
    ("2022-04-23", "2022-10-15", 43, ""),
    ("2023-04-22", "2023-10-07", 46, "Two weeks on the coast in August"),
    ("2024-04-20", "2024-10-19", 39, ""),
    ("2025-04-19", "2025-10-04", 44, ""),
    ("2026-04-18", "2026-10-12", 42, ""),
]
PLANNED = ("2027-04-15", "2027-10-10", "As things look in autumn")

# date, until, stand, water, place, remark
STAYS = [
    ("2019-10-06", "2020-03-15", "ashore", "", "behind the barn, under a tarpaulin",
     "No room under the roof that winter"),
    ("2022-03-12", "2022-04-16", "ashore", "", "the yard", "Drive off, all bellows"),
    ("2023-08-05", "2023-08-19", "afloat", "salt", "Pelican Sound, mooring 7", "A fortnight in salt water"),
    ("2025-07-19", "2025-08-02", "afloat", "fresh", "Otter Bay, guest buoy", ""),
]

# date, kind, closed, remark
HAPPENINGS = [
    ("2018-03-10", "bought", "2018-04-28", "Bought used; the seller had no papers, \"but it always ran\""),
    ("2018-04-07", "drive-off", "2018-04-28", ""),
    ("2021-08-14", "line", "2021-08-15", "Fishing line behind the propeller, about two arm lengths"),
    ("2022-03-12", "drive-off", "2022-04-16", "By the yard"),
    ("2023-08-05", "new-berth", "2023-08-06", "Salt water for a fortnight"),
    ("2024-07-20", "grounding", "2024-07-27",
     "Touched a sand bar off Sandy Spit at idle, propeller scratched"),
    ("2025-03-22", "drive-off", "",
     "Nobody wrote down whether the retainers of the shift linkage were renewed"),
    ("2026-07-18", "overheating", "2026-07-25",
     "Weed over the intake, alarm came on, stopped within a minute"),
    ("2026-10-03", "vibration", "",
     "Slight shake at cruising speed on the last two outings; not looked at yet"),
]

# Days that must have an outing: date, tenths, what is written (hours, reading, both), water, rinsed, place,
# remark.
OUTINGS = [
    ("2018-05-05", 14, "reading", "", "", "Otter Bay", "First time out: ran well, steering a little stiff"),
    ("2018-08-11", 31, "reading", "", "", "Île aux Joncs", "Déjeuner sur l'île, then home, slowly"),
    ("2019-06-15", 24, "reading", "", "", "Long Reach",
     "Three things seen:\n1. bilge dry\n2. bow light out, fuse\n3. a heron"),
    ("2019-07-20", 42, "reading", "salt", "no", "Pelican Sound",
     "Day trip to the coast, no hose at the ramp"),
    ("2021-08-14", 18, "reading", "", "", "the narrows",
     "Line in the propeller, \"of course\" on a Saturday"),
    ("2022-06-18", 37, "reading", "salt", "yes", "Pelican Sound", "Rinsed at the ramp, ten minutes"),
    ("2022-07-17", 0, "no engine", "", "", "home jetty", "Tied up all day, children swam"),
    ("2023-06-10", 22, "both", "", "", "Kettle Point", "=same as yesterday"),
    ("2024-07-20", 16, "reading", "", "", "Sandy Spit",
     "Touched ground; came off with the drive up, propeller scratched"),
    ("2024-08-10", 39, "reading", "salt", "no", "Pelican Sound",
     "Ramp hose broken, rinsed only two days later"),
    ("2025-06-07", 12, "hours", "", "", "Otter Bay", "-- fog, turned back"),
    ("2025-07-05", 28, "reading", "brackish", "yes", "river mouth",
     "Möwe Landing: good ice, \"Größe 3\""),
    ("2025-07-12", 21, "reading", "", "", "Long Reach", "New impeller cover gasket before we left, no drip"),
    ("2026-06-27", 33, "reading", "salt", "yes", "Pelican Sound", ""),
    ("2026-07-18", 9, "reading", "", "", "the narrows",
     "Alarm; weed on the intake; drifted, cleared it, went home at idle"),
    ("2026-09-26", 17, "reading", "", "", "Kettle Point", "Shakes a little at cruising speed"),
    ("2026-10-03", 13, "reading", "", "", "Otter Bay", "Still shakes, cleaned the propeller, no better"),
    ("2026-10-10", 11, "reading", "", "", "Otter Bay", "Last one; hauled out on Monday"),
]
PLACES = ["Otter Bay", "Long Reach", "Sandy Spit", "the narrows", "Île aux Joncs", "Kettle Point",
"north end", ""]
REMARKS = ["windy, short", "with guests", "fuelled up", "evening round", "fishing, mostly idle",
"water-skiing, two hours of it",
           "calm, saw the ospreys", "rain from noon, back early", "café at the landing, closed",
           "helper steered", "slow: no wake all the way"]

SPRING = {2018: "04-28", 2019: "04-20", 2021: "05-08", 2022: "04-16", 2023: "04-15", 2024: "04-13",
2025: "04-12", 2026: "04-11"}
SUMMER = {2019: "07-14", 2022: "07-10", 2023: "07-09", 2024: "07-14", 2025: "07-13", 2026: "07-12"}
AUTUMN = {2018: "10-14", 2019: "10-06", 2021: "10-10", 2022: "10-16", 2023: "10-08", 2024: "10-20",
2025: "10-05", 2026: "10-13"}

# Done every year in which anything was written down, from that year on.
EVERY_SPRING = """
2018: bellows.inspect linkage.inspect linkage.travel trim.fluid steering.inspect anodes.measure
2018: gimbal-ring.play propeller.grease spark-plugs.inspect flame-arrestor.inspect belts.measure
2018: cooling-hoses.inspect cooling.plugs-in drain-plug.inspect bilge-pump.test float-switch.test
2018: hoses-below.inspect batteries.load fuel-hoses.inspect blower.test tank.inspect lights.test
2018: life-jackets.inspect extinguishers.inspect hubs.grease frame.inspect
2019: bellows.clamps bellows-exhaust.inspect drive.listen linkage.grease controls.grease controls.neutral
2019: alarms.test exhaust.inspect fuel-pump.inspect batteries.tie-downs batteries.rest-voltage
2019: wheels.tighten brakes.inspect
2021: shift-cable.measure trim-cylinders.inspect steering.cable-grease swivel-shaft.grease bonding.test
2021: ignition.inspect circulating-pump.inspect charging.measure wiring.inspect first-aid.inspect
2021: anchor.inspect
2022: mounts.tighten thermostat.test lubrication.vent exhaust.temperature scuppers.inspect trim.sender
2022: propeller.hub-mark
2023: interrupter.test ignition.timing exhaust.yearly
"""
EVERY_SUMMER = """
2019: anodes.measure bellows.inspect
2022: bilge-pump.test drive.listen steering.cable-grease
2024: exhaust.temperature propeller.hub-mark scuppers.inspect
"""
EVERY_AUTUMN = """
2018: gear-oil.change lubrication.change fuel-filter.renew tank.stabilise cooling.drain cooling.antifreeze
2018: trim.storage batteries.winter cover.inspect bottom.inspect
2019: gear-oil.water block.fog housing.drain-holes housing.inspect inner-plate.inspect
2021: hinge-pins.inspect trim-pins.inspect trim-pins.grease seawater-pump.inspect
2023: starter.inspect trim-cylinders.inspect anodes.measure
"""

# Single services: date, task, outcome,
# then what is not usual.  An outcome "-" takes the usual one away again.
DRIVE_OFF = "bellows-inside.inspect ujoint-shaft.inspect ujoint-shaft.splines coupler.grease " \
            "coupler.inspect gimbal-bearing.inspect alignment.measure mounting-gasket.renew input-seals.renew"
DRIVES_OFF = {"2018-04-07": "owner", "2022-03-12": "yard", "2025-03-22": "owner"}

SERVICES = [
    ("2018-04-28", "boat.after-buying", "good", {"seen": "Ages of bellows, hoses and belts unknown",
     "remark": "Three evenings"}),
    ("2018-04-28", "extinguishers.renew", "renewed", {"made": "2015-06-15", "cost": "58.00",
     "seen": "Last of the old stock: stamp of 2015"}),
    ("2018-04-28", "seawater-pump.renew", "renewed", {"seen": "One vane cracked at its root, none missing",
     "cost": "41.50"}),
    ("2018-05-19", "mounting-nuts.recheck", "done", {"seen": "Two of six took a little"}),
    ("2019-04-20", "fuel-hoses.renew", "renewed", {"made": "2018-11-01", "cost": "132.75",
     "proof": "Marking and year photographed"}),
    ("2019-06-01", "tank.inspect", "good", {"estimated": "yes", "remark": "Some time in June, from memory"}),
    ("2021-05-08", "seawater-pump.renew", "renewed", {"cost": "44.00"}),
    ("2021-05-08", "anodes.renew", "renewed", {"cost": "96.20",
     "seen": "Half gone, one of them painted over"}),
    ("2021-08-15", "propeller.grease", "done", {"seen": "Line out, seal dry", "proof": "New cotter"}),
    ("2021-08-15", "gear-oil.water", "good", {"seen": "Clear"}),
    ("2022-03-12", "bellows-ujoint.renew", "renewed", {"who": "yard", "cost": "214.60",
     "proof": "Clamps seen all round; dry after a day afloat"}),
    ("2022-03-12", "bellows-exhaust.renew", "renewed", {"who": "yard", "cost": "61.30"}),
    ("2022-03-12", "bellows-shift.renew", "renewed", {"who": "yard", "cost": "38.90"}),
    ("2022-03-12", "raw-water-hose.renew", "renewed", {"who": "yard", "cost": "52.00"}),
    ("2022-03-12", "gimbal-bearing.renew", "renewed", {"who": "yard", "cost": "118.00",
     "proof": "Grease seen inside before the drive went on", "remark": "Greasable kind again"}),
    ("2022-04-09", "tyres.renew", "renewed", {"made": "2021-11-22", "cost": "171.80",
     "seen": "Week 47 of 2021 on both"}),
    ("2022-04-16", "bonding.test", "claimed", {"who": "yard",
     "remark": "Their bill says \"serviced drive\", no more"}),
    ("2022-04-16", "batteries.renew", "renewed", {"cost": "189.00"}),
    ("2022-05-07", "mounting-nuts.recheck", "done", {"who": "yard"}),
    ("2023-04-15", "seawater-pump.renew", "renewed", {"cost": "46.25"}),
    ("2023-08-06", "anodes.alloy", "good", {"seen": "Aluminium alloy, good for salt as well"}),
    ("2023-08-20", "anodes.measure", "good", {"seen": "About two thirds left after the fortnight"}),
    ("2023-08-20", "housing.rinse", "done", {}),
    ("2023-10-08", "housing.paint", "done", {"seen": "Skeg and both sides of the trim plate"}),
    ("2023-11-04", "flares.renew", "renewed", {"made": "2023-10-10", "cost": "74.90"}),
    ("2024-04-13", "swivel-shaft.grease", "not-seen", {"seen": "Hard to pump, nothing came out below",
     "remark": "Try again warm"}),
    ("2024-05-11", "swivel-shaft.grease", "done", {"seen": "Came out at both ends after a day in the sun"}),
    ("2024-04-13", "trim.fluid", "topped-up", {"seen": "A finger below the mark"}),
    ("2024-07-27", "boat.after-grounding", "good", {"seen": "Propeller scratched, all else well",
     "who": "helper"}),
    ("2024-07-27", "propeller-shaft.runout", "good", {"who": "yard", "cost": "45.00"}),
    ("2024-07-27", "gear-oil.water", "good", {}),
    ("2024-10-20", "shutters.inspect", "good", {"who": "helper"}),
    ("2025-03-22", "case-seals.pressure-test", "good", {"seen": "Held through ten minutes, shafts turned",
     "who": "owner"}),
    ("2025-04-12", "seawater-pump.renew", "renewed", {"cost": "48.10",
     "proof": "Six vanes in, six vanes out"}),
    ("2025-04-12", "anodes.renew", "renewed", {"cost": "104.40"}),
    ("2025-04-12", "belts.renew", "renewed", {"cost": "67.00"}),
    ("2025-05-03", "mounting-nuts.recheck", "done", {}),
    ("2025-05-03", "propeller.recheck", "done", {}),
    ("2025-07-20", "bilge.rate", "good", {"seen": "A cup a day, from the drain plug"}),
    ("2025-07-12", "seawater-pump.inspect", "good", {"after": 21,
     "seen": "Cover gasket renewed, vanes supple"}),
    ("2025-10-05", "risers.inspect", "good", {"seen": "Passages open, a little scale on the port side",
     "who": "yard", "cost": "240.00"}),
    ("2026-04-11", "block.compression", "good", {"seen": "All alike"}),
    ("2026-04-11", "engine.full-throttle", "-", {}),
    ("2026-05-02", "engine.full-throttle", "good", {"seen": "As last year"}),
    ("2026-04-11", "brakes.inspect", "bad", {"seen": "Left shoe worn to the rivets",
     "remark": "Mended the week after, see below"}),
    ("2026-04-17", "brakes.inspect", "good", {"who": "yard", "cost": "88.00",
     "seen": "New shoes on both sides"}),
    ("2026-07-25", "cooling.after-overheating", "good",
     {"seen": "Weed only; no vane missing, shutters free"}),
    ("2026-07-25", "seawater-pump.inspect", "good", {"seen": "All six vanes whole"}),
    ("2026-07-25", "shutters.inspect", "good", {}),
    ("2026-10-13", "housing.paint", "done", {"seen": "Scratches of 2024 at last"}),
    ("2026-11-14", "batteries.winter", "done", {"seen": "Charged again"}),
    ("2026-11-14", "cover.inspect", "good", {"seen": "One strap re-tied",
     "remark": "Snow, first of the year"}),
    ("2022-03-12", "hinge-bushings.inspect", "good", {"who": "yard"}),
    ("2025-03-22", "retainers.inspect", "good", {"seen": "Eight counted, eight in"}),
    ("2025-10-05", "trim-bushings.inspect", "good", {"seen": "Round, none cracked"}),
]
LATE = "hinge-bushings.inspect retainers.inspect trim-bushings.inspect".split()
# In the autumn of 2026 all that can be done under the roof was done there and then.
UNDER_THE_ROOF = {
    "2026-10-24": "propeller.grease propeller.hub-mark swivel-shaft.grease linkage.grease linkage.inspect "
                  "linkage.travel controls.grease steering.inspect steering.cable-grease gimbal-ring.play "
                  "shift-cable.measure trim.fluid trim.sender hubs.grease wheels.tighten brakes.inspect "
                  "frame.inspect",
    "2026-11-07": "belts.measure cooling-hoses.inspect hoses-below.inspect fuel-hoses.inspect tank.inspect "
                  "fuel-pump.inspect flame-arrestor.inspect ignition.inspect spark-plugs.inspect "
                  "circulating-pump.inspect lubrication.vent mounts.tighten thermostat.test wiring.inspect "
                  "bonding.test",
    "2026-11-21": "life-jackets.inspect first-aid.inspect anchor.inspect scuppers.inspect lights.test "
                  "interrupter.test batteries.tie-downs",
}

# The gimbal bearing was greased each spring, but forgotten in 2026.
for _year in (2018, 2019, 2021, 2022, 2023, 2024, 2025):
    SERVICES.append((f"{_year}-{SPRING[_year]}", "gimbal-bearing.grease", "done",
                     {"seen": "Fresh grease after six strokes" if _year > 2021 else "",
                     "proof": "Grease seen" if _year > 2022 else ""}))

SEEN = {"bellows.inspect": "Folds soft, no crack", "gear-oil.change": "Amber, clear",
"gear-oil.water": "No water",
        "anodes.measure": "See the measurements", "lubrication.change": "Black, no water",
        "cooling.drain": "Five plugs in the bag",
        "cooling.plugs-in": "Five out of the bag, five in", "spark-plugs.inspect": "All tan",
        "bellows-inside.inspect": "Dry",
        "hubs.grease": "Old grease clean", "gimbal-bearing.inspect": "Smooth",
        "alignment.measure": "In by two fingers",
        "fuel-filter.renew": "Old one emptied into a jar: no water"}

# fitting, what, number, fitted, removed, made, remark
PARTS = [
    ("drive/transom/bellows-ujoint", "bellows, U-joint", "", "", "2022-03-12", "",
     "Age unknown when the boat was bought"),
    ("drive/transom/bellows-ujoint", "bellows, U-joint", "demo-101", "2022-03-12", "", "2021-09-01",
     "With two new clamps"),
    ("drive/transom/bellows-exhaust", "bellows, exhaust", "demo-102", "2022-03-12", "", "", ""),
    ("drive/transom/bellows-shift", "bellows, shift cable", "demo-103", "2022-03-12", "", "", ""),
    ("drive/transom/raw-water-hose", "hose, raw water", "", "2022-03-12", "", "", ""),
    ("drive/transom/gimbal-bearing", "gimbal bearing, greasable", "demo-110", "2022-03-12", "", "",
     "Hole in line with the fitting, marked in white"),
    ("engine/cooling/seawater-pump", "impeller, six vanes", "demo-120", "2021-05-08", "2023-04-15", "", ""),
    ("engine/cooling/seawater-pump", "impeller, six vanes", "demo-120", "2023-04-15", "2025-04-12", "", ""),
    ("engine/cooling/seawater-pump", "impeller, six vanes", "demo-120", "2025-04-12", "", "",
     "Spare of the same kind under the seat"),
    ("engine/belts", "belts, set", "", "2025-04-12", "", "", ""),
    ("drive/anodes", "anodes, aluminium alloy, set of four", "", "2025-04-12", "", "", ""),
    ("electrical/batteries", "start battery", "", "2022-04-16", "", "2022-02-01", ""),
    ("fuel/fuel-hoses", "fuel hose, marked", "", "2019-04-20", "", "2018-11-01", "Feed, fill and vent"),
    ("trailer/tyres", "tyres, pair", "", "2022-04-09", "", "2021-11-22", ""),
    ("safety/extinguishers", "extinguisher, disposable", "", "2018-04-28", "", "2015-06-15",
     "In the helm locker"),
    ("safety/flares", "flares, set of four", "", "2023-11-04", "", "2023-10-10", ""),
]

# fitting, what, method, then date: as read
MEASUREMENTS = [
    ("drive/anodes", "anode-left", "by eye, the worst one",
     """2018-04-28 65 %; 2019-04-20 55 %; 2019-07-14 50 %; 2021-05-08 95 %;
     2022-04-16 85 %; 2023-04-15 80 %; 2023-08-20 65 %; 2024-04-13 60 %; 2025-04-12 100 %; 2025-10-05 90 %;
     2026-07-12 80 %; 2026-10-13 75 %"""),
    ("drive/gear-oil", "gear-oil-water", "settled a day in a jar",
     """2019-10-06 0 %; 2021-10-10 0 %; 2022-10-16 0 %; 2023-10-08 0 %;
     2024-10-20 0 %; 2025-10-05 0.1 %; 2026-10-13 0.1 %"""),
    ("drive/transom/gimbal-bearing", "bearing-roughness", "finger, turned slowly",
     "2018-04-07 1 grade; 2022-03-12 2 grade; 2025-03-22 0 grade"),
    ("drive/transom/gimbal-ring", "steering-play", "at the propeller shaft, wheel held",
     """2018-04-28 1/16 in; 2021-05-08 1/16 in;
     2024-04-13 3/32 in; 2026-04-11 1/8 in"""),
    ("engine/belts", "belt-deflection", "thumb, longest run",
     "2019-04-20 1/2 in; 2022-04-16 5/8 in; 2024-04-13 3/4 in; 2025-04-12 1/2 in"),
    ("electrical/batteries", "rest-voltage", "a day off charge",
     """2019-04-20 12.5 V; 2021-05-08 12.2 V; 2022-04-16 12.7 V;
     2023-04-15 12.7 V; 2024-04-13 12.6 V; 2025-04-12 12.6 V; 2026-04-11 12.5 V"""),
    ("trailer/hubs", "hub-roughness", "spun by hand",
     "2019-04-20 0 grade; 2023-04-15 1 grade; 2024-04-13 0 grade; 2026-04-11 0 grade"),
]

# What the boat has of the designs there are; "-" is not there at all.
VARIANTS = """
drive/transom/bellows-ujoint=bell-housing-clamped drive/transom/bellows-exhaust=bellows
drive/transom/bellows-shift=bellows drive/transom/hinge-pins=greasable
drive/transom/gimbal-bearing=greasable drive/transom/gimbal-ring=clamp-bolts
drive/transom/swivel-shaft=greasable drive/upper/ujoint-shaft=sealed drive/upper/input-seals=fitted
drive/gear-oil=monitor-bottle drive/water-pump=- drive/anodes=aluminium drive/impressed-current=-
drive/shift/shift-cable=two-cable drive/shift/lower-cable=fitted drive/shift/interrupter=fitted
steering=power-assist engine/ignition=distributor engine/fuel-feed=carburettor
engine/fuel-feed/fuel-pump=mechanical engine/cooling=raw-water engine/cooling/seawater-pump=fitted
engine/cooling/strainer=- engine/exhaust/shutters=fitted hull/bilge/float-switch=float
hull/bilge/high-water-alarm=- hull/seacocks=- hull/bottom=bare hull/trim-tabs=- electrical/batteries=agm
electrical/bonding-bus=- electrical/shore-power=- electrical/shore-power/galvanic-isolator=-
fuel/tank=aluminium fuel/anti-siphon=fitted safety/extinguishers=disposable safety/fixed-extinguisher=-
safety/flares=pyrotechnic safety/life-jackets=foam safety/co-alarm=- safety/vapour-alarm=- trailer=fitted
trailer/hubs=repack trailer/brakes=drum
"""
