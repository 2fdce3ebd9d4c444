import type { QuantityName } from "../../../functions/quantities";
import type { Typical } from "../../../core/kit/shrink";
import type { Kit } from "../../batch/contents";
import type { NumberFormat } from "../../grid/plan/sheet-plan";
import { forSheet } from "../../batch/describe/field";
import { kitFields } from "../../batch/fields/kit";

export type LearnedKey =
  "boilOff" | "kettleLoss" | "grainEfficiencyPercent" | "coilKwPerK" | "bottlingLoss" | "hydrometerOffset" | "absorption" | "deadSpace";

/** A figure of the kit that its batches tell. Typical values in the core's units: the value itself is that of a new batch. */
export interface LearnedRow {
  readonly key: LearnedKey;
  readonly label: string;
  readonly format: NumberFormat;
  /** Spread between kits and between batches (our judgement of common practice, no measurement). */
  readonly spread: Omit<Typical, "value">;
  readonly how: string;
}

const told: readonly Omit<LearnedRow, "format">[] = [
  {
    key: "boilOff",
    label: kitFields.boilOff.label,
    spread: { betweenKits: 1, betweenBatches: 0.5 },
    how: "Water collected and what dissolved in it, less what reached the fermenter, put down to the boil (not with top-up water), or the volumes noted before and after it; measured by hand",
  },
  {
    key: "kettleLoss",
    label: kitFields.kettleLoss.label,
    spread: { betweenKits: 0.5, betweenBatches: 0.3 },
    how: "The volume noted after the boil, less what reached the fermenter; measured by hand",
  },
  {
    key: "grainEfficiencyPercent",
    label: "Mash efficiency",
    spread: { betweenKits: 8, betweenBatches: 4 },
    how: "The gravity read before the boil, else before the yeast, against what the grain could give",
  },
  {
    key: "coilKwPerK",
    label: kitFields.coilKwPerK.label,
    spread: { betweenKits: 0.15, betweenBatches: 0.06 },
    how: "The times noted beside the chilling and the next line, from boiling to the pitching temperature",
  },
  {
    key: "bottlingLoss",
    label: "Lost in racking and bottling",
    spread: { betweenKits: 0.4, betweenBatches: 0.4 },
    how: "Beer to package, less bottles filled times what one holds",
  },
  {
    key: "hydrometerOffset",
    label: "Hydrometer reads too high by",
    spread: { betweenKits: 0.002, betweenBatches: 0.0005 },
    how: "Measured by hand in plain water at its calibration temperature; subtract it from what you read",
  },
];

const withFormat = (row: Omit<LearnedRow, "format">): LearnedRow => ({
  ...row,
  format: row.key === "hydrometerOffset" ? "gravity" : kitFields[row.key].format,
});
export const learnedRows: readonly LearnedRow[] = told.map(withFormat);

/** Figures that batches tell since sheets note what is in the kettle before the boil: an older kit sheet has their rows among those that are written once. */
export const learnedAmongFixed: readonly LearnedRow[] = (
  [
    {
      key: "absorption",
      label: kitFields.absorption.label,
      spread: { betweenKits: 0.25, betweenBatches: 0.1 },
      how: "Water collected, less what was in the kettle before the boil and what stayed in the tun, for each unit of grain",
    },
    {
      key: "deadSpace",
      label: kitFields.deadSpace.label,
      spread: { betweenKits: 1, betweenBatches: 0.2 },
      how: "What was noted as left below the false bottom (“Before the boil”); measured by hand",
    },
  ] as const
).map(withFormat);

/** All that is learned, in the order of the sheet. */
export const everyLearnedRow: readonly LearnedRow[] = [...learnedRows, ...learnedAmongFixed];

/** How long and how warm the grain is soaked belongs to the recipe. */
const ofTheRecipe: readonly string[] = ["soakTemperature", "soakMinutes"];
const isLearned = (key: string): boolean => learnedRows.some((row) => row.key === key);

/** The kit sheet is for every batch: it calls a figure what a sheet for mashed grain calls it. */
const anySheet = { units: "metric", method: "all-grain" } as const;

/** Figures that no log can tell: the brewer writes them once. Those of later plans stand at the end, so that the rows of an older kit sheet keep their places. */
export const fixedRows: readonly { readonly key: keyof Kit; readonly label: string; readonly format: NumberFormat }[] = Object.entries(
  kitFields,
).flatMap(([key, { label, format }]) =>
  isLearned(key) || ofTheRecipe.includes(key) ? [] : [{ key: key as keyof Kit, label: forSheet<string>(label, anySheet), format }],
);

/** What a figure measures, for its unit and its way to the core. */
export const quantityOf = (key: LearnedKey | keyof Kit): QuantityName => (key === "hydrometerOffset" ? "gravity" : kitFields[key].measure);

/** What may be measured by hand, in the words of the sheet's list. */
export const handMeasured = {
  "boils away in an hour": "boilOff",
  "left in the kettle": "kettleLoss",
  "hydrometer in plain water": "hydrometerOffset",
  "left below the false bottom": "deadSpace",
} as const satisfies Record<string, LearnedKey>;
