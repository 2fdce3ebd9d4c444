import type { BatchContents, StepLine } from "../batch/contents";
import type { BatchInWorkbook, WorkbookAtOneMoment } from "./batches-in-workbook";
import { freeName } from "../batch/insert-batch";
import { namesOfSheet } from "../exchange/batch-file/read-batch-file";
import { stepFormulaProblem } from "../exchange/batch-file/step-formula";

/**
 * The contents of a batch sheet with steps that travel: a formula of the brewer's own that another workbook would refuse
 * (it points at a cell, or uses a function that we do not let in) goes as the words that it shows.
 */
export function batchToShare({ contents, cells }: BatchInWorkbook): BatchContents {
  if (!contents.steps) return contents;
  const names = namesOfSheet(contents);
  const shown = cells.block("steps").filter((row) => row.some((cell) => cell !== ""));
  const travelling = (cell: StepLine["minutes"], words: unknown): StepLine["minutes"] =>
    typeof cell === "string" && cell.startsWith("=") && stepFormulaProblem(cell, names) !== undefined
      ? typeof words === "number"
        ? words
        : String(words)
      : cell;
  return {
    ...contents,
    steps: contents.steps.map((line, index) => ({
      ...line,
      what: String(travelling(line.what, shown[index]?.[0])),
      minutes: travelling(line.minutes, shown[index]?.[2]),
    })),
  };
}

/** Where an imported batch would go: never over anything, and with a word when the same batch is here already. */
export function placeFor(
  contents: Pick<BatchContents, "id" | "sheetName">,
  workbook: WorkbookAtOneMoment,
): { readonly sheetName: string; readonly hereAlready: string | undefined } {
  const twin = contents.id === "" ? undefined : workbook.batches.find((other) => other.contents.id === contents.id);
  return { sheetName: freeName(workbook.sheetNames, contents.sheetName), hereAlready: twin?.sheetName };
}
