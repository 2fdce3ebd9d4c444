import { packBottles } from "../../../functions/pack/bottles";
import { packPressure } from "../../../functions/pack/pressure";
import { packPriming } from "../../../functions/pack/priming";
import { packReady } from "../../../functions/pack/ready";
import { packResidual } from "../../../functions/pack/residual";
import type { NamedCells } from "../../read/named-cells";
import { ask, type Asked } from "../ask";
import { unitsOf } from "../../read/batch-sheets";
import type { PackagingInput } from "./packaging-form";

/** What the sheet will show for a form, by the same functions. Each figure has its own problem where it has none. */
export interface PackagingFigures {
  readonly beer: number;
  readonly residual: Asked;
  readonly sugar: Asked;
  /** In a bottle at the warmest place, or to set on the keg. */
  readonly pressure: Asked;
  readonly bottles: Asked;
  readonly firstTaste: Asked;
}

export function packagingFigures(sheet: NamedCells, input: PackagingInput): PackagingFigures {
  const units = unitsOf(sheet);
  const beer = Number(sheet.number("beer_volume"));
  return {
    beer,
    residual: ask(packResidual, input.warmestBeer, units),
    sugar: ask(packPriming, beer - Number(input.loss), input.carbonation, input.warmestBeer, input.sugar, units),
    pressure: ask(packPressure, input.carbonation, input.into === "keg" ? input.kegTemperature : input.warmestStorage, units),
    bottles: ask(packBottles, beer, input.bottleVolume, input.loss, units),
    firstTaste: ask(packReady, input.packagedOn, input.conditioning, units),
  };
}
