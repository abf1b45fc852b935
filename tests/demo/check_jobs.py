#!/usr/bin/env python3
"""Check the shipped templates of jobs: check_jobs.py share/catalogue [WORDS.C]

Each complaint is a line; exit code 1 when there was one.  A job names tasks and fittings of the catalogue's modules,
which check_catalogue.py checks: here only what jobs.csv and job-lines.csv say of them.
"""
import csv
import os
import re
import sys
from fractions import Fraction

import check_catalogue as catalogue

catalogue.HEADS.update({
    "jobs": "name title kinds tasks needs opens place crew minutes cautions remark standing source",
    "job-lines": "job no kind strip when text inch metric count task needs standing source",
})
LONGEST = {"step": 160, "proof": 160}
LONGEST_NAME = 72
# What each kind of line may say in its column when.
WHEN = {"tool": ("",), "part": ("always", "condition"), "consumable": ("",), "state": ("",), "found": ("",),
        "off": ("",), "step": ("", "condition"), "proof": ("",)}
STRIP = ("part", "fastener", "retainer", "plug")
COUNTED = ("retainer", "plug")  # a forgotten one loses steering, shift or the boat
SIZED = ("tool", "off")
PAIR_MM = 0.7  # an inch size and the metric one that does the same work on another boat are no further apart
SOURCES = {"published": "published: ", "practice": "common practice, no source", "memory": "memory, not checked"}
JOBS = ("drive-off bellows-and-bearing impeller-engine impeller-in-drive impeller-outboard linkage-and-retainers "
        "trim-pins anodes gear-oil risers shaft-gland diaphragm diesel-service commissioning lay-up-raw-water "
        "lay-up-closed lay-up-outboard sea-trial trailer-hubs battery fuel-hoses").split()
# What is written down of every drive before the wrench goes on.
DRIVE_FOUND = ("trim angle, gear selected, lever, travel forward, travel reverse, cable end, washers and spacers, "
               "retainer, clamp screw, ground wire, hoses photographed, propeller stack, grease hole, alignment mark, "
               "anode, gear oil, missing or wrong, photos")
EVERY_KIND = ("commissioning", "sea-trial", "lay-up")
JOBS_AT_LEAST = 10
# Words that a boat without that task has no use for.
FOREIGN = {
    "spark-plugs.inspect": r"\bpetrol\b|spark plug|carburet|\bfog\b|fogging",
    "prefilter.drain": r"\bdiesel\b|prefilter|glow plug|injection pump|bleed screw|turbo|biocide",
    "flame-arrestor.inspect": r"flame arrestor",
    "risers.inspect": r"\brisers?\b",
    "elbow.inspect": r"\belbow\b",
    "tank.stabilise": r"stabiliser",
    "wheels.tighten": r"trailer|tyre",
    "trim.fluid": r"trim fluid|trim gauge|trim pin",
    "leg-oil.level": r"saildrive|leg anode|diaphragm",
    "seal.inspect": r"\bgland\b|cutless|shaft anode",
    "bellows.inspect": r"U-joint|gimbal",
    "standing-rigging.inspect": r"\brig\b|shroud|\bmast\b|halyard",
}
# Renewals that are usual at a yard although their titles do not say so.
YARD = {"timing-belt.renew"}
# Looks that a job's sheet offers by itself while the way to them is open.
OFFERED = {"hinge-bushings.inspect", "retainers.inspect", "trim-bushings.inspect"}


def boats_of(kinds, modules):
    """Of each kind of boat with each fuel: its fittings and its tasks."""
    boats = {}
    for k in kinds:
        boat = boats.setdefault((k["kind"], k["fuel"]), {"fittings": {}, "tasks": {}})
        for f in modules[k["module"]]["fittings"]:
            boat["fittings"][f["path"]] = f
        for t in modules[k["module"]]["tasks"]:
            boat["tasks"][t["name"]] = t
    return boats


def sees(boat, job):
    """Whether a template is for a boat of that kind and fuel."""
    return ((not job["opens"] or job["opens"] in boat["fittings"])
            and (not job["needs"] or job["needs"] in boat["tasks"]))


def check_foreign(check, job, lines, boats):
    """No boat reads of what it has not: of the other fuel, of a trailer, of a leg."""
    for (kind, fuel), boat in boats.items():
        if kind not in job["kinds"].split() or not sees(boat, job):
            continue
        for line in [{"no": "title", "text": job["title"], "task": "", "needs": ""}] + lines:
            if any(line[c] and line[c] not in boat["tasks"] for c in ("task", "needs")):
                continue
            for task, words in FOREIGN.items():
                check.that(task in boat["tasks"] or not re.search(words, line["text"], re.I), f"{job['name']} {line['no']}",
                           f"tells {kind} {fuel} of what it has not: {line['text']}")


