import type { BatchContents } from "../../batch/contents";
import { unpluggedWorkbook } from "../../exchange/unplug/new-workbook/new-workbook";
import { deleteSheets } from "../../exchange/unplug/unplug-sheet";
import type { UnpluggedSheet } from "../../exchange/unplug/unplugged-sheet";
import { withPluggedBlank } from "./plugged-blank";

/**
 * A blank for members without the add-in, as a new workbook that names nobody. This one is as it was by the time the new
 * one opens, and also when something fails.
 *
 * @param blank made by `handOut`, without the prices if these stay behind
 * @param open hands the file to Excel as base64: `Excel.createWorkbook`
 * @throws InsertionRefused when a sheet of this workbook has the blank's name, or the name is not allowed
 * @throws StillCalculating when the blank has no results after ten seconds
 */
export function openUnpluggedHandOut(
  context: Excel.RequestContext,
  blank: BatchContents,
  open: (base64: string) => Promise<unknown>,
): Promise<UnpluggedSheet> {
  return withPluggedBlank(context, blank, async (workingName) => {
    const withoutBlank = async (base64: string) => {
      await deleteSheets(context, [workingName]);
      await open(base64);
    };
    const [copy] = await unpluggedWorkbook(context, [workingName], { prices: true, copyName: blank.sheetName }, withoutBlank);
    if (!copy) throw new Error("No copy was made.");
    return copy;
  });
}
