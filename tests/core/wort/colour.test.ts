import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { beerColourSrm } from "../../../src/core/wort/colour";
import { ebcFromLovibond, ebcFromSrm, lovibondFromEbc, lovibondFromSrm, srmFromEbc } from "../../../src/core/wort/colour-scales";

describe("colour of a malt bill", () => {
  it("adds the malts up before the curve is taken", () => {
    const together = beerColourSrm(
      [
        { massKg: 4, colourLovibond: 3 },
        { massKg: 0.2, colourLovibond: 60 },
      ],
      20,
    );
    expect(together).toBeCloseTo(beerColourSrm([{ massKg: 4.8, colourLovibond: 5 }], 20), 10);
  });
  it("is nothing for sugar alone, and sugar leaves it alone", () => {
    expect(beerColourSrm([{ massKg: 1, colourLovibond: 0 }], 20)).toBe(0);
    expect(
      beerColourSrm(
        [
          { massKg: 4, colourLovibond: 3 },
          { massKg: 1, colourLovibond: 0 },
        ],
        20,
      ),
    ).toBe(beerColourSrm([{ massKg: 4, colourLovibond: 3 }], 20));
  });
  it("runs on above SRM 50, where Morey stated it no longer, and stops where no grist gets", () => {
    expect(beerColourSrm([{ massKg: 1, colourLovibond: 400 }], 20.1)).toBeLessThan(50);
    // Morey's curve by logarithms: MCU = 8.3454 × 400 / 12 = 278.2; ln SRM = ln 1.4922 + 0.6859 ln 278.2 = 4.2610.
    expect(beerColourSrm([{ massKg: 1, colourLovibond: 400 }], 12)).toBeCloseTo(70.9, 1);
    // Black malt alone, as thick as a mash tun holds it: a third of a kilogram a litre.
    expect(beerColourSrm([{ massKg: 1, colourLovibond: 500 }], 3)).toBeLessThan(300);
    expect(() => beerColourSrm([{ massKg: 1, colourLovibond: 1300 }], 3)).toThrow("check malt colours");
  });
});

describe("colour scales", () => {
  it("EBC and SRM are each other's inverse", () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 2000, noNaN: true }), (srm) => Math.abs(srmFromEbc(ebcFromSrm(srm)) - srm) < 1e-9));
  });
  it("a malt of 4 °L is 4.66 SRM and 9.17 EBC; no colour stays no colour", () => {
    expect(lovibondFromSrm(4.6584)).toBeCloseTo(4, 10);
    expect(lovibondFromEbc(ebcFromSrm(4.6584))).toBeCloseTo(4, 10);
    expect(lovibondFromEbc(0)).toBe(0);
    // 4 × 1.3546 − 0.76 = 4.6584 SRM, × 25 / 12.7 = 9.1701 EBC.
    expect(ebcFromLovibond(4)).toBeCloseTo(9.1701, 4);
    expect(ebcFromLovibond(lovibondFromEbc(30))).toBeCloseTo(30, 10);
    expect([0, 0.4].map(ebcFromLovibond)).toEqual([0, 0]);
  });
});
