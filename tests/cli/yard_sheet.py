"""The yard's sheet as a spreadsheet program reads it: yard_sheet.py FILE LINES

Every row has as many cells as the header, the lines are numbered, what is known is filled in, the columns for the
yard's answer are there and blank, and no cell would be taken for a formula.
"""
import csv
import sys

ANSWER = ["yard_result", "yard_hours", "yard_cost", "yard_notes", "yard_date", "yard_initials", "yard_meter"]
FILLED = ["id", "line_no", "component_path", "action", "description", "severity", "priority", "place_needed",
          "authorisation", "date_listed", "source", "torque_or_spec_source"]


def check(path, lines):
    with open(path, newline="", encoding="utf-8-sig") as f:
        rows = list(csv.reader(f, strict=True))
    head, rows = rows[0], rows[1:]
    assert len(set(head)) == len(head), "a column stands twice"
    assert len(rows) == lines, f"{len(rows)} lines, not {lines}"
    for n, row in enumerate(rows, 1):
        assert len(row) == len(head), f"line {n} has {len(row)} cells, the header {len(head)}"
        cells = dict(zip(head, row))
        assert cells["line_no"] == str(n), "not numbered in order"
        for name in FILLED:
            assert cells[name], f"line {n}: {name} is blank"
        for name in ANSWER:
            assert cells[name] == "", f"line {n}: {name} is not blank"
        for name, cell in cells.items():
            assert cell[:1] not in tuple("=+-@\t\r"), f"line {n}: {name} begins like a formula"
    order = [int(dict(zip(head, row))["priority"]) for row in rows]
    assert set(order) <= {1, 2, 3}, "a priority that is none"


check(sys.argv[1], int(sys.argv[2]))
print("a sheet of", sys.argv[2], "lines")
