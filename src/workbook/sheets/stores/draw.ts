import { address } from "../../grid/plan/addresses";
import { batchIdOf, isBatchSheet, isUnplugged } from "../../batch/read/batch-sheets";
import { markOf, sheetsAlike } from "../../batch/read/copied-sheets";
import type { NamedCells } from "../../grid/read/named-cells";
import { cellText } from "../../grid/words/cell-text";
import { readAllSheets } from "../../grid/read/read-sheets";
import { passedOver, unpluggedBatches, type UnpluggedBatch } from "../../batch/read/unplugged-batches";
import { changeRanges, JustChanged, rangeChange } from "../../grid/write/change-ranges";
import { ToldInFull } from "../../grid/words/told-in-full";
import { needsOf, type Need } from "./needs";
import { capName, doubles, isStoresSheet, itemFor, readStores, type Draw, type Stores } from "./stock";

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
  readonly batch: string;
  readonly needs: readonly Need[];
  /** What will be written into the book: all that the stores have a line for. */
  readonly draws: readonly Need[];
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
  const sheet = sheets.find(isStoresSheet);
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
 * @throws DrawRefused when it is unplugged, has drawn already, has no mark or one that another sheet carries too, or two lines of a shelf have the same name
 */
export function planDraw({ stores, batches, unplugged }: StoresAndBatches, sheetName: string): DrawPlan {
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
  const [double] = doubles(stores);
  if (double !== undefined)
    throw new DrawRefused(
      `Two lines of the stores are called "${double}". Give them names apart, such as the crop's year, on the stores and on the batch; nothing was taken.`,
    );
  const needs = needsOf(batch, stores.units, capName(stores));
  const lefts = needs.map((need) => ({ ...need, left: itemFor(stores, need)?.left }));
  return {
    id,
    batch: batch.text("batch_name") || sheetName,
    needs,
    draws: needs.filter((need) => itemFor(stores, need)),
    shortages: lefts.filter(({ left, amount }) => left === undefined || left < amount - 1e-9),
  };
}

/** A draw and the day it is written under, as a day number. */
export interface DatedDraw {
  readonly plan: DrawPlan;
  readonly day: number;
}

/** Takes what the plans say off the shelves by writing it into the book: two `context.sync()`. */
export async function writeDraws(
  context: Excel.RequestContext,
  { sheet, stores }: StoresAndBatches,
  dated: readonly DatedDraw[],
): Promise<void> {
  const lines = dated.flatMap(({ plan: { id, batch, draws }, day }) =>
    draws.map(({ kind, name, amount }): Draw => ({ id, batch, day, kind, name, amount })),
  );
  await writeBook(context, sheet, stores.draws.length, [...stores.draws, ...lines]);
}

/** Puts back what a batch drew. @returns how many lines of the book went */
export async function giveBack(context: Excel.RequestContext, { sheet, stores }: StoresAndBatches, id: string): Promise<number> {
  const kept = stores.draws.filter((draw) => draw.id !== id);
  if (kept.length < stores.draws.length) await writeBook(context, sheet, stores.draws.length, kept);
  return stores.draws.length - kept.length;
}

/** The whole book in one write, so that it is never half of the old and half of the new. */
async function writeBook(context: Excel.RequestContext, sheet: NamedCells, rowsBefore: number, draws: readonly Draw[]): Promise<void> {
  const { from, to } = sheet.area("stores_draws");
  const rows = Math.max(rowsBefore, draws.length);
  if (rows > to.row - from.row + 1)
    throw new DrawRefused(
      `The book of what was drawn is full (${to.row - from.row + 1} lines). Begin a new workbook for the next season; nothing was taken.`,
    );
  if (rows === 0) return;
  const content = Array.from({ length: rows }, (_, index) => {
    const draw = draws[index];
    return draw
      ? [cellText(draw.id), cellText(draw.batch), draw.day, draw.kind, cellText(draw.name), draw.amount]
      : ["", "", "", "", "", ""];
  });
  const range = (height: number) => `${address(from.row, from.column)}:${address(from.row + height - 1, from.column + 5)}`;
  // One line more than is written: a line that somebody has added there meanwhile would be parted from the others.
  const before = sheet
    .formulaBlock("stores_draws")
    .slice(0, rows + 1)
    .map((line) => line.slice(0, 6));
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
  try {
    await changeRanges(context, [rangeChange(sheet, range(rows), content)], {
      place: `the book of what was drawn on “${sheet.sheetName}”`,
      watched: [{ sheetName: sheet.sheetName, range: range(before.length), before }],
      ...(along && { along }),
    });
  } catch (problem) {
    if (problem instanceof JustChanged)
      throw new DrawRefused("Somebody has just written into the book of what was drawn. Nothing was taken; look again.");
    throw problem;
  }
}

const dayLook = "yyyy-mm-dd";
