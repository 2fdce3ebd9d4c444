import type { CellValue } from "../../grid/read/named-cells";

/** A cell that can be repaired by entering a formula into it. */
export interface Repair {
  readonly sheet: string;
  readonly address: string;
  /** What to enter. */
  readonly formula: string;
  /** What stood there when it was checked: the formula, or the constant. */
  readonly was: CellValue;
  /** "stuck": Excel left it at #NAME?; "overwritten": a planned formula that is no formula any more. */
  readonly kind: "stuck" | "overwritten";
}

export interface Finding {
  readonly sheet: string;
  /** Where to look; left out when it concerns the sheet as a whole. */
  readonly address?: string;
  /** "stop": somebody could get hurt or the batch be lost; "look": wants a second look; "fill": still to be filled in. */
  readonly weight: "stop" | "look" | "fill";
  /** What is wrong, and what to do. */
  readonly words: string;
  readonly repair?: Repair;
  /** The rule by which it is wrong, "course.rising"; a line of the sheet's own checks that speaks by it is left out where this tells more. */
  readonly rule?: string;
}

export const weights = ["stop", "look", "fill"] as const;
