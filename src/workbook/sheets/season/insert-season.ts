import type { UnitSystem } from "../../../functions/quantities";
import { freeName, insertSheet, InsertionRefused } from "../../grid/write/insert-sheet";
import type { CellContent } from "../../grid/plan/sheet-plan";
import { loadSheet, namedCells } from "../../grid/read/read-sheets";
import { batchMark } from "../../batch/read/batch-sheets";
import { loadBatchMarks, sheetMarks } from "../../batch/read/batch-marks";
import { atNewPlaces } from "./own-cells";
import { onSheets, tellingNames } from "./season-columns";
import { newestSeason, planOf, planSeason, seasonMark, seasonVersion } from "./season-plan";
import { mergeRows } from "./season-rows";
import { presentList } from "./season-sheet";

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
  const marks = await sheetMarks(context, [batchMark, "batch_id", seasonMark, ...tellingNames]);
  const there = marks.find(({ ranges }) => ranges.has(seasonMark));
  if (there) throw new InsertionRefused(`This workbook has a season sheet already: "${there.name}".`);
  const batchMarks = loadBatchMarks(marks);
  await context.sync();
  const { rows } = mergeRows([], batchMarks(), onSheets(marks));
  await insertSheet(context, planSeason({ sheetName, units, today, allowance, rows }), "C7");
}

/** Where the list of the first plan kept what the brewer typed, and its workings. */
const firstPlan = { left: "U", remark: "V", sheet: "W", id: "X", firstOwn: "AA", keeps: false } as const;

/**
 * Writes an older season sheet anew in today's plan, with all that was typed into it. The older one stays as it is, and is not
 * followed any more.
 *
 * @returns the name of the new sheet
 */
export async function renewSeason(context: Excel.RequestContext): Promise<string> {
  const marks = await sheetMarks(context, [batchMark, "batch_id", seasonMark, ...tellingNames]);
  const loaded = marks.filter(({ ranges }) => ranges.has(seasonMark)).map(({ sheet }) => loadSheet(sheet));
  const batchMarks = loadBatchMarks(marks);
  await context.sync();
  if (loaded.length === 0) throw new InsertionRefused("This workbook has no season sheet any more.");
  const { cells } = newestSeason(loaded.map(namedCells));
  if (planOf(cells) >= seasonVersion) throw new InsertionRefused(`“${cells.sheetName}” has today's plan already.`);
  const sheetName = freeName(
    marks.map(({ name }) => name),
    cells.sheetName,
  );
  const present = presentList(cells, firstPlan).rows.map((row) => ({ ...row, own: row.own.map(atNewPlaces) }));
  const { rows } = mergeRows(present, batchMarks(), onSheets(marks));
  const units = cells.text("season_units") === "us" ? "us" : "metric";
  const plan = planSeason({ sheetName, units, today: "=TODAY()", allowance: cells.number("season_allowance"), rows });
  await insertSheet(context, plan, "C7");
  return sheetName;
}
