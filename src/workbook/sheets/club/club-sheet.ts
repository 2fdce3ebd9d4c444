import type { UnitSystem } from "../../../functions/quantities";
import { InsertionRefused } from "../../grid/write/insert-sheet";
import type { NamedCells } from "../../grid/read/named-cells";
import { readAllSheets } from "../../grid/read/read-sheets";
import { factNames, type ClubEntry } from "./club-facts";
import { classMark, clubMark, clubVersion, factsName, mostBatches } from "./facts-plan";

const isClubSheet = (sheet: NamedCells): boolean =>
  sheet.has(clubMark) && sheet.has(factsName) && Number(sheet.value(clubMark)) <= clubVersion;

/** What members' facts are looked at as: side by side as a club does, or the predicted beside the measured as a class does. */
export type ClubKind = "club" | "class";
export const kindOfClub = (sheet: NamedCells): ClubKind => (sheet.has(classMark) ? "class" : "club");

/** Club and class sheets of the workbook, in the order of the tabs. */
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

/** A sheet that is full; with room for them all on a larger one, or without. */
export class NoRoom extends InsertionRefused {
  constructor(
    message: string,
    readonly largerWouldDo: boolean,
  ) {
    super(message);
    this.name = "NoRoom";
  }
}

/**
 * The first free row among the facts, counted from 0.
 *
 * @throws NoRoom where fewer rows than `wanted` are free
 */
export function roomFor(sheet: NamedCells, wanted: number): number {
  const rows = sheet.block(factsName);
  const next = rows.findLastIndex((row) => row.some((cell) => cell !== "")) + 1;
  const free = rows.length - next;
  if (wanted > free) {
    const larger = next + wanted <= mostBatches;
    throw new NoRoom(
      `“${sheet.sheetName}” has room for ${free} more ${free === 1 ? "batch" : "batches"}, not ${wanted}. ${larger ? "A larger copy would hold them all" : `No sheet holds more than ${mostBatches}: make another`}; nothing was written.`,
      larger,
    );
  }
  return next;
}

/** One member's batch, which is known by its mark, has one row. Several members may have brewed from one blank. @throws InsertionRefused */
export function refuseTwice(entries: readonly ClubEntry[]): void {
  const twice = entries.find(({ member, batch }, index) =>
    entries.slice(0, index).some((other) => batch.id !== "" && other.batch.id === batch.id && other.member === member),
  );
  if (twice)
    throw new InsertionRefused(
      `“${twice.batch.batchName}” of ${twice.member} is on the list twice: leave one of them out. Nothing was written.`,
    );
}
