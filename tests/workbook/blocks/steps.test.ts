import { describe, expect, it } from "vitest";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { blocksFor } from "../../../src/workbook/batch/fields/blocks";
import { withBlocks } from "../../../src/workbook/batch/new-batch";
import { batchContents } from "../../../src/workbook/batch/read/batch-contents";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { ourSteps } from "../../../src/workbook/batch/sheet/steps";
import { exampleBatch } from "../../../src/workbook/batch/example-batch";
import { convertUnits } from "../../../src/workbook/batch/scale/convert-units";
import { calculatedSheet } from "../../support/calculated-sheet";
import { filledBlocks } from "../../support/filled-blocks";

const clockOf = (batch: BatchContents) =>
  calculatedSheet(planBatch(batch))
    .block("timeline")
    .map(([time, , what, , caution]) => ({ time: Number(time), what: String(what), caution: String(caution) }))
    .filter(({ what }) => what !== "");
const beginning = (batch: BatchContents, words: RegExp) => clockOf(batch).filter(({ what }) => words.test(what));

describe("the clock of a sheet with blocks", () => {
  const filled = filledBlocks("metric", "Filled");
  const lines = clockOf(filled);
  const what = lines.map((line) => line.what);

  it("says at its time what each block asks for", () => {
    // Brewed on 5 September 2026, so two days before it.
    expect(what[0]).toMatch(/^Clean all; starter there\? Made by 3 Sept$/);
    expect(what[1]).toMatch(/^Salts, acid in; heat \d+\.\d\d L to \d+ °C$/);
    expect(lines[1]!.caution).toMatch(/^Acid into water, never the reverse: goggles/);
    expect(what[3]).toBe("Rests 67° 60, 70° 20, 74° 10, 77° 5 min");
    expect(lines[3]!.caution).toMatch(/^Boiling water, boiling mash/);
    // 60, 20 and 5 to pour, 10 and 30 to draw, boil and return, 5 and 5 to pour.
    expect((lines[4]!.time - lines[3]!.time) * 1440).toBeCloseTo(135, 3);
    expect(what[4]).toMatch(/^Run off, measure; rinse: \d+\.\d\d L, 76 °C$/);
    expect(what[5]).toMatch(/note volume, gravity$/);
    expect(what.find((line) => line.startsWith("Pour the beer off the starter"))).toBeDefined();
    expect(what.find((line) => line.startsWith("Pitch"))).toMatch(/^Pitch; airlock on\. Close it only at 1\.0[12]\d$/);
    expect(lines.find((line) => line.what.startsWith("Pitch"))!.caution).toMatch(/relief valve/);
    expect(what).toContain("Clean up while wet; dry hops: day 7 to 10");
  });

  it("has the same lines in the same order as without any", () => {
    for (const units of ["metric", "us"] as const)
      for (const method of ["extract", "all-grain"] as const) {
        const [plain, all] = [ourSteps(method, units, []), ourSteps(method, units, blocksFor(method))];
        expect(all.map(({ part }) => part)).toEqual(plain.map(({ part }) => part));
        for (const { what: words, caution } of [...plain, ...all]) {
          expect(caution.length, caution).toBeLessThanOrEqual(80);
          if (!words.startsWith("=")) expect(words.length, words).toBeLessThanOrEqual(50);
        }
      }
    // What is printed fits the two columns, in either unit.
    for (const batch of [filled, filledBlocks("us", "Filled")])
      for (const { what: line } of clockOf(batch)) expect(line.length, line).toBeLessThanOrEqual(50);
  });

  it("says nothing of blocks that nobody has filled in", () => {
    const plain = exampleBatch({
      id: "a",
      sheetName: "A",
      batchName: "A",
      brewedOn: 46270,
      volume: 20,
      units: "metric",
      topUp: 0,
      method: "all-grain",
    });
    const empty = withBlocks({ ...plain, brewedOn: 46270 }, ["waterTreatment", "lateHops", "kegLine"]);
    const words = (batch: BatchContents) => clockOf(batch).map((line) => line.what.replace("chlorine-free water", "chlorine-free"));
    const asPlain = words(plain).map((line) =>
      line
        .replace(/^Heat (.*) chlorine-free to/, "Heat chlorine-free $1 to")
        .replace("Clean up while it is still wet", "Clean up while wet")
        // What follows "Pitch" with a keg's block is the gravity at which it may be closed.
        .replace(/^Pitch \d packs?;/, "Pitch the yeast;"),
    );
    expect(words(empty)).toEqual(asPlain);
  });

  it("of an extract batch says when its salts go in", () => {
    const plain = exampleBatch({
      id: "a",
      sheetName: "A",
      batchName: "A",
      brewedOn: 46270,
      volume: 20,
      units: "metric",
      topUp: 0,
      method: "extract",
    });
    const batch = withBlocks(plain, ["waterTreatment"]);
    expect(beginning({ ...batch, waterTreatment: { ...batch.waterTreatment!, gypsum: 3 } }, /; salts$/)).toHaveLength(1);
    expect(beginning(batch, /salts/)).toHaveLength(0);
  });

  it("knows its own words again on a sheet with blocks, and brings edited ones into other units", () => {
    expect(batchContents(calculatedSheet(planBatch(filled))).steps).toBeUndefined();
    const edited = {
      ...filled,
      steps: ourSteps("all-grain", "metric", blocksFor("all-grain")).map((line, index) => (index === 2 ? { ...line, what: "Mine" } : line)),
    };
    const us = convertUnits(edited, "us").steps!;
    expect(us[2]!.what).toBe("Mine");
    expect(us[1]!.what).toBe(ourSteps("all-grain", "us", blocksFor("all-grain"))[1]!.what);
  });
});

