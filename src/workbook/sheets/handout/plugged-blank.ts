import { newBatchId } from "../../batch/batch-id";
import type { BatchContents } from "../../batch/contents";
import { InsertionRefused, insertSheet } from "../../grid/write/insert-sheet";
import { planBatch } from "../../batch/sheet/plan";
import { sheetNameProblem } from "../../grid/words/sheet-name";
import { StillCalculating } from "../../exchange/unplug/plan-unplug";
import { deleteSheets } from "../../exchange/unplug/unplug-sheet";

/** Excel works out a new sheet's GYLE cells after it was written: so often the blank is looked at again, so many milliseconds apart. */
const [mostLooks, between] = [40, 250];

/**
 * Puts a blank in with its GYLE formulas, under a working name, does the work once they are calculated, and takes the
 * blank out again, however that went.
 *
 * @throws InsertionRefused when the blank's own name is not allowed
 * @throws StillCalculating when the blank has no results after ten seconds
 */
export async function withPluggedBlank<T>(
  context: Excel.RequestContext,
  blank: BatchContents,
  work: (workingName: string) => Promise<T>,
): Promise<T> {
  const problem = sheetNameProblem(blank.sheetName);
  if (problem) throw new InsertionRefused(problem);
  const workingName = `Gylebook ${newBatchId()}`;
  // But for the tab it is called by its own name from the first: its printed foot says so.
  await insertSheet(context, { ...planBatch(blank), sheetName: workingName }, "behind", "for a moment");
  try {
    return await onceCalculated(() => work(workingName));
  } catch (failure) {
    await deleteSheets(context, [workingName]);
    throw failure;
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
