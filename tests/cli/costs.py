"""Costs worked out anew with Python's decimal, from what the program exports, and held against what it says.

	costs.py lots SEED	with items.out: write lots.csv
	costs.py taken SEED	with items.out, lots.out, services.out: write taken.csv
	costs.py check		with the exports NAME.out: compare costs-season.csv, -fitting, -hour and -year
"""
import csv
import decimal
import random
import sys
from collections import defaultdict
from datetime import date, timedelta
from decimal import Decimal

decimal.getcontext().prec = 60
CENT = Decimal("0.01")
BOAT = "Grey Heron"


def rows(name):
    with open(name, newline="", encoding="utf-8") as f:
        return list(csv.DictReader(f))


def write(name, header, lines):
    with open(name, "w", newline="", encoding="utf-8") as f:
        out = csv.writer(f)
        out.writerow(header)
        out.writerows(lines)


def make_lots(rng):
    items = rows("items.out")
    lots = []
    for n in range(40):
        item = rng.choice(items)
        quantity = Decimal(rng.randint(1, 5000)) / 1000 if item["unit"] else Decimal(rng.choice([1, 2, 3, 7, 9, 13]))
        price = rng.choice([Decimal(rng.randint(0, 20)), Decimal(rng.randint(1, 10**12)), Decimal(rng.randint(1, 30000))]) * CENT
        arrived = date(2019, 1, 1) + timedelta(rng.randrange(2500))
        known = rng.random() < 0.9
        lots.append([item["id"], quantity, price if known else "", rng.choice(["EUR", "USD", ""]) if known else "",
                     arrived.isoformat(), f"lot {n}"])
    write("lots.csv", ["item", "quantity", "price", "currency", "arrived", "remark"], lots)


