import { expect, it } from "vitest";
import { exampleBatch } from "../../../src/workbook/batch/example-batch";
import { withBlocks } from "../../../src/workbook/batch/new-batch";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { needsOf } from "../../../src/workbook/sheets/stores/needs";
import { calculatedSheet } from "../../support/calculated-sheet";

const plain = exampleBatch({
  id: "b",
  sheetName: "B",
  batchName: "B",
  brewedOn: 46270,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "all-grain",
});
const yeast = { ...plain.yeast, name: "Ale yeast", packsInHand: 1, cellsPerPack: 100, viabilityPercent: 100 } as const;
const grown = withBlocks({ ...plain, yeast }, ["starter"]);
const needed = (batch: typeof plain, units: "us" | "metric") =>
  new Map(needsOf(calculatedSheet(planBatch(batch)), units, undefined).map(({ kind, name, amount }) => [`${kind} ${name}`, amount]));

it("what goes into a starter is drawn: its pack in place of the packs to pitch, and its extract", () => {
  const sheet = calculatedSheet(planBatch(grown));
  const without = needed({ ...plain, yeast }, "metric");
  const withIt = needed(grown, "metric");
  expect(without.get("yeast Ale yeast")).toBeGreaterThan(1);
  expect(withIt.get("yeast Ale yeast")).toBe(1);
  // Common practice: 100 g of dry extract to the litre of starter.
  const extract = withIt.get("malt Dry malt extract")!;
  expect(extract / Number(sheet.number("starter_volume"))).toBeCloseTo(0.1, 2);
  expect(without.has("malt Dry malt extract")).toBe(false);
  expect(needed(grown, "us").get("malt Dry malt extract")! * 0.45359237).toBeCloseTo(extract, 9);
});
