import { repairFormulas, type RepairReport } from "../../workbook/care/check/repair";
import type { Repair } from "../../workbook/care/check/finding";
import { failureWords } from "../../workbook/grid/words/host-words";
import { Unsure } from "../../workbook/grid/words/told-in-full";

/** What became of the cells, in words. */
export interface Repaired {
  readonly isGood: boolean;
  /** Whether cells may have been written: what was found before holds no longer. */
  readonly isWritten: boolean;
  readonly words: string;
}

/** Enters formulas anew; a failure comes back in words. */
export async function repair(chosen: readonly Repair[]): Promise<Repaired> {
  try {
    const report = await Excel.run({ delayForCellEdit: true }, (context) => repairFormulas(context, chosen));
    return { isGood: true, isWritten: true, words: reported(report) };
  } catch (failure) {
    return {
      isGood: false,
      isWritten: failure instanceof Unsure,
      words: failureWords("Nothing was repaired, and the cells are as they were.", failure),
    };
  }
}

function reported({ written, still }: RepairReport): string {
  const done = `${String(written)} ${written === 1 ? "formula was" : "formulas were"} entered anew.`;
  if (!still) return `${done} Whether any still shows #NAME? could not be seen at once: the workbook is looked through again.`;
  if (still.length === 0) return `${done} None shows #NAME? any more.`;
  return `${done} ${String(still.length)} still ${still.length === 1 ? "shows" : "show"} #NAME? (${still
    .slice(0, 3)
    .map(({ address, sheet }) => `${address} on “${sheet}”`)
    .join(", ")}): Excel has not loaded the functions yet. Close and open the workbook, wait a moment, then repair again.`;
}
