import { newBatchId } from "../../batch/batch-id";
import { loadBatchMarks, sheetMarks, type BatchMark } from "../../batch/read/batch-marks";
import { batchMark, readBatchSheets } from "../../batch/read/batch-sheets";
import { copies, hasLog, sheetsAlike } from "../../batch/read/copied-sheets";
import { changeCells } from "./change-cells";
import { ChangeRefused } from "./outcome";

/** Groups of batch sheets that carry one mark: three `context.sync()`, whatever the number of sheets. */
export async function copiesInWorkbook(context: Excel.RequestContext): Promise<readonly (readonly string[])[]> {
  const ask: () => readonly BatchMark[] = loadBatchMarks(await sheetMarks(context, [batchMark, "batch_id"]));
  await context.sync();
  return copies(ask());
}

/**
 * Gives a copied batch sheet a mark of its own: from then on it is a batch of its own, which has drawn nothing. What the
 * stores' book says under the old mark stays with the sheet that keeps it.
 *
 * @returns whether the copy has brought a log along, which is the other batch's
 * @throws ChangeRefused where no other sheet carries its mark; otherwise as `changeCells`
 */
export async function giveOwnMark(context: Excel.RequestContext, sheetName: string): Promise<boolean> {
  const batches = await readBatchSheets(context);
  const copy = batches.find((batch) => batch.sheetName === sheetName);
  if (!copy || sheetsAlike(batches, copy).length === 0)
    throw new ChangeRefused(`No other sheet carries the mark of "${sheetName}" any more.`);
  await changeCells(context, copy, [{ name: "batch_id", label: "the batch's mark", content: newBatchId() }]);
  return hasLog(copy);
}
