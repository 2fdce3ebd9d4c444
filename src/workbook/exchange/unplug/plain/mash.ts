import { grainLPerKg, mashingOverCold } from "../../../../core/water/room";
import { num } from "./formula-parts";
import type { PlainForm, ValueOnly } from "./plain-form";

export const mashForms = {
  "MASH.ROOM": { sum: (x) => `${x.core("grainMass")}*${num(grainLPerKg)}+${x.core("waterVolume")}*${num(mashingOverCold)}` },
  "MASH.ACIDITY": { value: "it looks for the pH at which charges balance" },
  "MASH.CORRECT": { value: "it takes each malt's pH and buffering from a table of kinds" },
  "MASH.RUNNINGS": { value: "it follows the wort from one running to the next" },
  "MASH.BOILED": {
    holds: (x) => [`${x.core("target")}>=${x.core("from")}`, `${x.core("target")}<${x.core("boilsAt")}`],
    sum: (x) => `${x.core("volume")}*(${x.core("target")}-${x.core("from")})/(${x.core("boilsAt")}-${x.core("from")})`,
  },
} satisfies Record<string, PlainForm | ValueOnly>;
