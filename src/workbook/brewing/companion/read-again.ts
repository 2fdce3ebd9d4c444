import { batchIdOf, isBatchSheet, isNewer, isUnplugged, type BatchSheet } from "../../batch/read/batch-sheets";
import { loadSheet, namedCells } from "../../grid/read/read-sheets";
import { unpluggedWords } from "../../batch/read/unplugged-batches";
import { ChangeRefused } from "./outcome";

/**
 * The sheet as it is now, just before it is written to; it must still be the batch that the brewer saw.
 *
 * @throws ChangeRefused where it is another sheet now, unplugged, or one that a newer Gylebook made; the host's "ItemNotFound" where it is gone
 */
export async function readAgain(context: Excel.RequestContext, seen: BatchSheet): Promise<{ sheet: Excel.Worksheet; fresh: BatchSheet }> {
  const sheet = context.workbook.worksheets.getItem(seen.sheetName);
  const loaded = loadSheet(sheet);
  await context.sync();
  const fresh = namedCells(loaded);
  if (isUnplugged(fresh)) throw new ChangeRefused(unpluggedWords(fresh.sheetName, "write to it"));
  if (!isBatchSheet(fresh) || batchIdOf(fresh) !== batchIdOf(seen))
    throw new ChangeRefused(`"${seen.sheetName}" is not the batch any more that it was a moment ago.`);
  if (isNewer(fresh)) throw new ChangeRefused(`"${seen.sheetName}" was made by a newer Gylebook: update the add-in to write to it.`);
  return { sheet, fresh };
}
