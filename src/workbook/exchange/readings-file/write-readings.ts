import { quantity, type UnitSystem } from "../../../functions/quantities";
import { freeName, InsertionRefused, insertSheet } from "../../grid/write/insert-sheet";
import { address } from "../../grid/plan/addresses";
import { isBatchSheet, isUnplugged, readSheet, unitsOf } from "../../batch/read/batch-sheets";
import type { NamedCells } from "../../grid/read/named-cells";
import { unpluggedWords } from "../../batch/read/unplugged-batches";
import { withSecondLook } from "../../grid/read/second-look";
import { changeRanges, rangeChange } from "../../grid/write/change-ranges";
import { planLog } from "./log-plan";
import type { LogRow } from "./read-log";
import { thinned } from "./thin";

/** The empty rows below the last reading of a batch sheet, and the moments that stand there already. */
export function roomForReadings(sheet: NamedCells): {
  readonly firstRow: number;
  readonly rows: number;
  readonly taken: readonly number[];
} {
  const { from, to } = sheet.area("readings");
  const filled = Array.from({ length: to.row - from.row + 1 }, (_, index) => from.row + index).filter((row) =>
    [0, 1, 2, 3, 4].some((column) => column !== 2 && sheet.at(row, from.column - 1 + column) !== ""),
  );
  const firstRow = (filled.at(-1) ?? from.row - 1) + 1;
  return { firstRow, rows: to.row - firstRow + 1, taken: filled.map((row) => Number(sheet.at(row, from.column - 1))) };
}

/** The rows of a log that would be written to a batch sheet: those that do not stand there yet, thinned to the room that is left. */
export function rowsForSheet(rows: readonly LogRow[], room: ReturnType<typeof roomForReadings>): LogRow[] {
  return thinned(
    rows.filter(({ when }) => !room.taken.some((there) => Math.abs(there - when) < 1 / 1440)),
    room.rows,
  );
}

/**
 * Writes the readings that keep the course into the empty rows of the batch sheet's table, in one block: all of them
 * or none, and never over a reading that stands there.
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
  const left = sheet.area("readings").from.column - 1;
  const range = `${address(room.firstRow, left)}:${address(room.firstRow + chosen.length - 1, left + 4)}`;
  const values = chosen.map(({ when, gravity, temperatureC }) => [
    when,
    Number(gravity.toFixed(4)),
    "SG",
    corrected || temperatureC === undefined ? (calibratedAt === "" ? usual : calibratedAt) : degrees(temperatureC),
    temperatureC === undefined ? "" : degrees(temperatureC),
  ]);
  await changeRanges(context, [rangeChange(sheet, range, values)], { place: `the readings on “${sheetName}”` });
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
  const sheetName = freeName(sheetNames, `${batchSheet.slice(0, 26)} log`);
  await insertSheet(context, planLog({ sheetName, batchSheet, units, rows }), "A1");
  return sheetName;
}
