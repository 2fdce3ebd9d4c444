import fc from "fast-check";
import { describe, expect, it } from "vitest";
import "../../support/fixed-seed";
import { exampleBatch, firstExtractBatch } from "../../../src/workbook/batch/example-batch";
import { usualKit } from "../../../src/workbook/batch/new-batch";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { plannedFigures } from "../../../src/workbook/batch/figures/planned-figures";
import { convertUnits } from "../../../src/workbook/batch/scale/convert-units";
import { planOnly, scaleBatch } from "../../../src/workbook/batch/scale/scale-batch";
import { scalingRemarks } from "../../../src/workbook/batch/scale/scaling-remarks";
import { hopStep } from "../../../src/workbook/batch/scale/weighable";
import { plausiblePlan } from "../../support/arbitrary-batch";

/** How far rounding to what a scale can weigh may move a figure: half a step of every line. */
function allowed(scaled: BatchContents): { points: number; ibu: number; mcuShare: number } {
  const figures = plannedFigures(scaled);
  const volume = figures.gravityVolume ?? 1;
  const perStep = scaled.units === "us" ? 0.005 * 46.2 : 0.005 * 385.6;
  const points = (scaled.malt.length * perStep) / volume;
  const ibu = scaled.hops.reduce(
    (sum, { mass }, index) => sum + ((figures.ibuOfEach[index] ?? 0) * hopStep(mass, scaled.units)) / 2 / mass,
    0,
  );
  const mcu = scaled.malt.reduce((sum, { mass, colour }) => sum + mass * colour, 0);
  const mcuShare = scaled.malt.reduce((sum, { mass, colour }) => sum + 0.0051 * colour + 0.051 * mass, 0) / mcu;
  return { points, ibu, mcuShare };
}

function expectHeld(original: BatchContents, scaled: BatchContents): void {
  const before = plannedFigures(convertUnits(original, scaled.units));
  const after = plannedFigures(scaled);
  const { points, ibu, mcuShare } = allowed(scaled);
  expect(Math.abs((after.og ?? 0) - (before.og ?? 1)) * 1000).toBeLessThanOrEqual(points + 1e-6);
  // Hops of flame-out go by the volume, for their scent; where hardly anything boils, nothing can make up for how they chill.
  const boiled = original.hops.reduce((sum, { minutes }, index) => sum + (minutes === 0 ? 0 : (before.ibuOfEach[index] ?? 0)), 0);
  if (boiled > 0.5 * (before.ibu ?? 0)) expect(Math.abs((after.ibu ?? 0) - (before.ibu ?? 1))).toBeLessThanOrEqual(ibu + 1e-6);
  // The colour grows with MCU to the power 0.6859, so its relative error is smaller than that of the MCU.
  expect(Math.abs((after.colour ?? 0) / (before.colour ?? 1) - 1)).toBeLessThanOrEqual(mcuShare + 1e-6);
}

