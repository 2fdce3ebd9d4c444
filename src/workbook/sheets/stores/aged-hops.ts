import { askNumber } from "../../batch/figures/ask";
import { address } from "../../grid/plan/addresses";
import type { CellValue, NamedCells } from "../../grid/read/named-cells";
import { changeRanges, rangeChange, type LookedAt, type RangeChange } from "../../grid/write/change-ranges";
import { itemFor, type Stores } from "./stock";

/** One hop of a batch as the stores hold it: its alpha on the brewing day, beside what the batch calculates with. */
export interface AgedHop {
  readonly hop: string;
  readonly printedPercent: number;
  readonly onTheDayPercent: number;
  readonly inBatchPercent: number | undefined;
  /** Cell of the batch sheet that holds its alpha. */
  readonly cell: string;
  /** The line of the hop table from the hop to its alpha, and what stood there: a table may be sorted or filled in meanwhile. */
  readonly line: LookedAt;
  /** What comes into the cell where the brewer asks for it. */
  readonly change: RangeChange;
}

/** Alpha of the batch's hops on its brewing day, for those that the stores know with date and temperature. */
export function agedHops(stores: Stores, batch: NamedCells): AgedHop[] {
  const { from, to } = batch.area("hop_plan");
  const day = batch.number("brewed_on");
  if (day === "") return [];
  const lines = batch.formulaBlock("hop_plan");
  const found: AgedHop[] = [];
  for (let row = from.row; row <= to.row; row += 1) {
    const hop = String(batch.at(row, from.column)).trim();
    const aged = hop === "" ? undefined : agedTo(stores, hop, day);
    const alpha = batch.at(row, from.column + 2);
    if (aged)
      found.push({
        hop,
        ...aged,
        inBatchPercent: typeof alpha === "number" ? alpha : undefined,
        cell: address(row, from.column + 2),
        change: rangeChange(batch, address(row, from.column + 2), [[Math.round(aged.onTheDayPercent * 10) / 10]]),
        line: {
          sheetName: batch.sheetName,
          range: `${address(row, from.column)}:${address(row, from.column + 2)}`,
          before: [lines[row - from.row]?.slice(0, 3) ?? []],
        },
      });
  }
  return found;
}

/** In the closed packet until it was opened, open to the air from then on: by the function that the stores sheet asks, so that what it refuses is not known here. */
function agedTo(stores: Stores, name: string, day: number): Pick<AgedHop, "printedPercent" | "onTheDayPercent"> | undefined {
  const [, , , , , , alpha, measuredOn, openedOn, storedAt, container] = itemFor(stores, { kind: "hops", name })?.cells ?? [];
  if (!isNumber(alpha) || !isNumber(measuredOn) || !isNumber(storedAt) || day < measuredOn) return undefined;
  const opened = isNumber(openedOn) ? Math.min(Math.max(openedOn, measuredOn), day) : day;
  const aged = (from: number, days: number, kept: CellValue): number | undefined =>
    askNumber("HOPS.AGED", from, days, storedAt, null, kept, stores.units);
  const shut = aged(alpha, opened - measuredOn, container ?? "");
  const onTheDayPercent = shut === undefined ? undefined : aged(shut, day - opened, "loose");
  return onTheDayPercent === undefined ? undefined : { printedPercent: alpha, onTheDayPercent };
}

const isNumber = (value: CellValue | undefined): value is number => typeof value === "number" && value !== 0;

/**
 * Writes the aged alpha into the hop table of the batch, where the brewer asked for it: one `context.sync()`.
 *
 * @throws JustChanged where the lines of the table are no longer what the brewer was shown; nothing is written then
 */
export async function writeAgedHops(context: Excel.RequestContext, sheetName: string, hops: readonly AgedHop[]): Promise<void> {
  await changeRanges(
    context,
    hops.map(({ change }) => change),
    { place: `the hop table on “${sheetName}”`, watched: hops.map(({ line }) => line) },
  );
}
