import type { UnitSystem } from "../../../functions/quantities";
import { freeName } from "../../batch/insert-batch";
import { InsertionRefused, insertSheet } from "../../grid/write/insert-sheet";
import { address } from "../../grid/plan/addresses";
import type { CellContent } from "../../grid/plan/sheet-plan";
import { readAllSheets } from "../../grid/read/read-sheets";
import { withSecondLook } from "../../grid/read/second-look";
import { writtenAgain } from "../../grid/words/cell-text";
import { changeRanges, rangeChange } from "../../grid/write/change-ranges";
import { planClass } from "./class-plan";
import type { ClubEntry } from "./club-facts";
import { planClub } from "./club-plan";
import { clubSheet, kindOfClub, refuseTwice, roomFor, rowOnClub, unitsOfClub, type ClubKind } from "./club-sheet";
import { factRow, factsName, mostBatches, type FactsOnSheet } from "./facts-plan";

const plans: Readonly<Record<ClubKind, (facts: FactsOnSheet) => ReturnType<typeof planClub>>> = { club: planClub, class: planClass };

/**
 * A new club or class sheet with these batches: all of it or nothing.
 *
 * @throws InsertionRefused when the name is taken, a batch comes twice, or there are more than one sheet holds
 */
export async function insertClub(
  context: Excel.RequestContext,
  options: {
    readonly sheetName: string;
    readonly units: UnitSystem;
    readonly entries: readonly ClubEntry[];
    readonly kind?: ClubKind;
  },
): Promise<void> {
  const { sheetName, units, entries, kind = "club" } = options;
  if (entries.length > mostBatches) throw new InsertionRefused(`One sheet holds ${mostBatches} batches, not ${entries.length}: make two.`);
  refuseTwice(entries);
  await insertSheet(context, plans[kind]({ sheetName, units, rows: entries.map((entry) => factRow(entry, units)) }), "A1");
}

/**
 * Adds batches to a club or class sheet that is there, below the facts it holds: one write, so all of them or none. A batch of
 * the same member that stands there already is refused: `replaceOnClub` puts it into its row.
 *
 * @throws InsertionRefused, `NoRoom` where the sheet is full
 */
export function addToClub(context: Excel.RequestContext, sheetName: string, entries: readonly ClubEntry[]): Promise<void> {
  return withSecondLook(() => lookAndAdd(context, sheetName, entries));
}

async function lookAndAdd(context: Excel.RequestContext, sheetName: string, entries: readonly ClubEntry[]): Promise<void> {
  const sheet = await clubSheet(context, sheetName);
  refuseTwice(entries);
  const standing = entries.find((entry) => rowOnClub(sheet, entry) >= 0);
  if (standing)
    throw new InsertionRefused(
      `“${standing.batch.batchName}” of ${standing.member} stands on “${sheetName}” already. Nothing was written.`,
    );
  const next = roomFor(sheet, entries.length);
  const { from, to } = sheet.area(factsName);
  const top = from.row + next;
  const range = `${address(top, from.column)}:${address(top + entries.length - 1, to.column)}`;
  const facts = entries.map((entry) => factRow(entry, unitsOfClub(sheet)));
  await changeRanges(context, [rangeChange(sheet, range, facts)], { place: `“${sheetName}”` });
}

/**
 * A larger copy of a club or class sheet, with these batches besides: a sheet of its own, the full one stays as it is.
 *
 * @returns its name
 * @throws InsertionRefused where there are more than one sheet holds
 */
export async function insertLarger(context: Excel.RequestContext, sheetName: string, entries: readonly ClubEntry[]): Promise<string> {
  const sheet = await clubSheet(context, sheetName);
  refuseTwice(entries);
  const values = sheet.block(factsName);
  const standing = sheet
    .formulaBlock(factsName)
    .map((row, index) => row.map((formula, column): CellContent => contentOf(writtenAgain(formula, values[index]?.[column]))))
    .filter((row) => row.some((cell) => cell !== ""));
  if (standing.length + entries.length > mostBatches)
    throw new InsertionRefused(`One sheet holds ${mostBatches} batches, not ${standing.length + entries.length}. Nothing was written.`);
  const units = unitsOfClub(sheet);
  const larger = freeName(
    (await readAllSheets(context)).map((other) => other.sheetName),
    sheetName,
  );
  const rows = [...standing, ...entries.map((entry) => factRow(entry, units))];
  await insertSheet(context, plans[kindOfClub(sheet)]({ sheetName: larger, units, rows }), "A1");
  return larger;
}

const contentOf = (cell: string | number | boolean): CellContent => (typeof cell === "boolean" ? String(cell) : cell);
