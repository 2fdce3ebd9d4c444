import type { UnitSystem } from "../../functions/quantities";
import type { BatchContents, Kit } from "./contents";
import { usualValues } from "./derived/usual-values";
import { batchFields } from "./fields";
import { blockFields, blocksFor, type BlockKey } from "./fields/blocks";
import { kitFields } from "./fields/kit";

/** The kit of a beginner who brews with extract. */
export const usualKit: Readonly<Record<UnitSystem, Kit>> = {
  us: usualValues(kitFields, { units: "us", method: "extract" }),
  metric: usualValues(kitFields, { units: "metric", method: "extract" }),
};

/** What somebody who makes a batch has to say. */
export type NewBatchChoices = Pick<BatchContents, "id" | "sheetName" | "batchName" | "brewedOn" | "volume" | "units" | "topUp" | "method">;

/** A batch with the kit filled in and everything else still to come. */
export const newBatch = (choices: NewBatchChoices, blocks: readonly BlockKey[] = []): BatchContents =>
  withBlocks({ ...usualValues(batchFields, choices), ...choices }, blocks);

/** The same batch with blocks that nobody has typed into yet; one that it has stays, and one that is not for its method is left out. */
export const withBlocks = (batch: BatchContents, blocks: readonly BlockKey[]): BatchContents => ({
  ...batch,
  ...Object.fromEntries(
    blocks
      .filter((key) => batch[key] === undefined && blocksFor(batch.method).includes(key))
      .map((key) => [key, usualValues(blockFields[key].fields, batch)]),
  ),
});
