import { describe, expect, it } from "vitest";
import { asCurve, asList, dayWithin, gravityOnDay, richardsModel, steepestFallPerDay } from "../../../src/core/log/richards";
import { ale } from "../../support/fermentation-log";

const shapes = [-0.9, -0.3, 0, 0.5, 1, 2.5];

describe("Richards's curve", () => {
  it("is the logistic at shape 1, Gompertz's at 0, first order after a lag at -1, each written out here", () => {
    for (const day of [0, 1, 2.2, 3, 6]) {
      expect(gravityOnDay(ale, day)).toBeCloseTo(1.01 + 0.04 / (1 + Math.exp(1.6 * (day - 2.2))), 12);
      // Half way down Gompertz falls by ln 2 / 2 of its rate, first order by half of it.
      const gompertz = { ...ale, shape: 0 };
      expect(gravityOnDay(gompertz, day)).toBeCloseTo(1.05 - 0.04 * Math.exp(-Math.LN2 * Math.exp((-0.8 / Math.LN2) * (day - 2.2))), 12);
      const lag = 2.2 - Math.LN2 / 0.8;
      expect(gravityOnDay({ ...ale, shape: -1 }, day)).toBeCloseTo(day < lag ? 1.05 : 1.01 + 0.04 * Math.exp(-0.8 * (day - lag)), 12);
    }
    // Nothing jumps where the shape passes through nought.
    for (const shape of [-1e-6, 1e-6]) expect(gravityOnDay({ ...ale, shape }, 3)).toBeCloseTo(gravityOnDay({ ...ale, shape: 0 }, 3), 7);
  });

  it("has half of its fall behind it on the day H, and falls there by K of it a day, whatever the shape", () => {
    for (const shape of shapes) {
      const curve = { ...ale, shape };
      expect(gravityOnDay(curve, 2.2), `shape ${shape}`).toBeCloseTo(1.03, 12);
      expect((gravityOnDay(curve, 2.199) - gravityOnDay(curve, 2.201)) / 0.002, `shape ${shape}`).toBeCloseTo(0.4 * 0.04, 6);
    }
  });

  it("falls most by what it says, found by walking down it", () => {
    for (const shape of shapes) {
      const curve = { ...ale, shape };
      const falls = Array.from(
        { length: 8000 },
        (_, index) => (gravityOnDay(curve, index / 1000 - 0.0005) - gravityOnDay(curve, index / 1000 + 0.0005)) / 0.001,
      );
      expect(Math.max(...falls) / steepestFallPerDay(curve), `shape ${shape}`).toBeCloseTo(1, 3);
    }
  });

  it("comes within a line of its end on the day that it says", () => {
    for (const shape of shapes) expect(gravityOnDay({ ...ale, shape }, dayWithin({ ...ale, shape }, 0.001)) - 1.01).toBeCloseTo(0.001, 12);
    expect(dayWithin({ ...ale, upperGravity: 1.0105 }, 0.001)).toBe(-Infinity);
  });

  it("has the slopes that small steps show, and none that are no numbers long before and after", () => {
    for (const shape of shapes) {
      const parameters = asList({ ...ale, shape });
      for (const day of [0, 1.7, 2.2, 5]) {
        richardsModel.gradient(parameters, day).forEach((slope, index) => {
          const moved = (step: number) =>
            richardsModel.value(
              parameters.map((value, at) => (at === index ? value + step : value)),
              day,
            );
          expect(slope, `shape ${shape}, day ${day}, ${index}`).toBeCloseTo((moved(1e-5) - moved(-1e-5)) / 2e-5, 6);
        });
      }
      for (const day of [-1e5, 1e5]) richardsModel.gradient(parameters, day).forEach((slope) => expect(Number.isFinite(slope)).toBe(true));
    }
    expect(asList(asCurve([1.05, 1.01, -1, 2.2, 0.3]))).toEqual([1.05, 1.01, expect.closeTo(-1, 12), 2.2, 0.3]);
  });
});
