#!/bin/sh
# The demo's files, and those made from them for tests, are what their scripts write, and agree with one
# another.

. "${top_srcdir:-.}/tests/lib.sh"
command -v python3 >/dev/null || skip "python3 is not installed"

scripts=$top_srcdir/tests/demo
catalogue=$test_dir/petrol-sterndrive
demo=$top_srcdir/share/demo
run 0 python3 -B "$scripts/union.py" "$top_srcdir/share/catalogue" petrol-sterndrive petrol "$catalogue"

about "share/demo is what tests/demo/make_demo.py writes"
mkdir demo
run 0 python3 -B "$scripts/make_demo.py" "$catalogue" demo
run 0 diff -r demo "$demo"

about "tests/data/demo is what tests/demo/make_variants.py writes"
mkdir data
run 0 python3 -B "$scripts/make_variants.py" "$demo" data
run 0 diff -r data "$top_srcdir/tests/data/demo"

about "the demo's files agree with one another and with the catalogue"
run 0 python3 -B "$scripts/check_demo.py" "$catalogue" "$demo"

about "the hours of the demo end where its story says"
python3 -c 'import dateutil' 2>/dev/null || skip "python3-dateutil is not installed"
run 0 python3 -B "$scripts/independent.py" --hours "$catalogue" "$demo"
says "total	612.4"
