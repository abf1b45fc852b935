#!/usr/bin/env python3
"""The demo's engine hours and due dates, worked out apart from the program, to compare its answers with.

    independent.py CATALOGUE DEMO [TODAY]      task<TAB>hours-since<TAB>calendar-due, a line a task
    independent.py --hours CATALOGUE DEMO      total and each season: name<TAB>hours

Method.  The engine's hours at the end of a day come from its meters alone: what the engine had run when the
meter in use was fitted, plus the latest reading up to that day less the meter's start, plus what was typed
as hours after that reading.  Hours since a service are the difference of that curve between its day and
today, plus what the engine ran later on the same day ("after").  A calendar limit falls due on the
service's day plus its months, the day of the month clamped to the month's last (python-dateutil's
relativedelta); of several the first counts.

Only tasks that this boat has and whose clock runs evenly are listed (mechanism none, wear or fluid; no
printed date), which have a limit in months or hours and a service that counts: done and renewed always, good
for all but renewals, claimed only where a failure does not sink, burn or hurt; bad, topped-up and not-seen
never.  A renewal of the fitting restarts its inspections as well, an inspection never a renewal.
"""
import csv
import datetime
import os
import sys
from fractions import Fraction

from dateutil.relativedelta import relativedelta

TODAY = "2026-11-25"


def read(folder, name):
    with open(os.path.join(folder, name + ".csv"), newline="", encoding="utf-8") as f:
        return list(csv.DictReader(f))


def day(text):
    return datetime.date.fromisoformat(text)


def hours_text(hours):
    assert (hours * 10).denominator == 1
    return f"{hours * 10 // 10}.{hours * 10 % 10}"


class Curve:
    """Engine hours at the end of a day, from meters and readings."""

    def __init__(self, demo):
        self.meters = sorted((day(m["fitted"]), Fraction(m["start"]), Fraction(m["engine-hours"]))
                             for m in read(demo, "meters"))
        self.rows = [(day(o["date"]), o["reading"], o["hours"]) for o in read(demo, "outings") if o["engine"]]

    def at(self, d):
        fitted, start, run = [m for m in self.meters if m[0] <= d][-1]
        mine = [r for r in self.rows if fitted <= r[0] <= d]
        shown = [i for i, r in enumerate(mine) if r[1]]
        last = shown[-1] if shown else -1
        reading = Fraction(mine[last][1]) if shown else start
        return run + reading - start + sum(Fraction(r[2]) for r in mine[last + 1:])


def counts(task, service):
    if service["outcome"] == "claimed":
        return task["consequence"] not in ("sinks", "burns", "hurts")
    return service["outcome"] in ("done", "renewed") or (
        service["outcome"] == "good" and task["rule"] != "renewal")


def last_service(task, tasks, services):
    mine = [s for s in services if s["task"] == task["name"] and counts(task, s)]
    if task["rule"] == "inspection":
        mine += [s for s in services if tasks[s["task"]]["fitting"] == task["fitting"]
                 and s["outcome"] == "renewed"]
    return max(mine, key=lambda s: s["date"], default=None)


def has(fittings, task):
    f = fittings[task["fitting"]]
    return not f["retired"] and (not task["variants"] or not f["variant"]
                                 or f["variant"] in task["variants"].split())


def due_lines(catalogue, demo, today):
    tasks = {t["name"]: t for t in read(catalogue, "tasks")}
    fittings = {f["path"]: f for f in read(demo, "fittings")}
    limits, services, curve = read(catalogue, "limits"), read(demo, "services"), Curve(demo)
    for name, task in sorted(tasks.items()):
        mine = [m for m in limits if m["task"] == name and m["kind"] in ("months", "hours")]
        even = task["rule"] != "printed-date" and task["mechanism"] in ("none", "wear", "fluid")
        if not mine or not even or not has(fittings, task):
            continue
        service = last_service(task, tasks, services)
        if not service:
            continue
        done = day(service["date"])
        since = curve.at(today) - curve.at(done) + Fraction(service["after"] or 0)
        due = [done + relativedelta(months=int(m["amount"])) for m in mine if m["kind"] == "months"]
        yield name, hours_text(since), min(due).isoformat() if due else ""


def hour_lines(demo):
    curve, day_before = Curve(demo), datetime.timedelta(1)
    yield "total", hours_text(curve.at(day(TODAY)))
    for s in read(demo, "seasons"):
        if not s["planned"]:
            run = curve.at(day(s["haul-out"])) - curve.at(day(s["launch"]) - day_before)
            yield s["launch"][:4], hours_text(run)


def main(args):
    if args[:1] == ["--hours"] and len(args) == 3:
        lines = hour_lines(args[2])
    elif len(args) in (2, 3) and not args[0].startswith("-"):
        lines = due_lines(args[0], args[1], day(args[2] if len(args) == 3 else TODAY))
    else:
        sys.exit(__doc__)
    for line in lines:
        print("\t".join(line))


if __name__ == "__main__":
    main(sys.argv[1:])
