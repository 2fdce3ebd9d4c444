import type { BatchContents } from "../../workbook/batch/contents";
import { exampleBatch } from "../../workbook/batch/example-batch";
import { newBatch, type NewBatchChoices } from "../../workbook/batch/new-batch";
import { InsertionRefused, insertBatch } from "../../workbook/insert-batch";

/** A kit of the brewer's that the batch may start from. */
export interface KitChoice {
  readonly name: string;
  readonly forBatch: (choices: NewBatchChoices) => Pick<BatchContents, "kit" | "kitName">;
}

export type Outcome =
  | { readonly kind: "written"; readonly sheetName: string }
  | { readonly kind: "taken"; readonly message: string; readonly freeName: string }
  | { readonly kind: "failed"; readonly message: string };

/** Writes the batch and tells how it went, always in words; the workbook is changed wholly or not at all. */
export async function writeBatch(choices: NewBatchChoices, recipe: "empty" | "example", kit?: KitChoice): Promise<Outcome> {
  const contents = { ...(recipe === "example" ? exampleBatch(choices) : newBatch(choices)), ...kit?.forBatch(choices) };
  try {
    // A cell that is being edited makes Excel refuse: wait until the brewer has finished typing.
    await Excel.run({ delayForCellEdit: true }, (context) => insertBatch(context, contents));
    return { kind: "written", sheetName: choices.sheetName };
  } catch (problem) {
    if (problem instanceof InsertionRefused && problem.freeName) return { kind: "taken", message: problem.message, freeName: problem.freeName };
    const reason = problem instanceof Error ? problem.message : String(problem);
    return { kind: "failed", message: problem instanceof InsertionRefused ? reason : `The batch was not written, and the workbook is as it was. The spreadsheet said: ${reason}` };
  }
}
