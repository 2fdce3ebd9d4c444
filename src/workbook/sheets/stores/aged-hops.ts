import { askNumber } from "../../batch/figures/ask";
import { batchIdOf, type BatchSheet } from "../../batch/read/batch-sheets";
import { address } from "../../grid/plan/addresses";
import type { CellValue } from "../../grid/read/named-cells";
import { changeRanges, rangeChange, type LookedAt, type RangeChange } from "../../grid/write/change-ranges";
import { needsOf, type Need } from "./needs";
import { lotsInOrder, portions, type ChosenLots } from "./portions";
import { lotKey, lotsFor, type HopOnShelf, type StockItem, type Stores } from "./stock";

/** One hop of a batch as the stores hold it: its alpha on the brewing day, beside what the batch calculates with. */
export interface AgedHop {
  readonly hop: string;
  /** "lot 2025", or the lots that it comes from with the share of each; "" where the stores have it without a lot. */
  readonly from: string;
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

/**
 * Alpha of the batch's hops on its brewing day, for those that the stores know with date and temperature: of the lots that it has drawn, or
 * else would draw.
 */
export function agedHops(stores: Stores, batch: BatchSheet, chosen: ChosenLots = new Map()): AgedHop[] {
  const { from, to } = batch.area("hop_plan");
  const day = batch.number("brewed_on");
  if (day === "") return [];
  const lines = batch.formulaBlock("hop_plan");
  const found: AgedHop[] = [];
  for (let row = from.row; row <= to.row; row += 1) {
    const hop = String(batch.at(row, from.column)).trim();
    const aged = hop === "" ? undefined : agedTo(lotsOf(stores, batch, hop, chosen), day, stores);
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

interface Share {
  readonly item: StockItem;
  readonly amount: number;
}

/** The lots that a hop comes from: those in the book where the batch has drawn, those that it would draw before. */
function lotsOf(stores: Stores, batch: BatchSheet, hop: string, chosen: ChosenLots): readonly Share[] {
  const about = { kind: "hops", name: hop } as const;
  const lots = lotsFor(stores, about);
  const id = batchIdOf(batch);
  const drawn = stores.draws.filter((draw) => id !== "" && draw.id === id);
  if (drawn.length > 0)
    return lots.flatMap((item) => {
      const amount = drawn.filter((draw) => lotKey(draw) === lotKey(item)).reduce((sum, draw) => sum + draw.amount, 0);
      return amount > 0 ? [{ item, amount }] : [];
    });
  const [need]: readonly Need[] = lots.length < 2 ? [] : needsOf(batch, stores.units, undefined).filter((one) => isOf(one, hop));
  const taken = portions(stores, need ?? { ...about, amount: 1 }, chosen);
  // Where nothing is left, the packet that was there still tells what its hop is like.
  return taken.length > 0
    ? taken
    : lotsInOrder(stores, about, chosen)
        .slice(0, 1)
        .map((item) => ({ item, amount: 1 }));
}

const isOf = ({ kind, name }: Need, hop: string): boolean => kind === "hops" && name.toLowerCase() === hop.toLowerCase();

/** Of several lots the mean, each by its share; none where one of them is not known. */
function agedTo(
  shares: readonly Share[],
  day: number,
  stores: Stores,
): Pick<AgedHop, "from" | "printedPercent" | "onTheDayPercent"> | undefined {
  const whole = shares.reduce((sum, { amount }) => sum + amount, 0);
  const known = shares.map(({ item, amount }) => ({ item, share: amount / whole, aged: item.hop && agedLot(item.hop, day, stores) }));
  if (known.length === 0) return undefined;
  let [printedPercent, onTheDayPercent] = [0, 0];
  for (const { share, aged } of known) {
    if (aged === undefined) return undefined;
    printedPercent += share * aged.printedPercent;
    onTheDayPercent += share * aged.onTheDayPercent;
  }
  const lot = ({ lot: called }: StockItem): string => (called === "" ? "without a lot" : `lot ${called}`);
  const [only] = known;
  const from =
    known.length === 1 && only?.item.lot === ""
      ? ""
      : known.map(({ item, share }) => `${lot(item)}${known.length === 1 ? "" : ` (${Math.round(share * 100)} %)`}`).join(", ");
  return { from, printedPercent, onTheDayPercent };
}

/** In the closed packet until it was opened, open to the air from then on: by the function that the stores sheet asks, so that what it refuses is not known here. */
function agedLot(
  { alphaPercent: alpha, measuredOn, openedOn, storedAt, package: container }: HopOnShelf,
  day: number,
  { units }: Stores,
): Pick<AgedHop, "printedPercent" | "onTheDayPercent"> | undefined {
  if (!isNumber(alpha) || !isNumber(measuredOn) || !isNumber(storedAt) || day < measuredOn) return undefined;
  const opened = isNumber(openedOn) ? Math.min(Math.max(openedOn, measuredOn), day) : day;
  const aged = (from: number, days: number, kept: CellValue): number | undefined =>
    askNumber("HOPS.AGED", from, days, storedAt, null, kept, units);
  const shut = aged(alpha, opened - measuredOn, container);
  const onTheDayPercent = shut === undefined ? undefined : aged(shut, day - opened, "loose");
  return onTheDayPercent === undefined ? undefined : { printedPercent: alpha, onTheDayPercent };
}

const isNumber = (value: CellValue): value is number => typeof value === "number" && value !== 0;

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