def check_needs(check, job, lines, boats):
    """What a template or a line needs is on one of its boats, or it would never be seen."""
    mine = [boat for (kind, _), boat in boats.items() if kind in job["kinds"].split()]
    for where, needs in [(job["name"], job["needs"])] + [(f"{job['name']} {line['no']}", line["needs"]) for line in lines]:
        check.that(not needs or any(needs in boat["tasks"] for boat in mine), where, f"none of its boats has {needs}")
    for kind in job["kinds"].split():
        check.that(any(sees(boat, job) for (k, _), boat in boats.items() if k == kind), job["name"], f"is seen on no {kind}")


def check_standing(check, where, row):
    start = SOURCES.get(row["standing"])
    check.that(start is not None, where, f"standing {row['standing']}")
    check.that(start is None or row["source"].startswith(start), where,
               f"source and standing differ: {row['source']}")


def check_reach(check, job, boats):
    """What a job names is on its boats, and it warns of all that its tasks warn of."""
    name, tasks, on, warns = job["name"], job["tasks"].split(), set(), set()
    for kind in job["kinds"].split():
        mine = [boat for (k, _), boat in boats.items() if k == kind]
        check.that(mine, name, f"no such kind of boat: {kind}")
        here = {t for boat in mine for t in tasks if t in boat["tasks"]}
        check.that(not mine or here, name, f"none of its tasks is on {kind}")
        check.that(not mine or not job["opens"] or any(job["opens"] in boat["fittings"] for boat in mine), name,
                   f"opens what {kind} has not: {job['opens']}")
        warns |= {c for boat in mine for t in here if t in boat["tasks"] for c in boat["tasks"][t]["caution"].split()}
        on |= here
    check.that(set(tasks) <= on, name, f"tasks that none of its boats has: {sorted(set(tasks) - on)}")
    missing = warns - set(job["cautions"].split())
    check.that(not missing, name, f"does not warn of what its tasks warn of: {sorted(missing)}")


def check_job(check, job, words, cautions):
    name = job["name"]
    check.that(re.fullmatch(r"[a-z]+(-[a-z]+)*", name), name, "is no name")
    check.that(0 < len(job["title"]) <= catalogue.TITLE_AT_MOST, name, f"the title has {len(job['title'])} columns")
    for column in ("kinds", "tasks", "cautions"):
        values = job[column].split()
        check.that(values, name, f"no {column}")
        check.that(len(values) == len(set(values)), name, f"{column}: one stands twice")
    unknown = set(job["cautions"].split()) - cautions
    check.that(not unknown, name, f"an unknown caution: {sorted(unknown)}")
    check.that(not words or job["place"] in words["place"], name, f"an unknown place: {job['place']}")
    check.that(re.fullmatch(r"[1-9]", job["crew"]), name, "a crew is a number of people")
    check.that(re.fullmatch(r"([1-9]\d*)?", job["minutes"]), name, "minutes are a number, or empty when unknown")
    check_standing(check, name, job)


def inches(text):
    """3/8, 1-1/16 or 2 as a number; None when it is no size of a wrench."""
    parts = re.fullmatch(r"(?:([1-9]\d*)-)?([1-9]\d*)/(2|4|8|16|32)|([1-9]\d*)", text)
    if not parts:
        return None
    if parts[4]:
        return Fraction(parts[4])
    top, bottom = int(parts[2]), int(parts[3])
    return int(parts[1] or 0) + Fraction(top, bottom) if top < bottom and top % 2 else None


def check_sizes(check, where, line):
    inch, metric = line["inch"], line["metric"]
    check.that(not inch or inches(inch) is not None, where, f"no size in inches: {inch}")
    check.that(re.fullmatch(r"([1-9]\d*(\.5)?)?", metric), where, f"no size in millimetres: {metric}")
    check.that(not inch + metric or line["kind"] in SIZED, where, f"a {line['kind']} has no wrench size")
    if inches(inch) is not None and re.fullmatch(r"[\d.]+", metric):
        check.that(abs(float(inches(inch)) * 25.4 - float(metric)) < PAIR_MM, where, f"{inch} and {metric} are no pair")
    check.that(re.fullmatch(r"([1-9]\d*)?", line["count"]), where, f"no count: {line['count']}")


def check_line(check, line, tasks):
    where, kind, text = f"{line['job']} {line['no']}", line["kind"], line["text"]
    check.that(kind in WHEN, where, f"an unknown kind of line: {kind}")
    check.that(line["when"] in WHEN.get(kind, ("",)), where, f"a {kind} can't be when '{line['when']}'")
    check.that((line["strip"] in STRIP) if kind == "off" else not line["strip"], where,
               f"strip says what kind of thing comes off, and of those only: '{line['strip']}'")
    check.that(0 < len(text) <= LONGEST.get(kind, LONGEST_NAME), where, f"the text has {len(text)} columns")
    if kind == "state":
        check.that(text in catalogue.STATES, where, f"an unknown state: {text}")
    else:
        check.that(text[:1].isupper() and not text.endswith(".") and ". " not in text, where,
                   "is not one sentence without its stop")
    check.that(line["strip"] not in COUNTED or line["count"] or "count them" in text, where,
               f"a {line['strip']} without a count")
    check.that(not line["task"] or line["task"] in tasks, where, f"the job does not do {line['task']}")
    check_sizes(check, where, line)
    check_standing(check, where, line)


