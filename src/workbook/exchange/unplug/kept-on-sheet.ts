import { address, block as blockOf, localAddress } from "../../grid/plan/addresses";
import { fingerprint } from "./fingerprint";
import { keptFormula, type KeptFormula } from "./kept-formula";

/** A formula that a note of a sheet keeps. */
export interface KeptOnSheet extends KeptFormula {
  /** Where the note is now. */
  readonly cell: string;
  /** All of the note. */
  readonly text: string;
}

/** Asks where the notes stand that keep a formula, of notes whose content was loaded; after the next `context.sync()` the answer can be called. */
export function keptOnSheet(notes: Excel.NoteCollection): () => KeptOnSheet[] {
  const asked = notes.items.flatMap((note) => {
    const kept = keptFormula(note.content);
    return kept ? [{ kept, place: note.getLocation().load("address"), text: note.content }] : [];
  });
  return () => asked.map(({ kept, place, text }) => ({ ...kept, text, cell: localAddress(place.address).split(":")[0] ?? "" }));
}

/** The first cell that is not as it was written when the sheet was unplugged; undefined where all of them are. */
export function changedCell(
  kept: KeptOnSheet,
  contentAt: (row: number, column: number) => unknown,
): { readonly cell: string; readonly why: "moved" | "typed over" } | undefined {
  const { from, to } = blockOf(kept.block);
  if (address(from.row, from.column) !== kept.cell) return { cell: kept.cell, why: "moved" };
  const width = to.column - from.column + 1;
  for (const [index, mark] of kept.marks.entries()) {
    const [row, column] = [from.row + Math.floor(index / width), from.column + (index % width)];
    if (fingerprint(contentAt(row, column)) !== mark) return { cell: address(row, column), why: "typed over" };
  }
  return undefined;
}
