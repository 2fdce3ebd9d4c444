import { ebcFromSrm } from "../../core/wort/colour-scales";
import { position } from "../plan/addresses";
import { colourBands } from "../plan/colour-bands";
import { SheetBuilder } from "../plan/sheet-builder";
import { fittingScale } from "../plan/print-scale";
import type { PrintPlan, SheetPlan } from "../plan/sheet-plan";
import { brewDay } from "./brew-day";
import { card } from "./card";
import { cellText } from "./cell-text";
import { checks } from "./checks";
import type { BatchContents } from "./contents";
import { hops } from "./hops";
import { malt } from "./malt";
import { mapTexts } from "./map-texts";
import { packaging } from "./packaging";
import { readings } from "./readings";
import { tasting } from "./tasting";
import { unitWords } from "./unit-words";
import { water } from "./water";
import { yeast } from "./yeast";

/** A to I are printed; J parts them from the workings: K to O the steps, Q to U the timeline, W to AE the chart, AG to AI the forecast. */
export const columnWidths: readonly number[] = [28, 10.5, 10.5, 10.5, 10.5, 10.5, 10.5, 10.5, 44, 3, 46, 9, 9, 52, 60, 3, 12, 9, 46, 12, 52, 3, 15, 9, 9, 9, 15, 9, 9, 15, 9, 3, 24, 15, 15];

/** The whole batch sheet of an extract batch, in the order of the job. */
export function planBatch(typed: BatchContents): SheetPlan {
  const contents = mapTexts(typed, cellText);
  const words = unitWords(contents.units);
  const b = new SheetBuilder();
  const { swatch, colour } = card(b, contents, words);
  water(b, contents, words);
  malt(b, contents, words);
  hops(b, contents, words);
  yeast(b, contents, words);
  brewDay(b, contents, words);
  const secondPage = b.row;
  readings(b, contents, words);
  packaging(b, contents, words);
  tasting(b, contents);
  checks(b, contents, words);
  const { row: colourRow } = position(colour);
  b.name("figures", `G${colourRow - 4}:H${colourRow + 2}`);
  colourBands(b, swatch, colour.replace(/([A-Z]+)(\d+)/, "$$$1$$$2"), contents.units === "us" ? 1 : ebcFromSrm(1));
  return b.build(
    contents.sheetName,
    columnWidths,
    printPlan(b, contents, secondPage),
    2,
  );
}

function printPlan(b: SheetBuilder, { units, sheetName }: BatchContents, secondPage: number): PrintPlan {
  const paper = units === "us" ? "letter" : "a4";
  const lastRow = b.row - 1;
  const pages = [
    [1, secondPage - 1],
    [secondPage, lastRow],
  ] as const;
  const heights = pages.map(([from, to]) => b.heightOf(from, to));
  return { area: `A1:I${lastRow}`, paper, scalePercent: fittingScale(columnWidths.slice(0, 9), heights, paper), breaksBeforeRow: [secondPage], footer: `${sheetName} · page &P of &N` };
}
