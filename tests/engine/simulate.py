#!/usr/bin/env python3
"""The engine's due days against a simulation that walks day by day.

    simulate.py DUE_CASES [BOATS]

Method.  Boats are drawn at random (SEED=number repeats a run) and written as text for the helper program DUE_CASES,
which answers with the engine's spans and due days.  Here each boat's life is a list of days, from the first outing to
ten years past today, and nothing is summed ahead: every day's place, water and salt are set by walking forward; an
effective age is added up a day at a time until it reaches its limit, with the wear of wear_rates.py; recorded running
seconds likewise.  Hours ahead are summed day by day with their variance, and each day's chance is taken from the
incomplete gamma function, made here by series and continued fraction; a baseline known to a span is worked out thrice, as
three tasks; an opportunity is found by walking back from the due day to the last day on which the boat is in the state
that the work needs.  The seasons' calendar is made from sets of days.  The rules are those of src/engine/timeline.h,
usage.h and due.h; no code and no formula is shared.  All figures are compared, and every day's exposure.
"""
import math
import os
import random
import secrets
import subprocess
import sys
from datetime import date

from forecast import Forecast, add_months, num
from wear_rates import WORN, Wear, shipped

STANDS = ["afloat", "trailer", "ashore", "roof"]
WATERS = ["fresh", "brackish", "salt"]
MECHANISMS = ["none", "corrosion", "galvanic", "rubber", "raw-water", "growth", "fluid", "wear", "frost"]
CONSTANTS = shipped(os.environ.get("top_srcdir", "."))
GRAVE = ["sinks", "burns", "hurts"]
FORECAST = ("hours", "first-hours", "outings")
NEARLY = 1e-6
NEVER = 10 ** 9


def iso(n):
    return "-" if n is None or n == NEVER else date.fromordinal(n).isoformat()


# A boat at random -----------------------------------------------------------------------------------------------------


def draw_seasons(r, boat, first_year, last_year):
    seasons = []
    for year in range(first_year, last_year + 2):
        if r.random() < 0.5:
            continue
        launch = num(year, r.choice([3, 4, 5, 6, 10]), r.randint(1, 28))
        out = launch + r.choice([0] + 3 * [40, 150, 180, 200])
        if seasons and seasons[-1][1] is not None and seasons[-1][1] > launch:
            continue
        if launch > boat["today"] or r.random() < 0.1:
            out = r.choice([out, None])
        seasons.append((launch, out))
    return seasons


def draw_stays(r, boat, first, last):
    stays, day = [], first + r.randint(-200, 600)
    while day < last and r.random() < 0.8:
        length = r.choice([1, 14, 60, 200])
        end = None if r.random() < 0.2 else day + length
        stays.append((day, end, r.choice(STANDS), r.choice(WATERS + ["-"])))
        day += length + r.choice([0, 1, 90, 300])
    return stays


def draw_runs(r, boat, first):
    runs, here = [], [0.2 + r.random() for _ in WATERS]
    for day in range(first, boat["today"] + 10):
        if date.fromordinal(day).month in (12, 1, 2) or r.random() > boat["busy"]:
            continue
        for trip in range(r.choice([1, 1, 1, 2])):
            water = r.choices(WATERS, here)[0] if r.random() < 0.8 else "-"
            rinsed = r.random() < boat["rinses"]
            engines = r.sample(range(boat["engines"]), r.randint(0, boat["engines"])) or [-1]
            for i, e in enumerate(engines):
                seconds = 0 if e < 0 else r.randint(600, 20000)
                runs.append((day, seconds, e, water, rinsed, i == 0))
    return runs


