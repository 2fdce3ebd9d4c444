/** What stands in one argument of a call, ready to be put into a plain formula. */
export type Operand =
  | { readonly kind: "omitted" }
  | { readonly kind: "constant"; readonly value: number | string | boolean }
  /** Something with one value: a cell, a name, an expression. */
  | { readonly kind: "text"; readonly text: string }
  | RangeOperand;

/** A range that is taken whole: a table or a list. */
export interface RangeOperand {
  readonly kind: "range";
  readonly rows: number;
  readonly columns: number;
  /** Whether its first row was a heading when the copy was made: then the texts below begin with the second one. */
  readonly heading: boolean;
  /** Its column (0 is the first) without the heading, as a reference. */
  readonly column: (index: number) => string;
  /** All of it, without the heading. */
  readonly all: string;
  /** One cell, row 0 being the first below the heading. */
  readonly cell: (row: number, column: number) => string;
}
