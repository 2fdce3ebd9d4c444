import { ArgumentProblem, CellError } from "./cell-error";
import {
  argumentName,
  type BlockParameter,
  type Column,
  type ListParameter,
  type Matrix,
  type TableParameter,
  type TableRows,
} from "./describe";
import { messages } from "./messages";
import { bothUnits, type UnitSystem } from "./quantities";
import { isEmpty, missing, readChoice, readNumber, readText, type Missing } from "./read-cell";

/** A column (or row) of numbers; blank cells become null so that two lists stay side by side. Missing when all blank. */
export function readList(argument: string, range: Matrix, parameter: ListParameter, units: UnitSystem): (number | null)[] | Missing {
  if (range.length > 1 && (range[0]?.length ?? 0) > 1) throw new ArgumentProblem("#VALUE!", messages.oneColumn(argument));
  const cells = inLine(range);
  const values: (number | null)[] = [];
  const end = sameToTheEnd(cells);
  for (const [index, typed] of cells.slice(0, end + 1).entries()) {
    // A heading above the numbers may be selected with them; an empty text is a blank cell like any other.
    const isHeading = index === 0 && isWord(typed) && !isEmpty(typed) && cells.length > 1;
    const value = isHeading ? missing : readNumber(`${argument} row ${index + 1}`, typed, parameter, units);
    values.push(value === missing ? null : value);
  }
  const last = values[end] ?? null;
  for (let index = end + 1; index < cells.length; index++) values.push(last);
  return values.every((value) => value === null) ? missing : values;
}

/** Rows of numbers, as wide as the range; missing when nothing is in any of them. */
export function readBlock(argument: string, range: Matrix, parameter: BlockParameter, units: UnitSystem): (number | null)[][] | Missing {
  const first = (range[0] ?? []).filter((typed) => !isEmpty(typed));
  const headings = range.length > 1 && first.length > 0 && first.every(isWord) ? 1 : 0;
  const rows = range.slice(headings).map((cells, row) =>
    cells.map((typed, column) => {
      const value = readNumber(`${argument} row ${row + 1 + headings}, column ${column + 1}`, typed, parameter, units);
      return value === missing ? null : value;
    }),
  );
  const filled = rows.filter((row) => row.some((value) => value !== null));
  return filled.length === 0 ? missing : filled;
}

const inLine = (range: Matrix): unknown[] => (range.length === 1 ? (range[0] ?? []) : range.flat());

/** From this cell on all hold the same, as the rest of a whole column does: they are read once. */
function sameToTheEnd(cells: readonly unknown[]): number {
  let index = cells.length - 1;
  while (index > 1 && cells[index - 1] === cells[index]) index--;
  return Math.max(index, 0);
}

/** A row or column of cells just as typed; missing when nothing is in any of them. */
export function readCells(argument: string, range: Matrix): unknown[] | Missing {
  if (range.length > 1 && (range[0]?.length ?? 0) > 1) throw new ArgumentProblem("#VALUE!", messages.oneColumn(argument));
  const cells = inLine(range);
  return cells.every((typed) => isEmpty(typed) || typed === 0) ? missing : cells;
}

type Row = Record<string, unknown> & { rowNumber: number };

/**
 * The filled-in rows of a table. Rows with nothing in them, and rows whose first column is not filled in yet, are
 * skipped; a heading row is skipped; a row that has its first column but misses another makes the whole call
 * "not filled in yet"; a wrong cell is reported with its row.
 */
