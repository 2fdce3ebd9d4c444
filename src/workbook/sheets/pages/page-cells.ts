import type { NamedCells } from "../../grid/read/named-cells";
import { unitWords, type UnitWords } from "../../batch/unit-words";
import { address, columnLetters } from "../../grid/plan/addresses";
import type { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { SheetPlan } from "../../grid/plan/sheet-plan";
import { sheetPrefix } from "../../grid/words/sheet-reference";
import type { BatchInWorkbook } from "../batches-in-workbook";

/** A date in words that no regional setting changes. @param day a cell, or a formula's part, with a day */
export const dateText = (day: string): string => `YEAR(${day})&"-"&TEXT(MONTH(${day}),"00")&"-"&TEXT(DAY(${day}),"00")`;

/** Repeats a cell; an empty one stays empty instead of showing 0. */
export const shown = (cell: string): string => `=IF(${cell}="","",${cell})`;

/** The cells of a batch sheet as a page beside it points at them. */
export interface PageCells {
  readonly words: UnitWords;
  /** A cell by its name, or one so many rows and columns from the first of a named range; with the sheet's name before it. */
  named(name: string, row?: number, column?: number): string;
  /** A whole column beside a named range, from its first row to its last. */
  column(name: string, column?: number): string;
  /** Rows of a named range. */
  rowsOf(name: string): number;
  /** Words of the rows that have something in that column now, for each of the columns beside. */
  filled(name: string, column: number, beside?: readonly number[]): string[][];
}

export function pageCells({ sheetName, contents, cells }: Omit<BatchInWorkbook, "cells"> & { readonly cells: NamedCells }): PageCells {
  const prefix = sheetPrefix(sheetName);
  const rowsOf = (name: string): number => cells.area(name).to.row - cells.area(name).from.row + 1;
  return {
    words: unitWords(contents.units),
    rowsOf,
    named: (name, row = 0, column = 0) => {
      const { from } = cells.area(name);
      return `${prefix}${address(from.row + row, from.column + column)}`;
    },
    column: (name, column = 0) => {
      const { from, to } = cells.area(name);
      return `${prefix}${address(from.row, from.column + column)}:${address(to.row, from.column + column)}`;
    },
    filled: (name, column, beside = [column]) => {
      const { from } = cells.area(name);
      const at = (row: number, offset: number) => cells.at(from.row + row, from.column + offset);
      return Array.from({ length: rowsOf(name) }, (_, row) => row)
        .filter((row) => at(row, column) !== "")
        .map((row) => beside.map((offset) => String(at(row, offset))));
    },
  };
}

/** A list of the batch sheet without the rows that are not used. */
export interface Packed {
  /** Rows that the page gives it: those in use now, and one more. */
  readonly rows: number;
  /** What stands in a column of the list's n-th row in use, n from 1; "" beyond the last. */
  cell(index: number, column: number): string;
  /** Lines of print that the n-th row takes as it stands now, by the column whose words take most. */
  lines(index: number, columns: readonly number[], lettersIn: (position: number) => number): number;
  /** TRUE where the list has outgrown the page since. */
  readonly outgrown: string;
}

/** Rows that may be put into the batch's own table and are still counted. */
const spareRows = 10;

/**
 * Counts the rows in use down a column beside the printed page, and finds the n-th of them by that count: native formulas that every
 * spreadsheet program has, and rows that are put in are counted, too.
 *
 * @param letter a column of this page, outside its print, that is free from `row` down
 * @param column where the list's names stand, counted from its named range
 * @param each "name": a name that stands there twice is counted once
 */
export function packed(
  b: SheetBuilder,
  page: PageCells,
  name: string,
  column: number,
  letter: string,
  row: number,
  each: "row" | "name" = "row",
): Packed {
  const length = page.rowsOf(name) + spareRows;
  const names = page.column(name, column);
  b.put(letter, "Workings", { style: "hint" }, row - 1);
  for (let index = 1; index <= length; index += 1) {
    const before = index === 1 ? "0" : `${letter}${row + index - 2}`;
    const here = `INDEX(${names},${index})`;
    const counts = each === "row" ? "1" : `IF(MATCH(${here},${names},0)=${index},1,0)`;
    b.put(letter, `=${before}+IF(${index}>ROWS(${names}),0,IF(${here}="",0,${counts}))`, { style: "workings" }, row + index - 1);
  }
  const counts = `$${letter}$${row}:$${letter}$${row + length - 1}`;
  const rows = page.filled(name, column).length + 1;
  return {
    rows,
    cell: (index, beside) => {
      const value = `INDEX(${page.column(name, beside)},MATCH(${index},${counts},0))`;
      return `=IF(MAX(${counts})<${index},"",IF(${value}="","",${value}))`;
    },
    lines: (index, columns, lettersIn) =>
      Math.max(
        1,
        ...(page.filled(name, column, columns)[index - 1] ?? []).map((words, position) => Math.ceil(words.length / lettersIn(position))),
      ),
    outgrown: `MAX(${counts})>${rows}`,
  };
}

/** So far to the right of its print a page keeps what it counts by: nobody who looks at the page has it before their eyes. */
const aside = 18;

/** The letters of the columns for a page's workings. */
export const beyond = (columns: number, index: number): string => columnLetters(columns + aside + index);

/** A line of words below lists, empty as long as the page has room for all that is in use. */
export function outgrown(b: SheetBuilder, lists: readonly Packed[], from: string, to: string): void {
  b.put(
    from,
    `=IF(OR(${lists.map(({ outgrown: more }) => more).join(",")}),"There is more on the batch sheet than this page has room for: write the page anew.","")`,
    {
      style: "caution",
      mergeTo: to,
    },
  );
  b.row += 1;
}

/** The head of a part of the page: what it is on the left, in a smaller voice what about it on the right. */
export function sectionHead(
  b: SheetBuilder,
  title: string,
  titleTo: string,
  hint: string,
  [hintFrom, hintTo]: readonly [string, string],
): void {
  b.height(18);
  b.put("A", title, { style: "section", mergeTo: titleTo });
  b.put(hintFrom, hint, { style: "sectionHint", mergeTo: hintTo });
  b.row += 1;
}

/** The sheet, printed on one page of the paper that goes with the batch's units. */
export function onOnePage(
  b: SheetBuilder,
  { words }: PageCells,
  pageName: string,
  columnWidths: readonly number[],
  area: string,
): SheetPlan {
  const paper = words.units === "us" ? "letter" : "a4";
  return b.build(pageName, columnWidths, { area, paper, onePage: true, breaksBeforeRow: [], footer: `${pageName} · Gylebook` }, 1);
}
