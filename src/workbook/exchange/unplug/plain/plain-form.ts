import type { PlainArguments } from "./plain-arguments";
import type { At, Workings } from "./workings";

/** Which cell of a spilled answer: 0, 0 is the first. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

/**
 * A worksheet function as a plain spreadsheet formula. What the call wrapper does (blanks, limits, units) is added
 * around it from the function's own description, so that only the sum itself stands here.
 */
export interface PlainForm {
  /** The sum, in the core's unit where the answer is a number, as shown where it is a grid. */
  readonly sum: (x: PlainArguments, place: Place, at: At) => string;
  /** What must hold besides the limits of each argument; otherwise the answer is #N/A. */
  readonly holds?: (x: PlainArguments) => readonly string[];
  /** What is not filled in yet besides arguments: where any of it holds the answer is blank. */
  readonly waits?: (x: PlainArguments) => readonly string[];
  /** Cells of its own that the sum rests on, where one formula would be too long; the sum is told where they stand. */
  readonly workings?: (x: PlainArguments) => Workings;
  /** For a grid: how many cells the answer fills. */
  readonly size?: (x: PlainArguments) => { readonly rows: number; readonly columns: number };
}

/** A function that always becomes a value, with the reason in words. */
export interface ValueOnly {
  readonly value: string;
}

export const isValueOnly = (form: PlainForm | ValueOnly): form is ValueOnly => "value" in form;
