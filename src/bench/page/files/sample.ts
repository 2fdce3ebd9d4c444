import { firstUnits } from "../../../pane/parts/first-units";

export const sampleName = "First extract batch";

/** The same batch for each unit system. */
const files = { us: "first-extract-batch.xlsx", metric: "first-extract-batch-metric.xlsx" } as const;

/** The workbook that the very first start shows, in the units of the visitor's country; undefined where this build has none. */
export async function fetchSample(): Promise<Uint8Array | undefined> {
  const answer = await fetch(files[firstUnits()]);
  return answer.ok ? new Uint8Array(await answer.arrayBuffer()) : undefined;
}
