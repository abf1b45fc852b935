"""The yard's sheet filled in and written in the ways of many programs.

yard_edit.py SHEET FILLED DIALECT [LINE:COLUMN=TEXT ...]
    LINE is a line_no or *; DIALECT some of: comma semicolon tab; lf crlf cr; bom; quoted; and what was done to the rows:
    shuffled, ids-moved, twice, twice-otherwise, column-twice
"""
import csv
import io
import sys

sheet, filled, dialect, edits = sys.argv[1], sys.argv[2], sys.argv[3].split(","), sys.argv[4:]
with open(sheet, newline="", encoding="utf-8") as f:
    rows = list(csv.DictReader(f, strict=True))
head = list(rows[0])
for edit in edits:
    line, cell = edit.split(":", 1)
    column, text = cell.split("=", 1)
    for row in rows:
        if line in ("*", row["line_no"]):
            row[column] = text
if "shuffled" in dialect:
    rows = rows[1:][::-1] + rows[:1]
if "ids-moved" in dialect:
    keys = [row["id"] for row in rows]
    for row, key in zip(rows, keys[1:] + keys[:1]):
        row["id"] = key
if "twice" in dialect:
    rows = rows + rows
if "twice-otherwise" in dialect:
    rows = rows + [{**row, "yard_result": "good"} for row in rows]
out = io.StringIO()
mark = ";" if "semicolon" in dialect else "\t" if "tab" in dialect else ","
# csv.writer quotes a line feed in a cell only when that ends its lines, too.
writer = csv.writer(out, delimiter=mark, lineterminator="\r\n", quoting=csv.QUOTE_ALL if "quoted" in dialect else csv.QUOTE_MINIMAL)
if "column-twice" in dialect:
    head.append("yard_result")
writer.writerow(head)
for row in rows:
    writer.writerow([row[name] for name in head])
with open(filled, "w", newline="", encoding="utf-8-sig" if "bom" in dialect else "utf-8") as f:
    f.write(out.getvalue().replace("\r\n", "\r" if "cr" in dialect else "\r\n" if "crlf" in dialect else "\n"))
