import type { QuantityName } from "../../../functions/quantities";
import type { Typical } from "../../../core/kit/shrink";
import type { Kit } from "../../batch/contents";
import type { NumberFormat } from "../../grid/plan/sheet-plan";
import { kitQuantities } from "../../batch/scale/convert-units";

export type LearnedKey = "boilOff" | "kettleLoss" | "grainEfficiencyPercent" | "coilKwPerK" | "bottlingLoss" | "hydrometerOffset";

/** A figure of the kit that its batches tell. Typical values in the core's units: the value itself is that of a new batch. */
export interface LearnedRow {
  readonly key: LearnedKey;
  readonly label: string;
  readonly format: NumberFormat;
  /** Spread between kits and between batches (our judgement of common practice, no measurement). */
  readonly spread: Omit<Typical, "value">;
  readonly how: string;
}

export const learnedRows: readonly LearnedRow[] = [
  {
    key: "boilOff",
    label: "Boils away",
    format: "two",
    spread: { betweenKits: 1, betweenBatches: 0.5 },
    how: "Water collected and what dissolved in it, less what reached the fermenter, put down to the boil (not with top-up water); measured by hand",
  },
  {
    key: "kettleLoss",
    label: "Left behind in the kettle",
    format: "two",
    spread: { betweenKits: 0.5, betweenBatches: 0.3 },
    how: "Measured by hand only: no batch sheet tells it apart from what boiled away",
  },
  {
    key: "grainEfficiencyPercent",
    label: "Sugar won from mashed grain",
    format: "whole",
    spread: { betweenKits: 8, betweenBatches: 4 },
    how: "The gravity read before the yeast, against what the grain could give",
  },
  {
    key: "coilKwPerK",
    label: "Chiller: heat it passes on",
    format: "two",
    spread: { betweenKits: 0.15, betweenBatches: 0.06 },
    how: "The times noted beside the chilling and the next line, from boiling to the pitching temperature",
  },
  {
    key: "bottlingLoss",
    label: "Lost in racking and bottling",
    format: "two",
    spread: { betweenKits: 0.4, betweenBatches: 0.4 },
    how: "Beer to package, less bottles filled times what one holds",
  },
  {
    key: "hydrometerOffset",
    label: "Hydrometer reads too high by",
    format: "gravity",
    spread: { betweenKits: 0.002, betweenBatches: 0.0005 },
    how: "Measured by hand in plain water at its calibration temperature; subtract it from what you read",
  },
];

/** Figures that no log can tell: the brewer writes them once. */
export const fixedRows: readonly {
  readonly key: keyof Kit;
  readonly label: string;
  readonly format: NumberFormat;
  readonly unit?: string;
}[] = [
  { key: "boilMinutes", label: "Boil", format: "whole", unit: "min" },
  { key: "kettleSize", label: "Kettle holds", format: "two" },
  { key: "altitude", label: "Altitude", format: "whole" },
  { key: "powerKw", label: "Burner", format: "one", unit: "kW" },
  { key: "heatEfficiencyPercent", label: "Share of its heat that gets in", format: "whole", unit: "%" },
  { key: "tapTemperature", label: "Tap water", format: "whole" },
  { key: "tapFlow", label: "Cooling water through the chiller", format: "one" },
  { key: "sanitiserVolume", label: "Sanitiser bucket", format: "two" },
  { key: "mashThickness", label: "Water to grain in the mash", format: "two" },
  { key: "grainTemperature", label: "Grain stands at", format: "whole" },
  { key: "hydrometerCalibratedAt", label: "Hydrometer calibrated at", format: "whole" },
  { key: "bottleVolume", label: "One bottle holds", format: "whole" },
  // Rows of later plans stand at the end: an older kit sheet lacks them, and its rows keep their places.
  { key: "absorption", label: "Water that the grain keeps", format: "two" },
  { key: "deadSpace", label: "Dead space of the mash tun", format: "two" },
  { key: "tunSize", label: "Mash tun holds", format: "two" },
  { key: "sanitiserDose", label: "Sanitiser, by its label", format: "two" },
  { key: "headspacePercent", label: "Air in the neck of a bottle", format: "whole", unit: "%" },
];

/** What a figure measures, for its unit and its way to the core. */
export function quantityOf(key: LearnedKey | keyof Kit): QuantityName | undefined {
  if (key === "hydrometerOffset") return "gravity";
  if (key === "coilKwPerK") return "coil";
  if (key === "grainEfficiencyPercent") return "percent";
  return kitQuantities[key];
}

/** What may be measured by hand, in the words of the sheet's list. */
export const handMeasured = {
  "boils away in an hour": "boilOff",
  "left in the kettle": "kettleLoss",
  "hydrometer in plain water": "hydrometerOffset",
} as const satisfies Record<string, LearnedKey>;
