import { CellError } from "../../src/functions/cell-error";
import { OnlyTheSheetKnows } from "../../src/workbook/grid/evaluate/evaluate";
import { workedOut } from "../../src/workbook/grid/evaluate/laid-over";
import { block, columnLetters, columnNumber, position } from "../../src/workbook/grid/plan/addresses";
import { rowHeightPoints } from "../../src/workbook/grid/plan/sheet-builder";
import type { CellPlan, NumberFormat, SheetPlan } from "../../src/workbook/grid/plan/sheet-plan";
import { styles } from "../../src/workbook/grid/plan/styles";
import { calibriPixels, type Face } from "./calibri";

/* ECMA-376, part 1, 18.3.1.13: a column of so many characters of Calibri 11 is 7 pixels each and 5 more. */
const columnPixels = (characters: number): number => characters * 7 + 5;
/** Left free at the two sides of a cell together, and what an indent adds. */
const sides = 4;
const indentPixels = 9;
/** Two programs round a line of letters a little differently. */
const tolerance = 1;

const two = (value: number): string => String(value).padStart(2, "0");
const dated = (days: number): Date => new Date(Math.round((days - 25569) * 1440) * 60_000);
const dayOf = (days: number): string => dated(days).toISOString().slice(0, 10);
const clockOf = (days: number): string => `${two(dated(days).getUTCHours())}:${two(dated(days).getUTCMinutes())}`;
const decimals = (digits: number) => (value: number) => value.toFixed(digits);

/** A number as the cell's format shows it. */
const shownNumber: Readonly<Record<NumberFormat, (value: number) => string>> = {
  general: (value) => String(Number(value.toPrecision(9))),
  text: (value) => String(Number(value.toPrecision(9))),
  gravity: decimals(3),
  fineGravity: decimals(4),
  one: decimals(1),
  two: decimals(2),
  money: decimals(2),
  whole: decimals(0),
  percent: (value) => `${(value * 100).toFixed(0)} %`,
  date: dayOf,
  time: clockOf,
  dateTime: (value) => `${dayOf(value)} ${clockOf(value)}`,
  monthDay: (value) => dayOf(value).slice(5),
};

export interface CutText {
  readonly cell: string;
  readonly words: string;
  readonly needed: number;
  readonly room: number;
}

export const cutText = ({ cell, words, needed, room }: CutText): string =>
  `${cell} “${words}”: ${Math.ceil(needed)} wide, room ${Math.floor(room)}`;

/**
 * What a calculated sheet would show cut off: a text wider than its cell and the free cells that it may run over, a number wider than its
 * column (which Excel shows as ####), and wrapped words that take more lines than their row has room for.
 *
 * @param upTo last column that is looked at; left out, the last one that is printed
 */
export function cutTexts(plan: SheetPlan, upTo = position(plan.print.area.split(":")[1] ?? "").column): CutText[] {
  const sheet = workedOut(plan);
  // What speaks of other sheets, or of today, is not known here.
  const valueAt = (row: number, column: number) => {
    try {
      return sheet.at(row, column);
    } catch (problem) {
      if (problem instanceof OnlyTheSheetKnows) return null;
      throw problem;
    }
  };
  const planned = new Map(plan.cells.map((cell) => [cell.address, cell]));
  const filled = new Set<string>();
  const spilt = new Map<string, CellPlan>();
  for (const cell of plan.cells) {
    if (cell.content === "") continue;
    const { from, to } = block(`${cell.address}:${cell.spillsTo ?? cell.address}`);
    for (let row = from.row; row <= to.row; row += 1)
      for (let column = from.column; column <= to.column; column += 1) {
        const address = `${columnLetters(column)}${row}`;
        filled.add(address);
        spilt.set(address, planned.get(address) ?? { ...cell, address });
      }
  }
  const width = (column: number): number => columnPixels(plan.columnWidths[column - 1] ?? 8.43);
  const heights = new Map(plan.rowHeights.map(({ row, points }) => [row, points]));
  const found: CutText[] = [];
  for (const [address, cell] of spilt) {
    const { row, column } = position(address);
    if (column > upTo || heights.get(row) === 0) continue;
    const value = valueAt(row, column);
    if (value === null || value === "" || value instanceof CellError) continue;
    const { size, bold, italic, align, indent = 0, wrap } = styles[cell.style];
    const face: Face = bold ? (italic ? "boldItalic" : "bold") : italic ? "italic" : "regular";
    const words = typeof value === "number" ? shownNumber[cell.format ?? "general"](value) : String(value);
    const last = cell.mergeTo ? columnNumber(cell.mergeTo) : column;
    let room = 0;
    for (let at = column; at <= last; at += 1) room += width(at);
    const least = sides + indent * indentPixels;
    if (wrap && typeof value !== "number") {
      const lines = linesOf(words, room - least, size, face);
      const needed = (lines * rowHeightPoints * size) / 11;
      const high = heights.get(row) ?? rowHeightPoints;
      if (needed > high + 1) found.push({ cell: address, words: `${words} (${lines} lines)`, needed, room: high });
      continue;
    }
    const needed = calibriPixels(words, size, face) + least;
    const free = (at: number): boolean => at > 0 && at <= upTo && !filled.has(`${columnLetters(at)}${row}`);
    // A merged block and a number keep to their own cells.
    if (!cell.mergeTo && typeof value !== "number") {
      if (align === "Left") for (let at = last + 1; room < needed && free(at); at += 1) room += width(at);
      if (align === "Right") for (let at = column - 1; room < needed && free(at); at -= 1) room += width(at);
    }
    if (needed > room + tolerance) found.push({ cell: address, words, needed, room });
  }
  return found;
}

function linesOf(words: string, room: number, size: number, face: Face): number {
  let lines = 0;
  for (const paragraph of words.split("\n")) {
    let line = "";
    lines += 1;
    for (const word of paragraph.split(" ")) {
      const longer = line === "" ? word : `${line} ${word}`;
      if (line !== "" && calibriPixels(longer, size, face) > room) {
        lines += 1;
        line = word;
      } else line = longer;
    }
  }
  return lines;
}
