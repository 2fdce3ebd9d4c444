import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sucroseSolutionKg as wortKg } from "../../sheets/follow-the-sheet/sucrose-table";
import { boiledAwayL, waterBudget } from "../../../src/core/water/budget";
import { waterDensityKgPerM3 } from "../../../src/core/wort/density";
import { call } from "../../../src/functions/call";
import { CellError } from "../../../src/functions/cell-error";
import { waterBudgetFunction } from "../../../src/functions/water/budget";

const litres = (max: number) => fc.double({ min: 0, max, noNaN: true });
const losses = fc.record({
  boilMinutes: litres(120),
  evaporationLPerHour: litres(10),
  kettleLossL: litres(5),
  grainMassKg: litres(10),
  absorptionLPerKg: litres(2),
  deadSpaceL: litres(5),
  shrinkagePercent: litres(10),
});

/** The spilled rows by their label. */
function rows(...typed: unknown[]): Record<string, number> {
  const answer = call(waterBudgetFunction, typed);
  expect(answer.map((row) => row.length)).toEqual([2, 2, 2, 2, 2]);
  return Object.fromEntries(answer) as Record<string, number>;
}

describe("waterBudget", () => {
  it("loses nothing: each volume of water is the next one and what goes between them", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 100, noNaN: true }), losses, (wanted, given) => {
        const budget = waterBudget(wanted, given);
        expect(budget.intoFermenterL).toBe(wanted);
        expect(budget.afterChillingL - given.kettleLossL).toBeCloseTo(budget.intoFermenterL, 9);
        expect(budget.afterBoilHotL * (1 - given.shrinkagePercent / 100)).toBeCloseTo(budget.afterChillingL, 9);
        expect(budget.beforeBoilL - (given.evaporationLPerHour * given.boilMinutes) / 60).toBeCloseTo(budget.afterChillingL, 9);
        expect(budget.collectL - given.grainMassKg * given.absorptionLPerKg - given.deadSpaceL).toBeCloseTo(budget.beforeBoilL, 9);
      }),
    );
  });

  it("with extract in it, mass goes in and mass comes out, by a printed table of sucrose solutions", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 100, noNaN: true }),
        losses,
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        fc.double({ min: 0.02, max: 0.2, noNaN: true }),
        fc.double({ min: 0.7, max: 1, noNaN: true }),
        (wanted, given, fromGrain, added, share) => {
          const [fromGrainKg, addedKg] = [wanted * fromGrain, wanted * added];
          const extractKg = fromGrainKg + addedKg * share;
          const { collectL, beforeBoilL, afterChillingL } = waterBudget(wanted, given, {
            fromGrainKg,
            addedKg,
            fromAddedKg: addedKg * share,
          });
          const waterKg = (litresOfWater: number) => 0.99823 * litresOfWater;
          const offTheGrainL = collectL - given.grainMassKg * given.absorptionLPerKg - given.deadSpaceL;
          const inKettleKg = wortKg(offTheGrainL, fromGrainKg) + addedKg;
          const beforeKg = wortKg(beforeBoilL, extractKg);
          const afterKg = wortKg(afterChillingL, extractKg);
          expect(Math.abs(inKettleKg - beforeKg)).toBeLessThan(2e-4 * beforeKg);
          expect(Math.abs(beforeKg - waterKg((given.evaporationLPerHour * given.boilMinutes) / 60) - afterKg)).toBeLessThan(
            2e-4 * beforeKg,
          );
        },
      ),
    );
  });

  it("tells what boiled away from what went in and what is left", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 100, noNaN: true }),
        losses,
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        (wanted, given, fromGrain, added) => {
          const dissolved = { fromGrainKg: wanted * fromGrain, addedKg: wanted * added, fromAddedKg: 0.8 * wanted * added };
          const { collectL, afterChillingL } = waterBudget(wanted, given, dissolved);
          const offTheGrainL = collectL - given.grainMassKg * given.absorptionLPerKg - given.deadSpaceL;
          expect(boiledAwayL(offTheGrainL, afterChillingL, dissolved)).toBeCloseTo((given.evaporationLPerHour * given.boilMinutes) / 60, 6);
        },
      ),
    );
    expect(boiledAwayL(20, 1, { fromGrainKg: 0, addedKg: 3, fromAddedKg: 3 })).toBeUndefined();
  });

  it("refuses more extract than the wort can hold", () => {
    const some = {
      boilMinutes: 60,
      evaporationLPerHour: 3,
      kettleLossL: 0,
      grainMassKg: 0,
      absorptionLPerKg: 1,
      deadSpaceL: 0,
      shrinkagePercent: 4,
    };
    expect(() => waterBudget(5, some, { fromGrainKg: 0, addedKg: 12, fromAddedKg: 9 })).toThrow("no room for water");
    expect(() => waterBudget(5, { ...some, boilMinutes: 0 }, { fromGrainKg: 4, addedKg: 0, fromAddedKg: 0 })).toThrow("no room for water");
  });
});

