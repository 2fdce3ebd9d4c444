import { newBatchId } from "../batch-id";
import type { UnitSystem } from "../../../functions/quantities";
import type { BatchContents, Kit } from "../contents";
import { convertKit } from "./convert-units";
import { scaleBatch, type ScaleTarget } from "./scale-batch";

export interface CopyChoices extends Omit<ScaleTarget, "kit"> {
  readonly name: string;
  readonly brewedOn: number;
  /** In its own units; left out: the kit that the batch stands on. */
  readonly kit?: { readonly name: string; readonly units: UnitSystem; readonly kit: Kit } | undefined;
}

/** A batch of its own, to be brewed: another mark, another name, another day. */
export function scaledCopy(original: BatchContents, { name, brewedOn, volume, units, kit: planned }: CopyChoices): BatchContents {
  const kit = planned && { name: planned.name, kit: convertKit(planned.kit, planned.units, units) };
  return { ...scaleBatch(original, { volume, units, ...(kit && { kit }) }), id: newBatchId(), sheetName: name, batchName: name, brewedOn };
}
