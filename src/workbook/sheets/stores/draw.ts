import { address, columnNumber } from "../../grid/plan/addresses";
import { batchIdOf, isBatchSheet, isUnplugged } from "../../batch/read/batch-sheets";
import { markOf, sheetsAlike } from "../../batch/read/copied-sheets";
import type { NamedCells } from "../../grid/read/named-cells";
import { readAllSheets } from "../../grid/read/read-sheets";
import { passedOver, unpluggedBatches, type UnpluggedBatch } from "../../batch/read/unplugged-batches";
import { changeRanges, JustChanged, rangeChange, type RangeChange } from "../../grid/write/change-ranges";
import { ToldInFull } from "../../grid/words/told-in-full";
import { costsEmptied, costsOnBatch } from "./batch-costs";
import { needsOf, type Need } from "./needs";
import { portions, type ChosenLots } from "./portions";
import { capName, doubles, leftFor, lotKey, lotsFor, lotWords, readStores, storesSheetOf, type Draw, type Stores } from "./stock";
import { bookColumns, storesVersion } from "./stores-columns";
import { bookLine } from "./stores-plan";

/** A batch cannot draw as asked, in words for the brewer; the stores are as they were. */
export class DrawRefused extends ToldInFull {
  override readonly name = "DrawRefused";
}

/** Something that the shelves do not hold in full; `left` is undefined where they do not have it at all. */
export interface Shortage extends Need {
  readonly left: number | undefined;
}

export interface DrawPlan {
  readonly id: string;
  readonly sheetName: string;
  readonly batch: string;
  readonly needs: readonly Need[];
  /** What will be written into the book, lot by lot: as much as each lot holds, and no more. */
  readonly draws: readonly Omit<Draw, "day">[];
  readonly shortages: readonly Shortage[];
}

export interface StoresAndBatches {
  readonly sheet: NamedCells;
  readonly stores: Stores;
  readonly batches: readonly NamedCells[];
  /** Sheets that draw nothing and for which nothing is bought. */
  readonly unplugged: readonly UnpluggedBatch[];
}

/** The stores and all batch sheets at one moment; undefined where the workbook has no stores. Two `context.sync()`. */
export async function readStoresAndBatches(context: Excel.RequestContext): Promise<StoresAndBatches | undefined> {
  const sheets = await readAllSheets(context);
  const sheet = storesSheetOf(sheets);
  if (!sheet) return undefined;
  const batches = sheets.filter(isBatchSheet);
  return {
    sheet,
    stores: readStores(sheet),
    batches,
    unplugged: unpluggedBatches(sheets.filter(isUnplugged).map(markOf), batches.map(markOf)),
  };
}

/**
 * What a batch would draw.
 *
 * @param chosen lots to draw first; the oldest where none is named
 * @throws DrawRefused when it is unplugged, has drawn already, has no mark or one that another sheet carries too, two lines of a shelf have
 *   the same name and lot, or the stores follow an older plan
 */
export function planDraw({ stores, batches, unplugged }: StoresAndBatches, sheetName: string, chosen: ChosenLots = new Map()): DrawPlan {
  const without = unplugged.find((one) => one.sheetName === sheetName);
  if (without) throw new DrawRefused(`${passedOver(without, "draw for it on the stores")} Nothing was taken.`);
  const batch = batches.find((one) => one.sheetName === sheetName);
  if (!batch) throw new DrawRefused(`There is no batch sheet "${sheetName}".`);
  const id = batchIdOf(batch);
  if (id === "")
    throw new DrawRefused(
      `"${sheetName}" has no mark of its own, so nobody could tell later whether it has drawn: bring it to today's plan first (Help, Older sheets).`,
    );
  const before = stores.draws.find((draw) => draw.id === id);
  const alike = sheetsAlike(batches, batch).map((name) => `"${name}"`);
  if (alike.length > 0)
    throw new DrawRefused(
      `"${sheetName}" carries the same mark as ${alike.join(", ")}${before ? ", and one of them has drawn on the stores already" : ""}. Say first which is the copy: it gets a mark of its own. Nothing was taken.`,
    );
  if (before) throw new DrawRefused(`"${before.batch}" has drawn on the stores already. A batch draws once. Nothing was taken.`);
  refuseOlder(stores);
  const [double] = doubles(stores);
  if (double)
    throw new DrawRefused(
      `Two lines of the stores are called "${lotWords(double)}". Give each a lot of its own, such as the crop's year or the day on which you bought it; nothing was taken.`,
    );
  const needs = needsOf(batch, stores.units, capName(stores));
  const name = batch.text("batch_name") || sheetName;
  return {
    id,
    sheetName,
    batch: name,
    needs,
    draws: taken(stores, needs, chosen).map((draw) => ({ ...draw, id, batch: name })),
    shortages: needs
      .map((need) => ({ ...need, left: leftFor(stores, need) }))
      .filter(({ left, amount }) => left === undefined || left < amount - 1e-9),
  };
}

/** The stores as they will be after a draw: what the next one is planned on. */
export function afterDraw(found: StoresAndBatches, { draws }: DrawPlan, day: number): StoresAndBatches {
  const items = found.stores.items.map((item) => ({
    ...item,
    left: item.left - draws.filter((draw) => lotKey(draw) === lotKey(item)).reduce((sum, { amount }) => sum + amount, 0),
  }));
  return { ...found, stores: { ...found.stores, items, draws: [...found.stores.draws, ...draws.map((draw) => ({ ...draw, day }))] } };
}

