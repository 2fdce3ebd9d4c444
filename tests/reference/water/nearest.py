"""Writes nearest.csv: WATER.TARGET by scipy.optimize (nnls; lsq_linear where dilution has its bound), salts from atomic weights.

Apart from the code of src/core: other solvers, other stoichiometry.  Run: python3 nearest.py (needs scipy)
"""
import csv, json
import numpy as np
from scipy.optimize import lsq_linear, nnls

A = dict(H=1.008, C=12.011, O=15.999, Na=22.98977, Mg=24.305, S=32.06, Cl=35.453, Ca=40.078)
WATER = 2 * A["H"] + A["O"]
SO4, HCO3 = A["S"] + 4 * A["O"], A["H"] + A["C"] + 3 * A["O"]
# grams of Ca, Mg, Na, Cl, SO4, HCO3 in a mole, and the mole's mass
SALTS = {
    "gypsum": ([A["Ca"], 0, 0, 0, SO4, 0], A["Ca"] + SO4 + 2 * WATER),
    "calcium chloride": ([A["Ca"], 0, 0, 2 * A["Cl"], 0, 0], A["Ca"] + 2 * A["Cl"] + 2 * WATER),
    "calcium chloride anhydrous": ([A["Ca"], 0, 0, 2 * A["Cl"], 0, 0], A["Ca"] + 2 * A["Cl"]),
    "epsom salt": ([0, A["Mg"], 0, 0, SO4, 0], A["Mg"] + SO4 + 7 * WATER),
    "magnesium chloride": ([0, A["Mg"], 0, 2 * A["Cl"], 0, 0], A["Mg"] + 2 * A["Cl"] + 6 * WATER),
    "table salt": ([0, 0, A["Na"], A["Cl"], 0, 0], A["Na"] + A["Cl"]),
    "baking soda": ([0, 0, A["Na"], 0, 0, HCO3], A["Na"] + HCO3),
    "slaked lime": ([A["Ca"], 0, 0, 0, 0, 2 * HCO3], A["Ca"] + 2 * (A["O"] + A["H"])),
}
USUAL = ["gypsum", "calcium chloride", "epsom salt", "table salt", "baking soda"]
IONS = ["calcium (Ca)", "magnesium (Mg)", "sodium (Na)", "chloride (Cl)", "sulfate (SO4)", "bicarbonate (HCO3)"]

CASES = [
    ([60, 10, 5, 15, 25, 180], [100, 10, 20, 60, 150, 100], 20, None, "yes"),
    ([60, 10, 5, 15, 25, 180], [100, 10, 20, 60, 150, 100], 20, None, "no"),
    ([0, 0, 0, 0, 0, 0], [120, 15, 30, 80, 240, 60], 25, None, "yes"),
    ([110, 18, 40, 70, 90, 300], [10, 3, 5, 6, 10, 15], 30, None, "yes"),
    ([110, 18, 40, 70, 90, 300], [60, 5, 10, 120, 30, 0], 30, ["calcium chloride", "gypsum"], "yes"),
    ([20, 3, 8, 10, 12, 60], [90, 30, 50, 90, 60, 250], 18, ["slaked lime", "magnesium chloride", "table salt", "baking soda"], "yes"),
    ([40, 5, 60, 120, 20, 90], [100, 5, 20, 20, 10, 250], 20, ["slaked lime", "gypsum", "epsom salt"], "yes"),
    ([5, 90, 5, 5, 5, 5], [150, 5, 5, 250, 20, 20], 20, ["calcium chloride", "epsom salt"], "yes"),
]


def fit(base, target, names, dilute):
    base, target = np.array(base, float), np.array(target, float)
    columns = np.array([np.array(SALTS[n][0]) / SALTS[n][1] * 1000 for n in names]).T
    if dilute == "no":
        return 0.0, nnls(columns, target - base)[0]
    whole = np.column_stack([-base, columns])
    x = lsq_linear(whole, target - base, bounds=(0, [1] + [np.inf] * len(names)), tol=1e-14, method="bvls").x
    return x[0], x[1:]


with open("nearest.csv", "w", newline="") as file:
    out = csv.writer(file, lineterminator="\n")
    out.writerow(["function", "arguments", "expected", "tolerance", "basis", "source"])
    for base, target, volume, names, dilute in CASES:
        asked = [n for n in SALTS if n in (names or USUAL)]
        share, grams = fit(base, target, asked, dilute)
        reached = np.array(base) * (1 - share) + sum((np.array(SALTS[n][0]) / SALTS[n][1] * 1000 * g for n, g in zip(asked, grams)), np.zeros(6))
        rows = [["your water", round(volume * (1 - share), 4), "L"], ["demineralised water", round(volume * share, 4), "L"]]
        rows += [[n, round(g * volume, 4), "g"] for n, g in zip(asked, grams)] + [[i, round(v, 3), "mg/L"] for i, v in zip(IONS, reached)]
        arguments = [[base], [target], volume, [[n] for n in names] if names else None, dilute]
        out.writerow(["WATER.TARGET", json.dumps(arguments), json.dumps(rows), 0.02, "computed", "nearest.py: scipy.optimize nnls and lsq_linear, salts from atomic weights; apart from the code"])
