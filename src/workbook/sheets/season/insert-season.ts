import type { UnitSystem } from "../../../functions/quantities";
import { insertSheet, InsertionRefused } from "../../grid/write/insert-sheet";
import type { CellContent } from "../../grid/plan/sheet-plan";
import { batchMark } from "../../batch/read/batch-sheets";
import { loadBatchMarks, sheetMarks } from "../../batch/read/batch-marks";
import { planSeason, seasonMark } from "./season-plan";
import { nothingTyped } from "./season-rows";

export interface SeasonChoices {
  readonly sheetName: string;
  readonly units: UnitSystem;
  /** A fixed day for a sample; the day that it is, when left out. */
  readonly today?: CellContent;
  readonly allowance?: CellContent;
}

/**
 * Puts the season sheet into the workbook with a row for each batch that is there: all of it or nothing.
 *
 * @throws InsertionRefused when there is one already, or its name is taken
 */
export async function insertSeason(
  context: Excel.RequestContext,
  { sheetName, units, today = "=TODAY()", allowance = "" }: SeasonChoices,
): Promise<void> {
  const marks = await sheetMarks(context, [batchMark, "batch_id", seasonMark]);
  const there = marks.find(({ ranges }) => ranges.has(seasonMark));
  if (there) throw new InsertionRefused(`This workbook has a season sheet already: "${there.name}".`);
  const batchMarks = loadBatchMarks(marks);
  await context.sync();
  const rows = batchMarks().map(({ sheetName: name, id }) => ({ ...nothingTyped, sheetName: name, id, lastName: name }));
  await insertSheet(context, planSeason({ sheetName, units, today, allowance, rows }), "C7");
}
