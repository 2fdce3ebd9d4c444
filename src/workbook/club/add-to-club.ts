import type { UnitSystem } from "../../functions/quantities";
import { cellText } from "../batch/cell-text";
import { InsertionRefused, insertSheet } from "../insert-sheet";
import { address } from "../plan/addresses";
import type { NamedCells } from "../read/named-cells";
import { readAllSheets } from "../read/read-sheets";
import { withSecondLook } from "../second-look";
import { writeUnlessChanged } from "../write/write-unless-changed";
import { clubFacts, factNames, type ClubEntry } from "./club-facts";
import { clubMark, clubVersion, factsName, mostBatches, planClub } from "./club-plan";

export const isClubSheet = (sheet: NamedCells): boolean => sheet.has(clubMark) && sheet.has(factsName) && Number(sheet.value(clubMark)) <= clubVersion;

/** Club sheets of the workbook, in the order of the tabs. */
export async function clubSheets(context: Excel.RequestContext): Promise<NamedCells[]> {
  return (await readAllSheets(context)).filter(isClubSheet);
}

/**
 * A new club sheet with these batches: all of it or nothing.
 *
 * @throws InsertionRefused when the name is taken, or there are more batches than fit side by side
 */
export async function insertClub(context: Excel.RequestContext, options: { readonly sheetName: string; readonly units: UnitSystem; readonly entries: readonly ClubEntry[] }): Promise<void> {
  if (options.entries.length > mostBatches) throw new InsertionRefused(`A club sheet holds ${mostBatches} batches side by side, not ${options.entries.length}: make two.`);
  await insertSheet(context, planClub(options), "A1");
}

/**
 * Adds batches to a club sheet that is there, below the facts it holds: one write, so all of them or none. A batch of
 * the same member that stands there already is refused: `replaceOnClub` puts it into its row.
 *
 * @throws InsertionRefused
 */
export function addToClub(context: Excel.RequestContext, sheetName: string, entries: readonly ClubEntry[]): Promise<void> {
  return withSecondLook(() => lookAndAdd(context, sheetName, entries));
}

async function lookAndAdd(context: Excel.RequestContext, sheetName: string, entries: readonly ClubEntry[]): Promise<void> {
  const sheet = (await clubSheets(context)).find((club) => club.sheetName === sheetName);
  if (!sheet) throw new InsertionRefused(`There is no club sheet “${sheetName}” any more. Nothing was written.`);
  const rows = sheet.block(factsName);
  const markColumn = factNames.indexOf("mark");
  for (const { member, batch } of entries) {
    const there = rows.some((row) => String(row[0]).trim() === member && String(row[markColumn]) === batch.id && batch.id !== "");
    if (there) throw new InsertionRefused(`“${batch.batchName}” of ${member} stands on “${sheetName}” already. Nothing was written.`);
  }
  const last = roomFor(sheet, entries.length) - 1;
  const units: UnitSystem = sheet.text("club_units") === "us" ? "us" : "metric";
  const { from, to } = sheet.area(factsName);
  const made = entries.map((entry) => clubFacts(entry, units));
  const top = from.row + last + 1;
  const range = `${address(top, from.column)}:${address(top + entries.length - 1, to.column)}`;
  const values = made.map((facts) => factNames.map((name) => (typeof facts[name] === "string" ? cellText(facts[name]) : facts[name])));
  const before = sheet.formulaBlock(factsName).slice(last + 1, last + 1 + entries.length);
  await writeUnlessChanged(context, [{ sheetName, range, before }], () => { context.workbook.worksheets.getItem(sheetName).getRange(range).values = values; });
}

/**
 * The first free row among the facts, counted from 0.
 *
 * @throws InsertionRefused where fewer rows than `wanted` are free
 */
export function roomFor(sheet: NamedCells, wanted: number): number {
  const rows = sheet.block(factsName);
  const next = rows.findLastIndex((row) => row.some((cell) => cell !== "")) + 1;
  const free = rows.length - next;
  if (wanted > free) throw new InsertionRefused(`“${sheet.sheetName}” has room for ${free} more ${free === 1 ? "batch" : "batches"}, not ${wanted}. Make another club sheet; nothing was written.`);
  return next;
}
