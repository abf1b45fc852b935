#!/usr/bin/env python3
"""Write the demo's CSV files from its story.

    make_demo.py CATALOGUE FOLDER     (share/catalogue/petrol-sterndrive share/demo)

Deterministic: the only chance in it is random.Random(seed).random(), which the language keeps the same.
Running time is counted in whole tenths of an hour, as the meters show it.
"""
import csv
import datetime
import os
import random
import sys

import story

SEED = 1998


def day(text):
    return datetime.date.fromisoformat(text)


def tenths(n):
    return f"{n // 10}.{n % 10}"


def write(folder, name, head, rows):
    with open(os.path.join(folder, name + ".csv"), "w", newline="", encoding="utf-8") as f:
        out = csv.writer(f, lineterminator="\n")
        out.writerow(head.split())
        out.writerows(rows)


# ---- outings ----

def special(row):
    date, run, how, water, rinsed, place, remark = row
    return {"date": day(date), "run": run, "how": how, "water": water, "rinsed": rinsed, "place": place,
            "remark": remark}


def weight(d, dice):
    """Weekends and high summer are likelier."""
    return dice.random() ** (1 / ((5 if d.weekday() > 4 else 1) * (2 if d.month in (7, 8) else 1)))


def usual_outing(d, dice):
    run = 3 + int(28 * dice.random() ** 2.6)	# a third of an hour to three hours, mostly about one
    how = "reading" if dice.random() < 0.8 else "hours"
    remark = story.REMARKS[int(dice.random() * len(story.REMARKS))] if dice.random() < 0.3 else ""
    return {"date": d, "run": run, "how": how, "water": "", "rinsed": "",
            "place": story.PLACES[int(dice.random() * 8)],
            "remark": remark}


def season_outings(launch, haul_out, n, taken, dice):
    """n outings on days of the season that are not taken; now and then two on one day, both by the meter."""
    days = [launch + datetime.timedelta(i) for i in range(1, (haul_out - launch).days - 1)]
    days = sorted((d for d in days if d not in taken), key=lambda d: -weight(d, dice))[:n]
    rows = []
    for d in sorted(days):
        rows.append(usual_outing(d, dice))
        if dice.random() < 0.04:
            again = usual_outing(d, dice)
            rows[-1]["how"] = again["how"] = "reading"
            rows.append(again)
    return rows


def on_the_mooring(row):
    d = row["date"].isoformat()
    for start, end, stand, water, _place, _remark in story.STAYS:
        if stand == "afloat" and water == "salt" and start <= d < end:
            row.update(water="salt", rinsed="no", place="Pelican Sound")


def all_outings(service_days):
    dice = random.Random(SEED)
    fixed = [special(row) for row in story.OUTINGS]
    rows = list(fixed)
    for launch, haul_out, n, _remark in story.SEASONS:
        launch, haul_out = day(launch), day(haul_out)
        mine = [r["date"] for r in fixed if launch <= r["date"] <= haul_out]
        rows += season_outings(launch, haul_out, n - len(mine), service_days | set(mine), dice)
    d, run, remark = story.UNLOGGED
    rows.append({"date": day(d), "run": run, "how": "reading", "water": "", "rinsed": "", "place": "",
                 "remark": remark,
                 "estimated": "yes"})
    rows.sort(key=lambda r: r["date"])
    for r in rows:
        on_the_mooring(r)
    return rows


class Meter:
    """What the hour meter shows after each day; the second one starts at nothing."""

    def __init__(self, rows):
        self.start = story.HOURS_NOW - sum(r["run"] for r in rows)
        self.change = day(story.NEW_METER)
        self.at_change = self.start + sum(r["run"] for r in rows if r["date"] < self.change)
        self.shown, self.days = self.start, []
        for r in rows:
            if r["date"] >= self.change and not any(d >= self.change for d, _ in self.days):
                self.shown = 0
            self.shown += r["run"]
            r["reading"] = self.shown
            self.days.append((r["date"], self.shown))

    def before(self, d):
        """At the beginning of a day."""
        shown = [s for e, s in self.days if e < d and (e >= self.change) == (d >= self.change)]
        return shown[-1] if shown else 0 if d >= self.change else self.start


def outing_rows(rows):
    for r in rows:
        hours = tenths(r["run"]) if r["how"] in ("hours", "both", "no engine") else ""
        reading = tenths(r["reading"]) if r["how"] in ("reading", "both") else ""
        engine = "" if r["how"] == "no engine" else "main"
        yield [story.BOAT, r["date"].isoformat(), engine, hours, reading, r["water"], r["rinsed"],
               r.get("estimated", ""),
               r["place"], r["remark"]]


# ---- services ----

def rules(catalogue):
    with open(os.path.join(catalogue, "tasks.csv"), newline="", encoding="utf-8") as f:
        return {t["name"]: t["rule"] for t in csv.DictReader(f)}


def usual_outcome(rule):
    return {"inspection": "good", "renewal": "renewed", "printed-date": "renewed"}.get(rule, "done")


def yearly(table, dates):
    for line in table.strip().splitlines():
        first, tasks = line.split(":")
        for year, monthday in dates.items():
            for task in tasks.split() if year >= int(first) else []:
                yield f"{year}-{monthday}", task