def make_taken(rng):
    taken = []
    services = rows("services.out")
    pieces = [i["id"] for i in rows("items.out") if not i["unit"]]
    for lot in rows("lots.out"):
        left = int(Decimal(lot["quantity"]) * 1000)
        arrived = date.fromisoformat(lot["arrived"])
        step = 1000 if lot["item"] in pieces else 1
        out = 0
        for _ in range(rng.randrange(7)):
            if left < step:
                break
            day = arrived + timedelta(rng.randrange(100))
            some = step * rng.randint(1, max(1, left // step // rng.choice([1, 2, 3])))
            why = rng.choice(["lost", "task", "service", "nothing"])
            service = rng.choice(services) if why == "service" else None
            task = "belts.renew" if why == "task" else ""
            if service and date.fromisoformat(service["date"]) < arrived:
                service = None
            taken.append([lot["id"], service["date"] if service else day.isoformat(), Decimal(some) / 1000,
                          "" if why == "lost" else BOAT, service["id"] if service else "",
                          "lost" if why == "lost" else task])
            left -= some
            out += 0 if why == "lost" else some
        if out >= step and rng.random() < 0.3:  # some of it was put back, the last day of all
            taken.append([lot["id"], "2026-11-20", -Decimal(step) / 1000, BOAT, "", ""])
    write("taken.csv", ["lot", "date", "quantity", "boat", "service", "remark"], taken)


def shares(lots, taken):
    """Cents of each taking by its key, None without a price: the largest remainder gets what rounding down left over."""
    cents = {}
    for lot in lots:
        mine = [t for t in taken if t["lot"] == lot["id"]]
        if not lot["price"]:
            cents.update((t["id"], None) for t in mine)
            continue
        price, whole = Decimal(lot["price"]) / CENT, Decimal(lot["quantity"])
        claims = [(t["id"], Decimal(t["quantity"])) for t in mine]
        claims.append((None, whole - sum(q for _, q in claims)))
        exact = [price * q / whole for _, q in claims]
        got = [e.to_integral_value(decimal.ROUND_FLOOR) for e in exact]
        # The remainder as a whole number: a quotient cut off after sixty places may not tell equal ones apart.
        rest = [price * q - g * whole for (_, q), g in zip(claims, got)]
        over = int(price - sum(got))
        assert 0 <= over < len(claims)
        for i in sorted(range(len(claims)), key=lambda i: (-rest[i], i))[:over]:
            got[i] += 1
        assert sum(got) == price, "the shares of a lot add up to its price"
        cents.update((key, g * CENT) for (key, _), g in zip(claims, got) if key)
    return cents


def season_of():
    hauled = {r["haul-out"][:4]: r["haul-out"] for r in rows("seasons.out") if r["haul-out"]}
    usual = next(r["haul-out"] for r in rows("boats.out") if r["name"] == BOAT)
    assert usual, "the boat's usual haul-out"

    def season(day):
        return int(day[:4]) + (day > hauled.get(day[:4], f"{day[:4]}-{usual}"))
    return season


def expected():
    lots, taken, services = rows("lots.out"), rows("taken.out"), rows("services.out")
    fitting = {t["name"]: t["fitting"] for t in rows("tasks.out")}
    task_of = {s["id"]: s["task"] for s in services}
    lot_of = {lot["id"]: lot for lot in lots}
    season = season_of()
    sums = {by: defaultdict(lambda: [Decimal(0)] * 3) for by in ("season", "fitting", "year")}

    def add(by, name, currency, column, money):
        line = sums[by][str(name), currency]
        sums[by][str(name), currency] = [v + (money if i == column else 0) for i, v in enumerate(line)]

    for s in services:
        if s["cost"]:
            for by, name in (("season", season(s["date"])), ("fitting", fitting[s["task"]]), ("year", s["date"][:4])):
                add(by, name, s["currency"], 0, Decimal(s["cost"]))
    for key, cents in shares(lots, taken).items():
        t = next(t for t in taken if t["id"] == key)
        if cents is not None:
            where = fitting.get(task_of.get(t["service"], t["remark"]), "")
            for by, name in (("season", season(t["date"])), ("fitting", where)):
                add(by, name, lot_of[t["lot"]]["currency"], 1 if t["boat"] else 2, cents)
    for lot in lots:
        if lot["price"]:
            add("year", lot["arrived"][:4], lot["currency"], 1, Decimal(lot["price"]))
    hours = defaultdict(Decimal)
    for o in rows("outings.out"):
        if o["hours"] and o["engine"]:
            hours["season", str(season(o["date"]))] += in_hours(o["hours"])
            hours["year", o["date"][:4]] += in_hours(o["hours"])
    return sums, hours


def in_hours(text):
    parts = [Decimal(p) for p in text.split(":")] + [Decimal(0), Decimal(0)]
    return parts[0] + parts[1] / 60 + parts[2] / 3600


def check():
    sums, hours = expected()
    checked = 0
    for by in ("season", "fitting", "hour", "year"):
        mine = sums["season" if by == "hour" else by]
        theirs = rows(f"costs-{by}.csv")
        name = "season" if by == "hour" else by
        assert {(r[name], r["currency"]) for r in theirs} == set(mine), by
        assert len(theirs) == len(mine), f"{by}: each line once"
        for r in theirs:
            work, parts, lost = mine[r[name], r["currency"]]
            assert [Decimal(r[c]) for c in ("work", "parts", "lost")] == [work, parts, lost], (by, r, work, parts, lost)
            assert Decimal(r["total"]) == work + parts, (by, r)
            if by == "fitting":
                assert r["hours"] == "" and r["an-hour"] == "", r
                continue
            run = hours[name, r[name]]
            assert abs(in_hours(r["hours"]) - run) < Decimal("1e-9"), (by, r, run)
            if run:
                an_hour = ((work + parts) / run).quantize(CENT, decimal.ROUND_HALF_UP)
                assert Decimal(r["an-hour"]) == an_hour, (by, r, an_hour)
            else:
                assert r["an-hour"] == "", r
            checked += 1
    assert checked > 20, checked


if sys.argv[1] == "lots":
    make_lots(random.Random(int(sys.argv[2])))
elif sys.argv[1] == "taken":
    make_taken(random.Random(int(sys.argv[2]) + 1000))
else:
    check()
