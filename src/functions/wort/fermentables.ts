import type { Source } from "../describe";
import { extractYield } from "./extract-yield";
import { percentHint } from "../share-of-one";
import { choice, mass, optional, percent, volume } from "../vocabulary";

export const fermentableColumns = {
  mass: mass("Mass of the fermentable.", { typical: 4 }),
  yield: extractYield(
    "Extract that it can give, % of its mass as it is: base malt about 80, crystal malt 74, dry extract 90, sugar 100.",
    80,
  ),
  handling: choice("mash, steep, extract or sugar: efficiency counts for mash and steep only.", ["mash", "steep", "extract", "sugar"], {
    grain: "mash",
    malt: "mash",
    base: "mash",
    mashed: "mash",
    steeped: "steep",
    specialty: "steep",
    dme: "extract",
    lme: "extract",
    syrup: "extract",
    honey: "sugar",
    adjunct: "mash",
  }),
};

/** The malt bill as WORT.GRAVITY and WORT.EFFICIENCY read it: a fourth column, the colour, may stand beside it. */
export const fermentables = {
  kind: "table",
  doc: "The malt bill, a row for each malt, extract or sugar. handling: mash, steep, extract or sugar. A fourth column, with the colour, may be selected with it.",
  columns: fermentableColumns,
  layouts: [
    ["mass", "yield", "handling"],
    ["mass", "yield", "handling", null],
  ],
} as const;

export const wholeVolume = volume(
  "Volume of the wort that holds it all, as it is cold (20 °C): take 4 % off what a dipstick shows in boiling wort. 20 L or 5 US gal is usual.",
  { typical: 20 },
);

export const brewhouseEfficiency = optional(
  percent("Share of the grain's extract that your brewhouse gets, %; 70 when left out. Extract and sugar always count whole.", {
    limits: { above: 1, atMost: 100 },
    typical: 70,
    hint: percentHint,
  }),
  70,
);

export const palmer: Source = {
  cite: "J. J. Palmer, How to Brew, 1st ed.",
  where: "ch. 3-4 (points of extract and sugar, 46.2 for sucrose) and Table 9 (malt yields)",
};

/** A row as the core wants it. */
export const toFermentable = (row: { mass: number; yield: number; handling: "mash" | "steep" | "extract" | "sugar" }) => ({
  massKg: row.mass,
  yieldPercent: row.yield,
  handling: row.handling,
});
