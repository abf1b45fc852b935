#!/bin/sh
# Wrench pairs: what the table ships is what is worked out, and a size gets a plain answer.

. "${top_srcdir:-.}/tests/lib.sh"
. "$top_srcdir/tests/cli/common.sh"
need_python

about "the shipped words are those that the limits of heads and openings give"
run 0 sp --file none wrench --csv
python3 - "$SPLITPIN_DATA/catalogue/wrenches.csv" out <<'END' || fail "the table and the arithmetic differ"
import csv, sys
shipped, told = [list(csv.DictReader(open(p, newline=""))) for p in sys.argv[1:]]
assert len(shipped) == len(told) == 17
for s, t in zip(shipped, told):
    for column in s:
        assert s[column] == t[column], (s["inch"], column, s[column], t[column])
    verdict, inch, metric = s["verdict"], s["inch"], s["metric-mm"]
    fits = [s["metric-on-inch"], s["inch-on-metric"]]
    if verdict.startswith("keep apart"):
        assert "fits" not in fits and "no" in fits
    elif "lightly" in verdict:
        assert sorted(fits) == ["loose", "no"]
        assert verdict.startswith(metric if fits[0] == "loose" else inch), verdict
    elif "back" in verdict:
        assert sorted(fits) == ["binds", "fits"]
        assert verdict.startswith(metric if fits[0] == "fits" else inch), verdict
    else:
        assert verdict.startswith("either") and "no" not in fits and "loose" not in fits
END

about "the table keeps to 80 columns"
run 0 sp --file none wrench
is 0 "$(awk 'length > 80' out | wc -l | tr -d ' ')" "lines too long"
tells "Anything tightened to a figure, corroded, or stainless in aluminium: the right size, six-point"

about "a size asked for"
run 0 sp --file none wrench 5/8
tells "16 on 5/8"
tells "A wrench of 16 mm on a head of 5/8 in fits"
tells "an engine maker's manual"
run 0 sp --file none wrench 5/8 in --csv
cp out inch
run 0 sp --file none wrench 16 mm --csv
cmp -s inch out || fail "5/8 in and 16 mm tell of different pairs"
run 0 sp --file none wrench 11/16
tells "A wrench of 17 mm will not go on"
tells "11/16 in (17.46 mm) and 18 mm: keep apart"
run 0 sp --file none wrench 1-1/16
tells "either for the other"
run 0 sp --file none wrench M10
tells "a head of 16 mm to ISO, 17 mm to the older DIN, 14 mm to JIS"
run 0 sp --file none wrench --heads --csv
is 4 "$(wc -l <out | tr -d ' ')" "lines of heads"
run 0 sp --file none wrench m10 --csv
lines 2
says M10,16,17,14,published
run 0 sp --file none wrench 16 mm --json
python3 -c 'import json, sys; assert json.load(sys.stdin)[0]["metric-on-inch"]["fit"] == "fits"' <out || fail "JSON"

about "what is no size"
run 3 sp --file none wrench 16
says_err "in which unit"
run 3 sp --file none wrench 1/4
says_err "use the right wrench"
run 3 sp --file none wrench M7
says_err "no heads are listed"
run 3 sp --file none wrench large
says_err "a number is missing"
run 3 sp --file none wrench 5/8-11/16 in
says_err "no size of a wrench"
run 2 sp --file none wrench --csv --json
