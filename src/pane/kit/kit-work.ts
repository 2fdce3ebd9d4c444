import type { UnitSystem } from "../../functions/quantities";
import { insertKit } from "../../workbook/kit/insert-kit";
import type { LearnedKey } from "../../workbook/kit/kit-rows";
import { learnKits, type KitReport } from "../../workbook/kit/learn-kits";
import { takeLearned } from "../../workbook/kit/take-learned";
import { InsertionRefused } from "../../workbook/insert-sheet";
import type { Outcome } from "../new-batch/write-batch";

export type KitState = { readonly kind: "looking" } | { readonly kind: "none" } | { readonly kind: "there"; readonly report: KitReport } | { readonly kind: "failed"; readonly message: string };

const words = (problem: unknown): string => (problem instanceof Error ? problem.message : String(problem));

/** Learns from the batches as they are now. */
export async function learnNow(): Promise<KitState> {
  try {
    const report = await Excel.run({ delayForCellEdit: true }, learnKits);
    return report ? { kind: "there", report } : { kind: "none" };
  } catch (problem) {
    return { kind: "failed", message: `Nothing was learned, and the kit sheet is as it was. The spreadsheet said: ${words(problem)}` };
  }
}

export async function take(yes: boolean, kitNumber: number, key: LearnedKey): Promise<KitState> {
  try {
    await Excel.run({ delayForCellEdit: true }, (context) => takeLearned(context, yes, kitNumber, key));
    return await learnNow();
  } catch (problem) {
    return { kind: "failed", message: `The kit sheet is as it was. The spreadsheet said: ${words(problem)}` };
  }
}

export async function writeKit(sheetName: string, units: UnitSystem, kitName: string): Promise<Outcome> {
  try {
    await Excel.run({ delayForCellEdit: true }, (context) => insertKit(context, { sheetName, units, kitNames: [kitName] }));
    return { kind: "written", sheetName };
  } catch (problem) {
    if (problem instanceof InsertionRefused && problem.freeName) return { kind: "taken", message: problem.message, freeName: problem.freeName };
    return { kind: "failed", message: problem instanceof InsertionRefused ? problem.message : `The kit sheet was not written, and the workbook is as it was. The spreadsheet said: ${words(problem)}` };
  }
}
