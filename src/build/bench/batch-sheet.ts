import { createRequire } from "node:module";
import path from "node:path";
import type * as Headless from "../../excel-stand-in/headless";
import type { BatchContents } from "../../workbook/batch/contents";
import { exampleBatch } from "../../workbook/batch/example-batch";
import { planBatch } from "../../workbook/batch/sheet/plan";
import { insertBatch } from "../../workbook/batch/insert-batch";
import { openBench } from "../make-sample";
import { root } from "../run.mjs";
import { sheetFigures } from "../sheet-figures";
import type { BenchRow } from "./row";

/** Every form that a batch sheet has: they differ in their formulas, and the hungriest one counts. */
const forms: readonly BatchContents[] = (["extract", "all-grain"] as const).flatMap((method) =>
  (["us", "metric"] as const).map((units) =>
    exampleBatch({
      id: `bench-${method}-${units}`,
      sheetName: `${method} ${units}`,
      batchName: method,
      brewedOn: 46000,
      volume: units === "us" ? 5 : 20,
      units,
      topUp: 0,
      method,
    }),
  ),
);

/** The largest figure of all forms, beside its target. */
function largest(figures: readonly number[], limit: number) {
  const most = Math.max(...figures);
  return { measured: String(most), met: Math.min(...figures) > 0 && most <= limit };
}

/** What one batch sheet asks of Excel. */
export const batchSheet: readonly BenchRow[] = [
  {
    what: "GYLE calls per batch sheet, on the form that has most",
    target: "at most 60",
    measure: () =>
      largest(
        forms.map((form) => sheetFigures(planBatch(form)).calls),
        60,
      ),
  },
  {
    what: "deepest chain of GYLE calls on it",
    target: "at most 5: where it stands and the verdict on the pressure stand before the sugar",
    measure: () =>
      largest(
        forms.map((form) => sheetFigures(planBatch(form)).deepestChain),
        5,
      ),
  },
  {
    what: "`context.sync()` per inserted batch",
    target: "at most 3",
    measure: async () => {
      const bench = openBench(createRequire(import.meta.url)(path.join(root, "dist/headless.cjs")) as typeof Headless);
      const syncs: number[] = [];
      for (const form of forms) {
        const before = bench.host.faults.syncCount;
        await Excel.run((context) => insertBatch(context, form));
        syncs.push(bench.host.faults.syncCount - before);
      }
      bench.dispose();
      return largest(syncs, 3);
    },
  },
];
