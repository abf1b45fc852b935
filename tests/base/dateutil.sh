#!/bin/sh
# Compares month arithmetic with python3-dateutil: day_add_months with relativedelta, which clamps likewise, and
# day_months_between with the largest n such that a + n months does not pass b. 10,000 random cases of each;
# the seed is printed, and SEED=number repeats a run. Exits 77 (skipped) without python3-dateutil.
set -eu

steps=${DATE_STEPS:-${top_builddir:-.}/tests/date_steps}

if ! python3 -c 'import dateutil' 2>/dev/null; then
	echo "python3-dateutil is not installed: skipped"
	exit 77
fi
if [ ! -x "$steps" ]; then
	echo "no program $steps: build it or set DATE_STEPS" >&2
	exit 1
fi
exec python3 - "$steps" <<'PY'
import datetime
import os
import random
import subprocess
import sys

from dateutil.relativedelta import relativedelta

CASES = 10000
seed = int(os.environ.get("SEED") or random.SystemRandom().randrange(2**32))
print("SEED=%d" % seed)
rand = random.Random(seed)


def some_day(first, last):
    """A day, every other time one near the end of its month, where the rules differ."""
    day = datetime.date.fromordinal(rand.randint(first, last))
    if rand.random() < 0.5:
        day += relativedelta(day=rand.choice([28, 29, 30, 31]))
    return day


def months_between(a, b):
    """relativedelta rounds toward zero; step down until a + n months does not pass b."""
    d = relativedelta(b, a)
    n = d.years * 12 + d.months
    while a + relativedelta(months=n) > b:
        n -= 1
    return n


lines, expected = [], []
first, last = datetime.date(120, 1, 1).toordinal(), datetime.date(9880, 12, 31).toordinal()
for _ in range(CASES):
    a, n = some_day(first, last), rand.randint(-1200, 1200)
    lines.append("%s %d" % (a.isoformat(), n))
    expected.append((a + relativedelta(months=n)).isoformat())
for _ in range(CASES):
    a = some_day(first, last)
    b = datetime.date.fromordinal(min(max(a.toordinal() + rand.randint(-40000, 40000), first), last))
    b += relativedelta(day=rand.choice([b.day, a.day, 28, 30, 31]))
    lines.append("%s %s" % (a.isoformat(), b.isoformat()))
    expected.append(str(months_between(a, b)))

run = subprocess.run([sys.argv[1]], input="\n".join(lines) + "\n", capture_output=True, text=True)
got = run.stdout.split("\n")[:-1]
if run.returncode or len(got) != len(lines):
    sys.exit("date_steps: exit %d, %d of %d lines: %s" % (run.returncode, len(got), len(lines), run.stderr))
wrong = [(line, e, g) for line, e, g in zip(lines, expected, got) if e != g]
for line, e, g in wrong[:20]:
    print("%s: dateutil %s, here %s" % (line, e, g))
print("%d passed, %d failed" % (len(lines) - len(wrong), len(wrong)))
sys.exit(1 if wrong else 0)
PY
