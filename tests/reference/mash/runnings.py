"""Writes running-off.csv: MASH.RUNNINGS, BOILED and ROOM by ways apart from the code of src/core.

Runnings: a stirred tun drained a gram at a time, bookkept in kilograms of water and of extract, with another density of wort
than the code's: SG = 1 + P / (258.6 - 0.8796 P) (an old fit to Plato's table, from memory). Decoction: enthalpies of
water out of a steam table. Room: density of water at 65 °C out of the same, grain of 1.46 kg/L (Chang 1988).  Run: python3 runnings.py
"""
import csv, json
from scipy.optimize import brentq

WATER = 0.99821


def gravity(water, extract):
    plato = 100 * extract / (water + extract)
    return 1 + plato / (258.6 - 0.8796 * plato)


def litres(water, extract):
    return (water + extract) / (gravity(water, extract) * WATER)


def run(malts, mash, sparges, absorption, dead, conversion):
    whole = sum(kg * y / 100 for kg, y, handling in malts if handling == "mash")
    grain = sum(kg for kg, y, handling in malts if handling == "mash")
    water, extract = mash * WATER, whole * conversion / 100
    stays = litres(water, extract) - (mash - absorption * grain - dead)
    rows, all_water, all_extract = [], 0.0, 0.0
    for sparge in [0.0] + sparges:
        water += sparge * WATER
        run_water = run_extract = 0.0
        while litres(water, extract) > stays:
            share = 0.001 / (water + extract)
            run_water += water * share
            run_extract += extract * share
            water -= water * share
            extract -= extract * share
        rows.append((litres(run_water, run_extract), gravity(run_water, run_extract)))
        all_water += run_water
        all_extract += run_extract
    words = ["first", "second", "third", "fourth", "fifth"]
    volume = sum(v for v, _ in rows)
    table = [["all wort", round(volume, 4), round(gravity(all_water, all_extract), 5)], ["mash efficiency (%)", round(100 * all_extract / whole, 3), ""]]
    return table + [[f"{words[i]} running", round(v, 4), round(g, 5)] for i, (v, g) in enumerate(rows)]


CASES = [
    ([[5, 80, "mash"]], 15, [12.0], 1, 0, 95),
    ([[5, 80, "mash"]], 27, [], 1, 0, 95),
    ([[4.5, 80, "mash"], [0.5, 74, "mash"], [0.5, 100, "sugar"]], 14, [7.0, 7.0], 0.9, 1, 97),
    ([[8, 78, "mash"]], 20, [5.0, 5.0, 5.0], 1.1, 0.5, 92),
    ([[3, 80, "mash"]], 18, [], 0.6, 0, 100),
]


# kJ/kg of saturated water (steam tables, from memory)
ENTHALPY = {35: 146.68, 50: 209.33, 55: 230.23, 65: 272.06, 70: 292.98, 75: 313.93, 100: 419.04}


with open("running-off.csv", "w", newline="") as file:
    out = csv.writer(file, lineterminator="\n")
    out.writerow(["function", "arguments", "expected", "tolerance", "basis", "source"])
    for malts, mash, sparges, absorption, dead, conversion in CASES:
        arguments = [malts, mash, [[s] for s in sparges] or None, absorption, dead, conversion]
        out.writerow(["MASH.RUNNINGS", json.dumps(arguments), json.dumps(run(malts, mash, sparges, absorption, dead, conversion)), 0.01, "computed",
                      "runnings.py: a stirred tun drained a gram at a time, another density of wort; apart from the code"])
    for volume, start, target in [(20, 50, 65), (20, 65, 70), (30, 35, 50), (25, 65, 75), (18, 55, 65)]:
        share = brentq(lambda s: s * ENTHALPY[100] + (1 - s) * ENTHALPY[start] - ENTHALPY[target], 0, 1)
        out.writerow(["MASH.BOILED", json.dumps([volume, start, target, 100]), f"{volume * share:.4f}", f"{0.012 * volume * share:.4f}", "computed",
                      "runnings.py: enthalpies of a steam table instead of one specific heat"])
    for grain, water in [(5, 15), (8, 20)]:
        hot = water * 998.2 / 980.5
        out.writerow(["MASH.ROOM", json.dumps([grain, water]), f"{grain / 1.46 + hot:.4f}", 0.4, "computed",
                      "runnings.py: grain of 1.46 kg/L, water of 65 °C out of a steam table; ours rounds both up"])
    out.writerow(["MASH.ROOM", json.dumps([10, 3.5, "us"]), 4.3, 0.16, "memory",
                  "J. J. Palmer, How to Brew: a pound of grain takes 0.32 qt beside its water, 10 × (1.4 + 0.32) qt; cold, ours is hot"])
