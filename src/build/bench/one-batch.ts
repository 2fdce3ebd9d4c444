import type { IWorkbookData } from "@univerjs/core";
import { insertBatch } from "../../workbook/batch/insert-batch";
import { benchBatch } from "./bench-batch";
import { withBench } from "./with-bench";

let inserted: Promise<IWorkbookData> | undefined;

/** A workbook with one batch, which multipliedSeason makes many of. */
export const oneBatch = (): Promise<IWorkbookData> =>
  (inserted ??= withBench(async (bench) => {
    await Excel.run((context) => insertBatch(context, benchBatch(1)));
    await bench.calculate();
    return bench.snapshot();
  }));