def draw_limit(r, boat):
    kind = r.choice(2 * ["hours", "months", "months", "outings", "seasons", "event"] + ["happening", "first-hours", "condition"])
    if kind == "event":
        return kind, r.choice(["launch", "first-day", "mid-season", "haul-out", "lay-up"])
    if kind in ("happening", "condition"):
        return kind, r.choice([None, None, boat["today"] - 9, boat["today"] + 9])
    if kind in ("hours", "months") and r.random() < 0.2:  # a source's two figures
        return kind, r.choice({"hours": [(360000, 180000), (360000, 120000)], "months": [(12, 6), (24, 18), (2, 1)]}[kind])
    return kind, r.choice({"hours": [36000, 180000, 360000, 1800000], "first-hours": [36000, 72000],
                           "months": [1, 6, 12, 24, 36, 60, 121], "outings": [1, 3, 20, 100], "seasons": [1, 2, 3, 5]}[kind])


def draw_task(r, boat):
    since = r.choice(5 * ["service"] + 2 * ["fitted", "made"] + ["unknown"])
    ago = r.randint(0, min(boat["today"] - boat["from"], r.choice([30, 200, 500, 3000])))
    day = None if since == "unknown" else boat["today"] - ago
    earliest = max(day - r.randint(0, 500), boat["from"]) if day and r.random() < 0.3 else None
    ran = 2 * r.randint(0, 200000) if r.random() < 0.2 else None
    return {"mechanism": r.choice(MECHANISMS), "consequence": r.choice(GRAVE + ["strands", "wrecks", "costs"]),
            "place": r.choice(["anywhere", "out", "on-hose", "afloat", "shop"]),
            "rule": r.choice(["done", "done", "inspection", "printed-date" if since == "made" else "renewal"]),
            "engine": r.randint(-1, boat["engines"] - 1), "since": since, "day": day,
            "after": r.choice([0, 0, 3600, 40000]), "once": r.random() < 0.5, "earliest": earliest, "ran": ran,
            "ran_most": None if ran is None else ran + r.choice([0, 50000, 300000]),
            "limits": [draw_limit(r, boat) for _ in range(r.randint(1, 3))]}


def draw_rates(r):
    rates = {f"{m}.{c}": r.choice([0.5, 1, 4 / 3, 1.5, 2, 2.7]) for m in ("raw-water", "growth")
             for c in ("salt", "brackish", "fresh", "afloat", "rinsed") if r.random() < 0.6}
    some = {"corrosion.fresh": [0.4, 0.9], "corrosion.q10": [1.1, 1.8], "air.film": [2, 3, 5], "air.inland": [1, 3],
            "anode.psu-brackish": [3, 20], "rubber.energy": [60, 95], "rubber.celsius": [12, 20],
            "climate.water-mean": [5, 7, 20, 22], "climate.water-swing": [0, 9], "climate.air-mean": [4, 25],
            "climate.air-warmest": [1, 7], "rate.least": [0.02, 0.5], "rate.most": [1.25, 2, 12], "rate.stretch": [0, 1]}
    rates.update({name: r.choice(values) for name, values in some.items() if r.random() < 0.3})
    return rates


def draw_boat(r):
    boat = {"today": num(r.randint(2015, 2028), r.randint(1, 12), r.randint(1, 31)), "engines": r.choice([1, 1, 2, 3]),
            "busy": r.choice([0, 0.02, 0.1, 0.3]), "rinses": r.choice([0, 0.5, 1]), "berth": r.choice(STANDS[:3]),
            "winter": r.choice(STANDS), "water": r.choice(WATERS)}
    boat["from"] = boat["today"] - r.choice([r.randint(0, 60), r.randint(300, 2500)])
    boat["usual"] = r.choice([(415, 1015), (415, 1015), (501, 930), (1015, 415), (229, 1101), (None, None), (601, 601)])
    boat["rates"] = draw_rates(r)
    year = date.fromordinal(boat["from"]).year
    boat["seasons"] = draw_seasons(r, boat, year, date.fromordinal(boat["today"]).year) if r.random() < 0.8 else []
    boat["stays"] = draw_stays(r, boat, boat["from"], boat["today"]) if r.random() < 0.5 else []
    boat["runs"] = draw_runs(r, boat, boat["from"] - r.choice([0, 0, 700]))
    boat["tasks"] = [draw_task(r, boat) for _ in range(4)]
    if r.random() < 0.3:  # a day on which something happens in the calendar
        ends = [d for s in boat["seasons"] for d in s if d and d > boat["from"]]
        boat["today"] = r.choice(ends or [boat["today"]])
        boat["tasks"] = [draw_task(r, boat) for _ in range(4)]
    return boat


