import type { BatchContents } from "../contents";
import type { BatchCell } from "../fields/cells";
import { figure, figures, figuresDown } from "./on-its-sheet";

/** Figures of the plan, each with its cell on the batch's sheet; colour in SRM, or EBC on a metric batch. */
const cells = {
  og: "og_plan",
  fg: "fg_plan",
  abv: "abv_plan",
  ibu: "ibu_plan",
  colour: "colour_plan",
  collect: "water_collect",
  beforeBoil: "water_before_boil",
  /** Volume that shares the extract: wort that stays in the kettle keeps its part of sugar and bitterness. */
  gravityVolume: "gravity_volume",
} as const satisfies Readonly<Record<string, BatchCell>>;

/** What a batch sheet shows as planned, in the units of the batch; undefined where the sheet would be blank or show an error. */
export interface PlannedFigures extends Readonly<Record<keyof typeof cells, number | undefined>> {
  /** Bitterness of each hop line. */
  readonly ibuOfEach: readonly (number | undefined)[];
  readonly grain: number;
  /** 0 where nothing is mashed. */
  readonly mashWater: number;
}

/** The plan of the batch's own sheet, worked out without a spreadsheet. */
export const plannedFigures = (batch: BatchContents): PlannedFigures => ({
  ...figures(batch, cells),
  ibuOfEach: figuresDown(batch, "=GYLE.HOPS.SHARE(", batch.hops.length),
  grain: figure(batch, "grain_mass") ?? 0,
  mashWater: batch.method === "extract" ? 0 : (figure(batch, "mash_water") ?? 0),
});
