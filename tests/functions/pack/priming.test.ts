import { describe, expect, it } from "vitest";
import { callScalar } from "../../../src/functions/call";
import { packBottles } from "../../../src/functions/pack/bottles";
import { packPressure } from "../../../src/functions/pack/pressure";
import { packPriming } from "../../../src/functions/pack/priming";
import { packReady } from "../../../src/functions/pack/ready";
import { packVolumes } from "../../../src/functions/pack/volumes";

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

describe("bottling day", () => {
  it("helps with bottles in litres", () => {
    for (const litres of [0.33, 5]) expect(callScalar(packBottles, [19, litres])).toMatchObject({ code: "#VALUE!", message: expect.stringContaining("500, not 0.5") as string });
    expect(callScalar(packBottles, [19, 33])).toMatchObject({ code: "#VALUE!", message: expect.not.stringContaining("500, not 0.5") as string });
  });

  it("tells the day of the first taste, whatever the hour of bottling", () => {
    // 46114 is 1 April 2026; ten days at 21 °C.
    for (const bottledAt of [46114, 46114.75]) expect(callScalar(packReady, [bottledAt, 21])).toBe(46124);
    for (const celsius of [10, 30]) expect(callScalar(packReady, [46114, celsius])).toBeTypeOf("number");
    for (const celsius of [9.9, 30.1]) expect(callScalar(packReady, [46114, celsius])).toMatchObject({ code: "#N/A", message: expect.stringContaining("covers 10 °C to 30 °C") as string });
  });
});

describe("beer warmer than the tables", () => {
  it("gets no pressure and no carbonation above 45 °C", () => {
    expect(callScalar(packPressure, [2.4, 45])).toBeTypeOf("number");
    for (const answer of [callScalar(packPressure, [2.4, 45.1]), callScalar(packVolumes, [2, 45.1])]) {
      expect(answer).toMatchObject({ code: "#N/A", message: expect.stringContaining("covers 0 °C to 45 °C") as string });
    }
  });


  it("answers #N/A and names the range in the brewer's unit", () => {
    expect(callScalar(packPriming, [5, 2.4, 95, null, "us"])).toMatchObject({ code: "#N/A", message: expect.stringContaining("covers 32 °F to 86 °F") as string });
  });
});
