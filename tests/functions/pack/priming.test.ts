import { describe, expect, it } from "vitest";
import { callScalar } from "../../../src/functions/call";
import { packPressure } from "../../../src/functions/pack/pressure";
import { packPriming } from "../../../src/functions/pack/priming";

describe("a carbonation that could burst a bottle", () => {
  it("is refused by GYLE.PACK.PRIMING, which points to the check", () => {
    expect(callScalar(packPriming, [19, 4.5, 20])).toBeTypeOf("number");
    expect(callScalar(packPriming, [19, 4.6, 20])).toMatchObject({ code: "#VALUE!", message: expect.stringContaining("ask GYLE.PACK.CHECK") as string });
    expect(callScalar(packPriming, [19, 24, 20])).toMatchObject({ code: "#VALUE!" });
  });

  it("is refused by GYLE.PACK.PRESSURE", () => {
    expect(callScalar(packPressure, [5, 4])).toBeTypeOf("number");
    expect(callScalar(packPressure, [5.1, 4])).toMatchObject({ code: "#VALUE!" });
  });
});

describe("a carbonation that the beer already has", () => {
  it("is refused with the figure", () => {
    expect(callScalar(packPriming, [19, 0.8, 20])).toMatchObject({ code: "#VALUE!", message: expect.stringContaining("already holds 0.86") as string });
    expect(callScalar(packPressure, [0.8, 20])).toMatchObject({ code: "#VALUE!", message: expect.stringContaining("holds 0.84 under no pressure") as string });
  });
});

describe("beer warmer than the tables", () => {
  it("answers #N/A and names the range in the brewer's unit", () => {
    expect(callScalar(packPriming, [5, 2.4, 95, null, "us"])).toMatchObject({ code: "#N/A", message: expect.stringContaining("covers 32 °F to 86 °F") as string });
  });
});