def check_lines_of(check, job, lines, renewals):
    name, kinds = job["name"], [line["kind"] for line in lines]
    tasks = job["tasks"].split()
    check.that([line["no"] for line in lines] == [str(i + 1) for i in range(len(lines))], name,
               "the numbers of its lines do not run from 1 without a gap")
    for kind in ("step", "proof") + (("found", "off") if job["opens"] else ()):
        check.that(kind in kinds, name, f"has no {kind}" + (f", and opens {job['opens']}" if kind in ("found", "off") else ""))
    same = [(line["kind"], line["text"], line["inch"], line["metric"], line["task"], line["needs"]) for line in lines]
    check.that(len(same) == len(set(same)), name, f"says the same twice: {sorted({s[1] for s in same if same.count(s) > 1})}")
    proved = {line["task"] for line in lines if line["kind"] == "proof"}
    told = proved | {line["task"] for line in lines if line["kind"] == "step"}
    check.that(set(tasks) <= told, name, f"no step and no proof does {sorted(set(tasks) - told)}")
    check.that(renewals & set(tasks) <= proved, name, f"nothing proves {sorted(renewals & set(tasks) - proved)}")
    for line in lines:
        check_line(check, line, tasks)


def check_drive(check, lines):
    found = [line["text"].lower() for line in lines if line["job"] == "drive-off" and line["kind"] == "found"]
    for what in DRIVE_FOUND.split(", "):
        check.that(any(all(w in text for w in what.split() if w not in ("and", "or")) for text in found), "drive-off",
                   f"does not ask for the as-found: {what}")


def check_usual(check, jobs, boats):
    """Renewals that an owner does, and whatever needs something off, are in some job of that kind of boat."""
    for (kind, fuel), boat in boats.items():
        mine = [j for j in jobs if kind in j["kinds"].split() and sees(boat, j)]
        done = {t for j in mine for t in j["tasks"].split()}
        behind = {p for p, f in boat["fittings"].items() if f["needs-off"]}
        usual = {n for n, t in boat["tasks"].items() if t["rule"] == "renewal" or t["fitting"] in behind}
        yard = {n for n in usual if boat["tasks"][n]["place"] == "shop" or boat["tasks"][n]["title"].startswith("Have ")}
        left = usual - yard - YARD - OFFERED - done
        check.that(not left, f"{kind} {fuel}", f"in no job: {sorted(left)}")
        print(f"{kind} {fuel}: {len(mine)} jobs do {len(done & set(boat['tasks']))} of {len(boat['tasks'])} tasks; "
              f"left to a yard: {' '.join(sorted((yard | (usual & YARD)) - done)) or 'none'}")
        if kind in catalogue.KINDS:
            check.that(len(mine) >= JOBS_AT_LEAST, f"{kind} {fuel}", f"only {len(mine)} jobs")
            for start in EVERY_KIND:
                check.that(any(j["name"].startswith(start) for j in mine), f"{kind} {fuel}", f"no job for {start}")


def main(root, words_c=None):
    check = catalogue.Check()
    words = catalogue.allowed(words_c) if words_c else {}
    folders = sorted(d for d in os.listdir(root) if os.path.isdir(os.path.join(root, d)))
    modules = {m: {name: check.read(os.path.join(root, m), name) for name in ("fittings", "tasks")} for m in folders}
    boats = boats_of(check.read(root, "kinds"), modules)
    jobs, lines = check.read(root, "jobs"), check.read(root, "job-lines")
    with open(os.path.join(root, "cautions.csv"), newline="", encoding="utf-8") as f:
        cautions = {row["word"] for row in csv.DictReader(f)}
    names = [j["name"] for j in jobs]
    check.that(len(names) == len(set(names)), "jobs", "a name stands twice")
    check.that(set(JOBS) <= set(names), "jobs", f"missing: {sorted(set(JOBS) - set(names))}")
    lost = {line["job"] for line in lines} - set(names)
    check.that(not lost, "job-lines", f"lines of no job: {sorted(lost)}")
    renewals = {t["name"] for m in modules.values() for t in m["tasks"] if t["rule"] == "renewal"}
    for job in jobs:
        check_job(check, job, words, cautions)
        check_reach(check, job, boats)
        own = [line for line in lines if line["job"] == job["name"]]
        check_lines_of(check, job, own, renewals)
        check_needs(check, job, own, boats)
        check_foreign(check, job, own, boats)
    check_drive(check, lines)
    check_usual(check, jobs, boats)
    print(f"{len(jobs)} jobs, {len(lines)} lines")
    return check.bad


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
