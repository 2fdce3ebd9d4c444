import { cellText, writtenAgain } from "../../grid/words/cell-text";
import { hostWords } from "../../grid/words/host-words";
import { address, position } from "../../grid/plan/addresses";
import type { CellContent } from "../../grid/plan/sheet-plan";
import type { CellValue, NamedCells } from "../../grid/read/named-cells";
import { loadSheet, namedCells } from "../../grid/read/read-sheets";
import { isSame, JustChanged, writeUnlessChanged } from "../../grid/write/write-unless-changed";
import { readyNotes, type ReadyNotes } from "./cell-notes";
import { ChangeRefused, HalfChanged } from "./outcome";
import { readAgain } from "./read-again";

/** One cell that changes. It is spoken to by name, so that rows put in meanwhile do not matter. */
export interface CellChange {
  readonly name: string;
  /** Counted from the first cell of the name. */
  readonly row?: number;
  readonly column?: number;
  /** What the brewer calls the cell, for messages. */
  readonly label: string;
  readonly content: CellContent;
  /** Added to the cell's note, where Excel has notes. */
  readonly note?: string;
}

/** Where a change lands, and what stands there. */
interface Place {
  readonly address: string;
  readonly before: CellValue;
  /** The same, as it must be written to stand there again. */
  readonly again: CellValue;
  readonly content: CellContent;
}

/**
 * Changes cells of a batch sheet: all of them or none. The sheet is read again first; a cell that no longer holds what
 * `seen` (the sheet as the brewer saw it) holds was written by somebody else meanwhile, and nothing is changed then.
 *
 * @throws ChangeRefused when nothing was changed, HalfChanged when it could not be taken back; whatever the host throws
 *   otherwise, after everything was taken back
 */
export async function changeCells(context: Excel.RequestContext, seen: NamedCells, changes: readonly CellChange[]): Promise<void> {
  const { sheet, fresh } = await readAgain(context, seen);
  const places = changes.map((change) => placeOf(seen, fresh, change));
  const notes = await readyNotes(
    context,
    sheet,
    changes.map(({ note }, index) => ({ note, at: places[index]?.address ?? "" })),
  );
  try {
    context.application.suspendApiCalculationUntilNextSync();
    await writeUnlessChanged(
      context,
      places.map(({ address: range, before }) => ({ sheetName: seen.sheetName, range, before: [[before]] })),
      () => {
        for (const { address: at, content } of places) sheet.getRange(at).values = [[asTyped(content)]];
        notes.write();
      },
    );
  } catch (problem) {
    if (problem instanceof JustChanged) {
      await notes.takeBack(context, sheet);
      const index = places.findIndex((place) => place.address === problem.range);
      throw new ChangeRefused(`Somebody has just changed ${changes[index]?.label ?? problem.range}.`);
    }
    await putBack(context, seen.sheetName, places, notes, problem);
    throw problem;
  }
}

function placeOf(seen: NamedCells, fresh: NamedCells, { name, row = 0, column = 0, label, content }: CellChange): Place {
  const cellIn = (cells: NamedCells) => {
    const { from } = cells.area(name);
    return { row: from.row + row, column: from.column + column };
  };
  const [then, now] = [cellIn(seen), cellIn(fresh)];
  const before = fresh.formulaAt(now.row, now.column);
  if (!isSame(before, seen.formulaAt(then.row, then.column))) {
    throw new ChangeRefused(`Somebody has just changed ${label}: the cell ${before === "" ? "is now empty" : `now holds ${before}`}.`);
  }
  return { address: address(now.row, now.column), before, again: writtenAgain(before, fresh.at(now.row, now.column)), content };
}

/** Words stay words: neither "=dull" nor "1/2" becomes anything else. */
const asTyped = (content: CellContent): CellContent => (typeof content === "string" ? cellText(content) : content);

/** Excel carries out what stands before the failing step: wherever ours stands now, what was there comes back. */
async function putBack(
  context: Excel.RequestContext,
  sheetName: string,
  places: readonly Place[],
  notes: ReadyNotes,
  problem: unknown,
): Promise<void> {
  try {
    const sheet = context.workbook.worksheets.getItemOrNullObject(sheetName);
    await context.sync();
    if (sheet.isNullObject) return; // deleted meanwhile: there is nothing to put back
    const loaded = loadSheet(sheet);
    await context.sync();
    const now = namedCells(loaded);
    const ours = places.filter((place) => {
      const { row, column } = position(place.address);
      return isSame(now.formulaAt(row, column), place.content) && !isSame(place.content, place.before);
    });
    for (const { address: at, again } of ours) sheet.getRange(at).formulas = [[again]];
    await notes.takeBack(context, sheet);
    await context.sync();
  } catch {
    const cells = places.map((place) => place.address).join(", ");
    throw new HalfChanged(`Writing broke off and could not be taken back. Look at ${cells} on "${sheetName}". ${hostWords(problem)}`);
  }
}
