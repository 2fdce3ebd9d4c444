import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { openBench } from "../../src/build/make-sample";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { insertBatch } from "../../src/workbook/batch/insert-batch";
import { loadHeadlessBench } from "./headless-bench";

export type Shown = number | string | boolean | null;

/** One batch sheet on the headless bench, spoken to by the names that stand on it. */
export interface BatchSheet {
  readonly bench: HeadlessBench;
  readonly sheetName: string;
  /** The cell of a name, or the first cell of a named range. */
  cellOf(name: string): string;
  /** All cells of a name. */
  rangeOf(name: string): string;
  get(name: string): Shown;
  number(name: string): number;
  /** Types into named cells, as a brewer would, and waits for the results. */
  set(values: Readonly<Record<string, string | number>>): Promise<void>;
  /** What the checks say, without those that are fine. */
  complaints(): { label: string; state: string; text: string }[];
}

/** Bundling and starting the grid can take long on a busy machine. */
export const benchTimeout = 400_000;

export async function openBatchBench(): Promise<HeadlessBench> {
  return openBench(await loadHeadlessBench());
}

export async function insertOn(bench: HeadlessBench, contents: BatchContents): Promise<BatchSheet> {
  await Excel.run((context) => insertBatch(context, contents));
  await bench.calculate();
  return sheetOf(bench, contents);
}

export function sheetOf(bench: HeadlessBench, contents: BatchContents): BatchSheet {
  const plan = planBatch(contents);
  const { sheetName } = contents;
  const rangeOf = (name: string): string => {
    const found = plan.names.find((candidate) => candidate.name === name);
    if (!found) throw new Error(`the sheet has no name ${name}`);
    return found.range;
  };
  const cellOf = (name: string) => rangeOf(name).split(":")[0] ?? "";
  const at = (address: string): Shown => bench.valueAt(sheetName, address);
  return {
    bench,
    sheetName,
    cellOf,
    rangeOf,
    get: (name) => at(cellOf(name)),
    number: (name) => {
      const value = at(cellOf(name));
      if (typeof value !== "number") throw new Error(`${name} shows ${JSON.stringify(value)}, not a number`);
      return value;
    },
    set: async (values) => {
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem(sheetName);
        for (const [name, value] of Object.entries(values)) sheet.getRange(cellOf(name)).values = [[value]];
        await context.sync();
      });
      await bench.calculate();
    },
    complaints: () => {
      const [first = "", last = ""] = rangeOf("check_states").split(":");
      const rows = Array.from({ length: Number(last.slice(1)) - Number(first.slice(1)) + 1 }, (_, index) => Number(first.slice(1)) + index);
      return rows
        .map((row) => ({ label: String(at(`A${row}`)), state: String(at(`B${row}`)), text: String(at(`C${row}`) ?? "") }))
        .filter(({ state }) => state !== "nothing found");
    },
  };
}
