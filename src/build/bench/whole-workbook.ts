import { collectComputed } from "../../excel-stand-in/computed";
import { openWorkbook, saveWorkbook } from "../../excel-stand-in/xlsx";
import { insertBatch } from "../../workbook/batch/insert-batch";
import { benchBatch } from "./bench-batch";
import { median, processorMicroseconds } from "./microseconds";
import { multipliedSeason } from "./multiplied-season";
import { oneBatch } from "./one-batch";
import type { BenchRow } from "./row";
import { withBench } from "./with-bench";

const turns = 5;

async function milliseconds(work: () => Promise<unknown>): Promise<number> {
  const before = processorMicroseconds();
  await work();
  return (processorMicroseconds() - before) / 1000;
}

/** One more batch in a workbook that holds so many: written and calculated. */
async function inserting(batches: number): Promise<number> {
  const one = await oneBatch();
  const costs: number[] = [];
  for (let turn = 0; turn < turns; turn++) {
    costs.push(
      await withBench(async (bench) => {
        if (batches > 0) await bench.load(multipliedSeason(one, batches));
        await bench.calculate();
        return milliseconds(async () => {
          await Excel.run((context) => insertBatch(context, benchBatch(batches + 1)));
          await bench.calculate();
        });
      }),
    );
  }
  // The first turns are slower: the code is not yet compiled.
  return median(costs.slice(1));
}

interface Kept {
  readonly open: number;
  readonly save: number;
}

/** A workbook of so many batches, saved as a file, and that file opened and calculated. */
async function kept(batches: number): Promise<Kept> {
  const one = await oneBatch();
  return withBench(async (bench) => {
    await bench.load(multipliedSeason(one, batches));
    await bench.calculate();
    const open: number[] = [];
    const save: number[] = [];
    for (let turn = 0; turn < turns; turn++) {
      let file = new Uint8Array();
      const snapshot = bench.snapshot();
      save.push(
        await milliseconds(async () => (file = new Uint8Array(await saveWorkbook(snapshot, collectComputed(bench.engine, snapshot))))),
      );
      open.push(
        await milliseconds(async () => {
          await bench.load((await openWorkbook(file, { id: `turn-${turn}` })).snapshot);
          await bench.calculate();
        }),
      );
    }
    return { open: median(open.slice(1)), save: median(save.slice(1)) };
  });
}

const [few, many] = [6, 24];
let measured: Promise<Readonly<Record<"few" | "many", Kept>>> | undefined;
const bothKept = async () => ({ few: await kept(few), many: await kept(many) });

const linear = (what: string, part: keyof Kept): BenchRow => ({
  what: `${what} a workbook of ${many} batches: for each batch, against one of ${few}`,
  target: "at most 1.25x: linear",
  measure: async () => {
    const costs = await (measured ??= bothKept());
    const [small, large] = [costs.few[part] / few, costs.many[part] / many];
    return { measured: `${(large / small).toFixed(2)}x (${(large * many).toFixed(0)} ms)`, met: large <= 1.25 * small };
  },
});

/** Work on a workbook as a whole: it may grow as the workbook does, and no faster. */
export const wholeWorkbook: readonly BenchRow[] = [
  {
    what: "inserting a batch into a workbook of 30: against inserting the first",
    target: "at most 3x",
    measure: async () => {
      const [first, more] = [await inserting(0), await inserting(30)];
      return { measured: `${(more / first).toFixed(2)}x (${more.toFixed(0)} ms)`, met: more <= 3 * first };
    },
  },
  linear("opening", "open"),
  linear("saving", "save"),
];
