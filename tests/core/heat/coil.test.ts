import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chillingMinutes } from "../../../src/core/heat/chill";
import { coilKwPerK } from "../../../src/core/heat/coil";
import { callScalar } from "../../../src/functions/call";
import { heatCoil } from "../../../src/functions/heat/coil";

const temperatures = [100, 80, 60, 45, 35, 27];

describe("coilKwPerK", () => {
  it("finds the coil that a chilling was worked out with", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 1, noNaN: true }), fc.double({ min: 2, max: 15, noNaN: true }), (coil, flow) => {
        const chiller = { tapTemperatureC: 12, flowLPerMinute: flow, coilKwPerK: coil };
        const log = temperatures.map((wortC) => ({ minutes: 3 + chillingMinutes(20, 100, wortC, chiller), wortC }));
        expect(coilKwPerK(log, 20, 12, flow) / coil).toBeCloseTo(1, 8);
      }),
    );
  });

  it("lets misreadings of half a degree cancel out", () => {
    const chiller = { tapTemperatureC: 12, flowLPerMinute: 6, coilKwPerK: 0.5 };
    const log = temperatures.map((wortC, index) => ({
      minutes: chillingMinutes(20, 100, wortC, chiller),
      wortC: wortC + (index % 2 ? 0.5 : -0.5),
    }));
    expect(Math.abs(coilKwPerK(log, 20, 12, 6) - 0.5)).toBeLessThan(0.02);
  });

  it("says what is wrong with a log that cannot be", () => {
    const at = (minutes: number, wortC: number) => ({ minutes, wortC });
    expect(() => coilKwPerK([at(0, 100)], 20, 12, 6)).toThrow(/two readings/);
    expect(() => coilKwPerK([at(5, 100), at(5, 90)], 20, 12, 6)).toThrow(/two readings/);
    expect(() => coilKwPerK([at(0, 60), at(5, 70)], 20, 12, 6)).toThrow(/do not fall/);
    expect(() => coilKwPerK([at(0, 100), at(1, 20)], 20, 12, 6)).toThrow(/faster than that much water/);
    expect(() => coilKwPerK([at(0, 100), at(10, 12)], 20, 12, 6)).toThrow(/above tap_temperature/);
    expect(() => coilKwPerK([at(0, 100), at(10, 100)], 20, 12, 6)).toThrow(/do not fall/);
    // 6 L/min carry away at most the 88 °C of 6 of the 20 L each minute: the difference falls by exp(−0.3) at the fastest.
    expect(() => coilKwPerK([at(0, 100), at(1, 12 + 88 * Math.exp(-0.3015))], 20, 12, 6)).toThrow(/faster than that much water/);
    expect(coilKwPerK([at(0, 100), at(1, 12 + 88 * Math.exp(-0.297))], 20, 12, 6)).toBeCloseTo(-Math.log(0.01) * 0.1 * 4.18, 6);
  });
});

describe("HEAT.COIL", () => {
  it("passes over rows without a reading, and wants lists of one length", () => {
    const log = [
      [[0], [5], [11.457]],
      [[100], [""], [20]],
    ];
    expect(callScalar(heatCoil, [...log, 20, 12, 6])).toBeCloseTo(0.5, 3);
    expect(callScalar(heatCoil, [[[0], [5]], [[100], [60], [20]], 20, 12, 6])).toMatchObject({ code: "#VALUE!" });
    expect(callScalar(heatCoil, [[[""], [""]], [[""], [""]], 20, 12, 6])).toBe("");
  });
});
