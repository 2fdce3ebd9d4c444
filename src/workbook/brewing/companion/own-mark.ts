import { newBatchId } from "../../batch/batch-id";
import { loadBatchMarks, sheetMarks, type BatchMark } from "../../batch/read/batch-marks";
import { batchMark, readBatchSheets, type BatchSheet } from "../../batch/read/batch-sheets";
import { copies, hasLog, sheetsAlike } from "../../batch/read/copied-sheets";
import { changeCells } from "./change-cells";
import { ChangeRefused } from "./outcome";

/** Groups of batch sheets that carry one mark: three `context.sync()`, whatever the number of sheets. */
export async function copiesInWorkbook(context: Excel.RequestContext): Promise<readonly (readonly string[])[]> {
  const ask: () => readonly BatchMark[] = loadBatchMarks(await sheetMarks(context, [batchMark, "batch_id"]));
  await context.sync();
  return copies(ask());
}

/** A number that no batch has, where the copy has one that another batch has, too; undefined where it may keep its own. */
function numberForCopy(copy: BatchSheet, batches: readonly BatchSheet[]): number | undefined {
  const number = copy.number("batch_number");
  const others = batches.filter((batch) => batch !== copy).map((batch) => batch.number("batch_number"));
  if (number === "" || !others.includes(number)) return undefined;
  return Math.floor(Math.max(...others.filter((other) => other !== ""))) + 1;
}

/**
 * Gives a copied batch sheet a mark of its own, and the next free number: from then on it is a batch of its own, which has drawn nothing. What the
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
  const number = numberForCopy(copy, batches);
  await changeCells(context, copy, [
    { name: "batch_id", label: "the batch's mark", content: newBatchId() },
    ...(number === undefined ? [] : [{ name: "batch_number" as const, label: "the batch's number", content: number }]),
  ]);
  return hasLog(copy);
}
