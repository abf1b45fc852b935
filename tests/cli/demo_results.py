"""The program's answers beside those of tests/demo/independent.py.

demo_results.py seasons HOURS.tsv OUTINGS.csv SEASONS.csv
demo_results.py due WANTED.tsv DUE.json
demo_results.py why DUE.json WHY.json
demo_results.py until DAY DEMO FOLDER      the demo's files with the services up to that day
"""
import csv
import json
import os
import shutil
import sys

ROUNDING = 1e-6  # hours: the program keeps whole seconds


def tsv(path):
    with open(path, encoding="utf-8") as f:
        return [line.rstrip("\n").split("\t") for line in f]


def table(path):
    with open(path, newline="", encoding="utf-8") as f:
        return list(csv.DictReader(f))


def seasons(wanted, outings, seasons_file):
    wanted = dict(tsv(wanted))
    rows = [(row["date"], float(row["hours"])) for row in table(outings)]
    first_start = 223.8
    assert abs(first_start + sum(h for _, h in rows) - float(wanted["total"])) < ROUNDING, "in all"
    n = 0
    for s in table(seasons_file):
        year = s["launch"][:4]
        if year in wanted:
            ran = sum(h for d, h in rows if s["launch"] <= d <= s["haul-out"])
            assert abs(ran - float(wanted[year])) < ROUNDING, f"{year}: {ran}, not {wanted[year]}"
            n += 1
    assert n == len(wanted) - 1
    print(n, "seasons agree")


def due(wanted, answer):
    with open(answer, encoding="utf-8") as f:
        lines = {line["task"]: line for boat in json.load(f) for line in boat["tasks"]}
    wrong, n = [], 0
    for task, since, calendar in tsv(wanted):
        limits = lines[task]["limits"]
        for limit in limits:
            if limit["kind"] == "hours" and abs(limit["used"] - float(since)) > ROUNDING:
                wrong.append(f"{task}: {limit['used']} h since, not {since}")
        # With a figure of its own for salt water a limit goes by what was run in it: never after the calendar's day.
        salted = [limit["due"] for limit in limits if limit["kind"] == "months" and "salt-counts" in limit]
        if any(due > calendar for due in salted):
            wrong.append(f"{task}: due {salted}, after {calendar}")
        dates = sorted(limit["due"] for limit in limits if limit["kind"] == "months" and "salt-counts" not in limit) or [calendar]
        if (dates[0] if dates else "") != calendar:
            wrong.append(f"{task}: due {dates}, not {calendar}")
        first = min((limit["due"] for limit in limits if limit["due"]), default=None)
        if lines[task]["due"] != first:
            wrong.append(f"{task}: due {lines[task]['due']}, and its limits {first}")
        n += 1
    assert not wrong, "\n".join(wrong)
    assert n > 20, f"only {n} tasks"
    print(n, "tasks agree")


def why(answer, reason):
    with open(answer, encoding="utf-8") as f:
        lines = {line["task"]: line for boat in json.load(f) for line in boat["tasks"]}
    with open(reason, encoding="utf-8") as f:
        told = json.load(f)[0]
    for member, value in lines[told["task"]].items():
        assert told[member] == value, f"{member}: {told[member]}, not {value}"
    months = [limit for limit in told["limits"] if limit["kind"] == "months" and limit["used"]]
    for limit in months:
        terms = told["exposure"]
        assert sum(t["days"] for t in terms) == limit["used"], "the days of the terms"
        salt = sum(t["days"] for t in terms if t["water"] in ("salt", "brackish") or t["salt-left-on"])
        if "salt-counts" in limit:
            rated = limit["used"] + (limit["salt-counts"] - 1) * salt
        else:  # slow wear stretches nothing
            rated = max(limit["used"], sum(t["days"] * t["rate"] for t in terms))
        assert abs(rated - limit["rated"]) < 1e-3, f"the terms add up to {rated}, not {limit['rated']}"
    print(told["task"], "agrees,", len(months), "sums")


def until(day, demo, folder):
    shutil.copytree(demo, folder)
    rows = [row for row in table(os.path.join(demo, "services.csv")) if row["date"] <= day]
    with open(os.path.join(folder, "services.csv"), "w", newline="", encoding="utf-8") as f:
        out = csv.DictWriter(f, rows[0].keys())
        out.writeheader()
        out.writerows(rows)


{"seasons": seasons, "due": due, "why": why, "until": until}[sys.argv[1]](*sys.argv[2:])
