import { failureWords } from "../../workbook/grid/words/host-words";
import { InsertionRefused } from "../../workbook/batch/insert-batch";

/** How an action in the workbook went, always in words for the brewer. */
export type Done<T> =
  | { readonly kind: "done"; readonly result: T }
  | { readonly kind: "taken"; readonly message: string; readonly freeName: string }
  | { readonly kind: "failed"; readonly message: string };

/**
 * Runs one action in the workbook. A cell that is being edited makes Excel refuse, so it waits until the brewer has finished typing.
 *
 * @param unchanged what did not happen, for the words of a failure: "The batch was not written, and the workbook is as it was."
 */
export async function inWorkbook<T>(unchanged: string, action: (context: Excel.RequestContext) => Promise<T>): Promise<Done<T>> {
  try {
    return { kind: "done", result: await Excel.run({ delayForCellEdit: true }, action) };
  } catch (problem) {
    if (problem instanceof InsertionRefused && problem.freeName)
      return { kind: "taken", message: problem.message, freeName: problem.freeName };
    return { kind: "failed", message: failureWords(unchanged, problem) };
  }
}
