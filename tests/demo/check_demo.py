#!/usr/bin/env python3
"""Check that the demo's files agree with one another: check_demo.py CATALOGUE DEMO

Each complaint is a line; exit code 1 when there was one.
"""
import csv
import datetime
import os
import sys
from fractions import Fraction

TODAY = "2026-11-25"
OUTINGS_AT_LEAST = 300
bad = []


def that(holds, what):
    if not holds:
        bad.append(what)


def read(folder, name):
    with open(os.path.join(folder, name + ".csv"), newline="", encoding="utf-8") as f:
        return list(csv.DictReader(f))


def days(row, columns):
    return [datetime.date.fromisoformat(row[c]) for c in columns.split() if row[c]]


def meter_at(meters, date):
    return [m for m in meters if m["fitted"] <= date][-1]


def check_outings(meters, outings):
    """Readings never go backwards; typed hours fit in between; both agree where both are given."""
    shown = {m["fitted"]: Fraction(m["start"]) for m in meters}
    total = Fraction(meters[0]["engine-hours"])
    for o in outings:
        if not o["engine"]:
            continue
        meter = meter_at(meters, o["date"])["fitted"]
        hours = Fraction(o["reading"]) - shown[meter] if o["reading"] else Fraction(o["hours"])
        that(0 < hours <= 24, f"outing {o['date']}: {float(hours)} h")
        that(not o["reading"] or not o["hours"] or hours == Fraction(o["hours"]),
             f"outing {o['date']}: hours and reading differ")
        shown[meter] += hours
        total += hours
    last = meters[-1]
    that(total == Fraction(last["engine-hours"]) + shown[last["fitted"]] - Fraction(last["start"]),
         "hours of the outings and of the meters differ")
    that(Fraction(last["engine-hours"]) == Fraction(meters[0]["engine-hours"]) + shown[meters[0]["fitted"]]
         - Fraction(meters[0]["start"]), "the second meter does not begin where the first one ended")


def check_readings(meters, outings, services):
    """A service's reading is what the meter showed before that day's outing."""
    for s in services:
        meter = meter_at(meters, s["date"])
        mine = [o for o in outings if meter["fitted"] <= o["date"] < s["date"] and o["engine"]]
        read_at = max((i for i, o in enumerate(mine) if o["reading"]), default=-1)
        reading = Fraction(mine[read_at]["reading"]) if read_at >= 0 else Fraction(meter["start"])
        reading += sum(Fraction(o["hours"]) for o in mine[read_at + 1:])
        that(not s["reading"] or Fraction(s["reading"]) == reading,
             f"{s['date']} {s['task']}: reading is not {float(reading)}")
        that(bool(s["after"]) == any(o["date"] == s["date"] for o in outings),
             f"{s['date']} {s['task']}: an outing that day")


def check_order(rows, name, first, last=None):
    for a, b in zip(rows, rows[1:]):
        that(a[first] <= b[first], f"{name}: {b[first]} is out of order")
        that(not last or a[last] <= b[first], f"{name}: {b[first]} overlaps")


def check_references(catalogue, tables):
    fittings = {f["path"]: f for f in tables["fittings"]}
    tasks = {t["name"]: t for t in read(catalogue, "tasks")}
    that(set(fittings) == {f["path"] for f in read(catalogue, "fittings")},
         "fittings: not those of the catalogue")
    for f in fittings.values():
        that(not f["variant"] or f["variant"] in f["variants"].split(),
             f"{f['path']}: no such variant: {f['variant']}")
        that(not f["variants"] or f["variant"] or f["retired"], f"{f['path']}: no variant is given")
    for s in tables["services"]:
        task = tasks.get(s["task"])
        that(task, f"{s['task']}: no such task")
        fitting = fittings[task["fitting"]]
        that(not fitting["retired"], f"{s['task']}: {fitting['path']} is not there")
        that(not task["variants"] or fitting["variant"] in task["variants"].split(),
             f"{s['task']}: not with {fitting['variant']}")
    for name in ("parts", "measurements"):
        for row in tables[name]:
            that(row["fitting"] in fittings, f"{name}: no fitting {row['fitting']}")
    done = {s["task"] for s in tables["services"]}
    possible = {n for n, t in tasks.items() if not fittings[t["fitting"]]["retired"]}
    that(possible - done, "no task is left without a record")


def check_dates(tables):
    for name, columns in (("outings", "date"), ("services", "date made"), ("stays", "date until"),
                          ("parts", "fitted removed made"),
                          ("happenings", "date closed"), ("measurements", "date"), ("meters", "fitted")):
        for row in tables[name]:
            for d in days(row, columns):
                that(d.isoformat() <= TODAY, f"{name}: {d} is ahead of {TODAY}")
    for name in ("outings", "services", "happenings"):
        that(not any(row["date"].startswith("2020") for row in tables[name]),
             f"{name}: something is recorded in 2020")
        that(all(row["date"] >= tables["boats"][0]["since"] for row in tables[name]),
             f"{name}: before the log began")
    seasons = [(s["launch"], s["haul-out"]) for s in tables["seasons"]]
    for o in tables["outings"]:
        that(o["estimated"] or any(a <= o["date"] <= b for a, b in seasons),
             f"outing {o['date']}: out of season")


def main(catalogue, demo):
    names = "boats engines meters fittings seasons stays happenings outings services parts measurements"
    tables = {name: read(demo, name) for name in names.split()}
    meters, outings = tables["meters"], tables["outings"]
    that(len(outings) >= OUTINGS_AT_LEAST, f"only {len(outings)} outings")
    that(len({o["date"][:4] for o in outings}) == 8, "not eight years with outings")
    check_outings(meters, outings)
    check_readings(meters, outings, tables["services"])
    for name, first, last in (("outings", "date", None), ("services", "date", None),
                              ("happenings", "date", None),
                              ("measurements", "date", None), ("stays", "date", "until"),
                              ("seasons", "launch", "haul-out")):
        check_order(tables[name], name, first, last)
    check_references(catalogue, tables)
    check_dates(tables)
    print("\n".join(bad + [", ".join(f"{len(rows)} {name}" for name, rows in tables.items())]))
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
