import type { LearnedKey } from "../../workbook/sheets/kit/kit-rows";
import { learnKits, type KitReport } from "../../workbook/sheets/kit/learn-kits";
import { takeLearned } from "../../workbook/sheets/kit/take-learned";
import { failureWords } from "../../workbook/grid/words/host-words";

export type KitState =
  | { readonly kind: "looking" }
  | { readonly kind: "none" }
  | { readonly kind: "there"; readonly report: KitReport }
  | { readonly kind: "failed"; readonly message: string };

const nothingLearned = "Nothing was learned, and the kit sheet is as it was.";

/** Learns from the batches as they are now. */
export async function learnNow(consequence = nothingLearned): Promise<KitState> {
  try {
    const report = await Excel.run({ delayForCellEdit: true }, learnKits);
    return report ? { kind: "there", report } : { kind: "none" };
  } catch (problem) {
    return { kind: "failed", message: failureWords(consequence, problem) };
  }
}

export async function take(yes: boolean, kitNumber: number, key: LearnedKey): Promise<KitState> {
  try {
    await Excel.run({ delayForCellEdit: true }, (context) => takeLearned(context, yes, kitNumber, key));
  } catch (problem) {
    return { kind: "failed", message: failureWords("The kit sheet is as it was.", problem) };
  }
  return learnNow("Your choice is on the kit sheet; the batches could not be read again.");
}
