import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { waterBudget } from "../../../src/core/water/budget";
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
  shrinkagePercent: litres(10),
});

/** The spilled rows by their label. */
function rows(...typed: unknown[]): Record<string, number> {
  const answer = call(waterBudgetFunction, typed);
  expect(answer.map((row) => row.length)).toEqual([2, 2, 2, 2, 2]);
  return Object.fromEntries(answer) as Record<string, number>;
}

describe("waterBudget", () => {
  it("loses nothing: each volume is the next one and what goes between them", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 100, noNaN: true }), losses, (wanted, given) => {
        const budget = waterBudget(wanted, given);
        expect(budget.intoFermenterL).toBe(wanted);
        expect(budget.afterChillingL - given.kettleLossL).toBeCloseTo(budget.intoFermenterL, 9);
        expect(budget.afterBoilHotL * (1 - given.shrinkagePercent / 100)).toBeCloseTo(budget.afterChillingL, 9);
        expect(budget.beforeBoilL - (given.evaporationLPerHour * given.boilMinutes) / 60).toBeCloseTo(budget.afterChillingL, 9);
        expect(budget.collectL - given.grainMassKg * given.absorptionLPerKg).toBeCloseTo(budget.beforeBoilL, 9);
      }),
    );
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

  it("refuses a negative loss with its name", () => {
    const answer = call(waterBudgetFunction, [20, 60, 3, -1])[0]?.[0];
    expect(answer).toBeInstanceOf(CellError);
    expect((answer as CellError).message).toContain("kettle_loss");
  });
});
