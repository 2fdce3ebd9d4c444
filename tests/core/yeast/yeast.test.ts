import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { apparentAttenuation, expectedFinalGravity, realAttenuation } from "../../../src/core/yeast/attenuation";
import { cellsToPitch, packsToPitch } from "../../../src/core/yeast/cells";
import { callScalar } from "../../../src/functions/call";
import { yeastAttenuation } from "../../../src/functions/yeast/attenuation";
import { yeastCells } from "../../../src/functions/yeast/cells";
import { yeastFinish } from "../../../src/functions/yeast/finish";
import { yeastPacks } from "../../../src/functions/yeast/packs";

const original = fc.double({ min: 1.02, max: 1.2, noNaN: true });
const percent = fc.double({ min: 2, max: 105, noNaN: true });

describe("expectedFinalGravity and apparentAttenuation", () => {
  it("are inverses of each other", () => {
    fc.assert(
      fc.property(original, percent, (gravity, attenuation) => {
        expect(apparentAttenuation(gravity, expectedFinalGravity(gravity, attenuation))).toBeCloseTo(attenuation, 6);
      }),
    );
  });

  it("stay below the points rule, by no more than the text says", () => {
    const lower = (gravity: number, attenuation: number) =>
      1 + (gravity - 1) * (1 - attenuation / 100) - expectedFinalGravity(gravity, attenuation);
    const attenuation = fc.double({ min: 50, max: 90, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 1.01, max: 1.06, noNaN: true }), attenuation, (gravity, share) => {
        expect(lower(gravity, share)).toBeGreaterThan(0);
        expect(lower(gravity, share)).toBeLessThan(0.001);
      }),
    );
    expect(lower(1.1, 50)).toBeCloseTo(0.0021, 4);
  });

  it("end below 1.000 above 100 %, and at 1.000 at 100 %", () => {
    expect(expectedFinalGravity(1.06, 100)).toBeCloseTo(1, 12);
    expect(expectedFinalGravity(1.06, 105)).toBeLessThan(1);
  });
});

describe("realAttenuation", () => {
  it("is less than the apparent, and 0 in wort that has not fermented", () => {
    const share = fc.double({ min: 20, max: 100, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 1.02, max: 1.12, noNaN: true }), share, (gravity, attenuation) => {
        const now = expectedFinalGravity(gravity, attenuation);
        expect(realAttenuation(gravity, now)).toBeLessThan(apparentAttenuation(gravity, now));
      }),
    );
    // Worked by hand: 12.3866 °P, 4.4540 °P of real extract; 100 × 7.9326 / 12.3866 / (1 − 0.005161 × 4.4540).
    expect(realAttenuation(1.05, 1.01)).toBeCloseTo(65.549, 2);
    expect(realAttenuation(1.05, 1.05)).toBe(0);
    expect(apparentAttenuation(1.05, 1.05)).toBe(0);
  });
});

describe("cellsToPitch", () => {
  it("counts in billions: 0.75 million in each of 20 000 mL for each of 12 °P", () => {
    expect(cellsToPitch(20, 1.0483729656, 0.75)).toBeCloseTo((0.75e6 * 20000 * 12) / 1e9, 5);
  });
});

describe("packsToPitch", () => {
  it("is the smallest whole number of packs that is enough", () => {
    const wanted = fc.double({ min: 0.1, max: 2000, noNaN: true });
    fc.assert(
      fc.property(
        wanted,
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.double({ min: 5, max: 100, noNaN: true }),
        (cells, perPack, alive) => {
          const packs = packsToPitch(cells, perPack, alive);
          const living = (perPack * alive) / 100;
          expect(Number.isInteger(packs)).toBe(true);
          expect(packs * living).toBeGreaterThanOrEqual(cells * (1 - 1e-6));
          expect((packs - 1) * living).toBeLessThan(cells);
        },
      ),
    );
  });

  it("does not buy one too many for the last digit of a division", () => {
    expect(packsToPitch(0.3, 0.1, 100)).toBe(3);
    expect(packsToPitch(180, 60, 100)).toBe(3);
    expect(packsToPitch(180.01, 60, 100)).toBe(4);
  });
});

describe("YEAST in a cell", () => {
  const refusal = (message: string) => ({ code: "#VALUE!", message: expect.stringContaining(message) as string });

  it("serves a column of readings and leaves blanks blank", () => {
    expect(callScalar(yeastAttenuation, [1.05, ""])).toBe("");
    expect(callScalar(yeastCells, [0, 1.05])).toBe("");
    expect(callScalar(yeastPacks, ["", 100])).toBe("");
  });

  it("refuses a share for a percentage, plain water for wort, and a rising gravity", () => {
    expect(callScalar(yeastFinish, [1.05, 0.75])).toMatchObject(refusal("write 75 for 75 %"));
    expect(callScalar(yeastPacks, [180, 100, 0.9])).toMatchObject(refusal("write 90 for 90 %"));
    expect(callScalar(yeastFinish, [1, 75])).toMatchObject(refusal("original_gravity"));
    expect(callScalar(yeastCells, [20, 12])).toMatchObject(refusal("looks like °P"));
    expect(callScalar(yeastAttenuation, [1.05, 1.06])).toMatchObject(refusal("above original_gravity"));
  });

  it("refuses cells that are counted one by one", () => {
    expect(callScalar(yeastPacks, [180e9, 100])).toMatchObject(refusal("write 180"));
    expect(callScalar(yeastPacks, [300000, 100])).toMatchObject({
      code: "#VALUE!",
      message: expect.not.stringContaining("write") as string,
    });
    expect(callScalar(yeastCells, [20, 1.05, 750000])).toMatchObject(refusal("write 0.75"));
  });
});
