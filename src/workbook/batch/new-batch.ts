import type { UnitSystem } from "../../functions/quantities";
import type { BatchContents, Kit } from "./contents";
import { usualValues } from "./derived/usual-values";
import { batchFields } from "./fields";
import { kitFields } from "./fields/kit";

/** The kit of a beginner who brews with extract. */
export const usualKit: Readonly<Record<UnitSystem, Kit>> = {
  us: usualValues(kitFields, { units: "us", method: "extract" }),
  metric: usualValues(kitFields, { units: "metric", method: "extract" }),
};

/** What somebody who makes a batch has to say. */
export type NewBatchChoices = Pick<BatchContents, "id" | "sheetName" | "batchName" | "brewedOn" | "volume" | "units" | "topUp" | "method">;

/** A batch with the kit filled in and everything else still to come. */
export const newBatch = (choices: NewBatchChoices): BatchContents => ({ ...usualValues(batchFields, choices), ...choices });
