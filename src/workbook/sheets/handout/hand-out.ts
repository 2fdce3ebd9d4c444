import { newBatchId } from "../../batch/batch-id";
import type { BatchContents } from "../../batch/contents";
import { shareable } from "../../exchange/batch-file/shareable";
import { scaleBatch, type ScaleTarget } from "../../batch/scale/scale-batch";

export interface HandOutChoices extends Pick<ScaleTarget, "volume" | "units"> {
  /** Name of the blank, and of its sheet. */
  readonly name: string;
  readonly brewedOn: number;
  readonly prices: boolean;
}

/**
 * A batch as a blank for adults who learn, or club mates: plan, steps, whys and cautions stay, scaled and converted to what they
 * brew. Readings, tasting, private words, the yeast in hand and (unless wanted) prices go. It is a batch of its own, with its
 * own mark, so that what comes back is never taken for the teacher's.
 */
export function handOut(batch: BatchContents, { name, brewedOn, prices, volume, units }: HandOutChoices): BatchContents {
  const plan = shareable(scaleBatch(batch, { volume, units }), { prices });
  return { ...plan, id: newBatchId(), sheetName: name, batchName: name, brewedOn, kitName: "", yeast: { ...plan.yeast, packsInHand: "" } };
}
