import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { call, callScalar } from "../../../src/functions/call";
import { CellError } from "../../../src/functions/cell-error";
import { packDose } from "../../../src/functions/pack/dose";
import { packPriming } from "../../../src/functions/pack/priming";

describe("PACK.DOSE", () => {
  it("adds up to PACK.PRIMING of all the beer, in both unit systems", () => {
    const bottle = fc.tuple(fc.integer({ min: 50, max: 2000 }), fc.integer({ min: 1, max: 50 }));
    fc.assert(
      fc.property(fc.array(bottle, { minLength: 1, maxLength: 6 }), (bottles) => {
        const volumeL = bottles.reduce((sum, [size, count]) => sum + (size * count) / 1000, 0);
        const all = call(packDose, [bottles, 2.4, 20, "sucrose"]).reduce((sum, [, grams]) => sum + (grams as number), 0);
        expect(all).toBeCloseTo(callScalar(packPriming, [volumeL, 2.4, 20, "sucrose"]) as number, 6);
        const ounces = bottles.map(([size, count]) => [size / 29.5735295625, count]);
        const allUs = call(packDose, [ounces, 2.4, 68, "sucrose", "us"]).reduce((sum, [, grams]) => sum + (grams as number), 0);
        expect(allUs).toBeCloseTo(all, 6);
      }),
    );
  });

  it("keeps its place beside the bottles: nothing where a row is empty", () => {
    const answer = call(packDose, [
      [
        ["mL", "how many"],
        [330, 24],
        ["", ""],
        [500, ""],
      ],
      2.4,
      20,
    ]);
    expect(answer).toHaveLength(3);
    expect(answer[1]).toEqual(["", ""]);
    expect(answer[2]?.[1]).toBe(0);
    const [first, gap] = call(packDose, [[[330], [""]], 2.4, 20]);
    expect([first?.length, gap]).toEqual([1, [""]]);
  });

  it("refuses what no bottle bears, and litres for millilitres", () => {
    const tooMuch = call(packDose, [[[330]], 3.1, 20])[0]?.[0];
    expect(tooMuch).toBeInstanceOf(CellError);
    expect((tooMuch as CellError).message).toContain(
      "ordinary bottles bear 3: ask for less, or give as bottle, after units, a kind that bears more",
    );
    expect(call(packDose, [[[330]], 3.1, 20, null, null, "thick"])[0]?.[0]).toBeTypeOf("number");
    expect((call(packDose, [[[0.5]], 2.4, 20])[0]?.[0] as CellError).message).toContain("500, not 0.5");
    expect((call(packDose, [[[30]], 2.4, 20])[0]?.[0] as CellError).message).not.toContain("500, not 0.5");
  });
});
