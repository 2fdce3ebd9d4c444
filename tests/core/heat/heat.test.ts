import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BrewingError } from "../../../src/core/brewing-error";
import { chillingMinutes, type Chiller } from "../../../src/core/heat/chill";
import { warmingMinutes } from "../../../src/core/heat/warm";
import { heatKjPerLitreKelvin } from "../../../src/core/heat/water-heat";
import { callScalar } from "../../../src/functions/call";
import { CellError } from "../../../src/functions/cell-error";
import { heatChill } from "../../../src/functions/heat/chill";
import { heatWarm } from "../../../src/functions/heat/warm";

const chiller: Chiller = { tapTemperatureC: 12, flowLPerMinute: 6, coilKwPerK: 0.5 };

function reasonOf(run: () => number): string {
  try {
    run();
  } catch (problem) {
    if (problem instanceof BrewingError) return `${problem.reason}: ${problem.message}`;
    throw problem;
  }
  return "no problem";
}

describe("the heat of water", () => {
  it("is that of the steam tables within 0.3 %, from 20 to 60 and to 100 °C (NISTIR 5078)", () => {
    expect(heatKjPerLitreKelvin / (((251.16 - 83.91) / 40) * 0.9982)).toBeCloseTo(1, 2);
    expect(heatKjPerLitreKelvin / (((419.17 - 83.91) / 80) * 0.9982)).toBeCloseTo(1, 2);
  });
});

describe("warmingMinutes", () => {
  it("takes no time for no rise, and adds up over two steps", () => {
    expect(warmingMinutes(20, 60, 60, 3, 90)).toBe(0);
    expect(warmingMinutes(20, 15, 60, 3, 90) + warmingMinutes(20, 60, 100, 3, 90)).toBeCloseTo(warmingMinutes(20, 15, 100, 3, 90), 10);
  });

  it("refuses to cool", () => {
    expect(reasonOf(() => warmingMinutes(20, 60, 15, 3, 90))).toMatch(/^impossible: to is below from/);
  });
});

describe("chillingMinutes", () => {
  const target = fc.double({ min: 13, max: 99, noNaN: true });

  it("adds up over two steps", () => {
    fc.assert(
      fc.property(target, (between) => {
        const steps = chillingMinutes(20, 100, between, chiller) + chillingMinutes(20, between, 12.5, chiller);
        expect(steps).toBeCloseTo(chillingMinutes(20, 100, 12.5, chiller), 8);
      }),
    );
  });

  it("leaves the wort where the heat balance, stepped through in small steps, leaves it", () => {
    const minutes = chillingMinutes(20, 100, 20, chiller);
    const water = (chiller.flowLPerMinute / 60) * heatKjPerLitreKelvin;
    const steps = 20000;
    let wortC = 100;
    for (let step = 0; step < steps; step += 1) {
      // Along the coil the water comes near the wort's temperature exponentially; what it takes with it cools the wort.
      const outletC = wortC - (wortC - chiller.tapTemperatureC) * Math.exp(-chiller.coilKwPerK / water);
      wortC -= (water * (outletC - chiller.tapTemperatureC) * ((minutes * 60) / steps)) / (20 * heatKjPerLitreKelvin);
    }
    expect(wortC).toBeCloseTo(20, 1);
  });

  it("is slower with a smaller coil, less water, warmer water or a nearer target", () => {
    const usual = chillingMinutes(20, 100, 20, chiller);
    expect(chillingMinutes(20, 100, 20, { ...chiller, coilKwPerK: 0.3 })).toBeGreaterThan(usual);
    expect(chillingMinutes(20, 100, 20, { ...chiller, flowLPerMinute: 4 })).toBeGreaterThan(usual);
    expect(chillingMinutes(20, 100, 20, { ...chiller, tapTemperatureC: 16 })).toBeGreaterThan(usual);
    expect(chillingMinutes(20, 100, 15, chiller)).toBeGreaterThan(usual);
  });

  it("cannot beat a coil that takes up all that the water can carry", () => {
    const best = (20 / 6) * Math.log(88 / 8);
    expect(chillingMinutes(20, 100, 20, { ...chiller, coilKwPerK: 20 })).toBeCloseTo(best, 6);
    expect(chillingMinutes(20, 100, 20, chiller)).toBeGreaterThan(best);
  });

  it("has no answer at or below the temperature of the tap water, and does not warm", () => {
    expect(reasonOf(() => chillingMinutes(20, 100, 12, chiller))).toMatch(/^unsolvable: to must be above tap_temperature/);
    expect(reasonOf(() => chillingMinutes(20, 100, 5, chiller))).toMatch(/^unsolvable/);
    expect(reasonOf(() => chillingMinutes(20, 20, 60, chiller))).toMatch(/^impossible: to is above from/);
    expect(chillingMinutes(20, 20, 20, chiller)).toBe(0);
  });
});

describe("HEAT in a cell", () => {
  const codeOf = (answer: unknown) => (answer instanceof CellError ? answer.code : answer);

  it("shows #NUM! for a target below the tap water", () => {
    expect(codeOf(callScalar(heatChill, [20, 100, 10, 12, 6]))).toBe("#NUM!");
  });

  it("waits for a blank temperature in either unit system", () => {
    expect(callScalar(heatChill, [20, 100, 20, 0, 6])).toBe("");
    expect(callScalar(heatChill, [5, 212, 68, 0, 1.5, null, "us"])).toBe("");
    expect(callScalar(heatWarm, [20, "", 68, 3])).toBe("");
  });

  it("refuses °F typed as °C, watts typed as kilowatts, and a share typed as a percentage", () => {
    expect(codeOf(callScalar(heatChill, [20, 212, 68, 60, 6]))).toBe("#VALUE!");
    expect(callScalar(heatWarm, [20, 15, 68, 3000])).toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("3000 W is 3") as string,
    });
    expect(callScalar(heatWarm, [20, 15, 68, 3, 0.9])).toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("write 90 for 90 %") as string,
    });
  });
});
