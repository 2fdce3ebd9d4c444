import { planBatch } from "./sheet/plan";
import type { BatchContents } from "./contents";
import { insertSheet } from "../grid/write/insert-sheet";

export { InsertionRefused, freeName } from "../grid/write/insert-sheet";

/**
 * Puts a batch sheet into the workbook, all of it or nothing.
 *
 * @param selected the cell that is in front afterwards; "behind" leaves in front what is there now
 * @throws InsertionRefused when the name is taken or not allowed
 */
export function insertBatch(context: Excel.RequestContext, contents: BatchContents, selected = "B5"): Promise<void> {
  return insertSheet(context, planBatch(contents), selected);
}
