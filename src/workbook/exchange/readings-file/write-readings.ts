import { quantity, type UnitSystem } from "../../../functions/quantities";
import { freeName, InsertionRefused, insertSheet } from "../../grid/write/insert-sheet";
import { address } from "../../grid/plan/addresses";
import { mainArea, tableOffsets } from "../../batch/derived/table-places";
import { batchFields } from "../../batch/fields";
import { isBatchSheet, isUnplugged, readSheet, unitsOf, type BatchSheet } from "../../batch/read/batch-sheets";
import type { CellValue } from "../../grid/read/named-cells";
import { writtenAgain } from "../../grid/words/cell-text";
import { shortened } from "../../grid/words/shortened";
import { unpluggedWords } from "../../batch/read/unplugged-batches";
import { withSecondLook } from "../../grid/read/second-look";
import { movingNotes } from "../../grid/write/moving-notes";
import { changeRanges, rangeChange } from "../../grid/write/change-ranges";
import { planLog } from "./log-plan";
import type { LogRow } from "./read-log";
import { thinned } from "./thin";

const { readings } = batchFields;
const { name: table } = mainArea(readings);
/** Counted from the first one. */
const columns = Object.values(tableOffsets(readings));
const { scale } = tableOffsets(readings);

/** The empty rows below the last reading of a batch sheet, and the moments that stand there already. */
export function roomForReadings(sheet: BatchSheet): {
  readonly firstRow: number;
  readonly rows: number;
  readonly taken: readonly number[];
  /** The rows that are filled. */
  readonly filled: readonly number[];
} {
  const { from, to } = sheet.area(table);
  const filled = Array.from({ length: to.row - from.row + 1 }, (_, index) => from.row + index).filter((row) =>
    columns.some((column) => column !== scale && sheet.at(row, from.column + column) !== ""),
  );
  const firstRow = (filled.at(-1) ?? from.row - 1) + 1;
  return { firstRow, rows: to.row - firstRow + 1, taken: filled.map((row) => Number(sheet.at(row, from.column))), filled };
}

/** The rows of a log that would be written to a batch sheet: those that do not stand there yet, thinned to the room that is left. */
export function rowsForSheet(rows: readonly LogRow[], room: ReturnType<typeof roomForReadings>): LogRow[] {
  return thinned(
    rows.filter(({ when }) => !room.taken.some((there) => Math.abs(there - when) < 1 / 1440)),
    room.rows,
  );
}

/**
 * Writes the readings that keep the course into the batch sheet's table, in one block: all of them or none. They stand by their
 * date among those that are there, which move down with their notes and are never written over; where a row that would
 * have to move holds a formula or has no date, they stand below all of them.
 *
 * @param corrected the device has taken the temperature into account: then the sample counts as being at the hydrometer's own temperature
 * @returns how many were written
 * @throws InsertionRefused
 */
export function writeReadings(
  context: Excel.RequestContext,
  sheetName: string,
  rows: readonly LogRow[],
  corrected: boolean,
): Promise<number> {
  return withSecondLook(() => lookAndWrite(context, sheetName, rows, corrected));
}

/** A row of the table as it will stand; `row` is where it stands now. */
interface Line {
  readonly when: number;
  readonly cells: readonly CellValue[];
  readonly row?: number;
}

/** The rows that are written, from the first one that changes: those of the file, and those that move for them. */
function byDate(
  sheet: BatchSheet,
  { firstRow: below, filled }: ReturnType<typeof roomForReadings>,
  fresh: readonly Line[],
): { readonly firstRow: number; readonly lines: readonly Line[] } {
  const left = sheet.area(table).from.column;
  const earliest = Math.min(...fresh.map(({ when }) => when));
  const later = filled.filter((row) => Number(sheet.at(row, left)) > earliest);
  const first = later[0];
  if (first === undefined) return { firstRow: below, lines: fresh };
  const moved = filled.filter((row) => row >= first);
  const formulas = moved.map((row) => columns.map((column) => sheet.formulaAt(row, left + column)));
  const mayMove =
    moved.every((row) => typeof sheet.at(row, left) === "number") &&
    formulas.flat().every((content) => typeof content !== "string" || !content.startsWith("="));
  if (!mayMove) return { firstRow: below, lines: fresh };
  const standing = moved.map((row): Line => ({
    row,
    when: Number(sheet.at(row, left)),
    cells: columns.map((column) => writtenAgain(sheet.formulaAt(row, left + column), sheet.at(row, left + column))),
  }));
  const lines: Line[] = [...standing, ...fresh].sort((one, other) => one.when - other.when);
  // Rows between them that were empty close up: what is left of the last ones is emptied.
  while (first + lines.length < below) lines.push({ when: Infinity, cells: columns.map(() => "") });
  return { firstRow: first, lines };
}

async function lookAndWrite(
  context: Excel.RequestContext,
  sheetName: string,
  rows: readonly LogRow[],
  corrected: boolean,
): Promise<number> {
  const sheet = await readSheet(context, sheetName);
  if (sheet && isUnplugged(sheet))
    throw new InsertionRefused(`${unpluggedWords(sheetName, "write readings into its table")} Nothing was written.`);
  if (!sheet || !isBatchSheet(sheet)) throw new InsertionRefused(`There is no batch sheet “${sheetName}” any more. Nothing was written.`);
  const room = roomForReadings(sheet);
  if (room.rows < 1)
    throw new InsertionRefused(
      `The table of readings on “${sheetName}” is full. Clear rows that you do not need, or keep the readings on a sheet of their own; nothing was written.`,
    );
  const chosen = rowsForSheet(rows, room);
  if (chosen.length === 0) throw new InsertionRefused("All these readings stand on the sheet already. Nothing was written.");
  const units = unitsOf(sheet);
  const degrees = (celsius: number): number => Number(quantity("temperature").fromCore(celsius, units).toFixed(1));
  const calibratedAt = sheet.number("calibrated_at");
  const usual = degrees(20);
  const fresh = chosen.map(({ when, gravity, temperatureC }): Line => ({
    when,
    cells: [
      when,
      Number(gravity.toFixed(4)),
      "SG",
      corrected || temperatureC === undefined ? (calibratedAt === "" ? usual : calibratedAt) : degrees(temperatureC),
      temperatureC === undefined ? "" : degrees(temperatureC),
    ],
  }));
  const { firstRow, lines } = byDate(sheet, room, fresh);
  const left = sheet.area(table).from.column;
  const range = `${address(firstRow, left)}:${address(firstRow + lines.length - 1, left + columns.length - 1)}`;
  const along = await movingNotes(
    context,
    sheetName,
    lines.flatMap(({ row }, index) =>
      row === undefined || row === firstRow + index
        ? []
        : columns.map((column) => ({ from: address(row, left + column), to: address(firstRow + index, left + column) })),
    ),
  );
  await changeRanges(
    context,
    [
      rangeChange(
        sheet,
        range,
        lines.map(({ cells }) => cells),
      ),
    ],
    { place: `the readings on “${sheetName}”`, ...(along && { along }) },
  );
  return chosen.length;
}

/**
 * Keeps every reading on a sheet of its own beside the batch: all or nothing.
 *
 * @returns the name of the sheet
 */
export async function keepLog(
  context: Excel.RequestContext,
  batchSheet: string,
  sheetNames: readonly string[],
  units: UnitSystem,
  rows: readonly LogRow[],
): Promise<string> {
  const sheetName = freeName(sheetNames, shortened(batchSheet, " log"));
  await insertSheet(context, planLog({ sheetName, batchSheet, units, rows }), "A1");
  return sheetName;
}
