import type { BatchCell } from "../../batch/fields/cells";
import type { BatchSheet } from "../../batch/read/batch-sheets";
import { cellText } from "../../grid/words/cell-text";
import { address } from "../../grid/plan/addresses";
import type { CellContent } from "../../grid/plan/sheet-plan";
import { changeRanges, JustChanged, rangeChange, type RangeChange } from "../../grid/write/change-ranges";
import { isSame } from "../../grid/write/same-content";
import { readyNotes } from "./cell-notes";
import { ChangeRefused } from "./outcome";
import { readAgain } from "./read-again";

/** One cell that changes. It is spoken to by name, so that rows put in meanwhile do not matter. */
export interface CellChange {
  readonly name: BatchCell;
  /** Counted from the first cell of the name. */
  readonly row?: number;
  readonly column?: number;
  /** What the brewer calls the cell, for messages. */
  readonly label: string;
  readonly content: CellContent;
  /** Added to the cell's note, where Excel has notes. */
  readonly note?: string;
}

/**
 * Changes cells of a batch sheet: all of them or none. The sheet is read again first; a cell that no longer holds what
 * `seen` (the sheet as the brewer saw it) holds was written by somebody else meanwhile, and nothing is changed then.
 *
 * @throws ChangeRefused when nothing was changed; otherwise as `writeSurely`
 */
export async function changeCells(context: Excel.RequestContext, seen: BatchSheet, changes: readonly CellChange[]): Promise<void> {
  const { fresh } = await readAgain(context, seen);
  const places = changes.map((change) => placeOf(seen, fresh, change));
  const along = await readyNotes(
    context,
    seen.sheetName,
    changes.map(({ note }, index) => ({ note, at: places[index]?.range ?? "" })),
  );
  const place = `${places.map(({ range }) => range).join(", ")} on “${seen.sheetName}”`;
  try {
    await changeRanges(context, places, { place, ...(along && { along }) });
  } catch (problem) {
    if (!(problem instanceof JustChanged)) throw problem;
    const index = places.findIndex(({ range }) => range === problem.range);
    throw new ChangeRefused(`Somebody has just changed ${changes[index]?.label ?? problem.range}.`);
  }
}

/** Where a change lands, and what stands there. */
function placeOf(seen: BatchSheet, fresh: BatchSheet, { name, row = 0, column = 0, label, content }: CellChange): RangeChange {
  const cellIn = (cells: BatchSheet) => {
    const { from } = cells.area(name);
    return { row: from.row + row, column: from.column + column };
  };
  const [then, now] = [cellIn(seen), cellIn(fresh)];
  const before = fresh.formulaAt(now.row, now.column);
  if (!isSame(before, seen.formulaAt(then.row, then.column))) {
    throw new ChangeRefused(`Somebody has just changed ${label}: the cell ${before === "" ? "is now empty" : `now holds ${before}`}.`);
  }
  return rangeChange(fresh, address(now.row, now.column), [[asTyped(content)]]);
}

/** Words stay words: neither "=dull" nor "1/2" becomes anything else. */
const asTyped = (content: CellContent): CellContent => (typeof content === "string" ? cellText(content) : content);
