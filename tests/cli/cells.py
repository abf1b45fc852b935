"""Exported files as Python's csv module reads them.

cells.py count FOLDER              a line a file: its name, and how many records it holds
cells.py holds EXPORTED SOURCE     folders: each column of a file of SOURCE stands in EXPORTED's, cell by cell
cells.py same EXACT COMMA          folders: the same cells, with ; between them and a comma in numbers
cells.py guarded EXACT GUARDED     folders: the same cells, but that none begins like a formula
cells.py shuffle FROM TO           files: the rows without their keys, columns turned round, rows in another order
"""
import csv
import os
import random
import sys

FORMULA = tuple("=+-@\t\r")
NUMBERS = {"start", "engine-hours", "hours", "reading", "after", "cost", "value", "rate", "amount", "minutes", "built"}


def separator(path):
    with open(path, newline="", encoding="utf-8-sig") as f:
        head = f.readline()
    return ";" if ";" in head else ","


def read(path):
    with open(path, newline="", encoding="utf-8-sig") as f:
        rows = list(csv.reader(f, delimiter=separator(path), strict=True))
    assert all(len(row) == len(rows[0]) for row in rows), f"{path}: rows of different length"
    return rows


def number(text):
    try:
        return float(text)
    except ValueError:
        return text


def count(folder):
    for name in sorted(os.listdir(folder)):
        print(name.removesuffix(".csv"), len(read(os.path.join(folder, name))) - 1)


def holds(exported, source):
    have, want = read(exported), read(source)
    assert len(have) == len(want), f"{len(have)} rows, not {len(want)}"
    columns = [(have[0].index(name), i) for i, name in enumerate(want[0])]
    key = [name for name in ("date", "fitted", "launch", "fitting", "task", "path", "name", "what") if name in want[0]]

    def picked(rows, which):
        head = rows[0]
        out = []
        for row in rows[1:]:
            cells = [number(row[pair[which]]) for pair in columns]
            out.append((tuple(row[head.index(k)] for k in key), [str(c) for c in cells]))
        return sorted(out, key=lambda row: row[0])

    for a, b in zip(picked(have, 0), picked(want, 1)):
        for name, x, y in zip(want[0], a[1], b[1]):
            follows = y == "" and name in ("hours", "after", "meter")  # worked out from the reading
            assert x == y or follows, f"{name}: {x!r}, not {y!r}, in {b}"
    print(len(want) - 1, "rows agree")


def same(exact, comma):
    want, have = read(exact), read(comma)
    assert len(want) == len(have)
    for a, b in zip(want, have):
        for name, x, y in zip(want[0], a, b):
            assert y == (x.replace(".", ",") if name in NUMBERS and a is not want[0] else x), f"{name}: {y!r}, not {x!r}"
    print(len(want) - 1, "rows agree")


def guarded(exact, guard):
    want, have = read(exact), read(guard)
    assert len(want) == len(have)
    n = 0
    for a, b in zip(want, have):
        for name, x, y in zip(want[0], a, b):
            formula = x.startswith(FORMULA) and not isinstance(number(x), float)
            assert not y.startswith(FORMULA) or isinstance(number(y), float), f"{name}: {y!r} begins like a formula"
            assert y.endswith(x.lstrip("\t\r")) and (formula or x.startswith("'") or y == x), f"{name}: {y!r} for {x!r}"
            n += formula
    print(len(want) - 1, "rows agree,", n, "guarded")


def shuffle(source, to):
    rows = read(source)
    body = rows[1:]
    random.Random(1).shuffle(body)
    with open(to, "w", newline="", encoding="utf-8") as f:
        csv.writer(f).writerows([row[:0:-1] for row in [rows[0]] + body])


def each(check):
    """The check of two files, for each file of the second folder."""
    def of_folders(first, second):
        for name in sorted(os.listdir(second)):
            check(os.path.join(first, name), os.path.join(second, name))
    return of_folders


{"count": count, "holds": each(holds), "same": each(same), "guarded": each(guarded),
 "shuffle": shuffle}[sys.argv[1]](*sys.argv[2:])
