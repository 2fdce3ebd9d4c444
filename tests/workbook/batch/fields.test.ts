import fc from "fast-check";
import { describe, expect, it } from "vitest";
import "../../support/fixed-seed";
import { forSheet, type Column, type Fields, type NumberField, type Single } from "../../../src/workbook/batch/describe/field";
import { planVersion } from "../../../src/workbook/batch/describe/plan-version";
import { batchFields } from "../../../src/workbook/batch/fields";
import { newCells } from "../../../src/workbook/batch/fields/cells";
import { newBatch } from "../../../src/workbook/batch/new-batch";
import { batchContents } from "../../../src/workbook/batch/read/batch-contents";
import type { BatchSheet } from "../../../src/workbook/batch/read/batch-sheets";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { typedFigures } from "../../../src/workbook/care/check/typed-figures";
import { checkedBatch } from "../../../src/workbook/exchange/batch-file/schema";
import { MissingName } from "../../../src/workbook/grid/read/named-cells";
import { anyBatch } from "../../support/arbitrary-batch";
import { plannedSheet } from "../../support/planned-sheet";

const sheets = (["extract", "all-grain"] as const).flatMap((method) => (["metric", "us"] as const).map((units) => ({ method, units })));
const blank = ({ method, units }: (typeof sheets)[number]) =>
  newBatch({ id: "a", sheetName: "Blank", batchName: "Blank", brewedOn: 46270, volume: 20, topUp: 0, method, units });

const singles = (fields: Fields): (Single | Column)[] =>
  Object.values(fields).flatMap((field): (Single | Column)[] => {
    if (field.kind === "group") return singles(field.fields);
    if (field.kind === "table") return Object.values(field.columns);
    return field.kind === "list" ? [field.each] : [field];
  });
const numbers = singles(batchFields).filter((field): field is NumberField & Column => field.kind === "number");

describe("the description of a batch", () => {
  it("knows every name of the sheet, and no other", () => {
    const planned = new Set(sheets.flatMap((on) => planBatch(blank(on)).names.map(({ name }) => name)));
    const inTables = Object.values(batchFields).flatMap((field) => (field.kind === "table" ? Object.keys(field.areas) : []));
    const known = Array.from({ length: planVersion }, (_, index) => newCells((index + 1) as typeof planVersion)).flat();
    expect([...known, ...inTables].sort()).toEqual([...planned].sort());
  });

  it("lets no misspelt name of a cell through the compiler", () => {
    const sheet: BatchSheet = plannedSheet(planBatch(blank(sheets[0]!)));
    expect(sheet.number("warmest_storage")).toBe(24);
    // @ts-expect-error -- no such cell
    expect(() => sheet.number("warmest_storge")).toThrow(MissingName);
    // @ts-expect-error -- a key of the contents, not the name of a cell
    expect(sheet.has("warmestStorage")).toBe(false);
  });

  it("has usual values within its limits, which a file takes", () => {
    for (const on of sheets) {
      expect(checkedBatch(blank(on)).success).toBe(true);
      for (const { usual, limits, label } of numbers) {
        if (usual === undefined) continue;
        const [from, to] = forSheet(limits, on);
        expect(forSheet(usual, on), forSheet(label, on)).toBeGreaterThanOrEqual(from);
        expect(forSheet(usual, on), forSheet(label, on)).toBeLessThanOrEqual(to);
      }
    }
  });

  it("asks about nothing in a new batch, and refuses nothing that it does not ask about", () => {
    for (const on of sheets) expect(typedFigures(plannedSheet(planBatch(blank(on))), on.units)).toEqual([]);
    for (const { plausible, limits, measure } of numbers) {
      if (!plausible || measure !== "temperature") continue;
      const [from, to] = forSheet(limits, { units: "metric", method: "extract" });
      expect(from).toBeLessThanOrEqual(plausible.from);
      expect(to).toBeGreaterThanOrEqual(plausible.to);
    }
  });
});

describe("a batch on its sheet", () => {
  it("is read back as it was written, whatever it holds", () => {
    fc.assert(
      fc.property(anyBatch, (batch) => {
        // A sheet to steep on has no place for how thick and how warm one mashes.
        const { mashThickness, grainTemperature } = blank({ method: "extract", units: batch.units }).kit;
        const written = batch.method === "extract" ? { ...batch, kit: { ...batch.kit, mashThickness, grainTemperature } } : batch;
        expect(batchContents(plannedSheet(planBatch(written)))).toEqual(expectedOf(written));
      }),
      { numRuns: 150 },
    );
  });
});

/** What a sheet cannot tell from nothing: empty times after the last one. */
function expectedOf<Batch extends ReturnType<typeof blank>>(batch: Batch): Batch {
  return { ...batch, happened: batch.happened.slice(0, batch.happened.findLastIndex((time) => time !== "") + 1) };
}
