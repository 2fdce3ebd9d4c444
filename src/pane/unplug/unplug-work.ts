import { failureWords } from "../../workbook/grid/words/host-words";
import { readBatchSheets } from "../../workbook/batch/read/batch-sheets";
import type { LongWork } from "../../workbook/grid/write/progress";
import {
  PlugInRefused,
  plugIn,
  UnplugRefused,
  unpluggedCopies,
  type Conflict,
  type PluggedIn,
  type UnpluggedSheet,
} from "../../workbook/exchange/unplug";

export interface UnplugForm {
  readonly sheets: "this" | "batches";
  readonly prices: "with" | "without";
  readonly into: "here" | "new";
}

export type Unplugged =
  | { readonly kind: "done"; readonly copies: readonly UnpluggedSheet[]; readonly into: UnplugForm["into"] }
  | { readonly kind: "failed"; readonly message: string };
export type Plugged =
  | ({ readonly kind: "done"; readonly sheetName: string } & PluggedIn)
  | { readonly kind: "changed"; readonly message: string; readonly conflicts: readonly Conflict[] }
  | { readonly kind: "failed"; readonly message: string };

/** Makes the copies; a failure comes back in words. */
export async function unplug(form: UnplugForm, work: LongWork): Promise<Unplugged> {
  try {
    const copies = await Excel.run({ delayForCellEdit: true }, async (context) => {
      const names =
        form.sheets === "this" ? [await sheetInFront(context)] : (await readBatchSheets(context)).map(({ sheetName }) => sheetName);
      if (names.length === 0) throw new UnplugRefused("This workbook has no batch sheets. Nothing was changed.");
      const prices = form.prices === "with";
      if (form.into === "here") return unpluggedCopies(context, names, { prices, standalone: false }, work);
      const { unpluggedWorkbook } = await import(
        /* webpackChunkName: "pane-new-workbook" */ "../../workbook/exchange/unplug/new-workbook/new-workbook"
      );
      return unpluggedWorkbook(context, names, { prices }, (base64) => Excel.createWorkbook(base64), work);
    });
    return { kind: "done", copies, into: form.into };
  } catch (problem) {
    return { kind: "failed", message: failureWords("No copy was made, and your sheets are as they were.", problem) };
  }
}

/** Plugs the sheet in front in again. */
export async function plugInFront(leaveChanged: boolean): Promise<Plugged> {
  try {
    return await Excel.run({ delayForCellEdit: true }, async (context) => {
      const sheetName = await sheetInFront(context);
      return { kind: "done", sheetName, ...(await plugIn(context, sheetName, { leaveChanged })) };
    });
  } catch (problem) {
    if (problem instanceof PlugInRefused && problem.conflicts.length > 0 && !leaveChanged)
      return { kind: "changed", message: problem.message, conflicts: problem.conflicts };
    return { kind: "failed", message: failureWords("The sheet was not plugged in, and is as it was.", problem) };
  }
}

async function sheetInFront(context: Excel.RequestContext): Promise<string> {
  const sheet = context.workbook.worksheets.getActiveWorksheet();
  sheet.load("name");
  await context.sync();
  return sheet.name;
}
