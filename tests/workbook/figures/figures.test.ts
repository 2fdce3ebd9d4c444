import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { exampleBatch, firstExtractBatch } from "../../../src/workbook/batch/example-batch";
import { figure, shownWords } from "../../../src/workbook/batch/figures/on-its-sheet";
import { scaleBatch } from "../../../src/workbook/batch/scale/scale-batch";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet } from "../../support/batch-bench";

const mashed = exampleBatch({
  id: "m",
  sheetName: "Mashed",
  batchName: "Mashed",
  brewedOn: 46270,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "all-grain",
});
const partBoil = exampleBatch({
  id: "t",
  sheetName: "Part boil",
  batchName: "Part boil",
  brewedOn: 46270,
  volume: 19,
  units: "metric",
  topUp: 8,
  method: "extract",
});
const scaled = { ...scaleBatch({ ...mashed, kit: { ...mashed.kit, altitude: 1500 } }, { volume: 3, units: "us" }), sheetName: "Scaled" };
const batches: readonly BatchContents[] = [
  scaled,
  firstExtractBatch(),
  {
    ...mashed,
    kit: { ...mashed.kit, altitude: 1500 },
    wort: { collected: "", reading: 12.1, scale: "P", sampleTemperature: 25, volume: 21 },
    readings: [{ when: 46275.5, reading: 1.02, scale: "SG", sampleTemperature: 19, beerTemperature: "" }],
  },
  // More than all of the grain's sugar: the sheet trusts the plan; and a mash that reached the fermenter as less than planned.
  {
    ...mashed,
    sheetName: "Impossible",
    wort: { collected: "", reading: 1.1, scale: "SG", sampleTemperature: 20, volume: 18 },
    readings: [{ when: 46275.5, reading: 1.02, scale: "SG", sampleTemperature: 19, beerTemperature: "" }],
  },
  // Far from what the extract can give: the sheet trusts the malt.
  { ...partBoil, wort: { collected: "", reading: 1.08, scale: "SG", sampleTemperature: 20, volume: 19 } },
];

let bench: HeadlessBench;
const sheets: BatchSheet[] = [];
beforeAll(async () => {
  bench = await openBatchBench();
  for (const batch of batches) sheets.push(await insertOn(bench, batch));
}, benchTimeout);
afterAll(() => bench.dispose());

describe("figures asked without a sheet", () => {
  it.each(batches.map((batch, index) => [batch.sheetName, index] as const))("are those that the sheet of %s shows", (_, index) => {
    const [batch, sheet] = [batches[index], sheets[index]];
    if (!batch || !sheet) throw new Error("no sheet");
    const shown = (name: string) => (typeof sheet.get(name) === "number" ? sheet.number(name) : undefined);
    for (const name of [
      "og_plan",
      "fg_plan",
      "abv_plan",
      "ibu_plan",
      "colour_plan",
      "boils_at",
      "water_collect",
      "water_before_boil",
      "gravity_volume",
      "kettle_gravity",
      "og_shown",
      "fg",
      "fg_reached",
      "abv_reached",
      "ibu_reached",
      "colour_reached",
    ] as const) {
      const value = figure(batch, name);
      const onSheet = shown(name);
      if (onSheet === undefined || value === undefined) expect(value, name).toBe(onSheet);
      else expect(value, name).toBeCloseTo(onSheet, 9);
    }
    expect(sheet.get("verdict") ?? "").toBe(shownWords(batch, "verdict"));
  });

  it("are held on the sheet of a scaled copy: gravity within 0.001, bitterness within 0.5 IBU, colour within 3 %", () => {
    const [copy, original] = ["Scaled", "Mashed"].map((name) => sheets.find(({ sheetName }) => sheetName === name));
    if (!copy || !original) throw new Error("no sheet");
    expect(Math.abs(copy.number("og_plan") - original.number("og_plan"))).toBeLessThan(0.001);
    expect(Math.abs(copy.number("ibu_plan") - original.number("ibu_plan"))).toBeLessThan(0.5);
    expect(Math.abs(copy.number("colour_plan") / (original.number("colour_plan") * (12.7 / 25)) - 1)).toBeLessThan(0.03);
    expect(copy.complaints()).toEqual([]);
  });
});
