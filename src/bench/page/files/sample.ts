export const sampleName = "First extract batch";

/** The workbook that the very first start shows; undefined where this build has none. */
export async function fetchSample(): Promise<Uint8Array | undefined> {
  const answer = await fetch("first-extract-batch.xlsx");
  return answer.ok ? new Uint8Array(await answer.arrayBuffer()) : undefined;
}
