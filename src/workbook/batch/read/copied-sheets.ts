import type { BatchCell } from "../fields/cells";
import type { BatchMark } from "./batch-marks";
import { batchIdOf, type BatchSheet } from "./batch-sheets";

/** Sheets that carry one and the same mark: copies made with Excel's own Move or Copy. Sheets of the first plan have no mark. */
export function copies(sheets: readonly BatchMark[]): readonly (readonly string[])[] {
  const byId = new Map<string, string[]>();
  for (const { sheetName, id } of sheets) if (id !== "") byId.set(id, [...(byId.get(id) ?? []), sheetName]);
  return [...byId.values()].filter(({ length }) => length > 1);
}

/** The mark of a batch sheet that was read. */
export const markOf = (sheet: BatchSheet): BatchMark => ({ sheetName: sheet.sheetName, id: batchIdOf(sheet) });

/** Other sheets that carry the mark of this one. */
export function sheetsAlike(sheets: readonly BatchSheet[], sheet: BatchSheet): readonly string[] {
  const id = batchIdOf(sheet);
  return id === ""
    ? []
    : sheets.filter((other) => other.sheetName !== sheet.sheetName && batchIdOf(other) === id).map(({ sheetName }) => sheetName);
}

/** Whether anything of a brewing stands on a sheet: a time, a reading, a day of packaging. */
export function hasLog(batch: BatchSheet): boolean {
  const numbers = (name: BatchCell): boolean =>
    batch
      .block(name)
      .flat()
      .some((value) => typeof value === "number");
  return numbers("happened") || numbers("readings") || batch.number("og_reading") !== "" || batch.number("packaged_on") !== "";
}
