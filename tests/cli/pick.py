"""One field of one task's line in the due list: pick.py TASK FIELD <due.json

Without arguments all fields of all tasks, a line each: task, field and value, with tabs between.
FIELD is a member of the line, or LIMIT.MEMBER with the words of a limit: "100 h.used".  Nothing known is shown as
"none", numbers are rounded to four decimals.
"""
import json
import sys


def text(value):
    if value is None:
        return "none"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:.4f}".rstrip("0").rstrip(".")
    return str(value)


def fields(line):
    for name, value in line.items():
        if name != "limits":
            yield name, text(value)
    for limit in line["limits"]:
        for name, value in limit.items():
            yield f"{limit['limit']}.{name}", text(value)


def main():
    lines = [line for boat in json.load(sys.stdin) for line in boat["tasks"]]
    if len(sys.argv) == 1:
        for line in lines:
            for name, value in fields(line):
                print(line["task"], name, value, sep="\t")
        return
    task, field = sys.argv[1:]
    line, = [line for line in lines if line["task"] == task] or [None]
    if line is None or field not in dict(fields(line)):
        sys.exit(1)
    print(dict(fields(line))[field])


main()
