#!/bin/sh
# Due days of random boats against a simulation that walks day by day; tests/engine/simulate.py tells how.

. "${top_srcdir:-.}/tests/lib.sh"
about "the engine's due days are those of a day-by-day simulation"
command -v python3 >/dev/null || skip "python3 is not here"
helper=${DUE_CASES:-$top_builddir/tests/due_cases}
[ -x "$helper" ] || fail "the helper $helper is not there"
run 0 python3 -B "$top_srcdir/tests/engine/simulate.py" "$helper"
says "boats agree"
cat "$test_dir/out"
