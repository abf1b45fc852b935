#!/usr/bin/env python3
"""Check the shipped catalogue as a whole: check_catalogue.py share/catalogue [WORDS.C]

Each complaint is a line; exit code 1 when there was one.  WORDS.C is src/model/words.c, whose words are
then the only ones allowed.  What kinds.csv puts together for a kind of boat and its fuel is checked together.
"""
import csv
import os
import re
import sys

TASKS_AT_LEAST = 80
TITLE_AT_MOST = 56
FITTING_AT_MOST = 24
STATES = set("key-out battery-off cold drained fuel-safe chocked drive-blocked engine-running".split())
# A figure that only the maker's manual may give: torque, pressure, quantity, electrode potential.
UNITS = (r"ft[- ]?lbs?|in[- ]?lbs?|lb[- ]?ft|N[·.]?m|kgf?m|psi|k?Pa|m?bar|inHg|mmHg|litres?|"
         r"liters?|L|l|ml|mL|quarts?|qts?|gallons?|gal|pints?|fl\.? ?oz|oz|cc|mV")
FIGURE = re.compile(r"\d[\d.,/ -]*(" + UNITS + r")\b")
HEADS = {
    "fittings": "path title variant variants below-waterline fuel rubber needs-off opens-with off-minutes "
                "remark",
    "tasks": "name fitting title verb place state mechanism consequence rule minutes variants part proof "
             "caution remark",
    "limits": "task kind amount hours salt salt-hours event happening measured standing source",
    "rates": "name value unit standing source",
    "kinds": "kind fuel module each",
    "editions": "edition date what",
}
FILES = ("fittings", "tasks", "limits")
WORDS = {"verb": "verb", "place": "workplace", "mechanism": "mechanism", "consequence": "consequence",
         "rule": "clock_rule", "kind": "limit_kind", "event": "season_event",
         "happening": "happening", "standing": "standing"}
NEEDS = {"hours": "hours", "first-hours": "hours", "months": "amount", "outings": "amount",
         "seasons": "amount", "event": "event", "happening": "happening", "condition": None}

KINDS = {"petrol-sterndrive": "petrol", "diesel-sterndrive": "diesel", "inboard": "diesel petrol",
         "outboard": "petrol", "jet": "petrol diesel", "sail": "diesel petrol"}
GENERATOR = {"generator": "diesel petrol"}  # no boat: it is added to one
# Happenings that make a list: on every kind of boat each has more to look at than one thing.
LISTS = "grounding swamping overheating line dry-run flooded-bilge bad-fuel bought".split()
LIST_AT_LEAST = 2
# Fittings at which a mechanic of that kind would laugh.
SILLY = {
    "petrol-sterndrive": "engine/injectors shaft drive/bracket rig",
    "diesel-sterndrive": "drive/bracket shaft rig",
    "inboard": "drive trailer saildrive rig",
    "outboard": "drive/transom engine/coupler engine/exhaust fuel/blower shaft rig",
    "jet": "drive propeller shaft rig",
    "sail": "drive trailer hull/trim-tabs",
}
SILLY_ON_DIESEL = ("engine/ignition engine/flame-arrestor engine/exhaust/risers fuel/vapour fuel/blower "
                   "safety/vapour-alarm")
# Designs that need opposite treatment: the group, a kind that has it, the fitting, its design, a task that
# exists for that design, and designs of the same fitting for which it does not.
DESIGNS = """
gimbal-bearing petrol-sterndrive drive/transom/gimbal-bearing greasable gimbal-bearing.grease sealed
u-joints diesel-sterndrive drive/upper/ujoint-shaft greasable ujoint-shaft.grease sealed
exhaust petrol-sterndrive drive/transom/bellows-exhaust bellows bellows-exhaust.renew tube
ujoint-bellows petrol-sterndrive drive/transom/bellows-ujoint nose-compressed bellows-ujoint.seat bell-housing-clamped
water-pump petrol-sterndrive drive/water-pump fitted water-pump.renew not-fitted
water-pump petrol-sterndrive engine/cooling/seawater-pump fitted seawater-pump.renew not-fitted
cooling petrol-sterndrive engine/cooling raw-water cooling.drain closed
cooling inboard engine/cooling raw-water cooling.plugs-in closed
cooling inboard engine/cooling closed cooling.sea-plugs raw-water
cooling jet engine/cooling closed cooling.exchanger-anode raw-water
steering-clamp petrol-sterndrive drive/transom/gimbal-ring u-bolt gimbal-ring.tighten clamp-bolts
shift petrol-sterndrive drive/shift/shift-cable two-cable shift-cable.measure electronic
shift outboard drive/shift/shift-cable electronic shift-cable.electronic two-cable one-cable
shaft-seal inboard shaft/seal packing seal.drip face-seal lip-seal
shaft-seal inboard shaft/seal packing seal.repack face-seal lip-seal
shaft-seal inboard shaft/seal face-seal seal.inspect packing
trailer-hub outboard trailer/hubs repack hubs.grease sealed oil-bath
battery sail electrical/batteries flooded batteries.gravity agm gel lithium
extinguisher jet safety/extinguishers disposable extinguishers.renew rechargeable
extinguisher jet safety/extinguishers rechargeable extinguishers.service disposable
fuel-feed petrol-sterndrive engine/fuel-feed carburettor fuel-feed.pressure injected
fuel-feed petrol-sterndrive engine/fuel-feed injected fuel-feed.rail-pressure carburettor
fuel-feed outboard engine/fuel-feed carburettor fuel-feed.bowl injected
fuel-feed outboard engine/fuel-feed injected fuel-feed.storage-mix carburettor
sail-drive sail saildrive/diaphragm double diaphragm.renew not-fitted
sail-drive sail shaft/cutless fitted cutless.measure not-fitted
sail-propeller sail propeller folding propeller.grease fixed
two-stroke outboard engine/lubrication four-stroke lubrication.change oil-tank premix
"""


