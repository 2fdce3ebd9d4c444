import type { Cell } from "../../grid/evaluate/cells";

/** A place in the workbook that the pane can jump to. */
export interface Place {
  readonly sheet: string;
  /** "B7" or "B7:C9". */
  readonly range: string;
}

export interface ArgumentExplanation {
  /** "final_gravity". */
  readonly name: string;
  readonly doc: string;
  /** "°C"; empty for words, tables and pure numbers. */
  readonly unit: string;
  /** As it stands in the formula; empty where it was left out. */
  readonly typed: string;
  /** Its present value in words: "1.051", "5 of 12 cells filled: 1.03, 1.018 …", "not given: metric is taken". */
  readonly shown: string;
  /** Where it comes from, when it is plainly a cell, a range or a name. */
  readonly place?: Place;
  /** Tables: the filled rows as they stand, headings first. */
  readonly table?: readonly (readonly string[])[];
  /** The error message is about this one. */
  readonly isWrong: boolean;
}

export interface Spread {
  /** "± 0.37 % by volume" without the sign: the number. */
  readonly value: number;
  /** What was taken for each reading: "original_gravity ± 0.002". */
  readonly assumed: readonly string[];
}

export interface CallExplanation {
  /** "BEER.ABV". */
  readonly id: string;
  readonly text: string;
  /** 1 outermost. */
  readonly depth: number;
  /** False where there is no such function. */
  readonly exists: boolean;
  readonly arguments: readonly ArgumentExplanation[];
  /** What it answers at present; undefined where only the sheet could work out its arguments. */
  readonly answer?: Cell;
  /** The answer in words, with its unit. */
  readonly shown: string;
  readonly unit: string;
  readonly spread?: Spread;
  /** Why there is no ±, where a reader may expect one. */
  readonly noSpread?: string;
  readonly problem?: Problem;
}

/** What is wrong, and what to do. */
export interface Problem {
  readonly what: string;
  readonly remedy: string;
  /** Where to do it, when that is another cell. */
  readonly place?: Place;
}

/** A cell that a rule of the printed checks speaks of. */
export interface SpokenCell {
  /** "volume_reached"; the address of a cell without a name. */
  readonly name: string;
  /** What stands beside it, "" where nothing does. */
  readonly label: string;
  readonly place: Place;
  readonly shown: string;
}

/** A line of the sheet's own checks: which rule speaks, and of what. */
export interface CheckExplanation {
  readonly label: string;
  /** "volumes.top-up-whole"; "" where none of the line's rules holds. */
  readonly rule: string;
  readonly state: "nothing found" | "look" | "stop";
  readonly words: string;
  /** What to do; "" where the words themselves say it. */
  readonly remedy: string;
  /** Those of the rule; of a line in which nothing was found, all that it looks at. */
  readonly cells: readonly SpokenCell[];
}

export interface CellExplanation {
  readonly sheet: string;
  readonly address: string;
  /** Names of the cell on its sheet: "og". */
  readonly names: readonly string[];
  readonly kind: "empty" | "constant" | "native" | "gyle";
  /** What the cell shows, as formatted. */
  readonly shown: string;
  readonly formula: string;
  /** The formula as the spreadsheet of this country writes it. */
  readonly written: string;
  /** The cell whose formula fills this one, when that is another. */
  readonly spilledFrom?: string;
  /** Innermost call last; a call stands before those in its arguments. */
  readonly calls: readonly CallExplanation[];
  /** What is wrong with the cell as a whole. */
  readonly problem?: Problem;
  /** Of a line of the sheet's own checks. */
  readonly check?: CheckExplanation;
}
