import { describe, expect, it } from "vitest";
import { beerGrowth, bottleGaugeBar } from "../../../src/core/pack/closed-bottle";
import { atmosphereAtBar, waterVapourBar } from "../../../src/core/pack/local-air";
import { residualVolumes } from "../../../src/core/pack/residual";
import { equilibriumGaugeBar } from "../../../src/core/pack/solubility";
import { waterDensityKgPerM3 } from "../../../src/core/wort/density";
import { airBar, equilibriumGauge, vapourBar, vesselGaugeBar } from "./closed-vessel-physics";

const heights = Object.keys(airBar).map(Number) as (keyof typeof airBar)[];

describe("the pressure in a closed bottle", () => {
  const points = heights.flatMap((height) =>
    [2, 3, 5, 10].flatMap((headspacePercent) =>
      [0.5, 4, 12, 20, 27, 40, 60].flatMap((celsius) => [1.6, 2.4, 3.5].map((volumes) => ({ height, headspacePercent, celsius, volumes }))),
    ),
  );

  it(`is never below another physics by more than 3 %, at ${points.length} points, however it was filled`, () => {
    const soft: string[] = [];
    let hardest = 0;
    let softest = Infinity;
    for (const { height, headspacePercent, celsius, volumes } of points) {
      const ours = bottleGaugeBar(volumes, celsius, atmosphereAtBar(height), headspacePercent);
      for (const filledAt of [4, 12, 20])
        for (const oxygenLeft of [0, 1]) {
          const physics = vesselGaugeBar({ volumes, celsius, air: airBar[height], headspacePercent, filledAt, oxygenLeft });
          softest = Math.min(softest, ours / physics);
          if (filledAt === 4 && oxygenLeft === 1) hardest = Math.max(hardest, (ours + airBar[height]) / (physics + airBar[height]));
          if (ours < 0.97 * physics)
            soft.push(`${volumes} volumes at ${celsius} °C, ${height} m, ${headspacePercent} %: ${ours} for ${physics}`);
        }
    }
    expect(soft).toEqual([]);
    // Nor does it cry wolf: beside water filled alike, with its oxygen, in absolute pressure.
    expect(hardest).toBeLessThan(1.1);
    expect(softest).toBeLessThan(1.05);
  });

  it("of 2.4 volumes at 20 °C is what the balance by hand gives", () => {
    // Half a percent either way of: n = 2.4 × 1.977 / 44.01 = 0.10781 mol/L; neck 1/19 L, grown beer 0.0018 L less;
    // H = exp(−6.8346 + 43.721 − 43.831 + 11.896) = 141.3 MPa, 0.95 × 55.51 / 1413 = 0.03732 mol/(L bar); neck 0.0508 / 24.374 = 0.002085;
    // 0.10781 / 0.03940 = 2.736, × (1 + 0.0082 × 2.4) = 2.790; air (1.01325 − 0.0081) / 19 / 23.04 = 0.002296 mol, over
    // 0.95 × 55.51 / H of nitrogen (75 400 bar) = 0.000700 and the neck's 0.002085: 0.824; vapour 0.023, less 1.013: 2.624.
    expect(bottleGaugeBar(2.4, 20, 1.01325, 5)).toBeCloseTo(2.624, 1);
  });

  it("rises with gas, warmth and height", () => {
    expect(bottleGaugeBar(2.5, 20, 1, 5)).toBeGreaterThan(bottleGaugeBar(2.4, 20, 1, 5));
    for (let celsius = 0; celsius < 60; celsius += 1)
      expect(bottleGaugeBar(2.4, celsius + 1, 1, 2)).toBeGreaterThan(bottleGaugeBar(2.4, celsius, 1, 2));
    expect(bottleGaugeBar(2.4, 20, atmosphereAtBar(2500), 5)).toBeGreaterThan(bottleGaugeBar(2.4, 20, atmosphereAtBar(0), 5));
  });

  it("takes beer to grow as water does", () => {
    for (const celsius of [10, 20, 30, 45, 60])
      expect(Math.abs(beerGrowth(celsius) - (waterDensityKgPerM3(4) / waterDensityKgPerM3(celsius) - 1))).toBeLessThan(1e-4);
  });
});

describe("the pressure on a keg", () => {
  it("is never below that over water by more than 3 %, 0 to 60 °C, 0 to 2500 m", () => {
    for (const height of heights)
      for (const celsius of [0.5, 4, 8, 12, 16, 20, 30, 45, 60])
        for (const volumes of [2, 2.5, 3, 4]) {
          const [ours, water] = [
            equilibriumGaugeBar(volumes, celsius, atmosphereAtBar(height)),
            equilibriumGauge(volumes, celsius, airBar[height]),
          ];
          expect(ours, `${volumes} at ${celsius} °C, ${height} m`).toBeGreaterThan(0.97 * water);
          // In absolute pressure no more than 9 % above it: what beer takes up less, and what the equations differ by.
          expect(ours + airBar[height]).toBeLessThan(1.09 * (water + airBar[height]));
        }
  });

  // Vapour pressure and air of the code against other equations and a printed table.
  it("is measured against the air of the place", () => {
    for (const height of heights) expect(atmosphereAtBar(height)).toBeCloseTo(airBar[height], 3);
    for (const celsius of [0.5, 20, 40, 60]) expect(waterVapourBar(celsius) / vapourBar(celsius)).toBeCloseTo(1, 2);
  });
});

describe("what is left of fermentation", () => {
  it("is what makes no pressure at all, at any height", () => {
    for (const height of heights)
      for (const celsius of [0.5, 10, 20, 30, 40]) {
        const left = residualVolumes(celsius, atmosphereAtBar(height));
        expect(equilibriumGaugeBar(left, celsius, atmosphereAtBar(height))).toBeCloseTo(0, 9);
        // Beside water by the other physics: up to 8 % less.
        expect(equilibriumGauge(left, celsius, airBar[height])).toBeLessThan(0);
        expect(equilibriumGauge(1.09 * left, celsius, airBar[height])).toBeGreaterThan(0);
      }
  });
});
