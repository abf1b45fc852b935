#!/usr/bin/env python3
"""Check the shipped catalogue as a whole: check_catalogue.py share/catalogue [WORDS.C]

Each complaint is a line; exit code 1 when there was one.  WORDS.C is src/model/words.c, whose words are
then the only ones allowed.
"""
import csv
import os
import re
import sys

TASKS_AT_LEAST = 80
TITLE_AT_MOST = 72
CAUTIONS = set("fuel-vapour carbon-monoxide stands lifting-drive propeller batteries hot-coolant disposal "
               "shore-power alone trailer moving-parts".split())
# A figure that only the maker's manual may give: torque, pressure, quantity, electrode potential.
UNITS = (r"ft[- ]?lbs?|in[- ]?lbs?|lb[- ]?ft|N[·.]?m|kgf?m|psi|k?Pa|m?bar|inHg|mmHg|litres?|"
         r"liters?|L|l|ml|mL|quarts?|qts?|gallons?|gal|pints?|fl\.? ?oz|oz|cc|mV")
FIGURE = re.compile(r"\d[\d.,/ -]*(" + UNITS + r")\b")
HEADS = {
    "fittings": "path title variant variants below-waterline fuel rubber needs-off off-minutes remark",
    "tasks": "name fitting title verb place mechanism consequence rule minutes variants part proof caution "
             "remark",
    "limits": "task kind amount hours salt salt-hours event happening measured standing source",
    "rates": "name value unit standing source",
}
WORDS = {"verb": "verb", "place": "workplace", "mechanism": "mechanism", "consequence": "consequence",
         "rule": "clock_rule", "kind": "limit_kind", "event": "season_event",
         "happening": "happening", "standing": "standing"}
NEEDS = {"hours": "hours", "first-hours": "hours", "months": "amount", "outings": "amount",
         "seasons": "amount", "event": "event", "happening": "happening", "condition": None}


class Check:
    def __init__(self):
        self.bad = 0

    def that(self, holds, where, what):
        if not holds:
            print(f"{where}: {what}")
            self.bad = 1

    def read(self, folder, name):
        path = os.path.join(folder, name + ".csv")
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


def check_fittings(check, fittings):
    paths = [f["path"] for f in fittings]
    off = {f["path"]: f["needs-off"] for f in fittings}
    check.that(len(paths) == len(set(paths)), "fittings", "a path stands twice")
    for f in fittings:
        path, chain = f["path"], [f["path"]]
        check.that(re.fullmatch(r"[a-z]+[a-z0-9-]*(/[a-z][a-z0-9-]*)*", path), path, "is no path")
        check.that("/" not in path or path.rsplit("/", 1)[0] in off, path, "its parent is missing")
        check.that(f["title"], path, "has no title")
        check.that(not f["variant"], path, "the catalogue can't know a boat's variant")
        for flag in ("below-waterline", "fuel", "rubber"):
            check.that(f[flag] in ("yes", "no"), path, f"{flag} is neither yes nor no")
        check.that(bool(f["off-minutes"]) == (path in off.values()), path, "minutes to take off what others need off, and of it only")
        while off.get(chain[-1]):
            chain.append(off[chain[-1]])
            check.that(chain[-1] in off, path, f"needs off what there is not: {chain[-1]}")
            if chain[-1] in chain[:-1]:
                check.that(False, path, "goes round in a circle: " + " ".join(chain))
                break


def check_tasks(check, tasks, fittings):
    variants = {f["path"]: f["variants"].split() for f in fittings}
    names = [t["name"] for t in tasks]
    check.that(len(names) >= TASKS_AT_LEAST, "tasks", f"only {len(names)}")
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
        check.that(set(t["caution"].split()) <= CAUTIONS, name, "an unknown caution")
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


def main(root, words_c=None):
    check = Check()
    words = allowed(words_c) if words_c else {}
    rates = check.read(root, "rates")
    check_rates(check, rates)
    check_words(check, "rates", rates, words)
    for kind in sorted(d for d in os.listdir(root) if os.path.isdir(os.path.join(root, d))):
        folder = os.path.join(root, kind)
        fittings, tasks, limits = (check.read(folder, name) for name in ("fittings", "tasks", "limits"))
        check_fittings(check, fittings)
        check_tasks(check, tasks, fittings)
        check_limits(check, limits, tasks)
        for name, rows in (("tasks", tasks), ("limits", limits)):
            check_words(check, name, rows, words)
        print(f"{kind}: {len(fittings)} fittings, {len(tasks)} tasks, {len(limits)} limits")
    return check.bad


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
