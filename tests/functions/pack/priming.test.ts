import { describe, expect, it } from "vitest";
import { callScalar } from "../../../src/functions/call";
import { packBottles } from "../../../src/functions/pack/bottles";
import { packPressure } from "../../../src/functions/pack/pressure";
import { packPriming } from "../../../src/functions/pack/priming";
import { packReady } from "../../../src/functions/pack/ready";
import { packResidual } from "../../../src/functions/pack/residual";
import { packVolumes } from "../../../src/functions/pack/volumes";

describe("a carbonation that could burst a bottle", () => {
  it("is refused by GYLE.PACK.PRIMING, which asks for a kind that bears it", () => {
    expect(callScalar(packPriming, [19, 3, 20])).toBeTypeOf("number");
    for (const kind of [undefined, null, "", "ordinary"])
      expect(callScalar(packPriming, [19, 3.1, 20, "dextrose", "metric", kind])).toMatchObject({
        code: "#VALUE!",
        message: expect.stringContaining("ordinary bottles bear 3: ask for less, or ") as string,
      });
    expect(callScalar(packPriming, [19, 3.1, 20])).toMatchObject({
      message: expect.stringContaining(
        "give as bottle, after units, a kind that bears more: heavy, thick, sparkling, plastic (GYLE.PACK.CHECK tells what will hold)",
      ) as string,
    });
    expect(callScalar(packPriming, [19, 3.4, 20, "dextrose", "metric", "heavy"])).toBeTypeOf("number");
    expect(callScalar(packPriming, [19, 3.6, 20, "dextrose", "metric", "heavy"])).toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("heavy bottles bear 3.5: ask for less, or take stronger bottles") as string,
    });
    expect(callScalar(packPriming, [19, 24, 20])).toMatchObject({ code: "#VALUE!" });
  });

  it("is refused by GYLE.PACK.PRESSURE above what a keg is set to, with the way on", () => {
    expect(callScalar(packPressure, [5, 4])).toBeTypeOf("number");
    for (const [co2, celsius] of [
      [5, 45],
      [3.6, 25],
      [2.4, 60],
    ]) {
      expect(callScalar(packPressure, [co2, celsius])).toMatchObject({
        code: "#VALUE!",
        message: expect.stringMatching(
          / °C that takes more than 4 bar, which no keg at home is set to: chill the beer, or ask for less$/,
        ) as string,
      });
    }
    expect(callScalar(packPressure, [4.8, 90, "us"])).toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("at 90 °F that takes more than 58.015 psi") as string,
    });
  });
});

describe("a carbonation that the beer already has", () => {
  it("is refused with the figure", () => {
    expect(callScalar(packPriming, [19, 0.8, 20])).toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("already holds 0.82") as string,
    });
    expect(callScalar(packPressure, [0.8, 20])).toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("holds 0.82 under no pressure") as string,
    });
  });

  it("is the same in the whole chain: what is left over makes no pressure, and less of it stays in thinner air", () => {
    for (const altitude of [0, 1609, 2500])
      for (const celsius of [4, 20, 35, 40]) {
        const left = Number(callScalar(packResidual, [celsius, null, altitude]));
        // A keg is asked for half a volume or more.
        if (left > 0.5) expect(Number(callScalar(packPressure, [left + 1e-9, celsius, null, altitude]))).toBeCloseTo(0, 6);
        expect(Number(callScalar(packPriming, [10, left + 1, celsius, "glucose", null, null, altitude]))).toBeCloseTo(
          10 * 1.977 * (180.1559 / 88.019),
          6,
        );
      }
    // As at sea level but for the air: 83.4 kPa for 101.3 (U.S. Standard Atmosphere, 1976), each less 2.3 kPa of vapour.
    expect(Number(callScalar(packResidual, [20, null, 1609])) / Number(callScalar(packResidual, [20]))).toBeCloseTo(
      (83.43 - 2.34) / (101.325 - 2.34),
      2,
    );
  });
});

describe("bottling day", () => {
  it("helps with bottles in litres", () => {
    for (const litres of [0.33, 5])
      expect(callScalar(packBottles, [19, litres])).toMatchObject({
        code: "#VALUE!",
        message: expect.stringContaining("500, not 0.5") as string,
      });
    expect(callScalar(packBottles, [19, 33])).toMatchObject({
      code: "#VALUE!",
      message: expect.not.stringContaining("500, not 0.5") as string,
    });
  });

  it("tells the day of the first taste, whatever the hour of bottling", () => {
    // 46114 is 1 April 2026; ten days at 21 °C.
    for (const bottledAt of [46114, 46114.75]) expect(callScalar(packReady, [bottledAt, 21])).toBe(46124);
    for (const celsius of [10, 30]) expect(callScalar(packReady, [46114, celsius])).toBeTypeOf("number");
    for (const celsius of [9.9, 30.1])
      expect(callScalar(packReady, [46114, celsius])).toMatchObject({
        code: "#N/A",
        message: expect.stringContaining("covers 10 °C to 30 °C") as string,
      });
  });
});

describe("beer warmer than the equations", () => {
  it("gets no pressure and no carbonation above 60 °C, and no priming above 40", () => {
    expect(callScalar(packPressure, [1, 60])).toBeTypeOf("number");
    expect(callScalar(packPressure, [1, 60.1])).toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("from -2 to 60 °C") as string,
    });
    expect(callScalar(packVolumes, [2, -1])).toMatchObject({
      code: "#N/A",
      message: expect.stringContaining("covers 0 °C to 60 °C") as string,
    });
    expect(callScalar(packPriming, [19, 2.4, 40])).toBeTypeOf("number");
  });

  it("answers #N/A and names the range in the brewer's unit", () => {
    expect(callScalar(packPriming, [5, 2.4, 106, null, "us"])).toMatchObject({
      code: "#N/A",
      message: expect.stringContaining("covers 32 °F to 104 °F") as string,
    });
  });
});

describe("beer at the freezing point", () => {
  it("is asked about, since an empty cell looks the same, and answers at a hair above", () => {
    for (const answer of [callScalar(packResidual, [0]), callScalar(packPriming, [19, 2.4, 0]), callScalar(packPressure, [2.4, 0])]) {
      expect(answer).toMatchObject({
        code: "#VALUE!",
        message: "temperature is 0 °C, which is also what an empty cell says; type 0.1 for beer at the freezing point of water",
      });
    }
    for (const empty of [null, "", undefined]) expect(callScalar(packResidual, [empty])).toBe("");
    expect(callScalar(packResidual, [0.1])).toBeTypeOf("number");
    // 0 °F is no beer.
    expect(callScalar(packResidual, [0, "us"])).toBe("");
  });
});
