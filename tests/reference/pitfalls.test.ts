import { describe, expect, it } from "vitest";
import { call, callScalar } from "../../src/functions/call";
import { functionNamed } from "../../src/functions/registry";
import { degradationRatePerMinute, isomerisationRatePerMinute } from "../../src/core/hops/isomerisation";
import { waterDensityKgPerM3 } from "../../src/core/wort/density";

/**
 * Mistakes that are in print, each with what it would do to the answer: ours must stand on the right side. What is asked
 * of us goes through the worksheet door; the mistaken form is written out beside it, so that the difference is seen.
 */
const ask = (id: string, ...typed: unknown[]): number => {
  const answer = callScalar(functionNamed(id), typed);
  if (typeof answer !== "number") throw new Error(`${id} answers ${JSON.stringify(answer)}`);
  return answer;
};
/** The number beside the label in one row of an answer that spills. */
const askRow = (id: string, row: number, ...typed: unknown[]): unknown => call(functionNamed(id), typed)[row]?.[1];

describe("constants with swapped or lost digits", () => {
  it("Kell's water: a reprint has 16.897850e-3 for 16.879850e-3 in the denominator, 0.6 kg/m³ wrong at the boil", () => {
    const kell = (t: number, last: number) =>
      (999.83952 + 16.945176 * t - 7.9870401e-3 * t ** 2 - 46.170461e-6 * t ** 3 + 105.56302e-9 * t ** 4 - 280.54253e-12 * t ** 5) /
      (1 + last * t);
    // IAPWS-95 by the python library iapws: 958.4209 at 99.9 °C; Kell's own table: 999.7027 at 10 °C.
    expect(Math.abs(waterDensityKgPerM3(99.9) - 958.4209)).toBeLessThan(0.05);
    expect(Math.abs(waterDensityKgPerM3(10) - 999.7027)).toBeLessThan(0.01);
    expect(Math.abs(kell(100, 16.87985e-3) - kell(100, 16.89785e-3))).toBeGreaterThan(0.5);
    expect(Math.abs(kell(99.9, 16.89785e-3) - 958.4209)).toBeGreaterThan(0.5);
  });

  it("Rager's curve: a copy has 32.32 for 31.32 minutes, and the correction is for gravities above 1.050 only", () => {
    const misprinted = (t: number) => (18.11 + 13.86 * Math.tanh((t - 32.32) / 18.27)) / 100;
    expect(ask("HOPS.UTILISATION", 31.32, 1.05, "rager")).toBeCloseTo(0.1811, 10);
    expect(misprinted(31.32)).toBeLessThan(0.175);
    expect(ask("HOPS.UTILISATION", 60, 1.03, "rager")).toBe(ask("HOPS.UTILISATION", 60, 1.05, "rager"));
    expect(ask("HOPS.UTILISATION", 60, 1.05, "rager") / ask("HOPS.UTILISATION", 60, 1.09, "rager")).toBeCloseTo(1.2, 10);
  });

  it("Garetz's storage: the page has 100 / (100 × % lost) for 100 / (100 − % lost)", () => {
    // 30 % lost in 180 days at 20 °C must leave 70 %; the misprint would leave thirty times as much as there was.
    expect(ask("HOPS.AGED", 10, 180, 20, 30)).toBeCloseTo(7, 10);
    expect(10 / (100 / (100 * 30))).toBeGreaterThan(100);
  });

  it("malt colour: the old EBC scale, 2.65 °L − 1.2, is still on malt sheets; a beer's EBC is 1.97 SRM", () => {
    expect(ask("BEER.EBC", 10)).toBeCloseTo(19.7, 1);
    expect(2.65 * 10 - 1.2).toBeGreaterThan(25);
  });
});

