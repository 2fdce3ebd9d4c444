import { acidNames, acids } from "../../../../core/water/acid";
import { ionNames, type SaltName } from "../../../../core/water/ions";
import { describeFields, type Limits } from "../../describe/field";
import { percents } from "../../describe/usual-limits";

/** mg/L, as the sheet holds them. */
export const ionLimits: Limits = [0, 3000];

/** mg/L. Empty counts as none, as in a report that does not speak of it. */
const ion = <const Block extends string, const Column extends number>(block: Block, column: Column, whose: string) =>
  ({
    kind: "number",
    since: 4,
    within: [block, 0, column],
    label: ionNames[column] ?? "",
    called: `${ionNames[column] ?? ""} of ${whose}`,
    measure: "concentration",
    format: "whole",
    limits: ionLimits,
    held: true,
    blank: true,
  }) as const;

/** Six ions in a row, in the order of GYLE.WATER.IONS. */
const profile = <const Block extends string>(block: Block, label: string, whose: string) =>
  ({
    kind: "group",
    since: 4,
    label,
    fields: describeFields({
      calcium: ion(block, 0, whose),
      magnesium: ion(block, 1, whose),
      sodium: ion(block, 2, whose),
      chloride: ion(block, 3, whose),
      sulfate: ion(block, 4, whose),
      bicarbonate: ion(block, 5, whose),
    }),
  }) as const;

/** Salts that have a line on the sheet, in their order there. */
export const saltsOnSheet = [
  "gypsum",
  "calcium chloride",
  "epsom salt",
  "magnesium chloride",
  "table salt",
  "baking soda",
  "chalk",
  "slaked lime",
] as const satisfies readonly SaltName[];

/** Grams, also on a US sheet: an ounce of salt is more than any batch wants. */
const salt = (name: (typeof saltsOnSheet)[number]) =>
  ({
    kind: "number",
    since: 4,
    within: ["salt_bill", saltsOnSheet.indexOf(name), 1],
    label: name,
    measure: "grams",
    format: "one",
    limits: [0, 10000],
    held: true,
    blank: true,
    grows: true,
  }) as const;

/** What brings a mash to its pH. */
const correctors = [...acidNames, "baking soda", "slaked lime"] as const;

/** The mash and its acid: only where malt is mashed. */
const mashFields = describeFields({
  corrector: { kind: "choice", since: 4, cell: "mash_corrector", label: "Acid or base", choices: correctors },
  strengthPercent: {
    kind: "number",
    since: 4,
    cell: "mash_acid_strength",
    label: "Strength on its label",
    called: "strength of the acid",
    measure: "percent",
    format: "whole",
    limits: [5, 90],
    held: true,
    blank: true,
    note: `Of an acid, % by mass. Empty: ${acids.lactic.usualPercent} for lactic, ${acids.phosphoric.usualPercent} for phosphoric; with a weaker acid you then take too little, not too much.`,
  },
  amount: {
    kind: "number",
    since: 4,
    cell: "mash_acid_amount",
    label: "of it into the mash",
    called: "amount of acid or base",
    format: "one",
    unit: "mL of acid, g of a base",
    limits: [0, 10000],
    held: true,
    blank: true,
    grows: true,
  },
  targetPh: {
    kind: "number",
    since: 4,
    cell: "mash_target",
    label: "Target pH of the mash",
    called: "target pH",
    format: "two",
    limits: [4.8, 6],
    held: true,
    usual: 5.4,
  },
  measuredPh: {
    kind: "number",
    since: 4,
    format: "two",
    limits: [3, 9],
    blank: true,
    cell: "mash_measured",
    label: "Measured, cooled",
    called: "measured pH",
    role: "measured",
    note: "Of a sample at room temperature: hot mash reads about 0.3 lower, and spoils the probe.",
  },
});

/** Where the salts go. */
export const saltedWaters = ["all the water", "the mash water"] as const;

/** The water that a brewer has, what is done with it, and what comes of it. */
export const waterBlockFields = describeFields({
  source: profile("source_water", "Your water", "your water"),
  target: profile("target_water", "Target", "the target"),
  demineralisedPercent: {
    kind: "number",
    since: 4,
    cell: "demineralised",
    label: "Demineralised water in it",
    measure: "percent",
    format: "whole",
    limits: percents,
    held: true,
    blank: true,
    note: "Of the water that you collect, how much is distilled, deionised or from reverse osmosis. Empty: none.",
  },
  saltsInto: {
    kind: "choice",
    since: 4,
    cell: "salts_into",
    label: "Salts go into",
    choices: saltedWaters,
    note: "Into all the water, before it is shared between mash and sparge; or into the mash alone.",
  },
  gypsum: salt("gypsum"),
  calciumChloride: salt("calcium chloride"),
  epsomSalt: salt("epsom salt"),
  magnesiumChloride: salt("magnesium chloride"),
  tableSalt: salt("table salt"),
  bakingSoda: salt("baking soda"),
  chalk: salt("chalk"),
  slakedLime: salt("slaked lime"),
  mash: { kind: "group", since: 4, label: "Mash", emptied: "usual", fields: mashFields },
});
