"""Writes acidity.csv: the pH of mashes by a balance of charges over all species, apart from the code of src/core.

A malt is not a straight line here but a row of weak acids, half a pH apart, with so much strong base beside them that the
malt alone has its own pH; carbonic acid has all its species (Stumm and Morgan, Aquatic Chemistry: 6.38, 10.38, 14.17 at
20 °C), phosphoric acid all its steps, and the acids' moles come from handbook densities (lactic 88 % 1.209 g/mL; phosphoric
10 % 1.0531, 85 % 1.685). Calcium and magnesium give what Kolbach found, a 3.5th and a 7th of their equivalents. What both
ways share: those two numbers, and the malts' own pH and buffering.  Run: python3 equilibrium.py (needs scipy)
"""
import csv, json
from scipy.optimize import brentq

K1, K2, KW = 10**-6.38, 10**-10.38, 10**-14.17
STEPS = {"lactic": [3.86], "phosphoric": [2.15, 7.2, 12.35]}
MOL_PER_ML = {("lactic", 88): 1.209 * 0.88 / 90.08, ("phosphoric", 10): 1.0531 * 0.10 / 97.995, ("phosphoric", 85): 1.685 * 0.85 / 97.995}
MALT = {  # own pH, meq to move a kilogram by one pH
    ("base", 2): (5.74, 45), ("base", 9): (5.53, 45), ("wheat", 2): (6.0, 45), ("crystal", 60): (4.95, 50),
    ("crystal", 120): (4.65, 50), ("roasted", 500): (4.65, 40), ("acidulated", 2): (3.45, 165),
}
APART, GROUPS = 0.5, [0.0 + 0.5 * i for i in range(24)]


def dissociated(pKa, h):
    return 1 / (1 + h / 10**-pKa)


def malt_anions(buffer, h):  # eq/kg
    return sum(buffer / 1000 * APART * dissociated(pKa, h) for pKa in GROUPS)


def carbonates(h):
    return (K1 * h + 2 * K1 * K2) / (h * h + K1 * h + K1 * K2)


def acid_charges(name, h):
    form, forms, charges = 1.0, 1.0, 0.0
    for step, pKa in enumerate(STEPS[name], 1):
        form *= 10**-pKa / h
        forms += form
        charges += step * form
    return charges / forms


def charge(pH, malts, litres, alkalinity, calcium, magnesium, added, amount):
    """Positive charges less negative ones, eq in the whole mash."""
    h = 10**-pH
    tap = 10**-7.5
    total = 0.0
    for kilograms, kind in malts:
        own, buffer = kind if isinstance(kind[0], float) else MALT[kind]
        total += kilograms * (malt_anions(buffer, 10**-own) - malt_anions(buffer, h))
    strong = alkalinity / 50043.5
    carbon = (strong - KW / tap + tap) / carbonates(tap)
    # phosphate of the malt that leaves with calcium and magnesium leaves hydrogen ions: negative charge left without partner
    total += litres * (strong - calcium / 20039 / 3.5 - magnesium / 12152.5 / 7)
    soda = 0.0
    if added and added[0] == "baking soda":
        soda = amount / 84.0066
    if added and added[0] == "slaked lime":
        total += amount / 74.0927 * 2 * (1 - 1 / 3.5)
    total += soda
    total += litres * (h - KW / h) - (litres * carbon + soda) * carbonates(h)
    if added and added[0] in STEPS:
        total -= amount * MOL_PER_ML[added] * acid_charges(added[0], h)
    return total


def ph(*mash):
    return brentq(lambda x: charge(x, *mash), 1, 12, xtol=1e-10)


CASES = [
    ([(5.0, ("base", 2))], 15, 0, 0, 0, None, 0),
    ([(5.0, ("base", 2))], 20, 100, 60, 10, None, 0),
    ([(5.0, ("base", 2))], 20, 250, 90, 15, None, 0),
    ([(4.0, ("base", 9)), (0.5, ("crystal", 120))], 14, 180, 80, 10, None, 0),
    ([(4.0, ("base", 2)), (0.4, ("roasted", 500)), (0.3, ("crystal", 60))], 15, 250, 90, 15, None, 0),
    ([(2.5, ("base", 2)), (2.5, ("wheat", 2))], 18, 60, 120, 5, None, 0),
    ([(5.0, ("base", 2)), (0.15, ("acidulated", 2))], 16, 40, 50, 5, None, 0),
    ([(5.0, ("base", 2))], 20, 150, 60, 10, ("lactic", 88), 4.0),
    ([(5.0, ("base", 2))], 20, 150, 60, 10, ("phosphoric", 10), 40.0),
    ([(5.0, ("base", 2))], 20, 150, 60, 10, ("phosphoric", 85), 3.0),
    ([(4.0, ("base", 2)), (0.8, ("roasted", 500))], 15, 10, 20, 0, ("baking soda", None), 3.0),
    ([(4.0, ("base", 2)), (0.8, ("roasted", 500))], 15, 10, 20, 0, ("slaked lime", None), 1.5),
    ([(4.5, (5.62, 45))], 13, 120, 70, 8, ("lactic", 88), 2.0),
]
FOR_TARGET = [
    (CASES[1][:5], 5.4, ("lactic", 88)),
    (CASES[2][:5], 5.3, ("lactic", 88)),
    (CASES[2][:5], 5.4, ("phosphoric", 10)),
    (CASES[2][:5], 5.4, ("phosphoric", 85)),
    (CASES[10][:5], 5.6, ("baking soda", None)),
    (CASES[10][:5], 5.6, ("slaked lime", None)),
]


def typed_malts(malts):
    return [[kg, kind[0], kind[1] if not isinstance(kind[0], float) else 0] for kg, kind in malts]


with open("acidity.csv", "w", newline="") as file:
    out = csv.writer(file, lineterminator="\n")
    out.writerow(["function", "arguments", "expected", "tolerance", "basis", "source"])
    source = "equilibrium.py: all species by a balance of charges, malts as rows of weak acids; apart from the code"
    for malts, litres, alkalinity, calcium, magnesium, added, amount in CASES:
        arguments = [typed_malts(malts), litres, alkalinity, calcium, magnesium] + ([added[0], added[1], amount] if added else [])
        value = ph(malts, litres, alkalinity, calcium, magnesium, added, amount)
        out.writerow(["MASH.ACIDITY", json.dumps(arguments), f"{value:.4f}", 0.015, "computed", source])
    for water, target, added in FOR_TARGET:
        malts, litres, alkalinity, calcium, magnesium = water
        amount = brentq(lambda x: ph(malts, litres, alkalinity, calcium, magnesium, added, x) - target, 0, 20 if added != ("phosphoric", 10) else 300)
        arguments = [typed_malts(malts), litres, alkalinity, calcium, magnesium, target, added[0], added[1]]
        out.writerow(["MASH.CORRECT", json.dumps(arguments), f"{amount:.4f}", f"{max(0.02, 0.03 * amount):.4f}", "computed", source])
