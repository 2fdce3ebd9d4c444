import { readKits } from "../../workbook/sheets/kit/insert-kit";
import { onKit } from "../../workbook/sheets/kit/kits-on-sheet";
import type { KitChoice } from "../new-batch/write-batch";

/** The brewer's kits, as the form for a new batch offers them. */
export async function kitChoices(): Promise<KitChoice[]> {
  const kits = await Excel.run({ delayForCellEdit: true }, readKits);
  return kits.map((kit) => ({ name: kit.name, forBatch: (choices) => onKit(choices, kit) }));
}
