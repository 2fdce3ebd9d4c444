import type { BatchContents, Method } from "../contents";
import { readFields } from "../derived/read-fields";
import type { On } from "../describe/field";
import { batchFields } from "../fields";
import { ourSteps } from "../sheet/steps";
import { blocksOnSheet } from "./blocks-on-sheet";
import { unitsOf, type BatchSheet } from "./batch-sheets";

/**
 * Everything that a brewer has typed into a batch sheet: the way back from the grid to `BatchContents`. Cells that hold
 * something else than they should (a word for a number) are read as blank; `src/workbook` checks name them.
 *
 * @throws MissingName where a named cell of the sheet was deleted
 */
export function batchContents(sheet: BatchSheet): BatchContents {
  const on = madeFor(sheet);
  const { units, method } = on;
  const { steps, ...read } = readFields(batchFields, sheet, on);
  // Steps that somebody has changed stay as they are, in the words and units of the one who wrote them.
  const own = steps && JSON.stringify(steps) !== JSON.stringify(ourSteps(method, units, blocksOnSheet(sheet)));
  return { ...read, ...(own && { steps }), sheetName: sheet.sheetName, units, method };
}

/** What words, units and usual values of a sheet go by. */
export const madeFor = (sheet: BatchSheet): On => ({ units: unitsOf(sheet), method: methodOf(sheet) });

/** Only a sheet on which grain is mashed says with how much water. */
export const methodOf = (sheet: BatchSheet): Method => (sheet.has("mash_water") ? "all-grain" : "extract");
