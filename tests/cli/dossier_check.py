"""What a dossier and a fitting's history say, against the records that they were made of."""
import csv
import json
import re
import sqlite3
import sys
from collections import defaultdict
from decimal import Decimal


def rows(path):
    with open(path, newline="", encoding="utf-8") as f:
        return list(csv.DictReader(f))


def words(path):
    with open(path, encoding="utf-8") as f:
        return " ".join(f.read().split())


def words_of_day(iso):
    y, m, d = map(int, iso.split("-"))
    return f"{d} {'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split()[m - 1]} {y}"


def story(csv_path, json_path):
    """CSV and JSON say the same, in order of time."""
    table = rows(csv_path)
    with open(json_path, encoding="utf-8") as f:
        objects = json.load(f)
    assert len(table) == len(objects) > 20, (len(table), len(objects))
    for row, thing in zip(table, objects):
        assert list(row) == list(thing), (list(row), list(thing))
        for name, cell in row.items():
            value = thing[name]
            if isinstance(value, bool):
                value = "yes" if value else "no"
            assert cell == (value or ""), (name, cell, value)
    days = [row["date"] for row in table]
    assert days == sorted(days), days
    kinds = {row["event"] for row in table}
    want = {"design", "job", "came-off", "taken-out", "fitted", "service", "reading", "found", "mended", "let-pass", "passed-over"}
    assert want <= kinds, want - kinds


def sums(dossier, services, since=""):
    """Money by currency, in Decimal, of what was done from a day on."""
    total = defaultdict(Decimal)
    for row in rows(services):
        if row["cost"] and row["date"] >= since:
            total[row["currency"] or "without a currency"] += Decimal(row["cost"])
    assert len(total) > 1
    text = words(dossier)
    want = "In all: " + "; ".join(f"{total[c]:.2f} {c}" for c in sorted(total)) + "."
    assert want in text, want
    parts = defaultdict(Decimal)
    block = text[text.rindex("COSTS", 0, text.index("In all:")):text.index("In all:")]
    for amount, currency in re.findall(r"(\d+\.\d\d) ([A-Z]{3})", block):
        parts[currency] += Decimal(amount)
    assert parts == total, (parts, total)


def outings(dossier, path):
    """Each season's outings and hours, to a tenth."""
    text = words(dossier)
    told = re.findall(r"Season of (\d+): launched (.*?), (?:hauled out|no haul).*?(\d+) outings?; main ([\d.]+) h", text)
    assert len(told) > 5, told
    table = rows(path)
    assert sum(int(n) for _, _, n, _ in told) == sum(not r["trip"] for r in table)
    assert abs(sum(float(h) for _, _, _, h in told) - sum(hours(r["hours"]) for r in table)) < 0.05 * len(told) + 1e-6


def hours(text):
    parts = [float(p) for p in text.split(":")]
    return parts[0] + (parts[1] / 60 if len(parts) > 1 else 0) + (parts[2] / 3600 if len(parts) > 2 else 0)


def whole(dossier, services, measurements):
    """No service and no reading is passed over."""
    with open(dossier, encoding="utf-8") as f:
        text = f.read()
    begin = text.index("PART OF THE BOAT")
    told = " ".join(text[begin:text.index("\nJOBS\n")].split())
    for row in rows(services):
        work = row["task"].split(".", 1)[1].replace("-", " ")
        line = f"{words_of_day(row['date'])}, {work}: {row['outcome']}"
        assert line in told, line
        for name in ("seen", "remark"):
            assert " ".join(row[name].split()) in told, row
    for row in rows(measurements):
        assert f"{words_of_day(row['date'])}, {row['what']} {row['as-read']}" in told, row


def names(dossier, *paths):
    """No who and no place stands anywhere in the text."""
    text = words(dossier)
    all_names = {row[field] for path in paths for row in rows(path) for field in ("who", "place") if row.get(field)}
    all_names -= {"owner", "yard"}
    assert len(all_names) > 8, all_names
    for name in all_names:
        assert not re.search(r"(?<!\w)" + re.escape(name) + r"(?!\w)", text), name


def tamper(path):
    """A row altered behind the journal's back."""
    db = sqlite3.connect(path)
    changed = db.execute("UPDATE service SET outcome = 'renewed', seen = 'all new, says Ann Other' WHERE id = (SELECT min(id) FROM service)")
    assert changed.rowcount == 1
    db.commit()
    db.close()


if __name__ == "__main__":
    globals()[sys.argv[1]](*sys.argv[2:])
