#!/usr/bin/env python3
"""Write the demo's files in other guises and damaged: make_variants.py share/demo tests/data/demo

A file is named TABLE-WHAT.csv: "splitpin import TABLE TABLE-WHAT.csv", into a logbook that has the demo's
boat, engine and meters and the catalogue's tasks, and nothing yet of that table.  EXPECTED.tsv says for
each what comes of it: the file, the exit code (0 taken, 3 refused, and nothing kept), and words that the
message must contain, separated by " & ". A file that is taken holds just what the demo's own file of that
table holds, but for those that say otherwise.
"""
import csv
import io
import os
import sys

expected = []


def load(demo, table):
    with open(os.path.join(demo, table + ".csv"), newline="", encoding="utf-8") as f:
        return list(csv.reader(f))


def text(rows, separator=",", end="\n"):
    out = io.StringIO()
    csv.writer(out, delimiter=separator, lineterminator=end).writerows(rows)
    return out.getvalue()


def save(folder, table, what, content, code, must=""):
    """must: words, with LINE:n for what begins a message about line n."""
    name = f"{table}-{what}.csv"
    with open(os.path.join(folder, name), "wb") as f:
        f.write(content if isinstance(content, bytes) else content.encode("utf-8"))
    expected.append((name, str(code), must.replace("LINE:", name + ":")))


# ---- the same in other guises ----

DECIMALS = {"hours", "start", "engine-hours", "reading", "after", "cost", "value", "rate"}


def decimal_comma(rows):
    head = rows[0]
    return [head] + [[c.replace(".", ",") if h in DECIMALS else c for h, c in zip(head, row)]
                     for row in rows[1:]]


def guises(folder, table, rows):
    save(folder, table, "semicolon",
         b"\xef\xbb\xbf" + text(decimal_comma(rows), ";", "\r\n").encode("utf-8"), 0)
    save(folder, table, "reordered", text([row[::-1] for row in rows]), 0)
    if table in ("outings", "services"):
        save(folder, table, "tab", text(rows, "\t"), 0)
        weather = ["weather"] + ["fair" if i % 3 else "rain, wind" for i in range(1, len(rows))]
        save(folder, table, "extra-column", text([row[:2] + [w] + row[2:] for row, w in zip(rows, weather)]),
             0, "weather")


# ---- damaged: a short start of the file, so that one thing alone is wrong ----

def damaged_text(folder, table, rows):
    start = [list(row) for row in rows[:13]]
    start[-1][-1] = "cut off in here, within the quotes"
    whole = text(start)
    save(folder, table, "cut-off", whole[:whole.rindex('"') - 8], 3, f"LINE:{whole.count(chr(10))}")
    save(folder, table, "empty", "", 3, "empty")
    save(folder, table, "header-only", text(rows[:1]), 0, "no row")


def damaged_shape(folder, table, rows):
    """rows: the header and a few rows, one line each."""
    def with_row(i, row):
        return text(rows[:i] + [row] + rows[i + 1:])
    latin = with_row(3, rows[3][:-1] + ["Trübes Wetter am Gründeltag"]).encode("latin-1")
    save(folder, table, "latin-1", latin, 3, "LINE:4 & UTF-8")
    nuls = bytes(range(256)) * 4
    save(folder, table, "binary", b"\x00\x01\x02\x03SPLIT\x00PIN" + nuls, 3, f"{table}-binary.csv")
    save(folder, table, "nul", with_row(2, rows[2][:-1] + ["a\0b"]).encode("utf-8"), 3, "LINE:3")
    save(folder, table, "wrong-header",
         text([["Datum", "Stunden", "Bemerkung"]] + [row[1:4] for row in rows[1:]]), 3, "LINE:1 & date")
    twice = [["date"] + rows[0][1:]] + rows[1:]
    save(folder, table, "duplicate-column", text(twice), 3, "LINE:1 & date")
    save(folder, table, "ragged-short", with_row(4, rows[4][:-2]), 3, "LINE:5")
    save(folder, table, "ragged-long", with_row(4, rows[4] + ["one", "more"]), 3, "LINE:5")
    stray = text(rows[:3]) + ",".join(rows[3][:-1]) + ',a "stray" quote\n' + text(rows[4:])
    save(folder, table, "stray-quote", stray, 3, "LINE:4")
    after = text(rows[:3]) + ",".join(rows[3][:-1]) + ',"quoted"and on\n' + text(rows[4:])
    save(folder, table, "after-quote", after, 3, "LINE:4")


