#!/usr/bin/env python3
"""Check the shipped reference tables as a whole: check_reference.py share/catalogue

Each complaint is a line; exit code 1 when there was one.  What the program itself refuses when it reads a table is left to
its tests; here stands what needs the catalogue beside it.
"""
import csv
import fnmatch
import glob
import os
import re
import sys

TABLES = {
    "readings": "name unit how worse watch-below watch-above watch-at stop-below stop-above stop-at least most water",
    "cautions": "word sentence text authority",
    "words": "word family meaning level",
    "findings": "id fitting words without level raised limit makes-due why",
    "lists": "list section heading place match note",
}
OFTEN_EMPTY = set("unit watch-below watch-above stop-below stop-above water level fitting without raised limit "
                  "makes-due".split())
LISTS = ["commissioning", "first-day", "mid-season", "haul-out", "lay-up", "sea-trial"]
PLACES = ["anywhere", "out", "on-hose", "afloat", "shop"]
# A figure that only the maker's manual may give: torque and pressure.
FIGURE = re.compile(r"\d[\d.,/ -]*(ft[- ]?lbs?|in[- ]?lbs?|lb[- ]?ft|N[·.]?m|psi|kPa|bar|inHg)\b")


class Check:
    def __init__(self):
        self.bad = 0

    def that(self, holds, where, what):
        if not holds:
            print(f"{where}: {what}")
            self.bad = 1


def agree(standing, source):
    memory, practice = "memory, not checked" in source, source.startswith("common practice, no source")
    return {"practice": practice, "memory": memory and not practice,
            "published": not practice and not source.startswith("memory, not checked")}.get(standing, False)


def read(check, root, name):
    path = os.path.join(root, name + ".csv")
    with open(path, newline="", encoding="utf-8") as f:
        rows = list(csv.DictReader(f))
    with open(path, newline="", encoding="utf-8") as f:
        head = f.readline().rstrip("\n")
    check.that(head == ",".join((TABLES[name] + " standing source").split()), path, "the header is not as described")
    for i, row in enumerate(rows, 2):
        where = f"{name}.csv:{i}"
        for column, value in row.items():
            check.that(value == value.strip() and "  " not in value, where, f"{column}: spaces around or doubled")
            check.that(value or column in OFTEN_EMPTY, where, f"{column}: it is empty")
            check.that(not FIGURE.search(value), where, f"{column}: a figure that belongs to the manual: {value}")
        check.that(agree(row["standing"], row["source"]), where,
                   f"source and standing differ: {row['standing']}, {row['source']}")
    key = TABLES[name].split()[0]
    if name != "lists":
        keys = [row[key] for row in rows]
        check.that(len(keys) == len(set(keys)), path, f"twice: {sorted({k for k in keys if keys.count(k) > 1})}")
    return rows


def catalogue(root, name):
    rows = []
    for path in sorted(glob.glob(os.path.join(root, "*", name + ".csv"))):
        with open(path, newline="", encoding="utf-8") as f:
            rows += list(csv.DictReader(f))
    return rows


def check_names(check, rows, column, what):
    for row in rows:
        check.that(re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", row[column]), what, f"{row[column]} is no name")


def check_findings(check, findings, tasks):
    for row in findings:
        check.that(re.fullmatch(r"[a-z-]+\.[a-z-]+", row["id"]), row["id"], "is no name")
        for name in row["makes-due"].split():
            check.that(name in tasks, row["id"], f"makes due what no catalogue has: {name}")


def meets(pattern, task, path):
    if pattern == "*" or "." in pattern or "*" in pattern:
        return fnmatch.fnmatchcase(task, pattern)
    return path == pattern or path.startswith(pattern + "/")


def section_of(sections, task, path):
    path = re.sub(r"^(port|starboard)/", "", path)
    for row in sections:
        if any(meets(pattern, task, path) for pattern in row["match"].split()):
            return int(row["section"])
    return None


def check_lists(check, lists, tasks):
    check.that(list(dict.fromkeys(row["list"] for row in lists)) == LISTS, "lists.csv", "not all lists, in this order")
    for name in LISTS:
        sections = [row for row in lists if row["list"] == name]
        check.that([row["section"] for row in sections] == [str(i + 1) for i in range(len(sections))], name,
                   "its sections are not numbered in order")
        check.that(sections[-1]["match"] == "*", name, "its last section does not take the rest")
        for row in sections:
            check.that(row["place"] in PLACES, name, f"{row['place']} is no place")
    first = [row for row in lists if row["list"] == "commissioning"]
    order = "bellows.inspect cooling.plugs-in fuel-filter.renew batteries.rest-voltage lubrication.level vapour.sniff"
    at = [section_of(first, task, tasks[task]) for task in order.split() if task in tasks]
    check.that(at == sorted(set(at)), "commissioning", f"holds, plugs, fuel, power, engine, start are not in order: {at}")


def main(root):
    check = Check()
    table = {name: read(check, root, name) for name in TABLES}
    rows = catalogue(root, "tasks")
    tasks = {row["name"]: row["fitting"] for row in rows}
    cautions = {row["word"] for row in table["cautions"]}
    readings = {row["name"] for row in table["readings"]}
    check_names(check, table["readings"], "name", "readings.csv")
    check_names(check, table["cautions"], "word", "cautions.csv")
    check_findings(check, table["findings"], tasks)
    check_lists(check, table["lists"], tasks)
    for row in rows:
        unknown = set(row["caution"].split()) - cautions
        check.that(not unknown, row["name"], f"no caution of that name: {sorted(unknown)}")
    for row in catalogue(root, "limits"):
        check.that(not row["measured"] or row["measured"] in readings, row["task"], f"no reading: {row['measured']}")
    print(", ".join(f"{len(rows)} {name}" for name, rows in table.items()))
    return check.bad


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