describe("amounts in the lines of the day", () => {
  const made = (
    method: "extract" | "all-grain",
    masses: Readonly<Record<"mash" | "steep" | "extract" | "sugar", number>>,
  ): BatchContents => {
    const plain = exampleBatch({
      ...{ id: "a", sheetName: "A", batchName: "A", brewedOn: 46270, volume: 20, units: "metric", topUp: 0 },
      method,
    });
    const malt = (["mash", "steep", "extract", "sugar"] as const)
      .filter((handling) => masses[handling] > 0)
      .map((handling) => ({ ...plain.malt[0]!, ingredient: handling, handling, mass: masses[handling] }));
    return { ...plain, malt };
  };
  const nothing = { mash: 0, steep: 0, extract: 0, sugar: 0 };
  const saidOf = (batch: BatchContents) => clockOf(batch).map((line) => line.what);

  it("are those of the malt table: what is steeped, what is mashed, what is dissolved", () => {
    const extract = saidOf(made("extract", { ...nothing, steep: 0.4, extract: 3.3 }));
    expect(extract).toContain("Warm it to 68 °C; grain bag in: 0.40 kg");
    expect(extract).toContain("Flame off; stir in 3.30 kg of extract");
    expect(saidOf(made("extract", { ...nothing, extract: 3.3, sugar: 0.5 }))).toContain("Flame off; stir in extract, sugar: 3.80 kg");
    const mashed = saidOf(made("all-grain", { ...nothing, mash: 4.25, steep: 0.25, extract: 1.5 }));
    expect(mashed).toContain("Stir in 4.50 kg grain; it settles at 67 °C");
    expect(mashed).toContain("Flame off; stir in 1.50 kg of extract");
  });

  it("are left out where there is nothing", () => {
    const extract = saidOf(made("extract", nothing));
    expect(extract).toContain("Warm it to 68 °C, then the grain bag in");
    expect(extract).toContain("Flame off; stir extract in until it is gone");
    expect(saidOf(made("all-grain", nothing))).toContain("Stir the grain in; it settles at 67 °C");
    expect(extract).toContain("Pitch the yeast; lid on, airlock filled");
  });

  it("say the packs of yeast: as many as hold the cells that the batch wants", () => {
    const batch = made("extract", { ...nothing, extract: 3.3 });
    const told = (cellsPerPack: number) =>
      saidOf({ ...batch, yeast: { ...batch.yeast, cellsPerPack } }).filter((what) => /^(Open the yeast|Pitch)/.test(what));
    expect(told(5000)).toEqual(["Open the yeast, 1 pack; rehydrate by label", "Pitch 1 pack; lid on, airlock filled"]);
    // 0.75 million for each mL and °P (common practice): 20 L at some 13 °P want about 195 billion: four packs of 50, or five when not all cells live.
    expect(told(50)[1]).toMatch(/^Pitch [45] packs;/);
  });
});
