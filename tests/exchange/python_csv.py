"""Random tables of nasty texts, written by Python's csv module in each of its ways, read by the program's
reader and written by its writer, and read by Python again.  Every step is compared with the table itself.

usage: python_csv.py CSV_ECHO [SEED [TABLES]]
"""

import csv
import io
import random
import subprocess
import sys

PIECES = [
    "oil", "a", "1.5", "2,5", " ", "  ", ",", ";", "\t", '"', '""', "'", "\r\n", "\n", "\r", "=1+1", "-",
    "\\", "\u00e4", "\u20ac", "\U0001f6a2", "e\u0301", "\u65e5\u672c", "\ufeff", "\x1b[1m", "\x7f", "\u202e",
    "sep=;",
]


def text(rng):
    if rng.random() < 0.2:
        return ""
    return "".join(rng.choice(PIECES) for _ in range(rng.randint(1, 6)))


def table(rng):
    """Rectangular; the header is plain, as that of a real file, so that the separator can be found out."""
    width = rng.randint(2, 9)
    header = ["column%d" % i for i in range(width)]
    return [header] + [[text(rng) for _ in range(width)] for _ in range(rng.randint(0, 40))]


def python_writes(rows, separator, quoting, end):
    out = io.StringIO(newline="")
    csv.writer(out, delimiter=separator, quoting=quoting, lineterminator=end).writerows(rows)
    return out.getvalue().encode("utf-8")


def python_reads(data, separator):
    return list(csv.reader(io.StringIO(data.decode("utf-8"), newline=""), delimiter=separator, strict=True))


def echo(helper, data, *args):
    done = subprocess.run([helper, *args], input=data, capture_output=True, timeout=60)
    if done.returncode:
        raise AssertionError("csv_echo ended with %d: %s" % (done.returncode, done.stderr.decode()))
    return done.stdout


def unhex(data):
    def field(word):
        return {"-": "", ".": ""}.get(word) if word in "-." else bytes.fromhex(word).decode("utf-8")
    return [[field(word) for word in line.split(" ")] for line in data.decode("ascii").splitlines()]


def check(helper, rng):
    rows = table(rng)
    separator = rng.choice([",", ";", "\t"])
    quoting = rng.choice([csv.QUOTE_MINIMAL, csv.QUOTE_ALL])
    end = rng.choice(["\r\n", "\n", "\r"])
    if end != "\r\n":
        # Python may leave a line end bare that is not the file's own, and no reader gets that back.
        quoting = csv.QUOTE_ALL
    data = (b"\xef\xbb\xbf" if rng.random() < 0.3 else b"") + python_writes(rows, separator, quoting, end)

    assert unhex(echo(helper, data, "hex")) == rows, "read otherwise"
    for to in (separator, rng.choice([",", ";", "\t"])):
        back = echo(helper, data, "csv", to)
        assert python_reads(back, to) == rows, "Python reads otherwise what was written"
        assert echo(helper, back, "csv", to) == back, "a second time differs"
    minimal = python_writes(rows, separator, csv.QUOTE_MINIMAL, "\r\n")
    assert echo(helper, minimal, "csv") == minimal, "not the bytes that Python writes"


def main():
    helper = sys.argv[1]
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    tables = int(sys.argv[3]) if len(sys.argv) > 3 else 30
    for seed in range(first, first + tables):
        try:
            check(helper, random.Random(seed))
        except Exception:
            print("seed %d" % seed)
            raise
    print("seeds %d to %d: %d tables agree" % (first, first + tables - 1, tables))


main()
