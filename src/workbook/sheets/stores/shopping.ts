import { batchIdOf } from "../../batch/read/batch-sheets";
import { hasLog } from "../../batch/read/copied-sheets";
import type { NamedCells } from "../../grid/read/named-cells";
import { cellText } from "../../grid/words/cell-text";
import { changeRanges, rangeChange } from "../../grid/write/change-ranges";
import type { StoresAndBatches } from "./draw";
import { needKey, needsOf, type Need } from "./needs";
import { capName, leftFor } from "./stock";
import { stockUnit } from "./stock-kinds";

export interface ShoppingLine extends Need {
  readonly left: number;
  readonly toBuy: number;
  readonly unit: string;
  /** Sheets of the batches that need it. */
  readonly batches: readonly string[];
}

/**
 * Batches planned: nothing was noted on the brew day, nothing was measured, and nothing was drawn. Of sheets that carry
 * one mark only one can have drawn under it: one that was brewed, or else the first of them.
 */
function planned({ stores, batches }: StoresAndBatches): readonly NamedCells[] {
  const drawn = new Set(stores.draws.map(({ id }) => id));
  const brewed = new Set(batches.filter(hasLog).map(batchIdOf));
  const firstOf = (id: string): NamedCells | undefined => batches.find((batch) => batchIdOf(batch) === id);
  return batches.filter(
    (batch) => !hasLog(batch) && !(drawn.has(batchIdOf(batch)) && !brewed.has(batchIdOf(batch)) && firstOf(batchIdOf(batch)) === batch),
  );
}

/** What the batches planned need together, against what is left; what is there in full needs no buying and is left out. */
export function shoppingList(found: StoresAndBatches): ShoppingLine[] {
  const { stores } = found;
  const wanted = new Map<string, { need: Need; batches: string[] }>();
  for (const batch of planned(found)) {
    for (const need of needsOf(batch, stores.units, capName(stores))) {
      const before = wanted.get(needKey(need));
      wanted.set(
        needKey(need),
        before
          ? { need: { ...before.need, amount: before.need.amount + need.amount }, batches: [...before.batches, batch.sheetName] }
          : { need, batches: [batch.sheetName] },
      );
    }
  }
  return [...wanted.values()]
    .map(({ need, batches: forBatches }): ShoppingLine => {
      const left = Math.max(0, leftFor(stores, need) ?? 0);
      return {
        ...need,
        left,
        toBuy: Math.max(0, need.amount - left),
        unit: stockUnit(need.kind, stores.units),
        batches: forBatches,
      };
    })
    .filter(({ toBuy }) => toBuy > 1e-9);
}

/** Writes the list into its place on the stores sheet: one `context.sync()`. @returns lines for which the place has no room */
export async function writeShoppingList(
  context: Excel.RequestContext,
  { sheet }: StoresAndBatches,
  lines: readonly ShoppingLine[],
): Promise<number> {
  const { from, to } = sheet.area("stores_list");
  const rows = to.row - from.row + 1;
  const list = Array.from({ length: rows }, (_, index) => {
    const line = lines[index];
    return line
      ? [cellText(line.name), line.amount, line.left, line.toBuy, line.unit, cellText(line.batches.join(", "))]
      : ["", "", "", "", "", ""];
  });
  await changeRanges(context, [rangeChange(sheet, sheet.range("stores_list"), list)], { place: `“${sheet.sheetName}”` });
  return Math.max(0, lines.length - rows);
}
