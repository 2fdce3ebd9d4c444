import { describe, expect, it } from "vitest";
import { boilOffLPerHour } from "../../../src/core/heat/boil-off";
import { warmingMinutes } from "../../../src/core/heat/warm";

describe("boilOffLPerHour", () => {
  /** NISTIR 5078 at 100 °C: steam 2675.6 kJ/kg, water 419.2: what leaves the kettle less what was in it. */
  it("balances the energy of an hour", () => {
    const kg = boilOffLPerHour(3, 80) * 0.9982;
    expect(kg * (2675.6 - 419.2)).toBeCloseTo(3 * 0.8 * 3600, -1);
  });

  it("takes 6.7 times as long as warming the same water from 20 to 100 °C (latent over sensible heat)", () => {
    const minutes = (60 * 10) / boilOffLPerHour(2, 100);
    expect(minutes / warmingMinutes(10, 20, 100, 2, 100)).toBeCloseTo(2257 / (419.2 - 83.9), 1);
  });
});
