import { describe, expect, it } from "vitest";
import { alcoholByMass } from "../../../src/core/beer/alcohol";
import { closedGaugeBar, gravityToClose, type Closing } from "../../../src/core/pack/spund";
import { callScalar } from "../../../src/functions/call";
import { CellError } from "../../../src/functions/cell-error";
import { packCheck } from "../../../src/functions/pack/check";
import { packSpund } from "../../../src/functions/pack/spund";
import { dissolvedMoles, vapourBar } from "./closed-vessel-physics";

const closing: Closing = { co2Volumes: 2.4, temperatureC: 18, atmosphereBar: 1.01325, headspacePercent: 10, expectedGravity: 1.012 };

/**
 * A vessel of 20 L followed mole by mole: beer and space hold what Henry's constant of IAPWS G7-04 and the ideal gas let them
 * under the air; then Balling's balance (0.9565 g of gas for each gram of alcohol) makes gas until the gravity expected, and
 * the pressure is found at which beer and space hold it all. Beer takes up 5 % less than water. Nothing of `src/core/pack`.
 *
 * @returns volumes in the beer in the end
 */
function followed(closeAt: number, { temperatureC, atmosphereBar, headspacePercent, expectedGravity }: Closing, originalGravity: number) {
  const vessel = 20;
  const beerL = vessel * (1 - headspacePercent / 100);
  const spaceL = vessel - beerL;
  const inBeer = (bar: number): number => 0.95 * dissolvedMoles("co2", temperatureC) * bar * beerL;
  const inSpace = (bar: number): number => (bar * spaceL) / (0.0831446 * (temperatureC + 273.15));
  const open = atmosphereBar - vapourBar(temperatureC);
  const alcoholG = (gravity: number): number => (alcoholByMass(originalGravity, gravity) / 100) * beerL * gravity * 998.2;
  const made = (0.9565 * (alcoholG(expectedGravity) - alcoholG(closeAt))) / 44.0095;
  const all = inBeer(open) + inSpace(open) + made;
  let [low, high] = [0, 30];
  for (let step = 0; step < 80; step += 1) {
    const middle = (low + high) / 2;
    if (inBeer(middle) + inSpace(middle) < all) low = middle;
    else high = middle;
  }
  return { volumes: (inBeer(low) * 22.26) / beerL, gaugeBar: low + vapourBar(temperatureC) - atmosphereBar };
}

describe("gravityToClose", () => {
  const cases = [
    [1.05, {}],
    [1.05, { headspacePercent: 40 }],
    [1.04, { temperatureC: 10, expectedGravity: 1.008, co2Volumes: 2.7 }],
    [1.06, { temperatureC: 24, co2Volumes: 2, atmosphereBar: 0.85 }],
  ] as const;
  it.each(cases)("brings a beer of %f to the carbonation wished for, %j", (original, other) => {
    const asked = { ...closing, ...other };
    const { volumes, gaugeBar } = followed(gravityToClose(asked), asked, original);
    // A hydrometer is good to a point, which is half a volume: 0.12 is a quarter of that.
    expect(Math.abs(volumes - asked.co2Volumes)).toBeLessThan(0.12);
    expect(Math.abs(gaugeBar - closedGaugeBar(asked, 0))).toBeLessThan(0.15);
  });

  it("closes earlier for more gas, more space, thinner air and warmer beer", () => {
    const base = gravityToClose(closing);
    for (const other of [{ co2Volumes: 2.6 }, { headspacePercent: 30 }, { atmosphereBar: 0.8 }, { temperatureC: 22 }])
      expect(gravityToClose({ ...closing, ...other })).toBeGreaterThan(base);
  });

  it("has no gravity for what the beer holds in the open", () => {
    expect(() => gravityToClose({ ...closing, co2Volumes: 0.8 })).toThrow(/leave it open/);
  });
});

describe("PACK.SPUND", () => {
  const said = (...typed: unknown[]): string => {
    const answer = callScalar(packSpund, typed);
    return answer instanceof CellError ? answer.message : String(answer);
  };

  it("gives no gravity to a vessel that two points more would bring above its plate", () => {
    // 3.4 volumes at 18 °C are 2.96 bar on the gauge.
    expect(Number(said(1.025, 1.012, 2.4, 18, 3.1))).toBeGreaterThan(1.015);
    expect(said(1.025, 1.012, 2.4, 18, 2.8)).toMatch(/^rating is 2.8 bar; .* keep it cooler/);
    expect(said(1.025, 1.012, 2.4, 18, 0.5)).toMatch(/^rating is 0.5 bar/);
    expect(said(1.025, 1.012, 2.4, 18)).toBe("");
  });

  it("says when it is too late", () => {
    expect(said(1.014, 1.012, 2.4, 18, 4)).toMatch(/^gravity 1.0140 is below 1.0154, where to close/);
  });

  it("agrees with what GYLE.PACK.CHECK says of the keg closed there, but for the space above the beer", () => {
    const closeAt = Number(said(1.03, 1.012, 2.4, 18, 4, 0.001));
    const words = callScalar(packCheck, [0.863, 18, "keg", closeAt, 1.012]) as string;
    expect(words).toMatch(/^within: 2\.4 volumes/);
  });
});