# Of a module: whether every engine has it; what its owner is asked for stands like the rest.
FOR_EACH = {"yes": "yes", "no": "no", "asked": "no", "either": "yes"}
STANDS = "afloat trailer ashore roof".split()


class Check:
    def __init__(self):
        self.bad = 0

    def that(self, holds, where, what):
        if not holds:
            print(f"{where}: {what}")
            self.bad = 1

    def read(self, folder, name):
        path = os.path.join(folder, name + ".csv")
        if not os.path.exists(path):
            self.that(False, path, "is not there")
            return []
        with open(path, newline="", encoding="utf-8") as f:
            text = f.read()
        self.that("\r" not in text, path, "has other line ends than LF")
        self.that(text.splitlines()[0] == HEADS[name].replace(" ", ","), path,
                  "the header is not as described")
        rows = list(csv.DictReader(text.splitlines()))
        for i, row in enumerate(rows, 2):
            whole = None not in row and None not in row.values()
            self.that(whole, f"{path}:{i}", "too many or too few fields")
            for column, value in row.items() if whole else ():
                self.that(value == value.strip(), f"{path}:{i}", f"{column}: spaces around")
                self.that(not FIGURE.search(value), f"{path}:{i}",
                          f"{column}: a figure that belongs to the manual: {value}")
        return rows


def allowed(words_c):
    text = open(words_c, encoding="utf-8").read()
    lists = dict(re.findall(r"WORDS\(words_(\w+),([^;]*)\);", text))
    return {column: set(re.findall(r'"([^"]*)"', lists[name])[1:]) for column, name in WORDS.items()}


def check_words(check, name, rows, words):
    for row in rows:
        for column in words:
            if row.get(column):
                check.that(row[column] in words[column], name,
                           f"{column}: {row[column]} is not one of the words")


def check_access(check, f, fittings):
    path, chain = f["path"], [f["path"]]
    opens = f["opens-with"].split()
    for way in f["needs-off"].split()[1:]:
        design, _, to = way.partition("=")
        check.that(design in f["variants"].split(), path, f"another way in for no design of it: {way}")
        if check_reference(check, f, to, fittings, "needs off what there is not"):
            check.that(not fittings[to]["needs-off"].startswith(path), path, f"{to} needs it off in turn")
    while fittings[chain[-1]]["needs-off"]:
        chain.append(fittings[chain[-1]]["needs-off"].split()[0])
        if not check_reference(check, f, chain[-1], fittings, "needs off what there is not"):
            break
        if chain[-1] in chain[:-1]:
            check.that(False, path, "goes round in a circle: " + " ".join(chain))
            break
    check.that(path not in opens and len(opens) == len(set(opens)), path, "opens itself, or another twice")
    for other in opens:
        check_reference(check, f, other, fittings, "opens what there is not")


def check_reference(check, f, other, fittings, what):
    """Of two engines each has its own: what the boat has once can't name a fitting of them."""
    check.that(other in fittings, f["path"], f"{what}: {other}")
    if other in fittings:
        check.that(fittings[other]["each"] == "no" or f["each"] == "yes", f["path"],
                   f"the boat has it once, and it names {other} of each engine")
    return other in fittings


