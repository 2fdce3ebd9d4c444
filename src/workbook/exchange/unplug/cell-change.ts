import type { WorkingBlock } from "./working-cells";

/** Cells to write in place of one formula. */
export interface CellChange {
  /** The formula's own cell: "F54". */
  readonly cell: string;
  /** All cells that are written: "F54:F65". */
  readonly block: string;
  readonly contents: (string | number | boolean)[][];
  readonly formula: string;
  /** Why it is a value from now on; undefined where it still calculates. */
  readonly reason: string | undefined;
  /** Cells below the sheet that it rests on. */
  readonly workings: readonly WorkingBlock[];
}
