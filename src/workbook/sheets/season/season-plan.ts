import { ebcFromSrm } from "../../../core/wort/colour-scales";
import type { UnitSystem } from "../../../functions/quantities";
import { colourBands } from "../../grid/plan/colour-bands";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { NamedCells } from "../../grid/read/named-cells";
import type { CellContent, SheetPlan } from "../../grid/plan/sheet-plan";
import { columns, firstOwnColumn, keptAt, printedTo } from "./season-columns";
import { rowCells } from "./season-cells";
import type { SeasonRow } from "./season-rows";
import { columnLetters, columnNumber } from "../../grid/plan/addresses";
import { charts } from "./charts";
import { moved } from "./own-cells";
import { summary } from "./summary";

/** Marks the sheet, and tells which plan it follows. */
export const seasonMark = "gylebook_season";
export const seasonVersion = 2;
export const planOf = (sheet: NamedCells): number => Number(sheet.value(seasonMark)) || 1;
/** The season sheet of a workbook: the newest plan's, where an older one was left standing beside it. */
export function newestSeason(sheets: readonly NamedCells[]): { readonly cells: NamedCells; readonly index: number } {
  const index = sheets.reduce((best, sheet, at) => (planOf(sheet) > planOf(sheets[best]!) ? at : best), 0);
  return { cells: sheets[index]!, index };
}
/** The list's first row carries this name, so that rows put in above it do not matter. */
export const firstRowName = "season_first";
/** Room for so many batches in the sums. */
export const mostBatches = 500;

export interface SeasonOptions {
  readonly sheetName: string;
  readonly units: UnitSystem;
  /** A formula, or a fixed day for a sample that must not change. */
  readonly today: CellContent;
  readonly rows: readonly SeasonRow[];
  /** Into the fermenter in one year, in the units of the sheet; "" while the brewer has not looked it up. */
  readonly allowance?: CellContent;
}

const headingRow = 40;
/** On a sheet as it is made; rows may be put in above it. */
export const plannedFirstRow = headingRow + 1;
const firstRow = plannedFirstRow;
const lastRow = firstRow + mostBatches - 1;

/** The season: what the year brought above, below it one row for each batch, which grows downwards. */
export function planSeason({ sheetName, units, today, rows, allowance = "" }: SeasonOptions): SheetPlan {
  const b = new SheetBuilder();
  b.height(28);
  b.put("A", "The season", { style: "title", mergeTo: "E" });
  b.put("X", "Workings. Plan of this sheet:", { style: "hint" });
  b.put("Y", seasonVersion, { style: "hint", name: seasonMark });
  b.row = 2;
  b.put(
    "A",
    "One row a batch, read from its sheet, and kept when the sheet is deleted. Underlined cells are yours; the shaded ones calculate.",
    { style: "hint", mergeTo: "P" },
  );
  b.row = 3;
  const unitsCell = summary(b, { units, today, allowance }, (letter) => `$${letter}$${firstRow}:$${letter}$${lastRow}`);
  charts(b, (letter) => `${keptAt(letter)}${firstRow}:${keptAt(letter)}${lastRow}`);
  if (b.row !== headingRow - 2) throw new Error(`the list is to begin at row ${headingRow - 2}, not ${b.row}`);
  list(b, rows, unitsCell);
  const widths = [...columns.map(({ width }) => width), 3];
  const paper = units === "us" ? "letter" : "a4";
  return b.build(
    sheetName,
    widths,
    {
      area: `A1:${printedTo}${Math.max(firstRow, firstRow + rows.length - 1)}`,
      paper,
      landscape: true,
      // The year and its charts on one page, the list on those that follow.
      breaksBeforeRow: [headingRow - 2],
      footer: `${sheetName} · page &P of &N`,
    },
    2,
  );
}

function list(b: SheetBuilder, rows: readonly SeasonRow[], unitsCell: string): void {
  b.height(18);
  b.put("A", "4  Batches", { style: "section", mergeTo: "D" });
  b.put(
    "E",
    "In the order of the sheets. “left”: bottles, or what is left of a keg. What you type there and to the right of this list stays with its batch",
    {
      style: "sectionHint",
      mergeTo: printedTo,
    },
  );
  for (const { letter, group, heading, style } of columns) {
    if (group) b.put(letter, group[0], { style: "heading", ...(group[1] !== letter && { mergeTo: group[1] }) }, headingRow - 1);
    b.put(
      letter,
      heading,
      {
        style: style === "inputText" || style === "keyText" || style === "resultText" || style === "workings" ? "heading" : "headingRight",
      },
      headingRow,
    );
  }
  b.put(firstOwnColumn, "Columns from here on are yours", { style: "hint" }, headingRow - 1);
  b.name(firstRowName, `A${firstRow}`);
  rows.forEach((row, index) => {
    row.own.forEach((content, offset) => {
      const where = columnLetters(columnNumber(firstOwnColumn) + offset);
      if (content !== "") b.put(where, moved.down(content, `${where}${firstRow + index}`), { style: "label" }, firstRow + index);
    });
    for (const { address, content, style, format } of rowCells(row, firstRow + index))
      b.put(address.replace(/\d+$/, ""), content, { style, ...(format && { format }) }, firstRow + index);
  });
  const all = (letter: string): string => `${letter}${firstRow}:${letter}${lastRow}`;
  colourBands(b, all("O"), `$N${firstRow}`, `IF(${unitsCell}="us",1,${ebcFromSrm(1)})`);
  b.highlight({
    range: all("E"),
    formula: `=OR($E${firstRow}="stalled",$E${firstRow}="read again",$E${firstRow}="error")`,
    fill: "#7A1F1F",
    color: "#FFFFFF",
    bold: true,
  });
  b.highlight({
    range: all("E"),
    formula: `=OR($E${firstRow}="almost there",$E${firstRow}="finished")`,
    fill: "#F2D58A",
    color: "#3A2A00",
    bold: true,
  });
}
