import type { UnitSystem } from "../../../functions/quantities";
import { cellText } from "../../grid/words/cell-text";
import { InsertionRefused } from "../../grid/write/insert-sheet";
import type { CellContent } from "../../grid/plan/sheet-plan";
import type { NamedCells } from "../../grid/read/named-cells";
import { readAllSheets } from "../../grid/read/read-sheets";
import { clubFacts, factNames, type ClubEntry } from "./club-facts";
import { clubMark, clubVersion, factsName } from "./club-plan";

const isClubSheet = (sheet: NamedCells): boolean =>
  sheet.has(clubMark) && sheet.has(factsName) && Number(sheet.value(clubMark)) <= clubVersion;

/** Club sheets of the workbook, in the order of the tabs. */
export async function clubSheets(context: Excel.RequestContext): Promise<NamedCells[]> {
  return (await readAllSheets(context)).filter(isClubSheet);
}

/** @throws InsertionRefused where no club sheet is called so any more */
export async function clubSheet(context: Excel.RequestContext, sheetName: string): Promise<NamedCells> {
  const sheet = (await clubSheets(context)).find((club) => club.sheetName === sheetName);
  if (!sheet) throw new InsertionRefused(`There is no club sheet “${sheetName}” any more. Nothing was written.`);
  return sheet;
}

export const unitsOfClub = (sheet: NamedCells): UnitSystem => (sheet.text("club_units") === "us" ? "us" : "metric");

/** Where a member's batch stands among the facts, counted from 0; -1 where it does not. A batch without a mark is never known again. */
export function rowOnClub(sheet: NamedCells, { member, batch }: ClubEntry): number {
  const [memberColumn, markColumn] = [factNames.indexOf("member"), factNames.indexOf("mark")];
  if (batch.id === "") return -1;
  return sheet.block(factsName).findIndex((row) => String(row[memberColumn]).trim() === member && String(row[markColumn]) === batch.id);
}

/** The row of facts of a batch as it is written, words as words. */
export function factRow(sheet: NamedCells, entry: ClubEntry): CellContent[] {
  const facts = clubFacts(entry, unitsOfClub(sheet));
  return factNames.map((name) => (typeof facts[name] === "string" ? cellText(facts[name]) : facts[name]));
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
  if (wanted > free)
    throw new InsertionRefused(
      `“${sheet.sheetName}” has room for ${free} more ${free === 1 ? "batch" : "batches"}, not ${wanted}. Make another club sheet; nothing was written.`,
    );
  return next;
}
