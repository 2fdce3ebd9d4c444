import type { BatchSheet } from "../../../batch/read/batch-sheets";
import type { Asked } from "../ask";
import { isAllowed, packagedAs, wouldShow } from "./packaging-judged";
import type { PackagingInput } from "./packaging-form";

/** What the sheet will show for a form, by its own formulas. Each figure has its own problem where it has none. */
export interface PackagingFigures {
  /** The volume that the sugar is for: what is lost in racking is not dosed. */
  readonly dosed: number;
  readonly residual: Asked;
  readonly sugar: Asked;
  /** In a bottle at the warmest place, or to set on the keg. */
  readonly pressure: Asked;
  /** To clean and have ready: the last one is part-filled. */
  readonly bottles: Asked;
  readonly firstTaste: Asked;
}

const withheld: Asked = { problem: "none is given: see the pressure check" };

export function packagingFigures(sheet: BatchSheet, input: PackagingInput): PackagingFigures {
  const world = packagedAs(sheet, input);
  const shown = (name: string): Asked => {
    const asked = wouldShow(world, name);
    return asked.problem === "" ? withheld : asked;
  };
  return {
    dosed: wouldShow(world, "beer_volume-N(bottling_loss)").value ?? NaN,
    residual: wouldShow(world, "residual_gas"),
    sugar: shown("sugar_mass"),
    pressure: shown(input.into === "keg" ? "keg_pressure" : "bottle_pressure"),
    bottles: wouldShow(world, "bottles_ready"),
    // What must not be filled is not tasted either.
    firstTaste: isAllowed(world, input) && input.packagedOn !== "" ? wouldShow(world, "first_taste") : { problem: "" },
  };
}
