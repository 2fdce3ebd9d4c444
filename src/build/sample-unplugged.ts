import type { BatchContents } from "../workbook/batch/contents";
import { deleteSheets, unpluggedCopies } from "../workbook/exchange/unplug";
import { seasonBatches } from "./sample-season";

/** An invented batch of the season, mashed, bottled and drunk, as a member without the add-in gets it. */
export function sharedBatch(): BatchContents {
  const found = seasonBatches().find(
    ({ method, packaging, tasting }) => method === "all-grain" && packaging.into === "bottles" && tasting.tastedOn !== "",
  );
  if (!found) throw new Error("the season has no mashed batch that was bottled and tasted");
  return found;
}

/** 1 December 2026: the sample is the same whenever it is made. */
const sharedOn = 46357;

/** Leaves the unplugged copy alone in the workbook, without prices. */
export async function unplugForMembers(context: Excel.RequestContext): Promise<void> {
  const { sheetName } = sharedBatch();
  await unpluggedCopies(context, [sheetName], { prices: false, standalone: true, on: sharedOn });
  await deleteSheets(context, [sheetName]);
}