export function readTable(
  argument: string,
  range: Matrix,
  parameter: TableParameter,
  units: UnitSystem,
): TableRows<Record<string, Column>> | Missing {
  const width = range[0]?.length ?? 0;
  const layout = parameter.layouts.find((columns) => columns.length === width);
  if (!layout)
    throw new ArgumentProblem(
      "#VALUE!",
      messages.wrongWidth(
        argument,
        width,
        parameter.layouts.map((columns) => layoutText(parameter, columns)),
      ),
    );
  const firstKey = layout.find((key) => key !== null) ?? "";
  const hasHeading = isHeading(range[0] ?? [], layout, parameter);
  const rows: Row[] = [];
  let incomplete = false;
  range.slice(hasHeading ? 1 : 0).forEach((cells, index) => {
    if (cells.every((typed) => isEmpty(typed) || typed === 0)) return;
    const row: Row = { rowNumber: index + 1 };
    for (const [position, key] of layout.entries()) {
      const column = key === null ? undefined : parameter.columns[key];
      if (key === null || column === undefined) continue;
      const value = readColumn(`${argument} row ${index + 1 + (hasHeading ? 1 : 0)}: ${argumentName(key)}`, cells[position], column, units);
      // Without its first column a row is none, unless that may be left off.
      if (value === missing && key === firstKey && column.optional !== true) return;
      if (value === missing && column.optional !== true) incomplete = true;
      row[key] = value === missing ? defaultOf(column) : value;
    }
    for (const [key, column] of Object.entries(parameter.columns)) if (!(key in row)) row[key] = defaultOf(column);
    rows.push(row);
  });
  if (rows.length === 0 || (incomplete && parameter.halfFilled !== "waits")) return missing;
  return Object.assign(rows, { height: range.length - (hasHeading ? 1 : 0), incomplete }) as unknown as TableRows<Record<string, Column>>;
}

/** A word over a column of numbers; "28 g" and "-5" are slips of the hand that must be reported, not headings. */
const isWord = (typed: unknown): boolean => typeof typed === "string" && !/^\s*[-+.,]?\d/.test(typed);

/**
 * Whether the first row of a table names its columns: every filled cell over a column of numbers holds a word, and
 * no filled cell over a column of choices is one of them. The columns of free text cannot tell.
 */
function isHeading(cells: readonly unknown[], layout: readonly (string | null)[], parameter: TableParameter): boolean {
  const filled = layout.flatMap((key, position) => {
    const column = key === null ? undefined : parameter.columns[key];
    return column === undefined || isEmpty(cells[position]) ? [] : [{ column, typed: cells[position] }];
  });
  const numbers = filled.filter(({ column }) => column.kind === "number");
  const chosen = filled.some(
    ({ column, typed }) =>
      wordOf(typed, column.kind === "choice" ? column.choices : column.kind === "number" ? column.words : undefined) !== undefined,
  );
  return numbers.length > 0 && numbers.every(({ typed }) => isWord(typed)) && !chosen;
}

function readColumn(argument: string, typed: unknown, column: Column, units: UnitSystem): unknown {
  if (typed instanceof CellError) throw new ArgumentProblem(typed.code, typed.message);
  if (column.kind === "number") return wordOf(typed, column.words) ?? readNumber(argument, typed, column, units);
  if (column.kind === "choice") return readChoice(argument, typed, column);
  return readText(typed);
}

/** Which of the words a cell holds, if any; capital letters and spaces around it do not matter. */
function wordOf(typed: unknown, words: readonly string[] | undefined): string | undefined {
  const said = typeof typed === "string" ? typed.trim().toLowerCase() : "";
  return words?.find((word) => word.toLowerCase() === said);
}

const defaultOf = (column: Column): unknown => ("default" in column ? column.default : undefined);

/** "mass (kg or lb) | yield (%) | handling": what a table must hold, for messages and help. */
export function layoutText(parameter: TableParameter, columns: readonly (string | null)[]): string {
  const units = columns.flatMap((key) => (key === null ? [] : [unitOfColumn(parameter.columns[key])]));
  const inAll = units.length > 2 && new Set(units).size === 1 ? (units[0] ?? "") : "";
  const names = columns.map((key) => {
    if (key === null) return "(anything)";
    const name = argumentName(key);
    const unit = unitOfColumn(parameter.columns[key]);
    // "minutes (min)" says it twice.
    return unit === "" || unit === inAll || name.startsWith(unit) ? name : `${name} (${unit})`;
  });
  return `${names.join(" | ")}${inAll === "" ? "" : `, all in ${inAll}`}`;
}

const unitOfColumn = (column: Column | undefined): string => (column?.kind === "number" ? bothUnits(column.quantity) : "");