describe("scaling a batch", () => {
  it("holds gravity, bitterness of the whole and colour, at any volume and in both unit systems", () => {
    fc.assert(
      fc.property(plausiblePlan, fc.double({ min: 0.4, max: 3, noNaN: true }), fc.constantFrom("metric", "us"), (batch, factor, units) => {
        const volume = convertUnits(batch, units).volume * factor;
        expectHeld(batch, scaleBatch(batch, { volume, units }));
      }),
      { numRuns: 60 },
    );
  });

  it("holds them on another kit that wins less of the grain's sugar and stands on a mountain", () => {
    const kit = { ...usualKit.metric, grainEfficiencyPercent: 62, altitude: 2200, kettleLoss: 2, boilOff: 5 };
    const original = exampleBatch({
      id: "m",
      sheetName: "M",
      batchName: "M",
      brewedOn: 46270,
      volume: 20,
      units: "metric",
      topUp: 0,
      method: "all-grain",
    });
    const scaled = scaleBatch(original, { volume: 35, units: "metric", kit: { name: "Hut", kit } });
    expectHeld(original, scaled);
    expect(scaled.kitName).toBe("Hut");
    // What belongs to the recipe is not the kit's.
    expect([scaled.kit.soakTemperature, scaled.kit.soakMinutes, scaled.kit.boilMinutes]).toEqual([
      original.kit.soakTemperature,
      original.kit.soakMinutes,
      original.kit.boilMinutes,
    ]);
    expect(scalingRemarks(original, scaled).figures.filter(({ moved }) => moved)).toEqual([]);
  });

  it("there and back is the plan again, within what rounding leaves", () => {
    fc.assert(
      fc.property(plausiblePlan, fc.double({ min: 0.5, max: 3, noNaN: true }), fc.constantFrom("metric", "us"), (batch, factor, units) => {
        const there = scaleBatch(batch, { volume: convertUnits(batch, units).volume * factor, units });
        const back = scaleBatch(there, { volume: batch.volume, units: "metric" });
        for (const [index, { mass }] of batch.malt.entries())
          expect(Math.abs((back.malt[index]?.mass ?? 0) - mass)).toBeLessThanOrEqual(0.005 + 0.006 / factor);
        for (const [index, { mass }] of batch.hops.entries()) {
          const steps =
            hopStep(mass, "metric") / 2 + (hopStep(there.hops[index]?.mass ?? 0, units) * (units === "us" ? 28.35 : 1)) / 2 / factor;
          // The malt's own rounding moves the kettle's gravity, and with it the hops by at most a hundredth.
          expect(Math.abs((back.hops[index]?.mass ?? 0) - mass)).toBeLessThanOrEqual(steps + 0.01 * mass);
        }
        expect(back.topUp).toBeCloseTo(batch.topUp, 1);
        for (const field of ["soakTemperature", "tapTemperature", "grainTemperature", "boilMinutes", "bottleVolume"] as const)
          expect(Math.abs(back.kit[field] - batch.kit[field]), field).toBeLessThanOrEqual(1.5);
        // What is no amount comes back to the letter; a colour is told to a tenth, in US units a tenth of a degree Lovibond.
        for (const lines of ["malt", "hops"] as const) {
          const words = (one: BatchContents) => one[lines].map((line) => ({ ...line, mass: 0, colour: 0, cost: line.cost === "" }));
          expect(words(back)).toEqual(words(batch));
        }
        for (const [index, { colour, cost }] of batch.malt.entries()) {
          expect(Math.abs((back.malt[index]?.colour ?? 0) - colour), "colour").toBeLessThanOrEqual(
            0.05 + (units === "us" ? 0.05 * (25 / 12.7) * 1.3546 : 0.05),
          );
          // Costs follow the masses as they are weighed: 5 g of at least 0.7 kg, twice that where the batch was halved between, and cents.
          if (cost !== "") expect(Math.abs(Number(back.malt[index]?.cost) / cost - 1), "cost").toBeLessThan(0.025);
        }
        const degrees = <Part extends "yeast" | "packaging">(part: Part, fields: readonly (keyof BatchContents[Part])[]) => {
          for (const field of fields) {
            const [was, is] = [batch[part][field], back[part][field]];
            if (typeof was === "number") expect(Math.abs(Number(is) - was), String(field)).toBeLessThanOrEqual(1);
            else expect(is, String(field)).toBe(was);
          }
          const rest = (one: BatchContents) =>
            Object.fromEntries(Object.entries(one[part]).filter(([field]) => !fields.includes(field as keyof BatchContents[Part])));
          expect(rest(back), part).toEqual(rest(planOnly(batch)));
        };
        // A whole degree Fahrenheit, then a whole degree Celsius: half of each, 0.28 + 0.5 °C, is less than one.
        degrees("yeast", ["pitchTemperature", "fermentFrom", "fermentTo"]);
        degrees("packaging", ["warmestSinceFermentation", "warmestStorage", "conditioningTemperature", "kegTemperature"]);
        expect({ ...back, malt: [], hops: [], kit: batch.kit, topUp: 0, yeast: batch.yeast, packaging: batch.packaging }).toEqual({
          ...planOnly(batch),
          malt: [],
          hops: [],
          topUp: 0,
        });
      }),
      { numRuns: 40 },
    );
  });

  it("to its own volume changes nothing of a plan that is round already", () => {
    const batch = exampleBatch({
      id: "m",
      sheetName: "M",
      batchName: "M",
      brewedOn: 46270,
      volume: 20,
      units: "metric",
      topUp: 0,
      method: "all-grain",
    });
    expect(scaleBatch(batch, { volume: 20, units: "metric" })).toEqual(batch);
  });

  it("leaves behind what belongs to the beer that was brewed", () => {
    const scaled = scaleBatch(firstExtractBatch(), { volume: 10, units: "metric" });
    expect([scaled.readings, scaled.happened, scaled.wort.reading, scaled.packaging.bottlesFilled, scaled.tasting.notes]).toEqual([
      [],
      [],
      "",
      "",
      "",
    ]);
  });

  it("says what it could not do: a kettle too small, salts and steps in words", () => {
    const original: BatchContents = {
      ...firstExtractBatch(),
      salts: "4 g gypsum",
      steps: [{ what: "Warm 2 gallons", part: "before", minutes: 5, caution: "", why: "" }],
    };
    const { remarks } = scalingRemarks(original, scaleBatch(original, { volume: 60, units: "metric" }));
    expect(remarks.join(" ")).toMatch(/kettle holds 30.28 L.*by hand.*Step 1/);
  });

  it("asks for the room of the mash as the sheet does: in the kettle, or in a tun and the kettle that heats its water", () => {
    const mashed = exampleBatch({
      id: "m",
      sheetName: "M",
      batchName: "M",
      brewedOn: 46270,
      volume: 20,
      units: "metric",
      topUp: 0,
      method: "all-grain",
    });
    // 4.61 kg at 5.5 L/kg: 25.4 L of water at 1.02 to 1.03 times its cold volume, and 0.69 L/kg of grain, come to 29 L; 23.6 L before the boil are 24.6 hot.
    const on = (kit: Partial<BatchContents["kit"]>) => {
      const thin = { ...mashed, kit: { ...mashed.kit, mashThickness: 5.5, ...kit } };
      return scalingRemarks(thin, scaleBatch(thin, { volume: 20, units: "metric" })).remarks.join(" ");
    };
    expect(on({ kettleSize: 35 })).toBe("");
    expect(on({ kettleSize: 28 })).toMatch(/The kettle holds 28 L, and 29\.\d L of water and grain would be in it/);
    expect(on({ kettleSize: 35, tunSize: 28 })).toMatch(/The mash tun holds 28 L, and 29\.\d L of water and grain/);
    expect(on({ kettleSize: 27, tunSize: 30 })).toBe("");
    expect(on({ kettleSize: 25.5, tunSize: 30 })).toMatch(/The kettle holds 25.5 L, and 26\.\d L are to be heated for the mash/);
  });
});

