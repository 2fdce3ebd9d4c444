import type { BatchContents } from "../contents";
import { figure, figuresDown } from "./on-its-sheet";

/** What a batch sheet shows as planned, in the units of the batch; undefined where the sheet would be blank or show an error. */
export interface PlannedFigures {
  readonly og: number | undefined;
  readonly fg: number | undefined;
  readonly abv: number | undefined;
  readonly ibu: number | undefined;
  /** SRM, or EBC on a metric batch. */
  readonly colour: number | undefined;
  /** Bitterness of each hop line. */
  readonly ibuOfEach: readonly (number | undefined)[];
  readonly boilsAt: number | undefined;
  readonly collect: number | undefined;
  readonly beforeBoil: number | undefined;
  /** Volume that shares the extract: wort that stays in the kettle keeps its part of sugar and bitterness. */
  readonly gravityVolume: number | undefined;
  readonly kettleGravity: number | undefined;
  readonly grain: number;
  /** 0 where nothing is mashed. */
  readonly mashWater: number;
}

/** The plan of the batch's own sheet, worked out without a spreadsheet. */
export const plannedFigures = (batch: BatchContents): PlannedFigures => ({
  og: figure(batch, "og_plan"),
  fg: figure(batch, "fg_plan"),
  abv: figure(batch, "abv_plan"),
  ibu: figure(batch, "ibu_plan"),
  colour: figure(batch, "colour_plan"),
  ibuOfEach: figuresDown(batch, "=GYLE.HOPS.SHARE(", batch.hops.length),
  boilsAt: figure(batch, "boils_at"),
  collect: figure(batch, "water_collect"),
  beforeBoil: figure(batch, "water_before_boil"),
  gravityVolume: figure(batch, "gravity_volume"),
  kettleGravity: figure(batch, "kettle_gravity"),
  grain: figure(batch, "grain_mass") ?? 0,
  mashWater: batch.method === "extract" ? 0 : (figure(batch, "mash_water") ?? 0),
});
