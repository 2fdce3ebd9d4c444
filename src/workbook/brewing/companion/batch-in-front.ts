import { isBatchSheet, isNewer, isUnplugged, readBatchSheet, readSheet, type BatchSheet } from "../../batch/read/batch-sheets";

/** What the companion has before it. */
export type InFront =
  | { readonly kind: "none" }
  | { readonly kind: "newer" | "unplugged"; readonly sheetName: string }
  | { readonly kind: "batch"; readonly sheet: BatchSheet; /** Another kind of sheet is in front. */ readonly isBehind: boolean };

/**
 * The batch sheet in front, or the one that was there before while another kind of sheet is. An unplugged batch in front is
 * told as such: what is meant for it must not go into another batch.
 */
export async function batchInFront(context: Excel.RequestContext, lastName?: string): Promise<InFront> {
  const front = await readSheet(context);
  if (front && isUnplugged(front)) return { kind: "unplugged", sheetName: front.sheetName };
  if (front && isBatchSheet(front)) return found(front, false);
  const before = lastName === undefined ? undefined : await readBatchSheet(context, lastName);
  return before ? found(before, true) : { kind: "none" };
}

/** The batch sheet of this name, wherever the brewer is. */
export async function batchCalled(context: Excel.RequestContext, sheetName: string): Promise<InFront> {
  const sheet = await readBatchSheet(context, sheetName);
  return sheet ? found(sheet, false) : { kind: "none" };
}

const found = (sheet: BatchSheet, isBehind: boolean): InFront =>
  isNewer(sheet) ? { kind: "newer", sheetName: sheet.sheetName } : { kind: "batch", sheet, isBehind };
