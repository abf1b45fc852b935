"""The yard's answers into its sheet, by Python's own reading and writing of CSV.

yard_fill.py SHEET FILLED [comma|semicolon] LINE RESULT HOURS COST NOTES DATE INITIALS ...
    the columns come back reversed, with one of the yard's own, and a byte order mark
yard_fill.py --ids SHEET FILLED
    prints FILLED with the ids of SHEET, by the lines' numbers
yard_fill.py --sum FILLED
    prints the exact sum of the costs
"""
import csv
import decimal
import sys

ANSWER = ["yard_result", "yard_hours", "yard_cost", "yard_notes", "yard_date", "yard_initials"]


def read(path):
    with open(path, newline="", encoding="utf-8-sig") as f:
        sep = ";" if f.readline().count(";") > 5 else ","
        f.seek(0)
        return list(csv.DictReader(f, delimiter=sep, strict=True))


def fill(sheet, filled, mark, answers):
    rows = read(sheet)
    for i in range(0, len(answers), 7):
        row = next(r for r in rows if r["line_no"] == answers[i])
        for name, value in zip(ANSWER, answers[i + 1:i + 7]):
            row[name] = value
    with open(filled, "w", newline="", encoding="utf-8-sig") as f:
        out = csv.DictWriter(f, ["our_order_no"] + list(rows[0])[::-1], delimiter=";" if mark == "semicolon" else ",")
        out.writeheader()
        for n, row in enumerate(rows):
            out.writerow({"our_order_no": 7000 + n, **row})


def ids(sheet, filled):
    new = {r["line_no"]: r["id"] for r in read(sheet)}
    with open(filled, newline="", encoding="utf-8") as f:
        text = f.read()
    for row in read(filled):
        text = text.replace(row["id"], new[row["line_no"]])
    sys.stdout.write(text)


def total(filled):
    costs = [decimal.Decimal(r["yard_cost"].replace(",", ".")) for r in read(filled) if r["yard_cost"]]
    print(f"{sum(costs, decimal.Decimal(0)):.2f}")


if sys.argv[1] == "--ids":
    ids(sys.argv[2], sys.argv[3])
elif sys.argv[1] == "--sum":
    total(sys.argv[2])
else:
    fill(sys.argv[1], sys.argv[2], sys.argv[3], sys.argv[4:])
