import { describe, expect, it } from "vitest";
import { bothUnits, quantities, quantity, showQuantity, type QuantityName } from "../../src/functions/quantities";

/** NIST Special Publication 811 (2008), appendix B.8, and the definitions there: one US unit in the metric one. */
const published: readonly (readonly [QuantityName, number, string])[] = [
  ["volume", 3.785411784, "gallon (U.S.), 231 cubic inches of 2.54 cm"],
  ["volumePerHour", 3.785411784, "gallon (U.S.)"],
  ["flow", 3.785411784, "gallon (U.S.)"],
  ["bottleVolume", 29.5735295625, "fluid ounce (U.S.), a 128th of the gallon"],
  ["doseVolume", 29.5735295625, "fluid ounce (U.S.)"],
  ["dosePerVolume", 7.8125, "a fluid ounce in a gallon is 1/128: 7.8125 mL/L"],
  ["mass", 0.45359237, "pound (avoirdupois)"],
  ["smallMass", 28.349523125, "ounce (avoirdupois), a 16th of the pound"],
  ["hopRate", 7.489151707, "28.349523125 g / 3.785411784 L"],
  ["pressure", 0.06894757, "pound-force per square inch, 6894.757 Pa"],
  ["altitude", 0.3048, "foot"],
  ["length", 0.3048, "foot"],
  ["innerDiameter", 25.4, "inch"],
  ["energy", 4.184, "kilocalorie (thermochemical)"],
  ["absorption", 8.345404452, "3.785411784 L / 0.45359237 kg"],
  ["points", 8.345404452, "3.785411784 L / 0.45359237 kg"],
];

describe("the US units", () => {
  it.each(published)("%s: one is %s (%s)", (name, factor) => {
    expect(quantity(name).toCore(1, "us") / factor).toBeCloseTo(1, 7);
    expect(quantity(name).toCore(1, "metric")).toBe(1);
    expect(quantity(name).fromCore(quantity(name).toCore(7, "us"), "us")).toBeCloseTo(7, 12);
  });

  it("of temperature: water freezes at 32 °F and boils at 212 °F", () => {
    const { toCore, fromCore } = quantity("temperature");
    expect([32, 212, -40].map((fahrenheit) => toCore(fahrenheit, "us"))).toEqual([0, 100, -40]);
    expect([0, 100, -40].map((celsius) => fromCore(celsius, "us"))).toEqual([32, 212, -40]);
    expect(toCore(32, "metric")).toBe(32);
    expect(fromCore(32, "metric")).toBe(32);
  });

  it("are told apart for every quantity that has any; all others are one number in both systems", () => {
    const twofold = (Object.keys(quantities) as QuantityName[]).filter((name) => quantity(name).unit.metric !== quantity(name).unit.us);
    expect(twofold.sort()).toEqual([...published.map(([name]) => name), "temperature"].sort());
    for (const name of Object.keys(quantities) as QuantityName[]) {
      if (twofold.includes(name)) continue;
      expect(quantity(name).toCore(3.5, "us"), name).toBe(3.5);
      expect(quantity(name).fromCore(3.5, "us"), name).toBe(3.5);
    }
  });
});

describe("a quantity in words", () => {
  it("has its unit, one digit more than makes sense, and no noughts at the end", () => {
    expect(showQuantity("volume", 20, "metric")).toBe("20 L");
    expect(showQuantity("volume", 3.785411784 * 5.12349, "us")).toBe("5.123 US gal");
    expect(showQuantity("temperature", 20.456, "metric")).toBe("20.46 °C");
    expect(showQuantity("pressure", 1, "us")).toBe("14.504 psi");
    expect(showQuantity("fraction", 0.25, "metric")).toBe("0.25");
  });

  it("is a gravity with three digits and no unit", () => {
    expect(showQuantity("gravity", 1.05, "us")).toBe("1.050");
    expect(showQuantity("gravity", 1.2, "metric")).toBe("1.200");
  });

  it("names both units where they differ", () => {
    expect(bothUnits("volume")).toBe("L or US gal");
    expect(bothUnits("plato")).toBe("°P");
    expect(bothUnits("fraction")).toBe("");
  });
});
