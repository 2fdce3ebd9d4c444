import type { BatchContents } from "../../batch/contents";
import { planBatch } from "../../batch/sheet/plan";
import { sheetNameProblem } from "../../grid/words/sheet-name";
import { textsFromFile } from "./file-texts";
import { inspectJson } from "./inspect-json";
import { migrated } from "./migrate";
import { problemWords } from "./problem-words";
import { BatchFileRefused } from "./refused";
import { checkedBatch } from "./schema";
import { stepFormulaProblem } from "./step-formula";

/**
 * The batch in a file, checked to the last cell, or a refusal in words. Nothing in it can become a formula but the
 * formulas of the brew day's steps, and these only with the sheet's own names and harmless functions.
 *
 * @throws BatchFileRefused
 */
export function readBatchFile(text: string): BatchContents {
  inspectJson(text);
  const file = parsed(text.replace(/^\ufeff/, ""));
  if (typeof file !== "object" || file === null || (file as Record<string, unknown>)["gylebook"] !== "batch")
    throw new BatchFileRefused("This is not a batch file of Gylebook.");
  const { version, batch, ...rest } = file as Record<string, unknown>;
  const unknown = Object.keys(rest).find((key) => key !== "gylebook");
  if (unknown !== undefined) throw new BatchFileRefused(`The file has an entry “${unknown.slice(0, 40)}” that a batch file does not know.`);
  const current = migrated(batch, version);
  const checked = checkedBatch(current);
  if (!checked.success) throw new BatchFileRefused(`Refused: ${problemWords(checked.error, current)}`);
  // zod writes "undefined or absent" for what may be left out; absent is all that JSON can say.
  const contents = textsFromFile(checked.data);
  const nameProblem = sheetNameProblem(contents.sheetName);
  if (nameProblem) throw new BatchFileRefused(`Refused: ${nameProblem}`);
  refuseFormulas(contents);
  return contents;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch (problem) {
    throw new BatchFileRefused(
      `This file is damaged or is no batch file: ${problem instanceof Error ? problem.message.slice(0, 120) : "it cannot be read"}.`,
    );
  }
}

/** The names that a step may use are those of the sheet that will be written. */
export function namesOfSheet(batch: BatchContents): ReadonlySet<string> {
  const { steps: _steps, ...plain } = batch;
  return new Set(planBatch(plain).names.map(({ name }) => name));
}

function refuseFormulas(contents: BatchContents): void {
  const names = namesOfSheet(contents);
  for (const [index, { what, minutes }] of (contents.steps ?? []).entries()) {
    for (const cell of [what, minutes]) {
      const problem = typeof cell === "string" && cell.startsWith("=") ? stepFormulaProblem(cell, names) : undefined;
      if (problem) throw new BatchFileRefused(`Refused: steps, row ${index + 1} holds ${problem}.`);
    }
  }
}
