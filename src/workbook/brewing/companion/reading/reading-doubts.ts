import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { mainArea } from "../../../batch/derived/table-places";
import { batchFields } from "../../../batch/fields";
import { ofTheNewest } from "../../../batch/rules/course";
import { newlySaid, type Proposed } from "../../../batch/rules/what-it-says";
import { momentShown } from "../../../grid/words/day-words";
import { firstEmptyRow } from "./add-reading";
import type { Measured } from "./corrected";
import { readingCells, readingColumns, type NewReading } from "./reading-line";

/** The clocks of two devices may differ by so much, in days. */
const clockSlack = 10 / 1440;

/** The lines that judge a reading. What else of the sheet moves with it is told where it is asked for. */
export const linesOfReadings = ["beer-temperature", "course", "finished"] as const;

/**
 * What the sheet's checks would say of a reading that they do not say now, before it is written; and a moment to come, which no
 * sheet knows of. Each is asked about, none is decided for the brewer.
 */
export function readingDoubts(sheet: BatchSheet, reading: NewReading, now: number): string[] {
  const newest = sheet.knownNumber("last_reading");
  const always = newest === undefined || reading.when >= newest ? ofTheNewest : undefined;
  const said = newlySaid(sheet, proposedReading(sheet, reading), linesOfReadings, always).map(({ words }) => words);
  return reading.when > now + clockSlack ? [`${momentShown(reading.when)} is still to come.`, ...said] : said;
}

/** Why a reading cannot be corrected: by the sheet's own words where it is a usual slip, such as points for a gravity. */
export function readingProblem(sheet: BatchSheet, measured: Measured, problem: string, now: number): string {
  const { instrument, reading, scale, sampleTemperature } = measured;
  if (problem === "" || instrument !== "hydrometer" || reading === "" || sampleTemperature === "") return problem;
  const proposed = proposedReading(sheet, { reading, scale, sampleTemperature, gravity: reading, when: now, beerTemperature: "" });
  return newlySaid(sheet, proposed, ["course"])[0]?.words ?? problem;
}

/** The cells of the table with a reading in it; a full table, which gets a row more, is asked without its oldest line. */
export function proposedReading(sheet: BatchSheet, reading: NewReading): Proposed[] {
  const row = firstEmptyRow(sheet);
  if (row !== undefined) return readingCells(reading, row);
  const { name } = mainArea(batchFields.readings);
  const { from, to } = sheet.area(name);
  const last = to.row - from.row;
  const movedUp = Array.from({ length: last }, (_, line): Proposed[] =>
    readingColumns.map((column) => ({
      name,
      row: line,
      column,
      content: sheet.at(from.row + line + 1, from.column + column),
    })),
  );
  return [...movedUp.flat(), ...readingCells(reading, last)];
}
