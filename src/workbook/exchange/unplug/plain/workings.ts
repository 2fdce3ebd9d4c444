/** Where a cell of a block of workings stands, both counted from 0: "$K$212". */
export type At = (row: number, column: number) => string;

/** Cells beside a formula, for what is too long for one: row by row, "" where nothing stands. Each may speak of the others. */
export type Workings = (at: At) => readonly (readonly string[])[];

/** A column of a block, from a row down to another. */
export const columnOf = (at: At, column: number, from: number, to: number): string => `${at(from, column)}:${at(to, column)}`;
