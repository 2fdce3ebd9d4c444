import { insertSheet, InsertionRefused } from "../../grid/write/insert-sheet";
import { sheetMarks } from "../../batch/read/batch-marks";
import { planStores, storesMark, type StoresOptions } from "./stores-plan";

/**
 * Puts the stores sheet into the workbook, all of it or nothing.
 *
 * @throws InsertionRefused when there is one already, or its name is taken
 */
export async function insertStores(context: Excel.RequestContext, options: StoresOptions): Promise<void> {
  const there = (await sheetMarks(context, [storesMark])).find(({ ranges }) => ranges.has(storesMark));
  if (there) throw new InsertionRefused(`This workbook has a stores sheet already: "${there.name}".`);
  await insertSheet(context, planStores(options), "A5");
}
