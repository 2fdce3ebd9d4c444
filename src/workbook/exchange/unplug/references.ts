import { columnLetters, columnNumber } from "../../grid/plan/addresses";
import type { RangeOperand } from "./plain/operands";

export interface Shape {
  readonly rows: number;
  readonly columns: number;
}

/** What is known of the cells around a formula: how large a reference is, and what stands in it now. */
export interface Surroundings {
  /** Size of a reference as it is written in a formula (range, name, table, `B2#`); undefined for anything else. */
  readonly shapeOf: (reference: string) => Shape | undefined;
  /** Its cells' values, where they are in view. */
  readonly valuesOf: (reference: string) => readonly (readonly unknown[])[] | undefined;
  /** "F54:F65" for `F54#` where that spill is written as single cells; undefined for any other reference. */
  readonly spillRange?: (reference: string) => string | undefined;
}

interface Corner {
  readonly columnMark: string;
  readonly column: number;
  readonly rowMark: string;
  readonly row: number;
}

const a1 = /^((?:'(?:[^']|'')+'|[^'!:]+)!)?(\$?)([A-Z]{1,3})(\$?)(\d{1,7})(?::(\$?)([A-Z]{1,3})(\$?)(\d{1,7}))?$/i;

/** "B2:D9", "$B$2", "'Batch 1'!B2:B9": the corners of a plain address; undefined for names, tables, whole columns. */
export function corners(reference: string): { prefix: string; from: Corner; to: Corner } | undefined {
  const match = a1.exec(reference);
  if (!match) return undefined;
  const [, prefix = "", columnMark = "", column = "", rowMark = "", row = "", ...second] = match;
  const from = { columnMark, column: columnNumber(column), rowMark, row: Number(row) };
  const [toColumnMark = "", toColumn, toRowMark = "", toRow] = second;
  return {
    prefix,
    from,
    to:
      toColumn === undefined ? from : { columnMark: toColumnMark, column: columnNumber(toColumn), rowMark: toRowMark, row: Number(toRow) },
  };
}

const cornerText = ({ columnMark, column, rowMark, row }: Corner): string => `${columnMark}${columnLetters(column)}${rowMark}${row}`;

/** One cell of a reference, both counted from 0: its own address where the reference is one, else by INDEX. */
export function cellOf(reference: string, row: number, column: number): string {
  const found = corners(reference);
  if (!found) return `INDEX(${reference},${row + 1},${column + 1})`;
  const { prefix, from } = found;
  return prefix + cornerText({ ...from, row: from.row + row, column: from.column + column });
}

function block(reference: string, shape: Shape, firstRow: number, column: number, width: number): string {
  const found = corners(reference);
  if (!found) {
    if (firstRow > 0) return `INDEX(${reference},${firstRow + 1},${column + 1}):INDEX(${reference},${shape.rows},${column + width})`;
    return width === shape.columns ? reference : `INDEX(${reference},0,${column + 1})`;
  }
  const { prefix, from, to } = found;
  const first = { ...from, row: from.row + firstRow, column: from.column + column };
  return `${prefix}${cornerText(first)}:${cornerText({ ...to, column: from.column + column + width - 1 })}`;
}

/** A reference that a call takes whole. */
export function rangeOperand(reference: string, shape: Shape, heading: boolean): RangeOperand {
  const firstRow = heading ? 1 : 0;
  return {
    kind: "range",
    ...shape,
    heading,
    all: block(reference, shape, firstRow, 0, shape.columns),
    column: (index) => block(reference, shape, firstRow, index, 1),
    cell: (row, column) => cellOf(reference, row + firstRow, column),
  };
}