describe("another unit system", () => {
  it("there and back is the same batch, readings and all", () => {
    fc.assert(
      fc.property(plausiblePlan, (plan) => {
        const batch: BatchContents = {
          ...plan,
          wort: { collected: "", reading: 12, scale: "P", sampleTemperature: 22, volume: plan.volume },
          readings: [{ when: 46272.5, reading: 1.02, scale: "SG", sampleTemperature: 19, beerTemperature: 18.5 }],
        };
        const sixDigits = (one: BatchContents): unknown =>
          JSON.parse(JSON.stringify(one), (_, value: unknown) => (typeof value === "number" ? Number(value.toFixed(6)) : value));
        expect(sixDigits(convertUnits(convertUnits(batch, "us"), "metric"))).toEqual(sixDigits(batch));
      }),
      { numRuns: 30 },
    );
  });
  it("gives the figures of the very same beer", () => {
    const us = plannedFigures(firstExtractBatch());
    const metric = plannedFigures(convertUnits(firstExtractBatch(), "metric"));
    expect(metric.og).toBeCloseTo(us.og ?? 0, 6);
    expect(metric.ibu).toBeCloseTo(us.ibu ?? 0, 6);
    // The definitions: EBC is 25 A where SRM is 12.7 A.
    expect((metric.colour ?? 0) / (us.colour ?? 1)).toBeCloseTo(25 / 12.7, 6);
  });
  it("our own steps come in the new units, words of one's own stay", () => {
    const edited = {
      ...firstExtractBatch(),
      steps: [
        {
          what: "Sit down",
          part: "before" as const,
          minutes: 5,
          caution: "Not hotter than 170 °F: whichever comes first ends it.",
          why: "",
        },
      ],
    };
    expect(convertUnits(edited, "metric").steps).toEqual([
      { what: "Sit down", part: "before", minutes: 5, caution: "Not hotter than 77 °C: whichever comes first ends it.", why: "" },
    ]);
  });
});
