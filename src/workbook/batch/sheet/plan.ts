import { ebcFromSrm } from "../../../core/wort/colour-scales";
import { position } from "../../grid/plan/addresses";
import { colourBands } from "../../grid/plan/colour-bands";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import { pageHeight, type Paper } from "../../grid/plan/print-scale";
import type { PrintPlan, SheetPlan } from "../../grid/plan/sheet-plan";
import type { BlockKey } from "../fields/blocks";
import { blocksOf, putBlocks } from "./blocks";
import { brewDay } from "./brew-day";
import { card } from "./card";
import { cellText } from "../../grid/words/cell-text";
import { checks } from "../rules/checks";
import type { BatchContents } from "../contents";
import { hops } from "./hops";
import { malt } from "./malt";
import { mapTexts } from "../derived/map-texts";
import { sheetLines } from "../derived/sheet-lines";
import { batchFields } from "../fields";
import type { BatchCell } from "../fields/cells";
import type { BatchBuilder } from "./fields";
import { packaging } from "./packaging";
import { readings } from "./readings";
import { tasting } from "./tasting";
import { unitWords } from "../unit-words";
import { water } from "./water";
import { yeast } from "./yeast";

/** A to I are printed; J parts them from the workings: K to O the steps, Q to U the timeline, W to AE the chart, AG to AI the forecast. */
export const columnWidths: readonly number[] = [
  27.6, 12.1, 8, 11.2, 9.7, 9, 8.2, 10, 44, 3, 54, 22, 9, 64, 60, 3, 12, 9, 46, 12, 52, 3, 15, 9, 9, 9, 15, 9, 9, 15, 9, 3, 24, 15, 15,
];

/** How a sheet that stands already differs from a new one. */
export interface Standing {
  /** Rows of the tables Malt, Hops, Readings and Steps, and of the clock's lines ("Timeline"). */
  readonly tableRows?: Readonly<Record<string, number>>;
  /** Its blocks from the top; one that is new comes after them. */
  readonly blocks?: readonly BlockKey[];
}

/** The whole batch sheet, in the order of the job. */
export function planBatch(typed: BatchContents, { tableRows = {}, blocks: order = [] }: Standing = {}): SheetPlan {
  const contents = mapTexts(batchFields, typed, cellText);
  const words = unitWords(contents.units);
  const lines = sheetLines(batchFields, contents, contents);
  const b: BatchBuilder = new SheetBuilder<BatchCell>(tableRows);
  const { swatch, colour } = card(b, contents, lines, words);
  const budget = water(b, contents, lines, words);
  malt(b, contents, lines, words);
  const shares = hops(b, contents, lines);
  yeast(b, lines);
  const secondPage = b.row;
  const timeline = brewDay(b, contents);
  const readingRows = readings(b, contents, lines, words);
  const thirdPage = b.row;
  packaging(b, contents, lines, words);
  tasting(b, lines);
  const { units, method } = contents;
  checks(b, { units, method, words, watched: { budget, shares, timeline, readings: readingRows }, blocks: blocksOf(contents, order) });
  const handwritten = (["happened", "reading_times", "scores"] as const).flatMap((name) => b.rowsOf(name));
  const usualRows = b.row - 1;
  const blockPages = putBlocks(b, contents, lines, words, order, roomOf(contents));
  const { row: colourRow } = position(colour);
  b.name("figures", `G${colourRow - 4}:H${colourRow + 2}`);
  colourBands(b, swatch, colour.replace(/([A-Z]+)(\d+)/, "$$$1$$$2"), contents.units === "us" ? 1 : ebcFromSrm(1));
  return b.build(
    contents.sheetName,
    columnWidths,
    printPlan(b, contents, { pageStarts: [secondPage, thirdPage], usualRows, blockPages }, handwritten),
    2,
  );
}

/**
 * Three pages: what goes in; the day and its readings; the bottle and the verdict. Then what the brewer has chosen beyond that.
 *
 * @param handwritten rows that are filled in with a pen: they get what height the pages have left
 */
function printPlan(
  b: BatchBuilder,
  contents: BatchContents,
  {
    pageStarts,
    usualRows,
    blockPages,
  }: { readonly pageStarts: readonly number[]; readonly usualRows: number; readonly blockPages: readonly number[] },
  handwritten: readonly number[],
): PrintPlan {
  const room = roomOf(contents);
  [1, ...pageStarts].forEach((from, index) => {
    const to = (pageStarts[index] ?? usualRows + 1) - 1;
    b.stretch(
      handwritten.filter((row) => row >= from && row <= to),
      room - b.heightOf(from, to),
    );
  });
  return {
    area: `A1:I${b.row - 1}`,
    paper: paperOf(contents),
    breaksBeforeRow: [...pageStarts, ...blockPages],
    footer: `${contents.sheetName} · page &P of &N`,
  };
}

const paperOf = ({ units }: BatchContents): Paper => (units === "us" ? "letter" : "a4");
const roomOf = (contents: BatchContents): number => pageHeight(columnWidths.slice(0, 9), paperOf(contents));