def all_services(rule):
    """(date, task) -> outcome and what is not usual."""
    usual = list(yearly(story.EVERY_SPRING, story.SPRING)) + list(yearly(story.EVERY_SUMMER, story.SUMMER))
    usual += list(yearly(story.EVERY_AUTUMN, story.AUTUMN))
    usual += [(date, task) for date, tasks in story.UNDER_THE_ROOF.items() for task in tasks.split()]
    usual += [(date, task) for date in story.DRIVES_OFF for task in story.DRIVE_OFF.split()]
    done = {(date, task): (usual_outcome(rule[task]), {}) for date, task in usual}
    for (date, task), (_outcome, more) in done.items():
        if date in story.DRIVES_OFF:
            more["who"] = story.DRIVES_OFF[date]
    for date, task, outcome, more in story.SERVICES:
        done[date, task] = (outcome, more)
        if outcome == "-":
            del done[date, task]
    return done


def service_rows(done, meter):
    dice = random.Random(SEED + 1)
    noted = {date: dice.random() < 0.7 for date in sorted({date for date, _ in done})}
    late = random.Random(SEED + 2)
    usual = dice
    for (date, task), (outcome, more) in sorted(done.items(), key=lambda s: s[0]):
        dice = late if task in story.LATE else usual  # a task that came later changes nothing of the others
        who = more.get("who", "owner" if dice.random() < 0.85 else "helper")
        read = tenths(meter.before(day(date))) if (noted[date] or "after" in more) and who != "yard" else ""
        after = tenths(more["after"]) if "after" in more else ""
        seen = more.get("seen", story.SEEN.get(task, "") if dice.random() < 0.5 else "")
        cost = more.get("cost", "")
        yield [task, date, outcome, read, after, more.get("made", ""), more.get("estimated", ""), seen,
               more.get("proof", ""),
               who, cost, "USD" if cost else "", more.get("remark", "")]


# ---- the rest ----

def measured(as_read):
    """Value and unit; inches are turned into millimetres, 25.4 to the inch."""
    number, unit = as_read.split()
    if unit == "in":
        over, under = number.split("/")
        return repr(int(over) * 25.4 / int(under)), "mm"
    return number, unit


def measurement_rows():
    rows = []
    for fitting, what, method, readings in story.MEASUREMENTS:
        for one in readings.split(";"):
            date, as_read = one.split(None, 1)
            rows.append([story.BOAT, fitting, date, what, as_read.strip(), *measured(as_read), method, ""])
    return sorted(rows, key=lambda r: (r[2], r[1]))


def fitting_rows(catalogue):
    variant = dict(v.split("=") for v in story.VARIANTS.split())
    with open(os.path.join(catalogue, "fittings.csv"), newline="", encoding="utf-8") as f:
        for t in csv.DictReader(f):
            v = variant.get(t["path"], "")
            yield [story.BOAT, t["path"], t["title"], "not-fitted" if v == "-"
                   and "not-fitted" in t["variants"] else v.strip("-"),
                   t["variants"], t["below-waterline"], t["fuel"], t["rubber"], t["needs-off"], t["off-minutes"],
                   "yes" if v == "-" else "", t["remark"]]


def write_boat(folder, catalogue, meter):
    write(folder, "boats", "name kind berth winter water launch haul-out since built remark",
          [[story.BOAT, "petrol-sterndrive", "trailer", "roof", "fresh", "04-15", "10-12", story.SINCE,
            "1998",
            "An invented boat, for trying the program"]])
    start = tenths(meter.start)
    write(folder, "engines", "boat name hours estimated remark", [[story.BOAT, "main", start, "", ""]])
    write(folder, "meters", "engine fitted start engine-hours how remark",
          [["main", story.SINCE, start, start, "first", ""],
           ["main", story.NEW_METER, "0.0", tenths(meter.at_change), "replaced",
            "The old one had stopped, \"at last\""]])
    write(folder, "fittings",
          "boat path title variant variants below-waterline fuel rubber needs-off off-minutes retired remark",
          fitting_rows(catalogue))


def write_year(folder):
    seasons = [[story.BOAT, launch, haul_out, "", remark] for launch, haul_out, _n, remark in story.SEASONS]
    launch, haul_out, remark = story.PLANNED
    write(folder, "seasons", "boat launch haul-out planned remark",
          seasons + [[story.BOAT, launch, haul_out, "yes", remark]])
    write(folder, "stays", "boat date until stand water place remark",
          [[story.BOAT, *s] for s in story.STAYS])
    write(folder, "happenings", "boat date kind closed remark", [[story.BOAT, *h] for h in story.HAPPENINGS])


def main(catalogue, folder):
    done = all_services(rules(catalogue))
    rows = all_outings({day(date) for date, _task in done})
    meter = Meter(rows)
    write_boat(folder, catalogue, meter)
    write_year(folder)
    write(folder, "outings", "boat date engine hours reading water rinsed estimated place remark",
          outing_rows(rows))
    write(folder, "services",
          "task date outcome reading after made estimated seen proof who cost currency remark",
          service_rows(done, meter))
    write(folder, "parts", "fitting what number fitted removed made remark", story.PARTS)
    write(folder, "measurements", "boat fitting date what as-read value unit method remark",
          measurement_rows())


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    main(*sys.argv[1:])
