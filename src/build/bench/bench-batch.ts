import { exampleBatch } from "../../workbook/batch/example-batch";
import type { BatchContents } from "../../workbook/batch/contents";

/** The batches that a season is measured with: all alike but for their numbers. */
export const benchBatch = (number: number): BatchContents =>
  exampleBatch({
    id: `bench-${number}`,
    sheetName: `Batch ${number}`,
    batchName: `Number ${number}`,
    brewedOn: 46000 + number,
    volume: 20,
    units: "metric",
    topUp: 0,
    method: "extract",
  });