def yearday(v):
    return "-" if v is None else f"{v // 100:02}-{v % 100:02}"


def boat_text(b):
    yield f"today {iso(b['today'])}"
    yield f"from {iso(b['from'])}"
    yield f"engines {b['engines']}"
    yield f"usual {yearday(b['usual'][0])} {yearday(b['usual'][1])} {b['berth']} {b['winter']} {b['water']}"
    for name, rate in b["rates"].items():
        yield f"rate {name} {rate!r}"
    for s in b["seasons"]:
        yield f"season {iso(s[0])} {iso(s[1])}"
    for s in b["stays"]:
        yield f"stay {iso(s[0])} {iso(s[1])} {s[2]} {s[3]}"
    for day, seconds, engine, water, rinsed, trip in b["runs"]:
        yield f"run {iso(day)} {seconds} {engine} {water} {'rinsed' if rinsed else '-'} {'trip' if trip else '-'}"
    for t in b["tasks"]:
        yield (f"task {t['mechanism']} {t['consequence']} {t['place']} {t['rule']} {t['engine']} {t['since']} "
               f"{iso(t['day'])} {t['after']} {'once' if t['once'] else '-'} {iso(t['earliest'])} "
               + " ".join("-" if t[k] is None else str(t[k]) for k in ("ran", "ran_most")))
        for kind, value in t["limits"]:
            if isinstance(value, tuple):
                value = f"{value[0]} salt {value[1]}"
            yield f"limit {kind} {iso(value) if kind in ('happening', 'condition') else '' if value is None else value}".rstrip()
    yield "end"


# Its life, day by day -------------------------------------------------------------------------------------------------


