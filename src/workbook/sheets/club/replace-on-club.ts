import { writtenAgain } from "../../grid/words/cell-text";
import { InsertionRefused } from "../../grid/write/insert-sheet";
import { address } from "../../grid/plan/addresses";
import type { CellContent } from "../../grid/plan/sheet-plan";
import type { CellValue, NamedCells } from "../../grid/read/named-cells";
import { withSecondLook } from "../../grid/read/second-look";
import { changeRanges, rangeChange } from "../../grid/write/change-ranges";
import { clubFacts, factNames, type ClubEntry, type FactName } from "./club-facts";
import { clubSheet, refuseTwice, roomFor, rowOnClub, unitsOfClub } from "./club-sheet";
import { factRow, factsName } from "./facts-plan";

/** One fact of a batch that taking it in anew would change. */
export interface FactChange {
  readonly fact: FactName;
  readonly was: CellValue;
  readonly becomes: CellContent;
}

/** A member's batch that stands on the club sheet already. */
export interface Standing {
  readonly entry: ClubEntry;
  readonly changes: readonly FactChange[];
  /** Its row among the facts, and what stood there when the user was shown the changes. */
  readonly row: number;
  readonly seen: readonly CellValue[];
}

/**
 * Which of these batches stand on the club sheet already under the same member, and what replacing them would change.
 *
 * @throws InsertionRefused where the club sheet is gone
 */
export async function standingOnClub(
  context: Excel.RequestContext,
  sheetName: string,
  entries: readonly ClubEntry[],
): Promise<readonly Standing[]> {
  const sheet = await clubSheet(context, sheetName);
  refuseTwice(entries);
  return entries.flatMap((entry) => standing(sheet, entry) ?? []);
}

/**
 * Puts these batches onto the club sheet: one that stands there already in its own row in place of what was, the others
 * below. One write over the facts, so all of it or nothing; what the user keeps beside the facts, and notes at cells, stay.
 *
 * @param agreed what the user was shown and said yes to
 * @throws InsertionRefused where a row is not what the user was shown, or there is no room for the others
 */
export function replaceOnClub(
  context: Excel.RequestContext,
  sheetName: string,
  entries: readonly ClubEntry[],
  agreed: readonly Standing[],
): Promise<void> {
  return withSecondLook(() => lookAndReplace(context, sheetName, entries, agreed));
}

async function lookAndReplace(
  context: Excel.RequestContext,
  sheetName: string,
  entries: readonly ClubEntry[],
  agreed: readonly Standing[],
): Promise<void> {
  const sheet = await clubSheet(context, sheetName);
  refuseTwice(entries);
  const seen = sheet.formulaBlock(factsName);
  const rows: CellValue[][] = sheet
    .block(factsName)
    .map((values, row) => values.map((value, column) => writtenAgain(seen[row]?.[column] ?? "", value)));
  const written = new Set<number>();
  const place = (row: number, entry: ClubEntry): void => {
    rows[row] = factRow(entry, unitsOfClub(sheet));
    written.add(row);
  };
  const others: ClubEntry[] = [];
  for (const entry of entries) {
    const now = standing(sheet, entry);
    const then = agreed.find((one) => one.entry === entry);
    if (now?.row !== then?.row || JSON.stringify(now?.seen) !== JSON.stringify(then?.seen))
      throw new InsertionRefused(
        `Somebody has changed “${sheetName}” since you looked at it. Nothing was written; look at the changes again.`,
      );
    if (now) place(now.row, entry);
    else others.push(entry);
  }
  const next = roomFor(sheet, others.length);
  others.forEach((entry, index) => place(next + index, entry));

  const { from, to } = sheet.area(factsName);
  const [first, last] = [Math.min(...written), Math.max(...written)];
  const range = `${address(from.row + first, from.column)}:${address(from.row + last, to.column)}`;
  await changeRanges(context, [rangeChange(sheet, range, rows.slice(first, last + 1))], { place: `“${sheetName}”` });
}

function standing(sheet: NamedCells, entry: ClubEntry): Standing | undefined {
  const row = rowOnClub(sheet, entry);
  const values = sheet.block(factsName)[row];
  if (!values) return undefined;
  const facts = clubFacts(entry, unitsOfClub(sheet));
  const changes = factNames.flatMap((fact, column): FactChange[] => {
    const was = values[column] ?? "";
    return isAlike(was, facts[fact]) ? [] : [{ fact, was, becomes: facts[fact] }];
  });
  return { entry, changes, row, seen: sheet.formulaBlock(factsName)[row] ?? [] };
}

/** Figures that differ by less than anybody can see are the same. */
const isAlike = (was: CellValue, becomes: CellContent): boolean =>
  typeof was === "number" && typeof becomes === "number" ? Math.abs(was - becomes) < 1e-9 : String(was) === String(becomes);
