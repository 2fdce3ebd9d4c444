import type { BatchContents } from "../batch/contents";
import { insertBatch } from "../insert-batch";
import { StillCalculating } from "../unplug/plan-unplug";
import { deleteSheets } from "../unplug/unplug-sheet";

/** Excel works out a new sheet's GYLE cells after it was written: so often the blank is looked at again, so many milliseconds apart. */
const [mostLooks, between] = [40, 250];

/**
 * Puts a blank in with its GYLE formulas, does the work once they are calculated, and takes the blank out again when that fails.
 *
 * @throws StillCalculating when the blank has no results after ten seconds
 */
export async function withPluggedBlank<T>(context: Excel.RequestContext, blank: BatchContents, work: () => Promise<T>): Promise<T> {
  await insertBatch(context, blank);
  try {
    return await onceCalculated(work);
  } catch (problem) {
    await deleteSheets(context, [blank.sheetName]);
    throw problem;
  }
}

async function onceCalculated<T>(work: () => Promise<T>): Promise<T> {
  for (let look = 1; ; look += 1) {
    try {
      return await work();
    } catch (problem) {
      if (!(problem instanceof StillCalculating) || look === mostLooks) throw problem;
      await new Promise((resolve) => setTimeout(resolve, between));
    }
  }
}
