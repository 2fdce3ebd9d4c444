import type { NumberFormat } from "../../grid/plan/sheet-plan";
import type { BatchCell } from "../fields/cells";

/** A figure of a batch as its card shows it, and every list of batches with it: the cells in which it stands. */
export interface CardFigure {
  readonly label: string;
  readonly format: NumberFormat;
  /** Of a figure that is the same in both unit systems. */
  readonly unit?: string;
  readonly plan: BatchCell;
  readonly reached: BatchCell;
}

export const cardFigures = {
  originalGravity: { label: "Original gravity", format: "gravity", plan: "og_plan", reached: "og_shown" },
  finalGravity: { label: "Final gravity", format: "gravity", plan: "fg_plan", reached: "fg_reached" },
  alcohol: { label: "Alcohol", format: "one", unit: "% by volume", plan: "abv_plan", reached: "abv_reached" },
  bitterness: { label: "Bitterness", format: "whole", unit: "IBU", plan: "ibu_plan", reached: "ibu_reached" },
  colour: { label: "Colour", format: "one", plan: "colour_plan", reached: "colour_reached" },
  bottles: { label: "Bottles", format: "whole", plan: "bottles_plan", reached: "bottles_reached" },
  cost: {
    label: "Total cost, per bottle",
    format: "money",
    unit: "in all; for each bottle filled",
    plan: "cost_plan",
    reached: "cost_each",
  },
} as const satisfies Readonly<Record<string, CardFigure>>;
