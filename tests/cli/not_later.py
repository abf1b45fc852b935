"""No limit by months or hours falls due later in the second list than in the first, some fall due earlier, and none
that takes no account of water moves: not_later.py FIRST.json SECOND.json"""
import json
import sys

BLIND = ("none", "wear", "fluid")


def limits(path):
    with open(path, encoding="utf-8") as f:
        tasks = [task for boat in json.load(f) for task in boat["tasks"]]
    return {(t["task"], m["limit"]): (m["due"], m["rated"], t["mechanism"]) for t in tasks for m in t["limits"]
            if m["kind"] in ("months", "hours")}


def main(first, second):
    before, after = limits(first), limits(second)
    assert before.keys() == after.keys()
    earlier = 0
    for key, (day, rated, mechanism) in before.items():
        then, worn, _ = after[key]
        assert (then or "9999") <= (day or "9999"), f"{key}: due {then}, later than {day}"
        assert worn >= rated - 1e-9, f"{key}: {worn} used, less than {rated}"
        if mechanism in BLIND and "h" not in key[1].split():
            assert then == day, f"{key}: water moves it"
        earlier += (then or "9999") < (day or "9999")
    print(len(before), "limits of tasks,", earlier, "earlier")


main(*sys.argv[1:])
