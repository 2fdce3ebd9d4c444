import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bitternessIbu, type Boil } from "../../../src/core/hops/bitterness";
import { utilisationModels } from "../../../src/core/hops/utilisation";
import { massForBitternessG } from "../../../src/core/hops/weigh";
import { callScalar } from "../../../src/functions/call";
import { hopsIbu } from "../../../src/functions/hops/ibu";
import { hopsWeigh } from "../../../src/functions/hops/weigh";
import { CellError } from "../../../src/functions/cell-error";

const boil: Boil = {
  volumeL: 20,
  gravity: 1.05,
  model: "tinseth",
  boilsAtC: 97,
  minutes: 60,
  after: { stand: { temperatureC: 85, minutes: 20 }, chilling: { toC: 20, minutes: 25 } },
};

describe("massForBitternessG", () => {
  it("gives the bitterness back, for every model, use and form", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...utilisationModels),
        fc.oneof(fc.integer({ min: 0, max: 120 }), fc.constant("stand" as const)),
        fc.constantFrom("whole" as const, "pellets" as const),
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 2, max: 20, noNaN: true }),
        (model, added, form, ibu, alphaPercent) => {
          const hop = { alphaPercent, added, form };
          const massG = massForBitternessG(ibu, hop, { ...boil, model });
          expect(bitternessIbu({ ...hop, massG }, { ...boil, model })).toBeCloseTo(ibu, 9);
        },
      ),
    );
  });

  it("weighs a tenth less of pellets", () => {
    const whole = massForBitternessG(30, { alphaPercent: 8, added: 60, form: "whole" }, boil);
    expect(massForBitternessG(30, { alphaPercent: 8, added: 60, form: "pellets" }, boil)).toBeCloseTo(whole / 1.1, 9);
  });

  it("refuses hops that give nothing, and dry hops above all", () => {
    const cold = { ...boil, after: { stand: undefined, chilling: { toC: 20, minutes: 0 } } };
    expect(() => massForBitternessG(30, { alphaPercent: 8, added: 0 }, cold)).toThrow(/minutes give no bitterness/);
    expect(() => massForBitternessG(30, { alphaPercent: 8, added: "dry" }, boil)).toThrow(/give no bitterness/);
  });
});

describe("HOPS.WEIGH and HOPS.IBU in the same words", () => {
  it.each([
    ["tinseth", 60, "boil"],
    ["rager", 20, "boil"],
    ["kinetic", 5, "boil"],
    ["tinseth", 0, "stand"],
  ])("%s, %d minutes, %s", (model, minutes, use) => {
    const after = [82, 25, 30, 18];
    const mass = callScalar(hopsWeigh, [28, 7.5, minutes, 21, 1.048, model, 98, use, ...after, "pellets"]) as number;
    const table = [["Perle", mass, 7.5, use === "stand" ? "stand" : minutes, "pellets"]];
    expect(callScalar(hopsIbu, [table, 21, 1.048, model, 98, null, 60, ...after])).toBeCloseTo(28, 8);
  });

  it("waits for the stand", () => {
    expect(callScalar(hopsWeigh, [28, 7.5, 0, 21, 1.048, null, null, "stand"])).toBe("");
    expect(callScalar(hopsWeigh, [28, 7.5, 0, 21, 1.048])).toBeInstanceOf(CellError);
  });
});
