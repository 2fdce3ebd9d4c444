import type { UnitSystem } from "../../functions/quantities";
import { InsertionRefused } from "../../workbook/insert-sheet";
import { insertSeason } from "../../workbook/season/insert-season";
import type { Outcome } from "../new-batch/write-batch";

export const seasonSheetName = "Season";

/** Writes the season sheet and tells how it went; the workbook is changed wholly or not at all. */
export async function writeSeason(sheetName: string, units: UnitSystem): Promise<Outcome> {
  try {
    await Excel.run({ delayForCellEdit: true }, (context) => insertSeason(context, { sheetName, units }));
    return { kind: "written", sheetName };
  } catch (problem) {
    if (problem instanceof InsertionRefused && problem.freeName) return { kind: "taken", message: problem.message, freeName: problem.freeName };
    const reason = problem instanceof Error ? problem.message : String(problem);
    return { kind: "failed", message: problem instanceof InsertionRefused ? reason : `The season sheet was not written, and the workbook is as it was. The spreadsheet said: ${reason}` };
  }
}