describe("curves used beyond their ends", () => {
  it("the ASBC cubic gives −0.003 °P for water, and is 0.1 °P off at 40: ours is 0 and within 0.006", () => {
    const asbc = (s: number) => 135.997 * s ** 3 - 630.272 * s ** 2 + 1111.14 * s - 616.868;
    expect(asbc(1)).toBeLessThan(-0.002);
    expect(ask("WORT.PLATO", 1)).toBe(0);
    // NBS Circular 440, Table 114: 40 °Bx is 1.17874.
    expect(Math.abs(asbc(1.17874) - 40)).toBeGreaterThan(0.1);
    expect(Math.abs(ask("WORT.PLATO", 1.17874) - 40)).toBeLessThan(0.006);
  });

  it("Hall's alcohol runs high in strong beer: 11.6 % where Balling gives 10.9 % and the simple rule 10.5 %", () => {
    const hall = (og: number, fg: number) => ((76.08 * (og - fg)) / (1.775 - og)) * (fg / 0.794);
    expect(hall(1.1, 1.02)).toBeCloseTo(11.6, 1);
    expect(ask("BEER.ABV", 1.1, 1.02)).toBeCloseTo(10.9, 1);
    expect(ask("BEER.ABV", 1.1, 1.02, "simple")).toBeCloseTo(10.5, 1);
    // In everyday beer the two agree.
    expect(Math.abs(hall(1.045, 1.01) - ask("BEER.ABV", 1.045, 1.01))).toBeLessThan(0.12);
  });

  it("alcohol by volume: 0.794 is the density of ethanol at 60 °F and would cost 0.4 % of the figure", () => {
    const ratio = ask("BEER.ABV", 1.05, 1.01) / (ask("BEER.ABW", 1.05, 1.01) * 1.01);
    expect(1 / ratio).toBeCloseTo(0.791, 6);
  });
});

describe("units that are not what they seem", () => {
  it("Malowicki's rates are per minute: per second no hop would outlive the boil", () => {
    expect(Math.LN2 / isomerisationRatePerMinute(100)).toBeCloseTo(55.5, 1);
    expect(ask("HOPS.UTILISATION", 60, 1.05, "kinetic")).toBeGreaterThan(0.2);
    expect(degradationRatePerMinute(100)).toBeLessThan(isomerisationRatePerMinute(100));
  });

  it("Kolbach's 3.5 and 7 go with equivalents: on mg/L they would take away less than half", () => {
    expect(ask("WATER.ALKALINITY", 295, 76, 18)).toBeCloseTo(230.2, 0);
    expect(295 - 76 / 3.5 - 18 / 7).toBeGreaterThan(270);
  });

  it("chlorine: milligrams, not moles for parts per million", () => {
    // A mole of metabisulfite takes two of Cl2: 222.32 / (2 × 70.906) = 1.568 mg for each mg.
    expect(ask("WATER.DECHLORINATE", 1, 1) / 1.25).toBeCloseTo(1.568, 3);
  });

  it("a pound of sugar: 46 points in a gallon of wort, 43 if it is stirred into a gallon of water", () => {
    expect(ask("WORT.POINTS", 100, "us")).toBeCloseTo(46.2, 1);
    // NBS Table 114: a pound in a gallon of water (8.33 lb) makes 10.72 °Bx, which is 1.0430.
    expect((ask("WORT.SG", 100 / (1 + 8.33)) - 1) * 1000).toBeCloseTo(43, 0);
  });
});

describe("water of crystallisation", () => {
  it("gypsum and calcium chloride are sold with theirs: calculated without it, calcium comes out a fifth to a third too high", () => {
    expect(askRow("WATER.IONS", 0, [["gypsum", 1]], 1)).toBeCloseTo(232.8, 1);
    expect(askRow("WATER.IONS", 0, [["calcium chloride", 1]], 1)).toBeCloseTo(272.6, 1);
    expect(askRow("WATER.IONS", 0, [["calcium chloride anhydrous", 1]], 1)).toBeCloseTo(361.1, 1);
    const gypsumWithoutWater = (1000 * 40.078) / 136.14;
    expect(gypsumWithoutWater / 232.8).toBeCloseTo(1.26, 2);
  });

  it("epsom salt is half water", () => {
    const magnesium = askRow("WATER.IONS", 1, [["epsom salt", 1]], 1);
    expect(magnesium).toBeCloseTo(98.6, 1);
    expect((1000 * 24.305) / 120.37 / Number(magnesium)).toBeCloseTo(2.05, 2);
  });

  it("dextrose as sold holds a tenth of water: 4.45 g a litre and volume, 4.05 of the dry sugar", () => {
    const perVolume = (sugar: string) => ask("PACK.PRIMING", 1, 3, 20, sugar) - ask("PACK.PRIMING", 1, 2, 20, sugar);
    expect(perVolume("dextrose")).toBeCloseTo(4.451, 3);
    expect(perVolume("glucose")).toBeCloseTo(4.046, 3);
    expect(perVolume("sucrose")).toBeCloseTo(3.844, 3);
    expect(perVolume("dextrose") / perVolume("glucose")).toBeCloseTo(198.17 / 180.16, 4);
  });

  it("a printed 3.7 g of glucose a litre and volume took the molar volume of gas at 25 °C: 9 % too little", () => {
    const perVolume = ask("PACK.PRIMING", 1, 3, 20, "glucose") - ask("PACK.PRIMING", 1, 2, 20, "glucose");
    const molesAt25C = 1 / 24.465;
    expect((molesAt25C * 180.156) / 2).toBeCloseTo(3.7, 1);
    expect(3.7 / perVolume).toBeCloseTo(0.914, 2);
  });
});

