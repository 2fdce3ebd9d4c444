import { passedOver, type UnpluggedBatch } from "../../workbook/batch/read/unplugged-batches";

/** Names the unplugged batches that a screen does not work with. */
export function PassedOver({ unplugged, to }: { readonly unplugged: readonly UnpluggedBatch[]; readonly to: string }) {
  return (
    <>
      {unplugged.map((batch) => (
        <p key={batch.sheetName}>{passedOver(batch, to)}</p>
      ))}
    </>
  );
}
