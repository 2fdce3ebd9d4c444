import type { Sheet, WriteSheet } from "hucre/xlsx";

type FileCells = NonNullable<WriteSheet["cells"]>;

/** One note in the grid's resource, which is `{ sheet id: { row: { column: note } } }`. */
export interface GridNote {
  id: string;
  row: number;
  col: number;
  width: number;
  height: number;
  note: string;
  show: boolean;
}
export type GridNotes = Record<number, Record<number, GridNote>>;

/** The size of a note in pixels, where the file tells none. */
const WIDTH = 200;
const HEIGHT = 80;

/** @param sizes the frames of the notes by "row,column" (see note-frames.ts) */
export function notesFromFile(sheet: Sheet, sizes: ReadonlyMap<string, { width: number; height: number }>): GridNotes {
  const notes: GridNotes = {};
  for (const [key, cell] of sheet.cells ?? []) {
    if (!cell.comment) continue;
    const [row, col] = key.split(",").map(Number) as [number, number];
    (notes[row] ??= {})[col] = {
      id: `note-${key}`,
      row,
      col,
      width: WIDTH,
      height: HEIGHT,
      ...sizes.get(key),
      note: cell.comment.text,
      show: false,
    };
  }
  return notes;
}

/** Puts the notes on the cells of a file. Notes carry no author: the file names no person. */
export function putNotes(notes: GridNotes | undefined, cells: FileCells): void {
  for (const note of Object.values(notes ?? {}).flatMap((row) => Object.values(row))) {
    const key = `${note.row},${note.col}`;
    cells.set(key, { ...cells.get(key), comment: { author: "", text: note.note } });
  }
}
