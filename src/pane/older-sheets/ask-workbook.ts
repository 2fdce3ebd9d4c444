import { failureWords } from "../../workbook/grid/words/host-words";
import { migrateSheets, readOutlook, type MigrationReport, type SheetOutlook } from "../../workbook/care/migrate";

export type Answer<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: string };

export const lookAtSheets = (): Promise<Answer<SheetOutlook[]>> =>
  answered("The workbook could not be read.", async (context) => (await readOutlook(context)).map(({ outlook }) => outlook));

export const bringAlong = (): Promise<Answer<MigrationReport>> =>
  answered("Nothing was changed: every sheet is as it was.", (context) => migrateSheets(context));

/** Waits for a cell that is being typed in; what goes wrong is told in words. */
async function answered<T>(consequence: string, work: (context: Excel.RequestContext) => Promise<T>): Promise<Answer<T>> {
  try {
    return { ok: true, value: await Excel.run({ delayForCellEdit: true }, work) };
  } catch (problem) {
    return { ok: false, problem: failureWords(consequence, problem) };
  }
}
