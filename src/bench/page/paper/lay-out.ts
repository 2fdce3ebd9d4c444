import type { IRange } from "@univerjs/core";
import type { FWorksheet } from "@univerjs/sheets/facade";
import type { Engine } from "../../../excel-stand-in/engine/engine";
import type { ChartRecord, SheetExtras } from "../../../excel-stand-in/excel/sheet-extras";
import { chartSeries } from "../charts/chart-data";
import { drawChart } from "../charts/draw-chart";
import { blockTable, pointsPerPixel, tableOf, type BlockTable } from "./block-table";
import { filledIn, pageSetUp, smallestPoints, type PageSetUp } from "./page-setup";
import { paginate, type PrintedRow } from "./paginate";

export interface WhatToPrint {
  readonly engine: Engine;
  readonly unitId: string;
  readonly sheet: FWorksheet;
  readonly extras: SheetExtras;
  readonly workbookName: string;
  readonly language: string;
  /** Where it is laid out: rows are measured there, so it must be in the page. */
  readonly paper: HTMLElement;
}

/** Fills the paper with the pages of one sheet, by its own print set-up. Answers the size of the paper in points. */
export function layOut(what: WhatToPrint): { width: number; height: number } {
  const { sheet, extras, paper } = what;
  const setUp = pageSetUp(extras.pageLayout, what.language);
  const { width, height, margins } = setUp;
  const room = { width: width - margins.left - margins.right, height: height - margins.top - margins.bottom };
  const pages = areasOf(sheet, extras).flatMap((area) => pagesOf(what, area, setUp, room));
  paper.replaceChildren(...pages);
  pages.forEach((page, index) => {
    page.style.cssText = `width:${width}pt;height:${Math.floor(height) - 1}pt;padding:${margins.top}pt ${margins.right}pt 0 ${margins.left}pt`;
    page.append(...edges(what, setUp, index + 1, pages.length));
  });
  return { width, height };
}

/** The print area, which may be several; without one, all that stands on the sheet. */
function areasOf(sheet: FWorksheet, { printArea, charts = [] }: SheetExtras): IRange[] {
  if (printArea) return printArea.split(",").map((area) => sheet.getRange(area).getRange());
  const ends = charts.flatMap(({ anchor }) => (anchor?.endCell ? [sheet.getRange(anchor.endCell).getRange()] : []));
  return [
    {
      startRow: 0,
      startColumn: 0,
      endRow: Math.max(0, sheet.getLastRow(), ...ends.map(({ endRow }) => endRow)),
      endColumn: Math.max(0, sheet.getLastColumn(), ...ends.map(({ endColumn }) => endColumn)),
    },
  ];
}

interface Room {
  readonly width: number;
  readonly height: number;
}

function pagesOf(what: WhatToPrint, area: IRange, setUp: PageSetUp, room: Room): HTMLElement[] {
  const { sheet } = what;
  const worksheet = sheet.getSheet();
  let wide = 0;
  for (let column = area.startColumn; column <= area.endColumn; column += 1)
    if (worksheet.getColVisible(column)) wide += worksheet.getColumnWidth(column) * pointsPerPixel;
  let scale = Math.min(setUp.scale, room.width / wide);
  let laid = onPages(what, area, setUp, room, scale);
  // The letters of eleven points stop at the smallest size at this scale: less would only take the room between the lines.
  const least = (0.9 * smallestPoints) / 11;
  while (setUp.mostPages !== undefined && laid.pages.length > setUp.mostPages && scale * 0.97 >= least) {
    scale *= 0.97;
    laid = onPages(what, area, setUp, room, scale);
  }
  return laid.pages.map(({ from, to }) => page(what, setUp, laid, from, to, scale));
}

interface Laid {
  readonly table: BlockTable;
  readonly titles: BlockTable | undefined;
  /** Of the table's rows, in points, as the browser sets them. */
  readonly heights: readonly number[];
  readonly pages: readonly { from: number; to: number }[];
}

function onPages(what: WhatToPrint, area: IRange, setUp: PageSetUp, room: Room, scale: number): Laid {
  const { sheet, extras, paper } = what;
  const table = blockTable(sheet, area, setUp, room.width, scale);
  const heights = measured(paper, table);
  const titles = titleRows(extras.printTitleRows);
  // Repeated from the second page on, where the area's own rows do not begin with them.
  const repeated = titles && blockTable(sheet, { ...area, ...titles }, setUp, room.width, scale);
  const titleHeight = repeated ? sum(measured(paper, repeated)) : 0;
  const breaks = new Set(extras.horizontalPageBreaks ?? []);
  const tied = chartRows(sheet, extras.charts ?? []);
  const rows = table.rows.map(({ row, empty, tiedToAbove }, index): PrintedRow => ({
    height: heights[index]!,
    breakBefore: breaks.has(row),
    empty,
    tiedToAbove: tiedToAbove || tied.has(row),
  }));
  return { table, titles: repeated, heights, pages: paginate(rows, room.height - titleHeight) };
}

function measured(paper: HTMLElement, table: BlockTable): number[] {
  const rows = table.rows.map(({ element }) => element);
  paper.replaceChildren(tableOf(table, rows));
  return rows.map((row) => row.getBoundingClientRect().height * pointsPerPixel);
}