def check_fittings(check, rows):
    fittings = {f["path"]: f for f in rows}
    off = {way.rpartition("=")[2] for f in rows for way in f["needs-off"].split()}
    check.that(len(fittings) == len(rows), "fittings", "a path stands twice: "
               + " ".join(sorted({f["path"] for f in rows if rows.count(f) > 1 or fittings[f["path"]] is not f})))
    for f in rows:
        path, parent = f["path"], f["path"].rpartition("/")[0]
        check.that(re.fullmatch(r"[a-z]+[a-z0-9-]*(/[a-z][a-z0-9-]*)*", path), path, "is no path")
        check.that(not parent or parent in fittings, path, "its parent is missing")
        check.that(not parent or parent not in fittings or fittings[parent]["each"] == f["each"], path,
                   "there is one for each engine, and its parent once, or the other way round")
        check.that(0 < len(f["title"]) <= FITTING_AT_MOST, path, f"the title has {len(f['title'])} columns")
        check.that(not f["variant"], path, "the catalogue can't know a boat's variant")
        for flag in ("below-waterline", "fuel", "rubber"):
            check.that(f[flag] in ("yes", "no"), path, f"{flag} is neither yes nor no")
        check.that(bool(f["off-minutes"]) == (path in off), path,
                   "minutes to take off what others need off, and of it only")
        check_access(check, f, fittings)


def check_tasks(check, tasks, fittings, cautions):
    variants = {f["path"]: f["variants"].split() for f in fittings}
    off = {f["path"]: f["needs-off"] for f in fittings}
    for column in ("name", "title"):
        twice = {t[column] for t in tasks if [u[column] for u in tasks].count(t[column]) > 1}
        check.that(not twice, "tasks", f"{column} stands twice: {sorted(twice)}")
    for t in tasks:
        name, fitting = t["name"], t["fitting"]
        check.that(fitting in variants, name, f"no such fitting: {fitting}")
        check.that(name.startswith(fitting.rsplit("/", 1)[-1] + "."), name, "is not named after its fitting")
        check.that(re.fullmatch(r"[a-z0-9-]+\.[a-z-]+", name), name, "is no name")
        check.that(0 < len(t["title"]) <= TITLE_AT_MOST, name, f"the title has {len(t['title'])} columns")
        check.that(t["minutes"].isdigit() and int(t["minutes"]) > 0, name, "no minutes")
        check.that(set(t["variants"].split()) <= set(variants.get(fitting, [])), name,
                   "a variant that its fitting has not")
        check.that(set(t["caution"].split()) <= cautions, name, "an unknown caution")
        check.that(set(t["state"].split()) <= STATES, name, "an unknown state")
        check.that(not {"key-out", "cold", "drained"} & set(t["state"].split())
                   or "engine-running" not in t["state"], name, "an engine can't run in that state")
        check.that(not off.get(fitting) or ("engine-running" not in t["state"] and t["place"] != "on-hose"), name,
                   f"the engine can't run with {off.get(fitting)} off")
        check.that(t["proof"], name, "nothing proves it")
        check.that(t["rule"] != "printed-date" or t["mechanism"] == "none", name,
                   "a printed date knows no wear")
        check.that((t["verb"] == "renew") == (t["rule"] in ("renewal", "printed-date")), name,
                   "verb and rule do not agree")


def check_limits(check, limits, tasks):
    names = {t["name"] for t in tasks}
    check.that(not names - {m["task"] for m in limits}, "limits",
               f"none for {sorted(names - {m['task'] for m in limits})}")
    seen = set()
    for m in limits:
        name, kind = m["task"], m["kind"]
        key = (name, kind, m["event"], m["happening"], m["measured"])
        given = [c for c in ("amount", "hours", "event", "happening") if m[c]]
        check.that(name in names, name, "a limit of no task")
        check.that(key not in seen, name,
                   f"the same kind of limit twice: {kind} {m['event']}{m['happening']}{m['measured']}")
        check.that(not m["measured"] or kind == "condition", name, "a measured value is for condition")
        check.that(given == ([NEEDS.get(kind)] if NEEDS.get(kind) else []), name,
                   f"{kind}: wrong columns are filled: {given}")
        for second, first in (("salt", "amount"), ("salt-hours", "hours")):
            check.that(not m[second] or (m[first] and float(m[second]) <= float(m[first])), name,
                       f"{second}: the figure in salt water is the shorter of two")
        check.that(m["standing"] in ("published", "practice", "memory"), name, f"standing {m['standing']}")
        start = {"published": "published: ", "practice": "common practice, no source",
                 "memory": "memory, not checked"}
        check.that(m["source"].startswith(start.get(m["standing"], "?")), name,
                   f"source and standing differ: {m['source']}")
        seen.add(key)


def check_rates(check, rates):
    names = [r["name"] for r in rates]
    check.that(len(names) == len(set(names)), "rates", "a name stands twice")
    for r in rates:
        check.that(r["source"] and r["standing"] in ("published", "practice", "memory", "assumption"), "rates",
                   f"{r['name']}: no source, or no such standing")
        float(r["value"])