describe("WATER.BUDGET", () => {
  it("shrinks by default as water does from 100 to 20 °C (958.4 and 998.2 kg/m3, IAPWS and Kell)", () => {
    const { "after the boil, hot": hot, "after chilling": chilled } = rows(20, 60, 3);
    const shrinkage = 1 - (chilled ?? 0) / (hot ?? 1);
    expect(shrinkage).toBeCloseTo(1 - 958.42 / 998.21, 3);
    expect(shrinkage).toBeCloseTo(1 - waterDensityKgPerM3(100) / waterDensityKgPerM3(20), 3);
  });

  it("absorbs by default 1.0 L/kg, near the trade's 0.12 US gal/lb", () => {
    const grain = rows(20, 60, 3, null, 5);
    expect((grain.collect ?? 0) - (grain["before the boil"] ?? 0)).toBeCloseTo(5, 9);
    const us = rows(5, 60, 1, null, 10, null, null, "us");
    expect((us.collect ?? 0) - (us["before the boil"] ?? 0)).toBeCloseTo(1.2, 2);
  });

  it("takes blank losses as none, and waits for what it cannot do without", () => {
    expect(rows(20, "", 3, 0, 0).collect).toBe(20);
    expect(rows(20, 60, 3, null, null, 0, 0)).toEqual(rows(20, 60, 3));
    expect(call(waterBudgetFunction, [0, 60, 3])).toEqual([[""]]);
    expect(call(waterBudgetFunction, [20, 60, ""])).toEqual([[""]]);
  });

  it("counts what extract and sugar bring: 0.6 to 0.7 L/kg, as they are poured into water in a kitchen", () => {
    const without = rows(20, 60, 3);
    for (const [yieldPercent, perKg] of [
      [100, 0.62],
      [80, 0.69],
      [91, 0.65],
    ] as const) {
      const withIt = rows(20, 60, 3, null, null, null, null, "metric", [[3, yieldPercent, yieldPercent === 100 ? "sugar" : "extract", ""]]);
      expect(((without.collect ?? 0) - (withIt.collect ?? 0)) / 3).toBeCloseTo(perKg, 1.7);
      expect(withIt["after chilling"]).toBe(without["after chilling"]);
    }
  });

  it("takes the grain from the malt bill where its mass is not given, and adds the dead space", () => {
    const bill = [
      [4, 80, "mash"],
      [0.5, 74, "steep"],
      ["", "", ""],
    ];
    const budget = rows(20, 60, 3, 1, null, 1.1, null, "metric", bill, 75, 1.5);
    expect(budget).toEqual(rows(20, 60, 3, 1, 4.5, 1.1, null, "metric", bill, 75, 1.5));
    expect((budget.collect ?? 0) - (budget["before the boil"] ?? 0)).toBeCloseTo(4.5 * 1.1 + 1.5, 9);
  });

  it("waits for a malt line that is half filled in, and passes over an empty bill", () => {
    expect(call(waterBudgetFunction, [20, 60, 3, 1, null, null, null, "metric", [[4, "", "extract"]]])).toEqual([[""]]);
    expect(
      rows(20, 60, 3, 1, null, null, null, "metric", [
        ["", "", ""],
        [0, "", ""],
      ]),
    ).toEqual(rows(20, 60, 3, 1));
  });

  it("refuses a negative loss with its name", () => {
    const answer = call(waterBudgetFunction, [20, 60, 3, -1])[0]?.[0];
    expect(answer).toBeInstanceOf(CellError);
    expect((answer as CellError).message).toContain("kettle_loss");
  });
});
