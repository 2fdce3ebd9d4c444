import type { UnitSystem } from "../../../functions/quantities";
import { InsertionRefused, insertSheet } from "../../grid/write/insert-sheet";
import { address } from "../../grid/plan/addresses";
import { withSecondLook } from "../../grid/read/second-look";
import { changeRanges, rangeChange } from "../../grid/write/change-ranges";
import type { ClubEntry } from "./club-facts";
import { factsName, mostBatches, planClub } from "./club-plan";
import { clubSheet, factRow, roomFor, rowOnClub } from "./club-sheet";

/**
 * A new club sheet with these batches: all of it or nothing.
 *
 * @throws InsertionRefused when the name is taken, or there are more batches than fit side by side
 */
export async function insertClub(
  context: Excel.RequestContext,
  options: { readonly sheetName: string; readonly units: UnitSystem; readonly entries: readonly ClubEntry[] },
): Promise<void> {
  if (options.entries.length > mostBatches)
    throw new InsertionRefused(`A club sheet holds ${mostBatches} batches side by side, not ${options.entries.length}: make two.`);
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
  const sheet = await clubSheet(context, sheetName);
  const standing = entries.find((entry) => rowOnClub(sheet, entry) >= 0);
  if (standing)
    throw new InsertionRefused(
      `“${standing.batch.batchName}” of ${standing.member} stands on “${sheetName}” already. Nothing was written.`,
    );
  const next = roomFor(sheet, entries.length);
  const { from, to } = sheet.area(factsName);
  const top = from.row + next;
  const range = `${address(top, from.column)}:${address(top + entries.length - 1, to.column)}`;
  const facts = entries.map((entry) => factRow(sheet, entry));
  await changeRanges(context, [rangeChange(sheet, range, facts)], { place: `“${sheetName}”` });
}
