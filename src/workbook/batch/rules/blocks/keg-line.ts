import { partNames } from "../../fields/blocks/parts";
import { aboveItsPlate } from "../../sheet/parts";
import type { UnitWords } from "../../unit-words";
import { rule, type CheckLine } from "../rule";
import { unusable } from "../words";
import type { Chosen } from "./chosen";

export const kegLineLine = ({ units, blocks }: Chosen, words: UnitWords): CheckLine => {
  const verdicts = ["pressure_verdict", ...(blocks.includes("partsOfWort") ? partNames.map((name) => `part_${name}_verdict`) : [])];
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
        // The verdicts alone know it: behind them no pressure is given.
        `OR(${verdicts.map((verdict) => `ISNUMBER(FIND("${aboveItsPlate}",${verdict}))`).join(",")})`,
        `"A keg would stand ${aboveItsPlate}, "&FIXED(keg_plate,${units === "us" ? 0 : 1},TRUE)&" ${words.pressure}: it can burst, and no pressure is given."`,
        "Less carbonation, or a colder keg.",
      ),
      rule(
        "line",
        "ISERROR(line_length)",
        '"Cannot balance this line:"',
        "the pressure does not lift the beer to the tap, or a figure of the line is not one; the cell's own words say which.",
      ),
      rule(
        "spund",
        "ISERROR(spund_at)",
        '"Cannot be closed so:"',
        "too late for it, too warm, or more pressure than the plate allows. Its own words say which; leave the gas a way out.",
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
