"""How fast a day wears a fitting, from the formulas' sources alone, for simulate.py: the constants are those of
share/catalogue/rates.csv, and no code is shared with the engine.

Corrosion: EN 1993-5 Table 4.2 and ISO 9223 classes, Q10.  Anodes: DNV-RP-B401's current demand by temperature, and the
water's resistivity by PSS-78.  Rubber: Arrhenius.  Raw water and growth: the trade's rules of thumb, the largest alone.
"""
import csv
import math
import os

WATERS = ["fresh", "brackish", "salt"]
WORN = ["corrosion", "galvanic", "rubber", "raw-water", "growth"]
GAS_CONSTANT = 8.314462618
PSS_A = [0.0080, -0.1692, 25.3851, 14.0941, -7.0261, 2.7081]
PSS_B = [0.0005, -0.0056, -0.0066, -0.0375, 0.0636, -0.0144]


def shipped(top):
    with open(os.path.join(top, "share/catalogue/rates.csv"), newline="", encoding="utf-8") as f:
        return {row["name"]: float(row["value"]) for row in csv.DictReader(f)}


def conductivity_ratio(psu, t68):
    """To that of 35 PSU at the same temperature, by bisection of PSS-78's polynomial."""
    low, high = 0.0, 2.0
    for _ in range(200):
        middle = (low + high) / 2
        root = math.sqrt(middle)
        a = sum(c * root ** i for i, c in enumerate(PSS_A))
        b = sum(c * root ** i for i, c in enumerate(PSS_B))
        if a + (t68 - 15) / (1 + 0.0162 * (t68 - 15)) * b < psu:
            low = middle
        else:
            high = middle
    return high


class Wear:
    def __init__(self, constants, changed):
        self.c = dict(constants)
        self.c.update({name: 1.0 for name in constants if name.startswith(("raw-water.", "growth."))})
        self.c.update(changed)
        self.known = {}
        self.anode = {w: self.anode_in(w) for w in WATERS}

    def anode_in(self, water):
        k, psu = self.c["anode.k"], self.c["anode.psu-" + water]
        t68 = 15 * 1.00024
        return (1 + k) / (1 + k * conductivity_ratio(35, t68) / conductivity_ratio(psu, t68))

    def celsius(self, what, month):
        mean, swing, warmest = (self.c[f"climate.{what}-{x}"] for x in ("mean", "swing", "warmest"))
        return mean + swing * math.cos(2 * math.pi * (month - warmest) / 12)

    def demand(self, celsius):
        c = self.c
        if celsius < c["anode.cool-from"]:
            amperes = c["anode.demand-cold"]
        elif celsius <= c["anode.mild-above"]:
            amperes = c["anode.demand-cool"]
        elif celsius <= c["anode.warm-above"]:
            amperes = c["anode.demand-mild"]
        else:
            amperes = c["anode.demand-warm"]
        return amperes / c["anode.demand-one"]

    def corrosion_in(self, water, celsius):
        return self.c["corrosion." + water] * self.c["corrosion.q10"] ** ((celsius - self.c["corrosion.celsius"]) / 10)

    def corrosion_of_air(self, film, roof, inland):
        place = "film" if film else "roof" if roof else "inland" if inland else "outdoors"
        number = min(max(self.c["air." + place], 1), 6)
        return self.c["air." + ["c1", "c2", "c3", "c4", "c5", "cx"][int(number) - 1]] / self.c["air.sea"]

    def arrhenius(self, celsius):
        reference = self.c["rubber.celsius"]
        return math.exp(self.c["rubber.energy"] * 1000 / GAS_CONSTANT * (1 / (reference + 273.15) - 1 / (celsius + 273.15)))

    def cut(self, raw, presumed):
        return min(max(raw / presumed, self.c["rate.least"]), self.c["rate.most"]) if raw > 0 else 0

    def thumb(self, m, how, water):
        of = {w: self.c[f"{m}.{w}"] for w in WATERS}
        if how == "afloat":
            return max(of[water], self.c[f"{m}.afloat"])
        if how == "out":
            return of[water]
        if how == "rinsed":
            return min(of[water], self.c[f"{m}.rinsed"])
        return of["salt"] if how == "film" else 1

    def work_out(self, m, how, water, usual, roof, month):
        """how: afloat, out, rinsed, dry, film; water: None when dry; usual: where the boat lies."""
        wet, dry = self.celsius("water", month), self.celsius("air", month)
        if m in ("raw-water", "growth"):
            return self.cut(self.thumb(m, how, water), 1)
        if m == "rubber":
            return self.cut(self.arrhenius(wet if how == "afloat" else dry), self.arrhenius(15))
        if m == "galvanic":
            return self.cut(0 if water is None else self.anode[water] * self.demand(wet), self.anode["salt"] * self.demand(15))
        presumed = self.corrosion_in("fresh", 15)
        if water is None:
            return self.cut(self.corrosion_of_air(how == "film", roof, usual == "fresh"), presumed)
        rate = self.cut(self.corrosion_in(water, wet), presumed)
        if how == "out" and water != "fresh":  # what wet it stays on it
            rate = max(rate, self.cut(self.corrosion_of_air(True, roof, usual == "fresh"), presumed))
        return rate

    def rate(self, m, how, water, usual, roof, month):
        if m not in WORN:
            return 1
        key = (m, how, water, usual, roof, month)
        if key not in self.known:
            self.known[key] = self.work_out(*key)
        return self.known[key]
