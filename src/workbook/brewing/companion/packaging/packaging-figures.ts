import { packBottles } from "../../../../functions/pack/bottles";
import { packInside } from "../../../../functions/pack/inside";
import { packPressure } from "../../../../functions/pack/pressure";
import { packPriming } from "../../../../functions/pack/priming";
import { packReady } from "../../../../functions/pack/ready";
import { packResidual } from "../../../../functions/pack/residual";
import { quantity } from "../../../../functions/quantities";
import { syrupVolume } from "../../../batch/sheet/packaging";
import { unitsOf } from "../../../batch/read/batch-sheets";
import type { NamedCells } from "../../../grid/read/named-cells";
import { ask, type Asked } from "../ask";
import { judgedBy, lets, packagingCheck } from "./packaging-check";
import type { PackagingInput } from "./packaging-form";

/** What the sheet will show for a form, by the same functions. Each figure has its own problem where it has none. */
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

export function packagingFigures(sheet: NamedCells, input: PackagingInput): PackagingFigures {
  const units = unitsOf(sheet);
  const beer = Number(sheet.number("beer_volume"));
  const altitude = sheet.has("altitude") ? sheet.value("altitude") : "";
  const dosed = beer - Number(input.loss);
  const allowed = lets(packagingCheck(sheet, input));
  const oneMore = quantity("volume").fromCore(quantity("bottleVolume").toCore(Number(input.bottleVolume), units) / 1000, units) - 0.0001;
  return {
    dosed,
    residual: ask(packResidual, input.warmestBeer, units, altitude),
    sugar:
      allowed && !(Number(input.loss) < 0)
        ? ask(packPriming, dosed, input.carbonation, input.warmestBeer, input.sugar, units, input.bottleKind, altitude)
        : withheld,
    pressure: !allowed
      ? withheld
      : input.into === "keg"
        ? ask(packPressure, input.carbonation, input.kegTemperature, units, altitude)
        : ask(packInside, ...judgedBy(sheet, input)),
    bottles: ask(packBottles, beer, input.bottleVolume, input.loss, units, syrupVolume[units] + oneMore),
    // What must not be filled is not tasted either.
    firstTaste: allowed ? ask(packReady, input.packagedOn, input.conditioning, units) : { problem: "" },
  };
}