def check_boat(check, kind, fuel, boat):
    """What is on every boat, and what must not be on this one."""
    paths = [f["path"] for f in boat["fittings"] if not f["asked"]]
    for silly in SILLY[kind].split() + (SILLY_ON_DIESEL.split() if fuel == "diesel" else []):
        there = [p for p in paths if p == silly or p.startswith(silly + "/")]
        check.that(not there, f"{kind} {fuel}", f"has {' '.join(there)}")
    check.that(len(boat["tasks"]) >= TASKS_AT_LEAST, f"{kind} {fuel}", f"only {len(boat['tasks'])} tasks")
    for happening in LISTS:
        n = len({m["task"] for m in boat["limits"] if m["happening"] == happening})
        check.that(n >= LIST_AT_LEAST, f"{kind} {fuel}", f"{n} tasks after {happening}")
    trial = [t for t in boat["tasks"] if t["name"].startswith("trial.")]
    check.that(len(trial) >= 9, f"{kind} {fuel}", f"a sea trial of {len(trial)} steps")
    for t in trial:
        kinds = [m["kind"] for m in boat["limits"] if m["task"] == t["name"]]
        check.that(kinds == ["condition"], t["name"], "a step of the trial is due by itself")


def check_designs(check, boats):
    groups = set()
    for line in DESIGNS.strip().splitlines():
        group, kind, path, design, task, *without = line.split()
        boat = boats[kind, KINDS[kind].split()[0] if group != "fuel-feed" else "petrol"]
        variants = {f["path"]: f["variants"].split() for f in boat["fittings"]}.get(path, [])
        exists_for = {t["name"]: t["variants"].split() for t in boat["tasks"] if t["fitting"] == path}.get(task, [])
        check.that({design, *without} <= set(variants), path, f"of the designs {design} {' '.join(without)} one is missing")
        check.that(design in exists_for, task, f"is not there for {path} {design}")
        check.that(not set(without) & set(exists_for), task, f"is there for {path} {' '.join(without)}")
        groups.add(group)
    check.that(len(groups) >= 13, "designs", f"only {len(groups)} groups")


def check_kinds(check, kinds, folders):
    used = {k["module"] for k in kinds}
    check.that(used == folders, "kinds", f"modules without a folder or kind: {sorted(used ^ folders)}")
    fuels = {}
    for k in kinds:
        check.that(k["each"] in FOR_EACH, "kinds", f"{k['module']}: each is none of {' '.join(FOR_EACH)}")
        check.that(k["each"] != "asked" or k["module"] in STANDS, "kinds", f"{k['module']}: no boat lies on one")
        if k["fuel"] not in fuels.setdefault(k["kind"], []):
            fuels[k["kind"]].append(k["fuel"])
    check.that({k: " ".join(f) for k, f in fuels.items()} == {**KINDS, **GENERATOR}, "kinds",
               f"the kinds and their fuels are {fuels}")


def union(check, kinds, modules, cautions, kind, fuel):
    rows = [k for k in kinds if (k["kind"], k["fuel"]) == (kind, fuel)]
    names = [k["module"] for k in rows]
    check.that(len(names) == len(set(names)), f"{kind} {fuel}", "a module stands twice")
    boat = {name: [] for name in FILES}
    for k in rows:
        for name in FILES:
            boat[name] += [{**row, "each": FOR_EACH[k["each"]], "asked": k["each"] == "asked"} for row in modules.get(k["module"], {}).get(name, [])]
    check_fittings(check, boat["fittings"])
    check_tasks(check, boat["tasks"], boat["fittings"], cautions)
    check_limits(check, boat["limits"], boat["tasks"])
    print(f"{kind} {fuel}: {len(boat['fittings'])} fittings, {len(boat['tasks'])} tasks, "
          f"{len(boat['limits'])} limits")
    return boat


def main(root, words_c=None):
    check = Check()
    words = allowed(words_c) if words_c else {}
    rates, kinds = check.read(root, "rates"), check.read(root, "kinds")
    check.read(root, "editions")
    check_rates(check, rates)
    check_words(check, "rates", rates, words)
    folders = {d for d in os.listdir(root) if os.path.isdir(os.path.join(root, d))}
    modules = {m: {name: check.read(os.path.join(root, m), name) for name in FILES} for m in sorted(folders)}
    check_kinds(check, kinds, folders)
    with open(os.path.join(root, "cautions.csv"), newline="", encoding="utf-8") as f:
        cautions = {row["word"] for row in csv.DictReader(f)}
    for module in modules.values():
        for name in ("tasks", "limits"):
            check_words(check, name, module[name], words)
    boats = {(kind, fuel): union(check, kinds, modules, cautions, kind, fuel)
             for kind, fuels in {**KINDS, **GENERATOR}.items() for fuel in fuels.split()}
    for (kind, fuel), boat in boats.items():
        if kind in KINDS:
            check_boat(check, kind, fuel, boat)
    check_designs(check, boats)
    return check.bad


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
