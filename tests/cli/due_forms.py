"""The due list in its three forms tells of the same tasks: due_forms.py DUE.txt DUE.csv DUE.json"""
import csv
import json
import re
import sys

COSTS = "sinks|burns|hurts|strands|wrecks|costs"
HEADS = {"NOW": "now", "BEFORE LAUNCH": "before-launch", "FIRST DAY AFLOAT": "first-day",
         "A HAUL IN MID-SEASON": "mid-season-haul", "THIS SEASON": "this-season", "AT LAY-UP": "lay-up",
         "NEXT SPRING": "next-spring", "LATER": "later", "EACH OUTING": "each-outing",
         "WHEN SOMETHING ASKS FOR IT": "on-condition", "SURVEY": "no-record"}


def text_lines(path):
    """(opportunity, past) of each line of a task."""
    when, lines = None, []
    with open(path, encoding="utf-8") as f:
        for line in f.read().splitlines()[1:]:
            head = next((w for h, w in HEADS.items() if re.match(h + r"\b", line)), None)
            when = head or when
            if not head and re.match(rf"[! ] (.* )?({COSTS}) ", line):
                lines.append((when, line[0] == "!"))
    return lines


def main(text, table, answer):
    with open(answer, encoding="utf-8") as f:
        tasks = [task for boat in json.load(f) for task in boat["tasks"]]
    with open(table, newline="", encoding="utf-8") as f:
        rows = list(csv.DictReader(f, strict=True))
    assert len({t["task"] for t in tasks}) == len(tasks) == len(rows)
    for task, row in zip(tasks, rows):
        for member in ("task", "title", "fitting", "when", "by", "due", "fails", "place", "last-done", "needs-off"):
            assert row[member] == (task[member] or ""), f"{member}: {row[member]!r}, {task[member]!r}"
        assert (row["past"] == "yes") == task["past"]
        assert (float(row["share"]) if row["share"] else None) == (
            None if task["share"] is None else round(task["share"], 4)), task
        governs = [limit for limit in task["limits"] if limit["governs"]]
        assert [limit["due"] for limit in governs] == ([task["due"]] if task["due"] else [])
    assert text_lines(text) == [(t["when"], t["past"]) for t in tasks], "the text has other lines"
    print(len(tasks), "tasks in three forms")


main(*sys.argv[1:])
