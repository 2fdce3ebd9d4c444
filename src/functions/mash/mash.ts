import { correctors } from "../../core/mash/acidity";
import { maltNames, mashedMalt, type MaltName } from "../../core/mash/malts";
import { lovibondFromEbc } from "../../core/wort/colour-scales";
import type { Source } from "../describe";
import { percentHint } from "../share-of-one";
import { choice, mass, number, omissible, optional, percent, volume } from "../vocabulary";
import type { Mash } from "../../core/mash/acidity";

const dissolved = (doc: string, typical: number, blank: "zero" | "waits" = "zero") =>
  number("concentration", { doc, limits: { atLeast: 0, atMost: 2000 }, typical, blank });

/** What ACIDITY and CORRECT share. */
export const grist = {
  malts: {
    kind: "table",
    doc: "The malt bill (of mash, steep, extract, sugar only what is mashed counts); or mass | malt, or mass | malt | colour. malt: kind, or own pH in distilled water; blank: by its colour.",
    columns: {
      mass: mass("Mass of the malt.", { typical: 4 }),
      handling: optional(choice("Only what is mashed counts.", ["mash", "steep", "extract", "sugar"]), "mash"),
      colour: number("number", {
        doc: "°L; EBC when scale is EBC.",
        limits: { atLeast: 0, atMost: 2000 },
        blank: "zero",
        typical: 3,
        default: 0,
      }),
      malt: omissible(
        number("number", { doc: "Kind of malt, or its own pH.", limits: { atLeast: 3, atMost: 7 }, typical: 5.7, words: maltNames }),
      ),
    },
    layouts: [
      ["mass", null, "handling", "colour", "malt"],
      ["mass", null, "handling", "colour"],
      ["mass", "malt", "colour"],
      ["mass", "malt"],
    ],
  },
  waterVolume: volume("Water in the mash, without the sparge water.", { typical: 15 }),
  alkalinity: dissolved("Alkalinity of that water as CaCO3, with its salts in it; 0 for distilled water.", 120, "waits"),
  calcium: dissolved("Calcium (Ca) of that water, with its salts in it.", 60),
  magnesium: dissolved("Magnesium (Mg) of that water, with its salts in it.", 10),
} as const;

export const corrector = optional(
  choice("What you add.", correctors, { lime: "slaked lime", "calcium hydroxide": "slaked lime", "sodium bicarbonate": "baking soda" }),
  "lactic",
);
export const strength = omissible(
  percent("Strength of the acid on its label, % by mass. Left out, 88 for lactic and 85 for phosphoric.", {
    limits: { atLeast: 5, atMost: 90 },
    typical: 88,
    hint: percentHint,
  }),
);
export const scale = optional(choice("SRM: malt colours in °L. EBC: in EBC.", ["SRM", "EBC"]), "SRM");

interface Grist {
  readonly malts: readonly { mass: number; handling: string; colour: number; malt: number | MaltName | undefined }[];
  readonly waterVolume: number;
  readonly alkalinity: number;
  readonly calcium: number;
  readonly magnesium: number;
  readonly scale: "SRM" | "EBC";
}

export const mashOf = ({ malts, waterVolume, alkalinity, calcium, magnesium, scale: inScale }: Grist): Mash => ({
  malts: malts
    .filter(({ handling }) => handling === "mash")
    .map((row) => mashedMalt(row.mass, row.malt, inScale === "EBC" ? lovibondFromEbc(row.colour) : row.colour)),
  waterL: waterVolume,
  alkalinityMgPerL: alkalinity,
  calciumMgPerL: calcium,
  magnesiumMgPerL: magnesium,
});

export const acidityEquation =
  "Σ malt × b (pH − pH of the malt) + water × (Ca / 3.5 + Mg / 7 − alkalinity taken) + acid × z = 0, in meq; b: base and wheat 45 meq/kg, crystal 50, roasted 40, acidulated 165; pH of the malt: base 5.8 − 0.03 × °L, wheat 6.0, crystal 5.25 − 0.005 × °L, roasted 4.65, acidulated 3.45; z and the alkalinity left by dissociation constants as in GYLE.WATER.ACID; lime gives 2 − 2 / 3.5";

export const aciditySources: readonly Source[] = [
  {
    cite: "A. J. deLange, in J. Palmer and C. Kaminski, Water, 2013",
    where: "charge balance with each malt's pH in distilled water and buffering; from memory",
  },
  {
    cite: "K. Troester, The Effect of Brewing Water and Grist Composition on the pH of the Mash, 2009",
    where: "titrations of malts, rounded by us; from memory",
  },
  { cite: "P. Kolbach, Monatsschrift für Brauerei, 1953", where: "calcium / 3.5 and magnesium / 7, in equivalents" },
];

/** How far a measured mash may be off, as the titrations' authors say: about 0.1. */
export const aciditySpread = { plusOrMinus: 0.1, from: "deLange; Troester 2009: measured mashes are mostly within 0.1; from memory" };

export const acidCautions = [
  "Strong acid, and lime, burn eyes and skin: goggles and gloves. Stir acid into the water, never water into acid. Keep both in their own containers, away from children and bleach.",
  "The label comes first: food grade only. Add half, stir, measure a cooled sample, then add the rest: malts of one kind differ by 0.1 and more.",
];