/** One need after the other: a lot that two of them can be met from is not taken twice. */
function taken(stores: Stores, needs: readonly Need[], chosen: ChosenLots): Omit<Draw, "id" | "batch" | "day">[] {
  const gone = new Map<string, number>();
  return needs.flatMap((need) => {
    const items = stores.items.map((item) => ({ ...item, left: item.left - (gone.get(lotKey(item)) ?? 0) }));
    return portions({ ...stores, items }, need, chosen).map(({ item, amount, cost }) => {
      gone.set(lotKey(item), (gone.get(lotKey(item)) ?? 0) + amount);
      return { kind: item.kind, name: item.name, lot: item.lot, amount, cost };
    });
  });
}

function refuseOlder({ version, sheetName }: Stores): void {
  if (version < storesVersion)
    throw new DrawRefused(
      `“${sheetName}” was made by an older Gylebook, which knew no lots: write the stores in today's layout first (Season, Stores). Nothing was changed.`,
    );
}

/** Needs that several lots can meet, so that there is something to choose. */
export const lotChoices = (stores: Stores, needs: readonly Need[]) =>
  needs.map((need) => ({ need, lots: lotsFor(stores, need) })).filter(({ lots }) => lots.length > 1);

/** A draw and the day it is written under, as a day number. */
export interface DatedDraw {
  readonly plan: DrawPlan;
  readonly day: number;
}

/**
 * Takes what the plans say, each planned after the one before (`afterDraw`), off the shelves by writing it into the book, and what it had cost into the batches' own cost
 * cells where they are empty: two `context.sync()`.
 *
 * @returns how many lines of the batches have a cost of the brewer's own, which stays
 */
export async function writeDraws(
  context: Excel.RequestContext,
  { sheet, stores, batches }: StoresAndBatches,
  dated: readonly DatedDraw[],
): Promise<number> {
  refuseOlder(stores);
  const lines = dated.flatMap(({ plan, day }) => plan.draws.map((draw): Draw => ({ ...draw, day })));
  const costs = dated.flatMap(({ plan }) => {
    const batch = batches.find(({ sheetName }) => sheetName === plan.sheetName);
    return batch && plan.draws.length > 0 ? [costsOnBatch(batch, plan.draws)] : [];
  });
  await writeBook(
    context,
    sheet,
    stores.draws.length,
    [...stores.draws, ...lines],
    costs.flatMap(({ changes }) => changes),
  );
  return costs.reduce((sum, { own }) => sum + own, 0);
}

/**
 * Puts back what a batch drew, and empties the cost cells that the draw filled and nobody has changed since.
 *
 * @returns how many lines of the book went
 */
export async function giveBack(context: Excel.RequestContext, { sheet, stores, batches }: StoresAndBatches, id: string): Promise<number> {
  refuseOlder(stores);
  const kept = stores.draws.filter((draw) => draw.id !== id);
  const back = stores.draws.filter((draw) => draw.id === id);
  const batch = batches.find((one) => batchIdOf(one) === id);
  if (back.length > 0) await writeBook(context, sheet, stores.draws.length, kept, batch ? costsEmptied(batch, back) : []);
  return back.length;
}

const bookWidth = columnNumber(bookColumns.key) - columnNumber(bookColumns.id) + 1;

/** The whole book in one write, so that it is never half of the old and half of the new; and what goes with it onto the batches. */
async function writeBook(
  context: Excel.RequestContext,
  sheet: NamedCells,
  rowsBefore: number,
  draws: readonly Draw[],
  onBatches: readonly RangeChange[],
): Promise<void> {
  const { from, to } = sheet.area("stores_draws");
  const rows = Math.max(rowsBefore, draws.length);
  if (rows > to.row - from.row + 1)
    throw new DrawRefused(
      `The book of what was drawn is full (${to.row - from.row + 1} lines). Begin a new workbook for the next season; nothing was taken.`,
    );
  if (rows === 0) return;
  const content = Array.from({ length: rows }, (_, index) => {
    const draw = draws[index];
    return draw ? bookLine(draw) : Array.from({ length: bookWidth }, () => "");
  });
  const range = (height: number) => `${address(from.row, from.column)}:${address(from.row + height - 1, from.column + bookWidth - 1)}`;
  // One line more than is written: a line that somebody has added there meanwhile would be parted from the others.
  const before = sheet
    .formulaBlock("stores_draws")
    .slice(0, rows + 1)
    .map((line) => line.slice(0, bookWidth));
  const days = context.workbook.worksheets.getItem(sheet.sheetName).getRangeByIndexes(from.row - 1, from.column + 1, rows, 1);
  days.load("numberFormat");
  await context.sync();
  const looks = days.numberFormat as string[][];
  const along = looks.some(([look]) => look !== dayLook) && {
    write: () => {
      days.numberFormat = looks.map(() => [dayLook]);
    },
    takeBack: async () => {
      days.numberFormat = looks;
      await context.sync();
    },
  };
  const costsOn = [...new Set(onBatches.map(({ sheetName }) => `“${sheetName}”`))];
  try {
    await changeRanges(context, [rangeChange(sheet, range(rows), content), ...onBatches], {
      place: [
        `the book of what was drawn on “${sheet.sheetName}”`,
        ...(costsOn.length > 0 ? [`the costs on ${costsOn.join(", ")}`] : []),
      ].join(" and "),
      watched: [{ sheetName: sheet.sheetName, range: range(before.length), before }],
      ...(along && { along }),
    });
  } catch (problem) {
    if (problem instanceof JustChanged)
      throw new DrawRefused(
        problem.sheetName === sheet.sheetName
          ? "Somebody has just written into the book of what was drawn. Nothing was taken; look again."
          : `Somebody has just changed the costs on “${problem.sheetName}”. Nothing was taken; look again.`,
      );
    throw problem;
  }
}

const dayLook = "yyyy-mm-dd";
