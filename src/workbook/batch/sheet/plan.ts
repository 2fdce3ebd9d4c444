import { ebcFromSrm } from "../../../core/wort/colour-scales";
import { position } from "../../grid/plan/addresses";
import { colourBands } from "../../grid/plan/colour-bands";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import { fittingScale, heightWithoutShrinking } from "../../grid/plan/print-scale";
import type { PrintPlan, SheetPlan } from "../../grid/plan/sheet-plan";
import { brewDay } from "./brew-day";
import { card } from "./card";
import { cellText } from "../../grid/words/cell-text";
import { checks } from "../rules/checks";
import type { BatchContents } from "../contents";
import { hops } from "./hops";
import { malt } from "./malt";
import { mapTexts } from "../map-texts";
import { packaging } from "./packaging";
import { readings } from "./readings";
import { tasting } from "./tasting";
import { unitWords } from "../unit-words";
import { water } from "./water";
import { yeast } from "./yeast";

/** A to I are printed; J parts them from the workings: K to O the steps, Q to U the timeline, W to AE the chart, AG to AI the forecast. */
export const columnWidths: readonly number[] = [
  28, 10.5, 10.5, 10.5, 10.5, 10.5, 10.5, 10.5, 44, 3, 46, 9, 9, 52, 60, 3, 12, 9, 46, 12, 52, 3, 15, 9, 9, 9, 15, 9, 9, 15, 9, 3, 24, 15,
  15,
];

/**
 * The whole batch sheet, in the order of the job.
 *
 * @param tableRows rows of the tables Malt, Hops and Readings where the sheet stands already
 */
export function planBatch(typed: BatchContents, tableRows: Readonly<Record<string, number>> = {}): SheetPlan {
  const contents = mapTexts(typed, cellText);
  const words = unitWords(contents.units);
  const b = new SheetBuilder(tableRows);
  const { swatch, colour } = card(b, contents, words);
  const budget = water(b, contents, words);
  malt(b, contents, words);
  const shares = hops(b, contents, words);
  yeast(b, contents, words);
  const timeline = brewDay(b, contents, words);
  const secondPage = b.row;
  const readingRows = readings(b, contents, words);
  packaging(b, contents, words);
  tasting(b, contents);
  const { units, method } = contents;
  checks(b, { units, method, words, watched: { budget, shares, timeline, readings: readingRows } });
  const handwritten = ["happened", "reading_times", "scores"].flatMap((name) => b.rowsOf(name));
  const { row: colourRow } = position(colour);
  b.name("figures", `G${colourRow - 4}:H${colourRow + 2}`);
  colourBands(b, swatch, colour.replace(/([A-Z]+)(\d+)/, "$$$1$$$2"), contents.units === "us" ? 1 : ebcFromSrm(1));
  return b.build(contents.sheetName, columnWidths, printPlan(b, contents, secondPage, handwritten), 2);
}

/** @param handwritten rows that are filled in with a pen: they get what height the pages have left */
function printPlan(b: SheetBuilder, { units, sheetName }: BatchContents, secondPage: number, handwritten: readonly number[]): PrintPlan {
  const paper = units === "us" ? "letter" : "a4";
  const lastRow = b.row - 1;
  const pages = [
    [1, secondPage - 1],
    [secondPage, lastRow],
  ] as const;
  const printed = columnWidths.slice(0, 9);
  for (const [from, to] of pages) {
    b.stretch(
      handwritten.filter((row) => row >= from && row <= to),
      heightWithoutShrinking(printed, paper) - b.heightOf(from, to),
    );
  }
  const heights = pages.map(([from, to]) => b.heightOf(from, to));
  return {
    area: `A1:I${lastRow}`,
    paper,
    scalePercent: fittingScale(printed, heights, paper),
    breaksBeforeRow: [secondPage],
    footer: `${sheetName} · page &P of &N`,
  };
}
