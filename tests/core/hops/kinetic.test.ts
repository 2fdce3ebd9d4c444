import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cooled, coolingTemperatureC, type Cooling } from "../../../src/core/hops/cooling";
import {
  degradationRatePerMinute,
  freshHops,
  heated,
  isomerisationRatePerMinute,
  relativeIsomerisation,
  type HopAcids,
} from "../../../src/core/hops/isomerisation";
import { hopUtilisation } from "../../../src/core/hops/utilisation";

/** A second method: Runge and Kutta's of fourth order, on the two rate equations as they are printed. */
function rungeKutta(start: HopAcids, temperatureAt: (minute: number) => number, minutes: number, steps: number): HopAcids {
  const h = minutes / steps;
  const slope = (minute: number, { alpha, iso }: HopAcids): HopAcids => {
    const k1 = isomerisationRatePerMinute(temperatureAt(minute));
    return { alpha: -k1 * alpha, iso: k1 * alpha - degradationRatePerMinute(temperatureAt(minute)) * iso };
  };
  const moved = (from: HopAcids, by: HopAcids, share: number): HopAcids => ({
    alpha: from.alpha + share * by.alpha,
    iso: from.iso + share * by.iso,
  });
  let now = start;
  for (let step = 0; step < steps; step += 1) {
    const t = step * h;
    const a = slope(t, now);
    const b = slope(t + h / 2, moved(now, a, h / 2));
    const c = slope(t + h / 2, moved(now, b, h / 2));
    const d = slope(t + h, moved(now, c, h));
    now = moved(moved(moved(moved(now, a, h / 6), b, h / 3), c, h / 3), d, h / 6);
  }
  return now;
}

const temperatureC = fc.double({ min: 60, max: 102, noNaN: true });
const minutes = fc.double({ min: 0, max: 240, noNaN: true });

describe("the rates of Malowicki and Shellhammer 2005", () => {
  it("have the activation energies that the paper gives, 98.6 and 108.0 kJ/mol", () => {
    const energy = (rate: (celsius: number) => number) => (8.314 / 1000) * (Math.log(rate(130) / rate(90)) / (1 / 363.15 - 1 / 403.15));
    expect(energy(isomerisationRatePerMinute)).toBeCloseTo(98.6, 1);
    expect(energy(degradationRatePerMinute)).toBeCloseTo(108.0, 1);
  });

  it.each([
    [80, 335.62],
    [85, 210.02],
    [90, 133.13],
    [95, 85.45],
    [100, 55.5],
    [110, 24.21],
    [120, 11.02],
  ])("halve the alpha acid at %s °C in %s minutes (worked from the printed k1)", (celsius, halfLife) => {
    expect(Math.LN2 / isomerisationRatePerMinute(celsius)).toBeCloseTo(halfLife, 1);
    expect(heated(freshHops, halfLife, celsius).alpha).toBeCloseTo(0.5, 3);
  });

  it("are per minute: per second nothing would be left of the hops after a quarter of an hour", () => {
    expect(heated(freshHops, 15, 100).alpha).toBeCloseTo(0.8292, 3);
    expect(Math.exp(-isomerisationRatePerMinute(100) * 60 * 15)).toBeLessThan(2e-5);
  });
});

describe("heated", () => {
  it.each([
    [90, 60, 0.7317, 0.2585],
    [90, 90, 0.6259, 0.3534],
    [100, 15, 0.8292, 0.1668],
    [100, 60, 0.4726, 0.4759],
    [100, 150, 0.1536, 0.632],
  ])("at %s °C for %s minutes leaves %s and makes %s (reference model of this project)", (celsius, t, alpha, iso) => {
    const acids = heated(freshHops, t, celsius);
    expect(acids.alpha).toBeCloseTo(alpha, 3);
    expect(acids.iso).toBeCloseTo(iso, 3);
  });

  it("agrees with Runge and Kutta", () => {
    fc.assert(
      fc.property(temperatureC, minutes, (celsius, t) => {
        const exact = heated(freshHops, t, celsius);
        const stepwise = rungeKutta(freshHops, () => celsius, t, 200);
        expect(exact.alpha).toBeCloseTo(stepwise.alpha, 7);
        expect(exact.iso).toBeCloseTo(stepwise.iso, 7);
      }),
      { numRuns: 40 },
    );
  });

  it("is the same in one go and in two", () => {
    fc.assert(
      fc.property(temperatureC, minutes, minutes, (celsius, first, second) => {
        const inTwo = heated(heated(freshHops, first, celsius), second, celsius);
        expect(inTwo.iso).toBeCloseTo(heated(freshHops, first + second, celsius).iso, 10);
      }),
    );
  });

  it("never makes more than was put in", () => {
    fc.assert(
      fc.property(temperatureC, minutes, (celsius, t) => {
        const { alpha, iso } = heated(freshHops, t, celsius);
        expect(iso).toBeGreaterThanOrEqual(0);
        expect(alpha + iso).toBeLessThanOrEqual(1 + 1e-12);
      }),
    );
  });

  it("has most iso-alpha acid at 100 °C after ln(k1 / k2) / (k1 - k2) = 148.6 minutes, and heat then kills it slowly", () => {
    const [k1, k2] = [isomerisationRatePerMinute(100), degradationRatePerMinute(100)];
    const peak = Math.log(k1 / k2) / (k1 - k2);
    expect(peak).toBeCloseTo(148.6, 1);
    const at = (t: number) => heated(freshHops, t, 100).iso;
    expect(at(peak)).toBeGreaterThan(at(peak - 5));
    expect(at(peak)).toBeGreaterThan(at(peak + 5));
    for (let hour = 3; hour < 12; hour += 1) {
      expect(at(60 * (hour + 1))).toBeLessThan(at(60 * hour));
      expect(at(60 * (hour + 1))).toBeGreaterThan(0.8 * at(60 * hour));
    }
  });
});