describe("two models that must not be mixed", () => {
  it("a quarter of an hour is half an hour's bitterness by Tinseth, a third by the kinetics", () => {
    const share = (model: string) => ask("HOPS.UTILISATION", 15, 1.05, model) / ask("HOPS.UTILISATION", 60, 1.05, model);
    expect(share("tinseth")).toBeCloseTo(0.496, 2);
    expect(share("kinetic")).toBeCloseTo(0.35, 2);
  });

  it("sea level boils at 99.97 °C, not 100, and a boil at 1500 m isomerises at 0.65 of the speed", () => {
    expect(ask("WATER.BOILS", 0)).toBeCloseTo(99.974, 2);
    const speed = isomerisationRatePerMinute(ask("WATER.BOILS", 1500)) / isomerisationRatePerMinute(100);
    expect(speed).toBeCloseTo(0.65, 2);
  });
});

describe("rules of thumb that stop being true", () => {
  it("a hydrometer correction that knows the temperature alone is two to three points wrong in strong wort at 140 °F", () => {
    const points = (reading: number) =>
      1000 * (ask("WORT.HYDROMETER", reading, 140, 60, null, "us") - ask("WORT.HYDROMETER", reading, 60, 60, null, "us"));
    // A printed leaflet gives 15.9 points for any gravity; it was made for about 1.020.
    expect(Math.abs(points(1.02) - 15.9)).toBeLessThan(0.3);
    expect(points(1.1) - points(1.02)).toBeGreaterThan(2);
    expect(points(1.1) - points(1.02)).toBeLessThan(3.5);
  });

  it("a spindle for 60 °F and one for 20 °C do not show the same in the same wort", () => {
    const difference = 1.1 - ask("WORT.HYDROMETER", 1.1, 60, 60, null, "us");
    expect(difference).toBeGreaterThan(0.0001);
    expect(difference).toBeLessThan(0.001);
  });

  it("Balling's rule alone leaves the real extract 0.10 to 0.19 °P low, as five sets of measured beers show", () => {
    for (const [original, apparent, gravities] of [
      [14.08, 3.11, [1.05718, 1.01215]],
      [17.67, 2.45, [1.07269, 1.00955]],
      [12.75, 2.79, [1.05153, 1.01089]],
    ] as const) {
      const above = ask("BEER.EXTRACT", ...gravities) - (0.1808 * original + 0.8192 * apparent);
      expect(above).toBeGreaterThan(0.04);
      expect(above).toBeLessThan(0.25);
    }
  });

  it("yeast that loses a fifth each month is not dead after five: a third is left", () => {
    expect(ask("YEAST.VIABILITY", 150)).toBeCloseTo(32.8, 1);
    expect(ask("YEAST.VIABILITY", 1100)).toBeGreaterThan(0);
  });

  it("a final gravity below 1.000 is beer, not a slip", () => {
    expect(ask("BEER.ABV", 1.045, 0.998)).toBeGreaterThan(6);
    expect(ask("YEAST.ATTENUATION", 1.045, 0.998)).toBeGreaterThan(100);
  });

  it("the maltsters' line goes below nothing under 0.56 °L: sugar gives no colour all the same", () => {
    expect(1.3546 * 0.5 - 0.76).toBeLessThan(0);
    expect(ask("WORT.COLOUR", [[4, 0]], 20, "EBC")).toBe(0);
    expect(ask("WORT.COLOUR", [[4, 0.1]], 20, "EBC")).toBeGreaterThan(0);
  });

  it("a bottle proofed at 12 bar is not a bottle for 4 volumes", () => {
    const verdict = callScalar(functionNamed("PACK.CHECK"), [4, 25, "ordinary"]);
    expect(String(verdict)).toMatch(/^over: 4 volumes at 25 °C make 5\.\d+ bar /);
  });

  it("the colour of a glass is that of its width: the same beer is straw in a tube and amber in a glass", () => {
    const blue = (centimetres: number) => parseInt(String(callScalar(functionNamed("BEER.HEX"), [6, centimetres])).slice(5), 16);
    expect(blue(5)).toBe(0);
    expect(blue(1)).toBeGreaterThan(150);
  });
});
