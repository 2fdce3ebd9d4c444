import type { BatchContents } from "../../workbook/batch/contents";
import { exampleBatch } from "../../workbook/batch/example-batch";
import type { BlockKey } from "../../workbook/batch/fields/blocks";
import { newBatch, withBlocks, type NewBatchChoices } from "../../workbook/batch/new-batch";
import { insertBatch } from "../../workbook/batch/insert-batch";
import { inWorkbook, type Done } from "../sheets/in-workbook";

/** A kit of the brewer's that the batch may start from. */
export interface KitChoice {
  readonly name: string;
  readonly forBatch: (choices: NewBatchChoices) => Pick<BatchContents, "kit" | "kitName">;
}

/** Writes the batch and tells how it went: the name of its sheet, or why not. The workbook is changed wholly or not at all. */
export async function writeBatch(
  choices: NewBatchChoices,
  recipe: "empty" | "example",
  kit?: KitChoice,
  blocks: readonly BlockKey[] = [],
): Promise<Done<string>> {
  const plain = { ...(recipe === "example" ? exampleBatch(choices) : newBatch(choices)), ...kit?.forBatch(choices) };
  const contents = withBlocks(plain, blocks);
  return inWorkbook("The batch was not written, and the workbook is as it was.", async (context) => {
    await insertBatch(context, contents);
    return choices.sheetName;
  });
}