describe("the kinetic utilisation", () => {
  it("equals Tinseth's hour at 100 °C, in wort of any gravity; at SG 1.050 that is a factor of 0.485", () => {
    for (const gravity of [1, 1.03, 1.05, 1.1])
      expect(hopUtilisation(60, gravity, "kinetic")).toBeCloseTo(hopUtilisation(60, gravity, "tinseth"), 12);
    expect(hopUtilisation(60, 1.05, "kinetic") / heated(freshHops, 60, 100).iso).toBeCloseTo(0.4847, 4);
  });

  it("gives a quarter of an hour less than Tinseth does: 0.35 of an hour's, not 0.50", () => {
    expect(hopUtilisation(15, 1.05, "kinetic") / hopUtilisation(60, 1.05, "kinetic")).toBeCloseTo(0.35, 2);
    expect(hopUtilisation(15, 1.05, "tinseth") / hopUtilisation(60, 1.05, "tinseth")).toBeCloseTo(0.5, 2);
  });

  it("climbs for two hours, and is lowered by altitude", () => {
    const hours = fc.double({ min: 0, max: 120, noNaN: true });
    const boils = fc.double({ min: 80, max: 100, noNaN: true });
    fc.assert(
      fc.property(hours, hours, boils, (a, b, celsius) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        expect(hopUtilisation(more, 1.05, "kinetic", celsius)).toBeGreaterThanOrEqual(
          hopUtilisation(less, 1.05, "kinetic", celsius) - 1e-12,
        );
        expect(hopUtilisation(a, 1.05, "kinetic", celsius)).toBeLessThanOrEqual(hopUtilisation(a, 1.05, "kinetic", 100) + 1e-12);
      }),
    );
    expect(hopUtilisation(60, 1.05, "kinetic", 95) / hopUtilisation(60, 1.05, "kinetic")).toBeLessThan(0.8);
  });

  it("stays a share that hops can give, even in water boiled for hours", () => {
    fc.assert(fc.property(minutes, (t) => hopUtilisation(t, 1, "kinetic") < 0.5));
  });
});

describe("cooled", () => {
  const cooling: Cooling = { fromC: 100, toC: 20 + 80 * Math.exp(-0.6), minutes: 30, surroundingsC: 20 };

  it("follows Newton's law: from, to and the surroundings in the long run", () => {
    expect(coolingTemperatureC(cooling, 0)).toBe(100);
    expect(coolingTemperatureC(cooling, 30)).toBeCloseTo(cooling.toC, 12);
    expect(coolingTemperatureC(cooling, 15)).toBeCloseTo(20 + 80 * Math.exp(-0.3), 12);
    expect(coolingTemperatureC(cooling, 3000)).toBeCloseTo(20, 6);
    expect(coolingTemperatureC({ ...cooling, minutes: 0 }, 0)).toBe(100);
  });

  it("leaves 0.90767 and makes 0.09135 where wort cools from 100 °C at 0.02 per minute (reference model of this project)", () => {
    const acids = cooled(freshHops, cooling);
    expect(acids.alpha).toBeCloseTo(0.90767, 4);
    expect(acids.iso).toBeCloseTo(0.09135, 4);
  });

  it("agrees with Runge and Kutta along any cooling, also of hops that boiled before", () => {
    const celsius = fc.double({ min: 20, max: 102, noNaN: true });
    fc.assert(
      fc.property(
        celsius,
        celsius,
        fc.double({ min: 1, max: 240, noNaN: true }),
        fc.double({ min: 0, max: 120, noNaN: true }),
        (a, b, t, boiled) => {
          const stand: Cooling = { fromC: Math.max(a, b), toC: Math.min(a, b), minutes: t, surroundingsC: 15 };
          const before = heated(freshHops, boiled, 100);
          const stepwise = rungeKutta(before, (minute) => coolingTemperatureC(stand, minute), t, 400);
          expect(Math.abs(cooled(before, stand).iso - stepwise.iso)).toBeLessThan(5e-5);
          expect(Math.abs(cooled(before, stand).alpha - stepwise.alpha)).toBeLessThan(5e-5);
        },
      ),
      { numRuns: 60 },
    );
  });

  it("is plain heating where nothing cools", () => {
    expect(cooled(freshHops, { fromC: 80, toC: 80, minutes: 30, surroundingsC: 15 }).iso).toBeCloseTo(heated(freshHops, 30, 80).iso, 12);
  });

  it("is as much as 7.76 minutes of isomerisation at 100 °C, by the alpha acid that is gone", () => {
    const equivalent = -Math.log(cooled(freshHops, cooling).alpha) / isomerisationRatePerMinute(100);
    expect(equivalent).toBeCloseTo(7.76, 2);
    expect(relativeIsomerisation(80)).toBeCloseTo(0.1653, 3);
  });
});
