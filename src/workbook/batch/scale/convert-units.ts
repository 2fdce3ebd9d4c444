import type { UnitSystem } from "../../../functions/quantities";
import type { BatchContents, Kit } from "../contents";
import { convertFields } from "../derived/convert-fields";
import { batchFields } from "../fields";
import { kitFields } from "../fields/kit";
import { blocksOf } from "../sheet/blocks";
import { translatedSteps } from "./translated-steps";

export const convertKit = (kit: Kit, from: UnitSystem, to: UnitSystem): Kit => convertFields(kitFields, kit, from, to);

/**
 * The whole batch in another unit system, exactly: nothing is rounded, and what has been measured is converted with the
 * rest. Words stay as they are, but for those of the steps that are ours.
 */
export function convertUnits(batch: BatchContents, to: UnitSystem): BatchContents {
  const { units: from, method, steps } = batch;
  if (from === to) return batch;
  return {
    ...convertFields(batchFields, batch, from, to),
    units: to,
    ...(steps && { steps: translatedSteps(steps, method, blocksOf(batch), from, to) }),
  };
}
