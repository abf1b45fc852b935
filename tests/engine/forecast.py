"""What running lies ahead of a boat, from the method's description alone, for simulate.py: no code is shared with the engine.

Rates by the month are those of Poisson counts with a gamma prior; hours ahead are gamma by their moments, summed a day at a
time; src/engine/usage.h names the terms.
"""
import calendar
import math
from datetime import date


def num(y, m, d):
    return date(y, m, min(d, calendar.monthrange(y, m)[1])).toordinal()


def add_months(n, months):
    d = date.fromordinal(n)
    y, m = divmod(d.year * 12 + d.month - 1 + months, 12)
    return num(y, m + 1, d.day)


def gamma_q(a, x):
    """The regularized upper incomplete gamma function, by series below a + 1 and by Lentz's continued fraction above."""
    front = math.exp(a * math.log(x) - x - math.lgamma(a))
    if x < a + 1:
        term = total = 1 / a
        k = a
        while abs(term) > abs(total) * 1e-15:
            k += 1
            term *= x / k
            total += term
        return 1 - front * total
    b, tiny = x + 1 - a, 1e-300
    c, d = 1 / tiny, 1 / b
    h, i, step = d, 0, 0
    while abs(step - 1) > 1e-15:
        i += 1
        b += 2
        an = -i * (i - a)
        d = an * d + b
        d = 1 / (d if abs(d) > tiny else tiny)
        c = b + an / c
        c = c if abs(c) > tiny else tiny
        step = d * c
        h *= step
    return front * h


class Forecast:
    """Hours a day in each month, and their spread; or outings."""

    def __init__(self, life, engine, outings):
        self.life, self.outings = life, outings
        self.use = life.outings if outings else lambda day: life.seconds(day, engine) / 3600
        hours = 50 / 3 if outings else 50
        launch, out = life.b["usual"]
        all_year = launch is None or launch == out
        year = [date(2023, 1, 1).toordinal() + i for i in range(365)]
        inside = [self.inside(d, launch, out) or all_year for d in year]
        month = [date.fromordinal(d).month for d in year]
        prior = {m: max(1, sum(i for i, k in zip(inside, month) if k == m)) for m in range(1, 13)}
        sums = {m: [0.5 * hours * prior[m] / sum(inside), 0.5 * prior[m]] for m in range(1, 13)}
        logged = 0
        pieces = {}
        back = add_months(life.today, -60)
        first = life.log_begins()
        for day in range(max(first, back) if first is not None else life.today + 1, life.today + 1):
            if life.under_way(day):
                season = life.season_of(day)
                pieces.setdefault((season, date.fromordinal(day).replace(day=1)), []).append(day)
        squares, n = 0, 0
        for (_, when), days in pieces.items():
            weight = 0.8 ** ((life.today - days[0]) // 366)
            used = sum(map(self.use, days))
            sums[when.month][0] += weight * used
            sums[when.month][1] += weight * len(days)
            logged += weight * used
        self.rate = {m: max(1e-4, a / b) for m, (a, b) in sums.items()}
        for (_, when), days in pieces.items():
            mu = self.rate[when.month] * len(days)
            if mu >= 0.5:
                squares += (sum(map(self.use, days)) - mu) ** 2 / mu
                n += 1
        presumed = 1 if outings else 4
        self.phi = max(presumed / 2, (4 * presumed + squares) / (4 + n))
        single = [u for u in map(self.use, (d for d in life.runs if d > back)) if 0 < u <= 24]
        if not outings:
            spread = len(single) * sum(u * u for u in single) / sum(single) if single else 0
            self.phi = max(2, (16 + spread) / (4 + len(single)))
        self.rate_spread = self.phi / (logged + 0.5 * hours)
        self.turn = 7 if not all_year and launch > out else 1

    @staticmethod
    def inside(day, launch, out):
        d = date.fromordinal(day)
        mmdd = d.month * 100 + d.day
        if launch is None:
            return True
        return launch <= mmdd < out if launch < out else mmdd >= launch or mmdd < out

    def reach(self, remaining, rate):
        """Early, likely and late: the first days by whose beginning the chance is .1, .5 and .9."""
        remaining = remaining - 0.5 if self.outings else remaining / 3600
        mu = squares = before = this_year = 0.0
        found, levels = [], [0.1, 0.5, 0.9]
        for day in range(self.life.today + 2, self.life.end + 1):
            d = date.fromordinal(day - 1)
            if d.day == 1 and d.month == self.turn:
                before, this_year = before + this_year ** 2, 0.0
            if self.life.under_way(day - 1):
                counts = rate(day - 1)
                mu += self.rate[d.month] * counts
                this_year += self.rate[d.month] * counts
                squares += self.rate[d.month] * counts ** 2
            if mu < levels[len(found)] * remaining or mu == 0:
                continue
            variance = self.phi * squares + self.rate_spread * mu * mu + 0.0625 * (before + this_year ** 2)
            chance = gamma_q(mu * mu / variance, remaining * mu / variance)
            while len(found) < 3 and chance >= levels[len(found)]:
                found.append(day)
            if len(found) == 3:
                break
        return tuple(found + [None] * (3 - len(found)))
