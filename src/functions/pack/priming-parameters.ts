import { primingSugars } from "../../core/pack/priming";
import { bottleKinds, carbonationLimits } from "../../core/pack/bottle-kinds";
import type { Source } from "../describe";
import { choice, co2, omissible, optional } from "../vocabulary";
import { otherBottleNames } from "./bottle-names";

/** What PRIMING and DOSE share. */
export const targetCo2 = co2("Target carbonation, in volumes of gas to one of beer; 2.2 to 2.6 suits most ales.", {
  limits: carbonationLimits,
});

/** Without it more than ordinary bottles bear is refused: a cell cannot carry a caution. */
export const primedBottle = omissible(
  choice(
    "Kind of bottle, needed for more than 3 volumes; ordinary when left out. ordinary bears 3, heavy and plastic (soda) 3.5, thick 4, sparkling (wine) 6.",
    bottleKinds,
    otherBottleNames,
  ),
);

/** "glucose" and "corn sugar" are as different as dry and with water of crystallisation: 10 % of the gas. */
const otherSugarNames = {
  "corn sugar": "dextrose",
  "dextrose monohydrate": "dextrose",
  "brewing sugar": "dextrose",
  "anhydrous dextrose": "glucose",
  "dextrose anhydrous": "glucose",
  "table sugar": "sucrose",
  "cane sugar": "sucrose",
  "beet sugar": "sucrose",
  sugar: "sucrose",
  "white sugar": "sucrose",
  dme: "malt extract",
  "dry malt extract": "malt extract",
} as const;

export const sugar = optional(
  choice(
    "dextrose is corn sugar as sold (monohydrate), glucose the dry sugar, sucrose is table sugar, malt extract is dry and varies by some 7 %.",
    primingSugars,
    otherSugarNames,
  ),
  "dextrose",
);

export const sugarYields = "g CO2 per g: dextrose 0.444, glucose 0.489, sucrose 0.514, malt extract 0.360, honey 0.384";

export const primingSources: readonly Source[] = [
  { cite: "J. L. Gay-Lussac, 1815, with today's atomic weights", where: "C6H12O6 → 2 C2H5OH + 2 CO2: 180 g of sugar give 88 g of gas" },
  { cite: "E. Crane, A Book of Honey, 1980", where: "appendix 2, table 4: sugars of 490 American honeys (1962)" },
];
