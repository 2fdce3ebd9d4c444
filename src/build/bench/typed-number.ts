import { median, processorMicroseconds } from "./microseconds";
import { multipliedSeason } from "./multiplied-season";
import { oneBatch } from "./one-batch";
import type { BenchRow } from "./row";
import { withBench } from "./with-bench";

/** Milliseconds of the processor for one number, typed into a batch's input and into a cell that nothing reads. */
interface Typed {
  readonly input: number;
  readonly freeCell: number;
}

/** In workbooks of so many batches; measured once, for all rows. */
const counts = [1, 12, 30] as const;
type Costs = Readonly<Record<(typeof counts)[number], Typed>>;
let measured: Promise<Costs> | undefined;

async function measureAll(): Promise<Costs> {
  const one = await oneBatch();
  const costs: Partial<Record<(typeof counts)[number], Typed>> = {};
  for (const count of counts) {
    costs[count] = await withBench(async (bench) => {
      await bench.load(multipliedSeason(one, count));
      const cost = async (sheetName: string, cell: string, value: number) => {
        const before = processorMicroseconds();
        bench.univerAPI.getActiveWorkbook()!.getSheetByName(sheetName)!.getRange(cell).setValue(value);
        await bench.calculate();
        return (processorMicroseconds() - before) / 1000;
      };
      const input: number[] = [];
      const freeCell: number[] = [];
      for (let turn = 0; turn < 9; turn++) {
        input.push(await cost("Batch 1", "B9", 20 + turn / 10));
        freeCell.push(await cost("Sheet1", "A1", turn));
      }
      // The first turns are slower: the engine's code is not yet compiled.
      return { input: median(input.slice(3)), freeCell: median(freeCell.slice(3)) };
    });
  }
  return costs as Costs;
}

const row = (what: string, where: keyof Typed, batches: 12 | 30, limit: number): BenchRow => ({
  what: `${what} of ${batches} batches: against the same in a workbook of one`,
  target: `at most ${limit}x`,
  measure: async () => {
    const { 1: one, [batches]: many } = await (measured ??= measureAll());
    return { measured: `${(many[where] / one[where]).toFixed(2)}x (${many[where].toFixed(0)} ms)`, met: many[where] <= limit * one[where] };
  },
});

/** The cost of an edit is to follow the edit, not the workbook. */
export const typedNumber: readonly BenchRow[] = [
  row("one number typed in a season", "input", 12, 3),
  row("one number typed into a free cell, in a season", "freeCell", 12, 3),
  row("one number typed in a season", "input", 30, 4),
];
