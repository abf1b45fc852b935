#!/bin/sh
# CSV against Python's csv module: files that Python writes are read alike, and files that are written here
# Python reads alike.

. "${top_srcdir:-.}/tests/lib.sh"
about "CSV is read and written as Python's csv module does"
command -v python3 >/dev/null || skip "python3 is not here"
helper=${CSV_ECHO:-$top_builddir/tests/csv_echo}
[ -x "$helper" ] || fail "the helper $helper is not there"
run 0 python3 "$top_srcdir/tests/exchange/python_csv.py" "$helper"
says "tables agree"
cat "$test_dir/out"
