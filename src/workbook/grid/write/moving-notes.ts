import type { Along } from "./change-ranges";

/** A note that goes from one cell to another; `stands` is where it is before anything is written, where rows are inserted first. */
export interface NoteMove {
  readonly from: string;
  readonly to: string;
  readonly stands?: string;
  /** A note that comes where it was, or would have been. */
  readonly leaves?: string | undefined;
}

/**
 * Notes that go along when what they speak of moves. Notes came with ExcelApi 1.18: without them there is nothing to move. One
 * `context.sync()`; undefined where none of the cells has a note or gets one.
 */
export async function movingNotes(
  context: Excel.RequestContext,
  sheetName: string,
  moves: readonly NoteMove[],
): Promise<Along | undefined> {
  if (moves.length === 0 || !Office.context.requirements.isSetSupported("ExcelApi", "1.18")) return undefined;
  const { notes } = context.workbook.worksheets.getItem(sheetName);
  const asked = moves.map((move) => ({ move, found: notes.getItemOrNullObject(move.stands ?? move.from).load("content") }));
  await context.sync();
  const kept = asked
    .map(({ move, found }) => ({ ...move, content: found.isNullObject ? undefined : found.content }))
    .filter(({ content, leaves }) => content !== undefined || leaves !== undefined);
  if (kept.length === 0) return undefined;
  const write = (): void => {
    // All of them go before any comes: one may come where another was.
    for (const { from, content, leaves } of kept) {
      if (content === undefined) notes.add(from, leaves ?? "");
      else if (leaves === undefined) notes.getItem(from).delete();
      else notes.getItem(from).content = leaves;
    }
    for (const { to, content } of kept) if (content !== undefined) notes.add(to, content);
  };
  const takeBack = async (): Promise<void> => {
    const cells = [...new Set(kept.flatMap(({ from, to }) => [from, to]))];
    const before = new Map(kept.map(({ from, content }) => [from, content]));
    const now = cells.map((cell) => ({ cell, found: notes.getItemOrNullObject(cell).load("content") }));
    await context.sync();
    for (const { cell, found } of now) {
      const content = before.get(cell);
      if (found.isNullObject) {
        if (content !== undefined) notes.add(cell, content);
      } else if (content === undefined) found.delete();
      else if (found.content !== content) found.content = content;
    }
    await context.sync();
  };
  return { write, takeBack };
}
