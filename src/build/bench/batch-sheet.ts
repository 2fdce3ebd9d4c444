import { createRequire } from "node:module";
import path from "node:path";
import type * as Headless from "../../bench/headless";
import { firstExtractBatch } from "../../workbook/batch/example-batch";
import { planBatch } from "../../workbook/batch/plan";
import { insertBatch } from "../../workbook/insert-batch";
import { openBench } from "../make-sample";
import { root } from "../run.mjs";
import { sheetFigures } from "../sheet-figures";
import type { BenchRow } from "./row";

/** What one batch sheet asks of Excel. */
export const batchSheet: readonly BenchRow[] = [
  {
    what: "GYLE calls per batch sheet",
    target: "at most 60",
    measure: () => {
      const { calls } = sheetFigures(planBatch(firstExtractBatch()));
      return { measured: String(calls), met: calls > 0 && calls <= 60 };
    },
  },
  {
    what: "deepest chain of GYLE calls on it",
    target: "at most 3",
    measure: () => {
      const { deepestChain } = sheetFigures(planBatch(firstExtractBatch()));
      return { measured: String(deepestChain), met: deepestChain > 0 && deepestChain <= 3 };
    },
  },
  {
    what: "`context.sync()` per inserted batch",
    target: "at most 3",
    measure: async () => {
      const bench = openBench(createRequire(import.meta.url)(path.join(root, "dist/headless.cjs")) as typeof Headless);
      const before = bench.host.faults.syncCount;
      await Excel.run((context) => insertBatch(context, firstExtractBatch()));
      const syncs = bench.host.faults.syncCount - before;
      bench.dispose();
      return { measured: String(syncs), met: syncs > 0 && syncs <= 3 };
    },
  },
];
