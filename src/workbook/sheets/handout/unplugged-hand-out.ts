import type { BatchContents } from "../../batch/contents";
import { writeSurely } from "../../grid/write/write-surely";
import { deleteSheets, unpluggedCopies } from "../../exchange/unplug/unplug-sheet";
import type { UnpluggedSheet } from "../../exchange/unplug/unplugged-sheet";
import { withPluggedBlank } from "./plugged-blank";

/**
 * A blank for members without the add-in, on a sheet of this workbook: plain formulas and values, with the GYLE formulas in
 * notes for whoever plugs it in. For a moment the blank stands there plugged in, since what it becomes depends on what it
 * calculates. All or nothing.
 *
 * @param blank made by `handOut`, without the prices if these stay behind
 * @throws InsertionRefused when the name is taken or not allowed
 * @throws StillCalculating when the blank has no results after ten seconds
 */
export async function insertUnpluggedHandOut(context: Excel.RequestContext, blank: BatchContents): Promise<UnpluggedSheet> {
  const copyName = blank.sheetName;
  return withPluggedBlank(context, blank, async (workingName) => {
    const [copy] = await unpluggedCopies(context, [workingName], { prices: true, standalone: false, copyName });
    if (!copy) throw new Error("No copy was made.");
    const { worksheets } = context.workbook;
    await writeSurely({
      place: `“${copyName}”`,
      write: async () => {
        worksheets.getItem(workingName).delete();
        worksheets.getItem(copyName).activate();
        await context.sync();
      },
      look: async () => {
        const [working, made] = [workingName, copyName].map((name) => worksheets.getItemOrNullObject(name));
        await context.sync();
        if (!working?.isNullObject || made?.isNullObject) return "half";
        worksheets.getItem(copyName).activate();
        await context.sync();
        return "everything";
      },
      takeBack: () => deleteSheets(context, [copyName]),
    });
    return copy;
  });
}
