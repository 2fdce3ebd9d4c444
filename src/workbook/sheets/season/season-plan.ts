import { ebcFromSrm } from "../../../core/wort/colour-scales";
import type { UnitSystem } from "../../../functions/quantities";
import { colourBands } from "../../grid/plan/colour-bands";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { CellContent, SheetPlan } from "../../grid/plan/sheet-plan";
import { columns, firstOwnColumn, printedTo } from "./season-columns";
import { rowCells } from "./season-cells";
import type { SeasonRow } from "./season-rows";
import { summary } from "./summary";

/** Marks the sheet, and tells which plan it follows. */
export const seasonMark = "gylebook_season";
export const seasonVersion = 1;
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

const headingRow = 24;
const firstRow = headingRow + 1;

/** The season: what the year brought above, below it one row for each batch, which grows downwards. */
export function planSeason({ sheetName, units, today, rows, allowance = "" }: SeasonOptions): SheetPlan {
  const b = new SheetBuilder();
  b.height(28);
  b.put("A", "The season", { style: "title", mergeTo: "E" });
  b.put("W", "Workings. Plan of this sheet:", { style: "hint" });
  b.put("X", seasonVersion, { style: "hint", name: seasonMark });
  b.row = 2;
  b.put(
    "A",
    "One row a batch, read from the batch sheets. Underlined cells are yours; the shaded ones calculate. Change a batch on its own sheet.",
    { style: "hint", mergeTo: "P" },
  );
  b.row = 3;
  const unitsCell = summary(b, { units, today, allowance }, (letter) => `$${letter}$${firstRow}:$${letter}$${firstRow + mostBatches - 1}`);
  if (b.row !== headingRow - 2) throw new Error(`the list is to begin at row ${headingRow - 2}, not ${b.row}`);
  list(b, rows, unitsCell);
  const lastRow = Math.max(firstRow, firstRow + rows.length - 1);
  const widths = [...columns.map(({ width }) => width), 3];
  const paper = units === "us" ? "letter" : "a4";
  return b.build(
    sheetName,
    widths,
    {
      area: `A1:${printedTo}${lastRow}`,
      paper,
      landscape: true,
      breaksBeforeRow: [],
      footer: `${sheetName} · page &P of &N`,
    },
    2,
  );
}

function list(b: SheetBuilder, rows: readonly SeasonRow[], unitsCell: string): void {
  b.height(18);
  b.put("A", "3  Batches", { style: "section", mergeTo: "D" });
  b.put("E", "In the order of the sheets; what you type under “left” and “remark”, and to the right of this list, stays with its batch", {
    style: "sectionHint",
    mergeTo: printedTo,
  });
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
    for (const { address, content, style, format } of rowCells(row, firstRow + index))
      b.put(address.replace(/\d+$/, ""), content, { style, ...(format && { format }) }, firstRow + index);
  });
  const all = (letter: string): string => `${letter}${firstRow}:${letter}${firstRow + mostBatches - 1}`;
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
