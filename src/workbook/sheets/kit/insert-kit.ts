import { insertSheet, InsertionRefused } from "../../grid/write/insert-sheet";
import { sheetMarks } from "../../batch/read/batch-marks";
import { loadSheet, namedCells } from "../../grid/read/read-sheets";
import { kitMark, planKit, type KitOptions } from "./kit-plan";
import { isKitSheet, kitsOnSheet, type KitOnSheet } from "./kits-on-sheet";

/**
 * Puts the kit sheet into the workbook, all of it or nothing.
 *
 * @throws InsertionRefused when there is one already, or its name is taken
 */
export async function insertKit(context: Excel.RequestContext, options: KitOptions): Promise<void> {
  const there = (await sheetMarks(context, [kitMark])).find(({ ranges }) => ranges.has(kitMark));
  if (there) throw new InsertionRefused(`This workbook has a kit sheet already: "${there.name}".`);
  await insertSheet(context, planKit(options), "B3");
}

/** The kits of this workbook that have a name; none where it has no kit sheet. Three `context.sync()`. */
export async function readKits(context: Excel.RequestContext): Promise<KitOnSheet[]> {
  const found = (await sheetMarks(context, [kitMark])).find(({ ranges }) => ranges.has(kitMark));
  if (!found) return [];
  const loaded = loadSheet(found.sheet);
  await context.sync();
  const sheet = namedCells(loaded);
  return isKitSheet(sheet) ? kitsOnSheet(sheet) : [];
}
