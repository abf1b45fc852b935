#!/usr/bin/env python3
"""The modules of one kind of boat as one catalogue: union.py share/catalogue KIND FUEL FOLDER

FOLDER, which is made, gets fittings.csv, tasks.csv and limits.csv, in the order of the modules in kinds.csv.
"""
import csv
import os
import sys


def read(*path):
    with open(os.path.join(*path), newline="", encoding="utf-8") as f:
        return list(csv.DictReader(f))


def main(root, kind, fuel, folder):
    modules = [k["module"] for k in read(root, "kinds.csv") if (k["kind"], k["fuel"]) == (kind, fuel)]
    os.mkdir(folder)
    for name in ("fittings.csv", "tasks.csv", "limits.csv"):
        rows = [row for module in modules for row in read(root, module, name)]
        with open(os.path.join(folder, name), "w", newline="", encoding="utf-8") as f:
            out = csv.DictWriter(f, list(dict.fromkeys(c for row in rows for c in row)), lineterminator="\n")
            out.writeheader()
            out.writerows(rows)


main(*sys.argv[1:])
