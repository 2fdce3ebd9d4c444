import type { IWorkbookData } from "@univerjs/core";
import { unzipSync } from "fflate";
import { expect, it } from "vitest";
import { MAX_PARTS, openWorkbook, saveWorkbook } from "../../../src/excel-stand-in/xlsx";

/** Each sheet is one part of the file; a batch sheet with its tables, notes and chart is about 12, so 300 batches are 3,600. */
const workbook = (sheets: number): IWorkbookData => {
  const ids = Array.from({ length: sheets }, (_, index) => `s${index}`);
  return {
    id: "book",
    sheetOrder: ids,
    sheets: Object.fromEntries(ids.map((id, index) => [id, { id, name: `Batch ${index + 1}`, cellData: { 0: { 0: { v: index } } } }])),
  } as unknown as IWorkbookData;
};

it("a workbook of thousands of parts is saved and opens again", async () => {
  const saved = await saveWorkbook(workbook(3600), {});
  expect(Object.keys(unzipSync(saved)).length).toBeGreaterThan(3600);
  const { snapshot } = await openWorkbook(saved);
  expect(snapshot.sheetOrder).toHaveLength(3600);
  expect(snapshot.sheets[snapshot.sheetOrder.at(-1)!]?.cellData?.[0]?.[0]?.v).toBe(3599);
}, 120_000);

it("what is too large to be opened here can still be saved, since it is somebody's work", async () => {
  const saved = await saveWorkbook(workbook(MAX_PARTS), {});
  expect(Object.keys(unzipSync(saved)).length).toBeGreaterThan(MAX_PARTS);
  await expect(openWorkbook(saved)).rejects.toThrow(`more than ${MAX_PARTS} parts`);
}, 120_000);
