import { partNames } from "../../fields/blocks/parts";
import type { UnitWords } from "../../unit-words";
import { rule, type CheckLine } from "../rule";
import { unusable } from "../words";
import type { Chosen } from "./index";

export const kegLineLine = ({ units, blocks }: Chosen, words: UnitWords): CheckLine => {
  const [digits, onPlate] = units === "us" ? [1, 0] : [2, 1];
  const pressure = blocks.includes("partsOfWort")
    ? `MAX(keg_pressure,${partNames.map((name) => `part_${name}_pressure`).join(",")})`
    : "keg_pressure";
  return {
    id: "keg-line",
    label: "Checks",
    // A keg under more pressure than it bears can burst.
    weight: "stop",
    steps: [
      ...unusable("keg_holds", "One keg holds"),
      ...unusable("keg_plate", "Pressure on its plate"),
      ...unusable("keg_filled", "Filled into kegs"),
      rule(
        "above-the-plate",
        `IF(AND(ISNUMBER(${pressure}),N(keg_plate)>0),${pressure}>keg_plate,FALSE)`,
        `"The keg would stand at "&FIXED(${pressure},${digits},TRUE)&" ${words.pressure}, its plate says "&FIXED(keg_plate,${onPlate},TRUE)&":"`,
        "it can burst. Less carbonation, or a colder keg.",
      ),
      rule(
        "line",
        "ISERROR(line_length)",
        '"Cannot balance this line:"',
        "the pressure does not lift the beer to the tap, or a figure of the line is not one; the cell tells which.",
      ),
      rule(
        "spund",
        "ISERROR(spund_at)",
        '"Cannot be closed so:"',
        "too late for it, too warm, or more pressure than the plate allows. The cell tells which; leave the gas a way out.",
      ),
      rule(
        "more-than-beer",
        "N(keg_filled)>1.05*beer_volume",
        '"Cannot be: more in the kegs than beer in the fermenter."',
        "Look at both volumes.",
      ),
    ],
  };
};
