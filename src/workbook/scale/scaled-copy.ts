import { newBatchId } from "../batch/batch-id";
import type { BatchContents } from "../batch/contents";
import type { BatchInWorkbook } from "../read/batches-in-workbook";
import { convertKit } from "./convert-units";
import { scaleBatch, type ScaleTarget } from "./scale-batch";

export interface CopyChoices extends Omit<ScaleTarget, "kit"> {
  readonly name: string;
  readonly brewedOn: number;
  /** The batch whose kit it is planned on; left out: its own. */
  readonly kitOf?: BatchInWorkbook | undefined;
}

/** A batch of its own, to be brewed: another mark, another name, another day. */
export function scaledCopy(original: BatchContents, { name, brewedOn, volume, units, kitOf }: CopyChoices): BatchContents {
  const kit = kitOf && { name: kitOf.contents.kitName, kit: convertKit(kitOf.contents.kit, kitOf.contents.units, units) };
  return { ...scaleBatch(original, { volume, units, ...(kit && { kit }) }), id: newBatchId(), sheetName: name, batchName: name, brewedOn };
}