class Rows:
    """A table whose cells are set by the names of its columns."""

    def __init__(self, rows):
        self.rows = rows

    def cell(self, i, column):
        return self.rows[i][self.rows[0].index(column)]

    def with_cells(self, i, **cells):
        rows = [list(row) for row in self.rows]
        for column, value in cells.items():
            rows[i][rows[0].index(column.replace("_", "-"))] = value
        return text(rows)


def damaged_dates(folder, table, t):
    save(folder, table, "ambiguous-date", t.with_cells(2, date="5/6/18"), 3, "LINE:3 & 5/6/18")
    save(folder, table, "no-such-date", t.with_cells(2, date="2025-02-30"), 3, "LINE:3 & 2025-02-30")
    save(folder, table, "future-date", t.with_cells(len(t.rows) - 1, date="2031-05-01"), 3,
         f"LINE:{len(t.rows)}")


def damaged_outings(folder, t):
    """t: the first outings.  Row i stands on line i + 1."""
    with_reading = [i for i in range(1, len(t.rows)) if t.cell(i, "reading")]
    a, b = with_reading[2:4]
    reading = t.cell(b, "reading")
    save(folder, "outings", "negative-hours", t.with_cells(5, hours="-1.5", reading=""), 3, "LINE:6")
    save(folder, "outings", "backwards", t.with_cells(b, reading="218.4"), 3, f"LINE:{b + 1}")
    save(folder, "outings", "slipped-point", t.with_cells(b, reading=reading.replace(".", "")), 3,
         f"LINE:{b + 1} & {reading}")
    save(folder, "outings", "day-too-long", t.with_cells(a, hours="25.5", reading=""), 3, f"LINE:{a + 1}")
    save(folder, "outings", "unknown-engine", t.with_cells(a, engine="starboard"), 3,
         f"LINE:{a + 1} & starboard")
    save(folder, "outings", "unknown-water", t.with_cells(a, water="slat"), 3, f"LINE:{a + 1} & salt")
    grouped = t.with_cells(a, hours="1,200", reading="")
    save(folder, "outings", "grouped-number", grouped, 3, f"LINE:{a + 1}")


def damaged_others(folder, demo, services):
    save(folder, "services", "unknown-task", services.with_cells(3, task="gimbal-baering.inspect"), 3,
         "LINE:4 & gimbal-baering.inspect")
    save(folder, "services", "unknown-outcome", services.with_cells(3, outcome="fine"), 3, "LINE:4 & fine")
    parts = Rows(load(demo, "parts")[:5])
    save(folder, "parts", "unknown-fitting", parts.with_cells(2, fitting="drive/transom/belows-ujoint"), 3,
         "LINE:3 & belows-ujoint")
    happenings = Rows(load(demo, "happenings")[:5])
    save(folder, "happenings", "unknown-kind", happenings.with_cells(2, kind="sunk"), 3, "LINE:3 & sunk")
    stays = Rows(load(demo, "stays"))
    save(folder, "stays", "until-before", stays.with_cells(2, until="2022-03-01"), 3, "LINE:3")
    seasons = Rows(load(demo, "seasons"))
    save(folder, "seasons", "haul-out-before", seasons.with_cells(2, haul_out="2019-03-01"), 3, "LINE:3")
    measurements = Rows(load(demo, "measurements")[:5])
    save(folder, "measurements", "no-number", measurements.with_cells(2, value="much"), 3, "LINE:3 & much")


def main(demo, folder):
    for table in ("outings", "services", "stays", "seasons", "happenings", "meters", "parts", "measurements"):
        rows = load(demo, table)
        guises(folder, table, rows)
        damaged_text(folder, table, rows)
    for table in ("outings", "services"):
        start = load(demo, table)[:13]
        damaged_shape(folder, table, start)
        damaged_dates(folder, table, Rows(start))
    damaged_outings(folder, Rows(load(demo, "outings")[:13]))
    damaged_others(folder, demo, Rows(load(demo, "services")[:13]))
    with open(os.path.join(folder, "EXPECTED.tsv"), "w", encoding="utf-8") as f:
        f.writelines("\t".join(row) + "\n" for row in expected)


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    main(*sys.argv[1:])
