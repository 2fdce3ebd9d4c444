import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { wortLeavesAtC, type Counterflow } from "../../../src/core/heat/counterflow";

const chiller: Counterflow = { fromC: 95, tapTemperatureC: 12, wortLPerMinute: 2, waterLPerMinute: 6, coilKwPerK: 0.3 };

/** The exchanger in slices, from the end where wort leaves and water enters, by Runge and Kutta: how warm would the wort have been? */
function wortEnters(leavesC: number, { tapTemperatureC, wortLPerMinute, waterLPerMinute, coilKwPerK }: Counterflow): number {
  const [wort, water] = [wortLPerMinute, waterLPerMinute].map((litres) => (litres / 60) * 4.18);
  const slices = 4000;
  let [hot, cold] = [leavesC, tapTemperatureC];
  for (let slice = 0; slice < slices; slice += 1) {
    const kw = (difference: number): number => (coilKwPerK / slices) * difference;
    const half = kw(hot - cold) / 2;
    const passed = kw(hot + half / (wort ?? 1) - cold - half / (water ?? 1));
    hot += passed / (wort ?? 1);
    cold += passed / (water ?? 1);
  }
  return hot;
}

describe("wortLeavesAtC", () => {
  it.each([
    [2, 6],
    [6, 2],
    [4, 4],
    [4, 4.0001],
    [3, 3.3],
  ])("is what slices of the chiller come to: %f L/min of wort, %f of water", (wort, water) => {
    const asked = { ...chiller, wortLPerMinute: wort, waterLPerMinute: water };
    expect(wortEnters(wortLeavesAtC(asked), asked)).toBeCloseTo(95, 3);
  });

  it("passes on what the logarithmic mean of the differences says (Kern, 1950)", () => {
    const out = wortLeavesAtC(chiller);
    const kw = (2 / 60) * 4.18 * (95 - out);
    const waterOut = 12 + kw / ((6 / 60) * 4.18);
    const [one, other] = [95 - waterOut, out - 12];
    expect((0.3 * (one - other)) / Math.log(one / other)).toBeCloseTo(kw, 9);
  });

  it("never chills below the tap, nor warms", () => {
    const litres = fc.double({ min: 0.05, max: 50, noNaN: true });
    fc.assert(
      fc.property(litres, litres, fc.double({ min: 0.01, max: 20, noNaN: true }), (wort, water, coil) => {
        const out = wortLeavesAtC({ ...chiller, wortLPerMinute: wort, waterLPerMinute: water, coilKwPerK: coil });
        expect(out).toBeGreaterThanOrEqual(12 - 1e-9);
        expect(out).toBeLessThanOrEqual(95);
      }),
    );
  });

  it("refuses water that is no colder", () => {
    expect(() => wortLeavesAtC({ ...chiller, tapTemperatureC: 95 })).toThrow(/tap_temperature must be below from/);
  });
});