function page(what: WhatToPrint, setUp: PageSetUp, { table, titles, heights }: Laid, from: number, to: number, scale: number): HTMLElement {
  const page = document.createElement("section");
  page.className = "paper-page";
  const sheetOfPaper = document.createElement("div");
  sheetOfPaper.className = "paper-cells";
  if (setUp.centred) sheetOfPaper.style.margin = "0 auto";
  sheetOfPaper.style.width = `${sum(table.columns.map(({ width }) => width))}pt`;
  const rows = table.rows.slice(from, to);
  const firstRow = rows[0]?.row ?? 0;
  const repeat = titles?.rows.filter(({ row }) => row < firstRow) ?? [];
  sheetOfPaper.append(
    tableOf(table, [...repeat.map(({ element }) => element.cloneNode(true) as HTMLTableRowElement), ...rows.map(({ element }) => element)]),
  );
  const above = repeat.length === 0 ? 0 : sum(repeat.map(({ row }) => what.sheet.getSheet().getRowHeight(row) * pointsPerPixel * scale));
  for (const chart of what.extras.charts ?? []) {
    const box = chartBox(what.sheet, chart, table, heights, from, to);
    if (!box) continue;
    const figure = drawChart(chart, chartSeries(what.engine, what.unitId, chart), {
      width: box.width / pointsPerPixel,
      height: box.height / pointsPerPixel,
    });
    figure.style.cssText = `left:${box.left}pt;top:${box.top + above}pt;width:${box.width}pt;height:${box.height}pt`;
    sheetOfPaper.append(figure);
  }
  page.append(sheetOfPaper);
  return page;
}

/** Where a chart lies among the printed cells, in points; undefined where it begins on another page or outside. */
function chartBox(
  sheet: FWorksheet,
  chart: ChartRecord,
  { columns, rows }: BlockTable,
  heights: readonly number[],
  from: number,
  to: number,
): { left: number; top: number; width: number; height: number } | undefined {
  const { first, last } = chartCells(sheet, chart);
  const [startRow, endRow] = [rows.findIndex(({ row }) => row === first.row), rows.findLastIndex(({ row }) => row <= last.row)];
  const [startColumn, endColumn] = [
    columns.findIndex(({ column }) => column === first.column),
    columns.findLastIndex(({ column }) => column <= last.column),
  ];
  if (startRow < from || startRow >= to || startColumn < 0) return undefined;
  const widths = columns.map(({ width }) => width);
  return {
    left: sum(widths.slice(0, startColumn)),
    top: sum(heights.slice(from, startRow)),
    width: sum(widths.slice(startColumn, endColumn + 1)),
    height: sum(heights.slice(startRow, Math.min(endRow + 1, to))),
  };
}

/** The cells that a chart covers, by its anchor or by its place in points. */
function chartCells(
  sheet: FWorksheet,
  { anchor, position }: ChartRecord,
): { first: { row: number; column: number }; last: { row: number; column: number } } {
  const worksheet = sheet.getSheet();
  const start = anchor && sheet.getRange(anchor.startCell).getRange();
  const end = anchor?.endCell === undefined ? undefined : sheet.getRange(anchor.endCell).getRange();
  const first = start
    ? { row: start.startRow, column: start.startColumn }
    : {
        row: reach(position.top, 0, (row) => worksheet.getRowHeight(row)),
        column: reach(position.left, 0, (column) => worksheet.getColumnWidth(column)),
      };
  const last = end
    ? { row: end.endRow, column: end.endColumn }
    : {
        row: reach(position.height, first.row, (row) => worksheet.getRowHeight(row)),
        column: reach(position.width, first.column, (column) => worksheet.getColumnWidth(column)),
      };
  return { first, last };
}

/** The row or column that lies so many points from the beginning of another. */
function reach(points: number, from: number, sizeOf: (index: number) => number): number {
  let index = from;
  for (let left = points / pointsPerPixel - sizeOf(index); left > 0.5; left -= sizeOf(index)) index += 1;
  return index;
}

/** Rows that a chart reaches into from above: no page ends before them. */
const chartRows = (sheet: FWorksheet, charts: readonly ChartRecord[]): Set<number> =>
  new Set(
    charts.flatMap((chart) => {
      const { first, last } = chartCells(sheet, chart);
      return Array.from({ length: Math.max(0, last.row - first.row) }, (_, index) => first.row + 1 + index);
    }),
  );

function titleRows(text: string | undefined): Pick<IRange, "startRow" | "endRow"> | undefined {
  const [, from, to] = /^\$?(\d+):\$?(\d+)$/u.exec(text ?? "") ?? [];
  return from && to ? { startRow: Number(from) - 1, endRow: Number(to) - 1 } : undefined;
}

/** Header and footer of one page. */
function edges({ sheet, workbookName }: WhatToPrint, { margins, headerFooter }: PageSetUp, page: number, pages: number): HTMLElement[] {
  const facts = { page, pages, sheet: sheet.getSheetName(), workbook: workbookName, now: new Date() };
  return (["Header", "Footer"] as const).flatMap((kind) => {
    const parts = (["left", "center", "right"] as const).map((place) => filledIn(headerFooter[`${place}${kind}`] ?? "", facts));
    if (parts.every((words) => words === "")) return [];
    const line = document.createElement(kind === "Header" ? "header" : "footer");
    line.className = "paper-edge";
    const edge = kind === "Header" ? `top:${margins.header}pt` : `bottom:${margins.footer}pt`;
    line.style.cssText = `${edge};left:${margins.left}pt;right:${margins.right}pt`;
    for (const words of parts) line.append(Object.assign(document.createElement("span"), { textContent: words }));
    return [line];
  });
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0);
