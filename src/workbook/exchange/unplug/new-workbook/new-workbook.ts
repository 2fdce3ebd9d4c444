import type { LongWork } from "../../../grid/write/progress";
import { deleteSheets, unpluggedCopies } from "../unplug-sheet";
import type { UnplugChoices, UnpluggedSheet } from "../unplugged-sheet";
import { keepSheets } from "./keep-sheets";
import { workbookBytes } from "./workbook-bytes";

/**
 * A new workbook with unplugged copies of some sheets, without the other sheets and without anybody's name. Excel opens
 * it; saving and giving it away is the user's. For a moment the copies stand in this workbook, from whose own file the
 * new one is made (the only way that keeps charts, looks and print set-up as they are); they are deleted again whatever
 * happens.
 *
 * @param open hands the file to Excel as base64: `Excel.createWorkbook`
 */
export async function unpluggedWorkbook(
  context: Excel.RequestContext,
  sheetNames: readonly string[],
  choices: Pick<UnplugChoices, "prices" | "copyName">,
  open: (base64: string) => Promise<unknown>,
  work: LongWork = {},
): Promise<UnpluggedSheet[]> {
  const copies = await unpluggedCopies(context, sheetNames, { ...choices, standalone: true, stays: "for a moment" }, work);
  await newWorkbookOf(
    context,
    copies.map(({ copyName }) => copyName),
    open,
  );
  return copies;
}

/** A new workbook of sheets that stand in this one for a moment: they are deleted here whatever happens. */
export async function newWorkbookOf(
  context: Excel.RequestContext,
  sheetNames: readonly string[],
  open: (base64: string) => Promise<unknown>,
): Promise<void> {
  let file: Uint8Array;
  try {
    file = keepSheets(await workbookBytes(), sheetNames);
  } finally {
    await deleteSheets(context, sheetNames);
  }
  await open(base64Of(file));
}

function base64Of(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(text);
}