class Life:
    def __init__(self, b):
        self.b, self.today, self.end = b, b["today"], add_months(b["today"], 120)
        self.start = min([b["from"]] + [r[0] for r in b["runs"][:1]])
        self.all_year = None in b["usual"] or b["usual"][0] == b["usual"][1]
        self.seasons = self.make_seasons()
        self.all_year = self.all_year and not self.seasons
        self.runs = {}
        for run in b["runs"]:
            if run[0] <= self.today:
                self.runs.setdefault(run[0], []).append(run)
        self.days = {}
        salt = False
        for day in range(self.start, self.end):
            salt = self.live(day, salt)
        self.wear = Wear(CONSTANTS, b["rates"])
        self.forecasts = {}
        self.stretch = self.wear.c["rate.stretch"] > 0

    def usual(self, which, year):
        v = self.b["usual"][which]
        return num(year, v // 100, v % 100)

    def usual_season(self, year):
        wraps = self.b["usual"][1] < self.b["usual"][0]
        return self.usual(0, year), self.usual(1, year + wraps)

    def still_afloat_until(self, launch, next_launch):
        if self.all_year:
            return max(self.end, launch)
        years = range(date.fromordinal(launch).year, date.fromordinal(launch).year + 3)
        out = min(d for d in (self.usual(1, y) for y in years) if d > launch)
        again = min(d for d in (self.usual(0, y) for y in years) if d >= out)
        return self.today if out < self.today < min(again, next_launch) else out

    def make_seasons(self):
        """(launch, haul-out, recorded, haul-out recorded) in order."""
        recorded, made = self.b["seasons"], []
        for i, (launch, out) in enumerate(recorded):
            later = recorded[i + 1][0] if i + 1 < len(recorded) else NEVER
            end = min(later, self.still_afloat_until(launch, later) if out is None else out)
            made.append((launch, max(end, launch), True, out is not None))
        if self.all_year:
            return made
        for year in range(date.fromordinal(self.start).year - 2, date.fromordinal(self.end).year + 3):
            before, (launch, out), after = (self.usual_season(y) for y in (year - 1, year, year + 1))
            turn, next_turn = before[1] + (launch - before[1]) // 2, out + (after[0] - out) // 2
            if any(turn <= s[0] < next_turn for s in recorded):
                continue
            taken = set().union(*(range(s[0], s[1]) for s in made if s[1] > launch and s[0] < out and s[2]))
            free = sorted(set(range(launch, out)) - taken)
            if free:
                made.append((free[0], free[-1] + 1, False, False))
        return sorted(made)

    def season_of(self, day):
        return next((s for s in self.seasons if s[0] <= day < s[1]), None)

    def under_way(self, day):
        return self.all_year or self.season_of(day) is not None

    def boundary_after(self, day):
        return min([d for s in self.seasons for d in s[:2] if day < d <= self.end] or [self.end])

    def stay_of(self, day):
        stays = self.b["stays"]
        for i, (a, z, stand, water) in enumerate(stays):
            later = stays[i + 1][0] if i + 1 < len(stays) else None
            if z is None:
                z = later or self.boundary_after(max(self.today, a))
            if a <= day < min(z, later or z):
                return stand, water
        return None

    def lies(self, day):
        """Where it lies, the usual water there, whether that is assumed."""
        stay = self.stay_of(day)
        if stay:
            return stay[0], self.b["water"] if stay[1] == "-" else stay[1], day > self.today
        season = self.season_of(day)
        if self.all_year or season:
            return self.b["berth"], self.b["water"], day > self.today or not season or not season[2]
        past = [s for s in self.seasons if s[1] <= day]
        return self.b["winter"], self.b["water"], day > self.today or not past or not past[-1][3]

    def live(self, day, salt):
        """Set what the day is; returns whether salt is left on after it."""
        stand, usual, assumed = self.lies(day)
        afloat, runs = stand == "afloat", self.runs.get(day)
        if not runs:
            if afloat:
                what = {"afloat", usual}, f"{stand} {usual}"
            elif salt:
                what = {"ashore", "salt"}, f"{stand} salt film"
            else:
                what = {"ashore"}, f"{stand} -"
            self.days[day] = (what[0], what[1] + (" assumed" if assumed else ""), stand, usual)
            return salt
        waters = [(usual if r[3] == "-" else r[3], r[4]) for r in runs]
        water = max((w for w, _ in waters), key=WATERS.index)
        rinsed = all(rinse for w, rinse in waters if w != "fresh" or water == "fresh")
        if afloat:
            text = f"{stand} {water}" + (" assumed" if assumed and water == usual else "")
            self.days[day] = ({"afloat", water}, text, stand, usual)
        else:
            what = {"rinsed"} if rinsed and water != "fresh" else {water}
            self.days[day] = (what, f"{stand} {water}" + (" rinsed" if rinsed else ""), stand, usual)
        return water != "fresh" and not rinsed

    def how(self, day):
        """What the day does to a fitting, and the water it does it in."""
        what, _, _, usual = self.days[day]
        if "ashore" in what:
            return ("film" if "salt" in what else "dry"), None
        if "rinsed" in what:
            return "rinsed", "brackish" if usual == "brackish" else "salt"
        water = next(w for w in WATERS if w in what)
        return ("afloat" if "afloat" in what else "out"), water

    def rate(self, mechanism, day):
        if day not in self.days or day < self.b["from"]:
            return 1
        _, _, stand, usual = self.days[day]
        return self.wear.rate(mechanism, *self.how(day), usual, stand == "roof", date.fromordinal(day).month)

    def rate_out(self, mechanism, day):
        """Of a day out to come: in the usual water, not rinsed."""
        _, _, stand, usual = self.days[day]
        how = "afloat" if stand == "afloat" else "out"
        return self.wear.rate(mechanism, how, usual, usual, stand == "roof", date.fromordinal(day).month)

    def salty(self, day):
        if day not in self.days or day < self.b["from"]:
            return False
        how, water = self.how(day)
        return how == "film" or water in ("brackish", "salt")

    def seconds(self, day, engine):
        return sum(r[1] for r in self.runs.get(day, []) if engine < 0 or r[2] == engine)

    def outings(self, day):
        return sum(r[5] for r in self.runs.get(day, []))

    def log_begins(self):
        first = min(self.runs, default=None)
        if first is None:
            return None
        season = self.season_of(first)
        return season[0] if season and season[2] else first

    def ahead(self, engine, outings=False):
        """The forecast of an engine's hours (-1: all), or of outings."""
        key = "outings" if outings else engine
        if key not in self.forecasts:
            self.forecasts[key] = Forecast(self, engine, outings)
        return self.forecasts[key]


# A task ---------------------------------------------------------------------------------------------------------------


class Task:
    def __init__(self, life, task):
        self.life, self.t, self.today = life, task, life.today
        printed = task["rule"] == "printed-date"
        self.m = "none" if printed else task["mechanism"]
        known = task["since"] != "unknown" and (not printed or task["since"] == "made")
        self.since = task["day"] if known else None
        self.before = None  # another limit is reached by then

    def is_clock(self, kind, value):
        if kind in ("hours", "first-hours", "outings") and self.t["rule"] == "printed-date":
            return False
        if kind == "first-hours" and self.t["once"] or kind == "outings" and value == 1:
            return False
        return kind not in ("happening", "condition")

    def age(self, allowed, rate):
        """The day on which days, at that rate each, are so many; and how many they are today."""
        due, age = self.since, 0.0
        while age < allowed - NEARLY and due <= self.life.end:
            age += rate(due)
            due += 1
        return due if due <= self.life.end else None, sum(rate(d) for d in range(self.since, self.today))

    def ways(self, value):
        """How days and seconds count, in turn, of which the first to reach the limit and the larger sum hold; and how seconds
        on a day to come."""
        life = self.life
        if isinstance(value, tuple):
            pair = value[0] / value[1]
            return value[0], [(lambda day: pair if life.salty(day) else 1, lambda day: 1 if life.days[day][3] == "fresh" else pair)]
        rated = (lambda day: life.rate(self.m, day), lambda day: life.rate_out(self.m, day))
        return value, [rated] if life.stretch and self.m in WORN else [rated, (self.plain, self.plain)]

    def months(self, value):
        amount, ways = self.ways(value)
        allowed = add_months(self.since, amount) - self.since
        found = [self.age(allowed, way) for way, _ in ways]
        due = min((d for d, _ in found if d is not None), default=None)
        return self.on(due), self.today - self.since, max(age for _, age in found), allowed

    def use(self, of, value, used, rate):
        """Add up recorded use day by day until it is value."""
        due = self.since if used >= value - NEARLY else None
        for day in range(self.since + 1, self.today + 1):
            used += of(day) * rate(day)
            if due is None and used >= value - NEARLY:
                due = day
        return due, used

    @staticmethod
    def plain(_):
        return 1

    @staticmethod
    def on(day):
        return day, day, day

    def ahead(self, forecast, remaining, rate):
        """Likely, early and late; nothing where another limit surely comes first."""
        early, likely, late = forecast.reach(remaining, rate)
        if self.before is not None and (early is None or early > self.before):
            return self.on(None)
        return likely, early, late

    def hours_by(self, amount, way, way_ahead):
        def of(day):
            return self.life.seconds(day, self.t["engine"])
        after, ran = self.t["after"] * way(self.since), self.t["ran"]
        logged = self.use(of, math.inf, after, way)[1]
        used = logged
        if ran is not None:
            plain = self.use(of, math.inf, self.t["after"], self.plain)[1]
            used = ran * (logged / plain if plain else way(self.since))
        due, _ = self.use(of, amount, used - (logged - after), way)
        if due is not None:
            return self.on(due), used
        return self.ahead(self.life.ahead(self.t["engine"]), amount - used, way_ahead), used

    def hours(self, value):
        amount, ways = self.ways(value)
        found = [self.hours_by(amount, *way) for way in ways]
        days = tuple(min((f[0][k] for f in found if f[0][k] is not None), default=None) for k in range(3))
        raw = self.hours_by(amount, self.plain, self.plain)[1]
        return days, raw, max(used for _, used in found), amount

    def outings(self, value):
        due, n = self.use(self.life.outings, value, 0, self.plain)
        if due is None:
            return self.ahead(self.life.ahead(-1, True), value - n, self.plain), n, n, value
        return self.on(due), n, n, value

    def seasons(self, value):
        ends = [s[1] for s in self.life.seasons if s[1] > self.since]
        due = ends[value - 1] if value <= len(ends) and ends[value - 1] <= self.life.end else None
        n = sum(e <= self.today for e in ends)
        return self.on(due), n, n, value

    def event(self, which):
        points = []  # every fixed point of every year, in order
        for launch, out, *_ in self.life.seasons:
            points += [(launch, "launch"), (launch + (out - launch) // 2, "mid"), (out, "out")]
        name = {"launch": "launch", "first-day": "launch", "mid-season": "mid"}.get(which, "out")
        mine = [i for i, p in enumerate(points) if p[1] == name and p[0] >= self.since and p[0] <= self.life.end]
        if not mine:
            return self.on(None), 0, 0, 1
        before = points[mine[0] - 1][0] if mine[0] else None
        later = [p[0] for p in points if p[1] == name and points[mine[0]][0] < p[0] <= self.life.end]
        if before is not None and self.since <= before:
            due = points[mine[0]][0]
        else:
            due = later[0] if later else None
        passed = int(due is not None and due <= self.today)
        return self.on(due), passed, passed, 1

    def limit(self, kind, value):
        if kind in ("happening", "condition") and value is not None and value <= self.today:
            return self.on(value), 0, 0, 0, math.nan
        if self.since is None or not self.is_clock(kind, value):
            return self.on(None), 0, 0, 0, math.nan
        by = {"hours": self.hours, "first-hours": self.hours, "months": self.months, "outings": self.outings,
              "seasons": self.seasons, "event": self.event}[kind]
        days, raw, rated, allowed = by(value)
        return days, raw, rated, allowed, math.nan if kind == "event" else rated / allowed

    def at(self, halves, before):
        """The same task with its baseline moved back by so many halves of the span."""
        t = dict(self.t)
        if halves and t["earliest"] is not None and t["earliest"] < t["day"]:
            t["day"] -= (t["day"] - t["earliest"]) * halves // 2
            t["after"] = 0
        if t["ran"] is not None:
            t["ran"] += (t["ran_most"] - t["ran"]) * halves // 2
        moved = Task(self.life, t)
        moved.before = before
        return moved

    def is_span(self):
        t = self.t
        return (t["earliest"] is not None and t["earliest"] < t["day"]) or (t["ran"] is not None and t["ran"] < t["ran_most"])

    def limit_days(self, limit, before):
        days, *numbers = self.at(1, before).limit(*limit)
        if self.is_span() and self.since is not None:
            early, late = self.at(2, before).limit(*limit)[0][1], self.at(0, before).limit(*limit)[0][2]
            early = min((d for d in (early, days[0]) if d is not None), default=None)
            late = None if late is None or days[0] is None else max(late, days[0])
            days = (days[0], early, late)
        return [days] + numbers

    def is_chore(self):
        return self.t["mechanism"] != "growth" and self.t["rule"] in ("done", "inspection") and any(
            k == "months" and 0 < (v[0] if isinstance(v, tuple) else v) <= 3 for k, v in self.t["limits"])

    def limits(self):
        """Those by the calendar first."""
        calendar_ones = {i: self.limit_days(x, None) for i, x in enumerate(self.t["limits"]) if x[0] not in FORECAST}
        before = min((x[0][2] for x in calendar_ones.values() if x[0][2] is not None), default=None)
        return [calendar_ones[i] if i in calendar_ones else self.limit_days(x, before) for i, x in enumerate(self.t["limits"])]

    def work_out(self):
        limits = self.limits()
        early = [x[0][1] for x in limits]
        kinds = [k for k, _ in self.t["limits"]]
        dues = [(x[0][0], math.inf if math.isnan(x[4]) else -round(x[4], 7), i)
                for i, x in enumerate(limits) if x[0][0] is not None]
        due, _, governing = min(dues) if dues else (None, 0, -1)
        self.first_day = governing >= 0 and self.t["limits"][governing] == ("event", "first-day")
        placed = due
        if self.t["consequence"] in GRAVE:
            placed = min((x for x in early if x is not None), default=None)
        happened = any(k in ("happening", "condition") and x[0][0] is not None for k, x in zip(kinds, limits))
        clock = any(self.is_clock(*x) for x in self.t["limits"])
        each = ("outings", 1) in self.t["limits"]
        if not happened and not clock:
            when = ("each-outing" if each else "on-condition", None, False)
        elif not happened and self.since is None and not each and (self.is_chore() or self.t["place"] == "afloat"):
            year = self.year()
            launch, under_way = year[0], year[4]
            serves_now = self.t["place"] == "anywhere" or (
                under_way if self.t["place"] == "afloat" else self.life.days[self.today][2] != "afloat")
            when = self.opportunity_past(year, serves_now, self.t["consequence"] in GRAVE,
                                         self.today if under_way else launch)
        elif not happened and (self.since is None or placed is None):
            when = ("each-outing" if each else "later" if self.since is not None else "no-record", None, False)
        else:
            when = self.opportunity(placed, happened)
        says = f"{when[0]} by {iso(when[1])} due {iso(due)} limit {governing}"
        says += (" past" if placed is not None and placed <= self.today else "") + (" misfit" if when[2] else "")
        says += " estimated" if self.since is not None and self.is_span() else ""
        return says, limits

    # When to do it: a day is labelled by the season that it lies in, and the last day that serves is looked for.

    def year(self):
        """launch, haul-out, next launch, next haul-out, under way, as work is planned from today."""
        coming = [s for s in self.life.seasons if s[1] >= self.today][:2]
        days = [d if d <= self.life.end else NEVER for s in coming for d in s[:2]] + [NEVER] * 4
        under_way = self.life.all_year or (days[0] < self.today)
        return days[:4] + [under_way]

    def serves(self, day, year):
        launch, out, next_launch, next_out, under_way = year
        in_season = (under_way and day <= out) or launch <= day <= out or next_launch <= day <= next_out
        ends = day in (launch, out, next_launch, next_out)
        need = self.t["place"]
        if need == "anywhere":
            return True
        if need == "afloat":
            return in_season
        lies = self.life.days.get(day) or self.life.days[self.life.end - 1]
        return not in_season or ends or lies[2] != "afloat"

    def label(self, day, year):
        launch, out, next_launch, next_out, under_way = year
        if not under_way and day <= launch:
            return "before-launch", launch
        if day < out:
            return "this-season", day
        if day < next_launch:
            return "lay-up", out
        return ("next-spring", next_launch) if day == next_launch or day < next_out else ("later", day)

    def opportunity(self, due, happened):
        year, today, place = self.year(), self.today, self.t["place"]
        launch, out, next_launch, next_out, under_way = year
        afloat, grave = place == "afloat", self.t["consequence"] in GRAVE
        serves_now = place == "anywhere" or (under_way if afloat else self.life.days[today][2] != "afloat")
        if happened:
            return "now", today, not serves_now
        if due <= today:
            return self.opportunity_past(year, serves_now, grave, due)
        if out == NEVER and due > add_months(today, 12):
            return "later", due, False
        days = [d for d in range(today if under_way else today + 1, due + 1) if self.serves(d, year)]
        if due > next_launch and (afloat or due >= next_out):
            return "later", due, False
        if afloat and not under_way and due < launch:
            return "first-day", launch, True
        if not days and under_way and due < out:  # needs it out, before it comes out
            if grave:
                middles = [s[0] + (s[1] - s[0]) // 2 for s in self.life.seasons]
                return "mid-season-haul", min([m for m in middles if m > today] + [due]), True
            return ("this-season" if out == NEVER else "lay-up"), due, True
        day = due if next_launch <= due else days[-1] if days else launch
        what, by = self.label(day, year)
        if afloat and what in ("before-launch", "lay-up"):  # the first or the last day afloat
            return ("first-day", launch, False) if what == "before-launch" and due <= launch else ("this-season", out, False)
        if what == "before-launch" and place == "anywhere" and self.first_day and due == launch:
            return "first-day", launch, False
        return what, min(by, due), False

    def opportunity_past(self, year, serves_now, grave, due):
        launch, out, _, _, under_way = year
        afloat = self.t["place"] == "afloat"
        if not under_way and (afloat or self.first_day and self.t["place"] == "anywhere"):
            return "first-day", launch, afloat and due < launch
        if not under_way:
            return "before-launch", launch, False
        if self.today == out:
            return "this-season" if afloat else "lay-up", self.today, False
        if grave:
            return "now", self.today, not serves_now
        if serves_now:
            return "this-season", self.today, False
        return ("lay-up", out, True) if out < NEVER else ("this-season", self.today, True)


# The comparison -------------------------------------------------------------------------------------------------------


def same_number(a, b):
    return a == b or (math.isnan(a) and math.isnan(b)) or abs(a - b) <= 1e-5 + 1e-9 * abs(b)


def span_complaints(life, lines):
    day = life.b["from"]
    for line in lines:
        a, b, text = line.split(" ", 2)
        a, b = (date.fromisoformat(x).toordinal() for x in (a, b))
        if a != day:
            yield f"span begins {iso(a)}, not {iso(day)}"
        for day in range(a, b):
            if life.days[day][1] != text:
                yield f"{iso(day)}: the engine has {text}, here it is {life.days[day][1]}"
                return
        day = b
    if day != life.end:
        yield f"spans end {iso(day)}, not {iso(life.end)}"


def task_complaints(life, task, says, limits):
    mine, mine_limits = Task(life, task).work_out()
    if says != mine:
        yield f"{task}: the engine says {says}, here it is {mine}"
    for i, (got, want) in enumerate(zip(limits, mine_limits)):
        due, early, late, *numbers = got.split()
        same = all(same_number(float(a), float(b)) for a, b in zip(numbers, want[1:]))
        if not same or [due, early, late] != [iso(d) for d in want[0]]:
            yield f"{task}, limit {i}: the engine says {got}, here it is {[iso(d) for d in want[0]]} {want[1:]}"


def complaints(boat, answer):
    life = Life(boat)
    yield from span_complaints(life, [x[5:] for x in answer if x.startswith("span ")])
    tasks = []
    for line in answer:
        if line.startswith("task "):
            tasks.append((line[5:], []))
        elif line.startswith("limit "):
            tasks[-1][1].append(line[6:])
    if len(tasks) != len(boat["tasks"]):
        yield f"{len(tasks)} answers for {len(boat['tasks'])} tasks"
    for task, (says, limits) in zip(boat["tasks"], tasks):
        yield from task_complaints(life, task, says, limits)


def main(args):
    if len(args) not in (1, 2):
        sys.exit(__doc__)
    seed = int(os.environ.get("SEED") or secrets.randbelow(2 ** 32))
    print(f"SEED={seed}", flush=True)
    boats = [draw_boat(random.Random(f"{seed} {i}")) for i in range(int(args[1]) if len(args) == 2 else 200)]
    text = "".join(line + "\n" for b in boats for line in boat_text(b))
    out = subprocess.run([args[0]], input=text, capture_output=True, text=True, check=True).stdout
    answers, bad = out.split("end\n"), 0
    for i, boat in enumerate(boats):
        for complaint in complaints(boat, answers[i].splitlines()):
            bad += 1
            print(f"boat {i}: {complaint}")
        if bad:
            print("\n".join(boat_text(boat)))
            sys.exit(1)
    print(f"{len(boats)} boats agree, {sum(len(b['tasks']) for b in boats)} tasks")


if __name__ == "__main__":
    main(sys.argv[1:])
