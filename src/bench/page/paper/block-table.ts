import type { IRange } from "@univerjs/core";
import type { FWorksheet } from "@univerjs/sheets/facade";
import { dress, fontOf, isBare, printedPoints } from "./cell-look";
import { columnWidths } from "./column-widths";
import type { PageSetUp } from "./page-setup";
import { printedCells, type PrintedCell } from "./printed-cells";

export const pointsPerPixel = 0.75;
/** Between a cell's words and its edge, in points. */
const padding = 1.5;

/** A block of cells as it will stand on paper: columns with their widths in points, and one table row for each row of the sheet. */
export interface BlockTable {
  readonly block: IRange;
  readonly columns: readonly { readonly column: number; readonly width: number }[];
  readonly rows: readonly {
    readonly row: number;
    readonly element: HTMLTableRowElement;
    readonly empty: boolean;
    readonly tiedToAbove: boolean;
  }[];
}

/** @param scale of widths, heights and letters; letters stop at the smallest readable size, and rows grow with their words */
export function blockTable(sheet: FWorksheet, block: IRange, setUp: PageSetUp, room: number, scale: number): BlockTable {
  const worksheet = sheet.getSheet();
  const shownColumns = upTo(block.startColumn, block.endColumn).filter((column) => worksheet.getColVisible(column));
  const cells = withRunOn(
    printedCells(sheet, block),
    shownColumns,
    (cell) => textWidth(cell, scale),
    (column) => worksheet.getColumnWidth(column) * pointsPerPixel * scale,
  );
  const widths = columnWidths(
    shownColumns.map((column) => worksheet.getColumnWidth(column) * pointsPerPixel * scale),
    neededWidths(cells, shownColumns, scale),
    room,
  );
  const byRow = new Map<number, PrintedCell[]>();
  for (const cell of cells) byRow.set(cell.row, [...(byRow.get(cell.row) ?? []), cell]);
  const reaching = new Set(cells.flatMap(({ row, rowSpan }) => upTo(row + 1, row + rowSpan - 1)));
  const rows = upTo(block.startRow, block.endRow)
    .filter((row) => worksheet.getRowVisible(row))
    .map((row) => {
      const inRow = byRow.get(row) ?? [];
      const element = document.createElement("tr");
      element.style.height = `${worksheet.getRowHeight(row) * pointsPerPixel * scale}pt`;
      element.append(...inRow.map((cell) => cellElement(cell, setUp, scale)));
      return { row, element, empty: inRow.every(({ text, style }) => text === "" && isBare(style)), tiedToAbove: reaching.has(row) };
    });
  return { block, columns: shownColumns.map((column, index) => ({ column, width: widths[index]! })), rows };
}

/** The table itself, with the rows given; rows at the top of every page first. */
export function tableOf({ columns }: BlockTable, rows: readonly HTMLTableRowElement[]): HTMLTableElement {
  const table = document.createElement("table");
  table.style.width = `${columns.reduce((sum, { width }) => sum + width, 0)}pt`;
  const group = document.createElement("colgroup");
  for (const { width } of columns) group.append(Object.assign(document.createElement("col"), { style: `width:${width}pt` }));
  const body = document.createElement("tbody");
  body.append(...rows);
  table.append(group, body);
  return table;
}

function cellElement(cell: PrintedCell, setUp: PageSetUp, scale: number): HTMLTableCellElement {
  const { text, rowSpan, columnSpan, align, verticalAlign, isNumber, style } = cell;
  const element = document.createElement("td");
  element.textContent = text;
  if (rowSpan > 1) element.rowSpan = rowSpan;
  if (columnSpan > 1) element.colSpan = columnSpan;
  if (text !== "") element.style.font = fontOf(style, scale);
  element.style.textAlign = align;
  element.style.verticalAlign = verticalAlign;
  element.style.paddingLeft = `${padding + (style.pd?.l ?? 0) * pointsPerPixel * scale}pt`;
  if (isNumber) element.classList.add("paper-number");
  if (setUp.gridlines) element.classList.add("paper-gridlines");
  dress(element, style, setUp.blackAndWhite);
  return element;
}

/** Words too long for their cell take the empty cells right of it, as they do on the screen; what that leaves empty is not printed twice. */
function withRunOn(
  cells: readonly PrintedCell[],
  columns: readonly number[],
  widthOf: (cell: PrintedCell) => number,
  columnWidth: (column: number) => number,
): PrintedCell[] {
  const taken = new Set<PrintedCell>();
  const at = new Map(cells.map((cell) => [`${cell.row},${cell.column}`, cell]));
  return cells
    .map((cell) => {
      if (!cell.runsOn || cell.text === "" || taken.has(cell)) return cell;
      const wanted = widthOf(cell);
      let have = columnWidth(cell.column);
      let columnSpan = 1;
      for (const column of columns.filter((one) => one > cell.column)) {
        const next = at.get(`${cell.row},${column}`);
        if (have >= wanted || !next || next.text !== "" || next.rowSpan > 1 || next.columnSpan > 1 || !isBare(next.style)) break;
        taken.add(next);
        have += columnWidth(column);
        columnSpan += 1;
      }
      return { ...cell, columnSpan };
    })
    .filter((_, index) => !taken.has(cells[index]!));
}

/** The narrowest columns that cut nothing: a number stays whole, words break between words. Cells over several columns share them. */
function neededWidths(cells: readonly PrintedCell[], columns: readonly number[], scale: number): number[] {
  const needed = columns.map(() => 4);
  for (const cell of cells.toSorted((a, b) => a.columnSpan - b.columnSpan)) {
    if (cell.text === "") continue;
    const index = columns.indexOf(cell.column);
    const over = upTo(index, index + cell.columnSpan - 1);
    const lacking = narrowest(cell, scale) - over.reduce((sum, one) => sum + needed[one]!, 0);
    // The last of several columns takes it: the first ones are mostly numbers' columns.
    if (lacking > 0) needed[over.at(-1)!]! += lacking;
  }
  return needed;
}

const narrowest = (cell: PrintedCell, scale: number): number =>
  cell.isNumber ? textWidth(cell, scale) : Math.max(...cell.text.split(/\s+/u).map((text) => textWidth({ ...cell, text }, scale)));

const pen = document.createElement("canvas").getContext("2d")!;

/** Width that a cell's words need in one line, in points, with what stands free around them. */
function textWidth({ text, style }: Pick<PrintedCell, "text" | "style">, scale: number): number {
  pen.font = fontOf(style, scale);
  const letters = Math.max(...text.split("\n").map((line) => pen.measureText(line).width)) * pointsPerPixel;
  return letters + 2 * padding + (style.pd?.l ?? 0) * pointsPerPixel * scale + printedPoints(style, scale) * 0.06;
}

const upTo = (from: number, to: number): number[] => Array.from({ length: Math.max(0, to - from + 1) }, (_, index) => from + index);
