import { CellValueType, numfmt, type ICellData } from "@univerjs/core";
import type { CellScalar } from "../engine/spills";
import { mapCells, writeCells, type SheetBlock } from "./cell-writer";
import { invalidArgument } from "./errors";
import type { Host } from "./host";
import type { Locale } from "./locale";

const ISO_DATE = /^(\d{4})-(\d{2})-(\d{2})$/u;

/** Writes values or formulas the way Excel takes them: as if typed, null leaves a cell alone, "" empties it. */
export function writeValues(host: Host, block: SheetBlock, values: unknown): void {
  const rows = shaped(values, block);
  const sheet = host.gridSheet(block.sheetId);
  writeCells(host, block, false, (row, column) => {
    const format = sheet.getCellStyle(block.row + row, block.column + column)?.n?.pattern;
    return typed(rows[row]![column], format);
  });
}

/** One value for all cells, or a matrix of exactly the range's shape: Excel refuses anything else. */
export function shaped(values: unknown, { rowCount, columnCount }: SheetBlock): unknown[][] {
  if (!Array.isArray(values)) return Array.from({ length: rowCount }, () => Array.from({ length: columnCount }, () => values));
  const rows = values as unknown[][];
  if (rows.length !== rowCount || rows.some((row) => !Array.isArray(row) || row.length !== columnCount)) {
    throw invalidArgument("The number of rows or columns in the input array doesn't match the size or dimensions of the range.");
  }
  return rows;
}

function typed(value: unknown, format: string | undefined): ICellData | undefined {
  if (value === null || value === undefined) return undefined;
  const plain = { f: null, si: null, p: null };
  if (typeof value === "number") return { ...plain, v: value, t: CellValueType.NUMBER };
  if (typeof value === "boolean") return { ...plain, v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  // eslint-disable-next-line @typescript-eslint/no-base-to-string -- an object ends up as "[object Object]" in Excel too
  const text = String(value);
  if (text === "") return { ...plain, v: null, t: null };
  if (format === "@") return { ...plain, v: text, t: CellValueType.STRING };
  if (text.startsWith("'")) return { ...plain, v: text.slice(1), t: CellValueType.STRING };
  if (text.startsWith("=")) return { ...plain, f: text, v: null, t: null };
  return { ...plain, ...typedText(text) };
}

function typedText(text: string): ICellData {
  if (/^(?:true|false)$/iu.test(text)) return { v: /^true$/iu.test(text) ? 1 : 0, t: CellValueType.BOOLEAN };
  if (/^\s*[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?\s*$/iu.test(text)) return { v: Number(text), t: CellValueType.NUMBER };
  const date = ISO_DATE.exec(text);
  if (date)
    return {
      v: dateSerial(Number(date[1]), Number(date[2]), Number(date[3])),
      t: CellValueType.NUMBER,
      s: { n: { pattern: "yyyy-mm-dd" } },
    };
  return { v: text, t: CellValueType.STRING };
}

const dateSerial = (year: number, month: number, day: number): number => Date.UTC(year, month - 1, day) / 86_400_000 + 25_569;

/** The workbook is asked for once, not for each cell: the grid makes a new object at each question. */
function scalars(host: Host, { sheetId }: SheetBlock): (row: number, column: number) => CellScalar {
  const { unitId } = host;
  return (row, column) => host.engine.spills.valueAt(unitId, sheetId, row, column);
}

export const readValues = (host: Host, block: SheetBlock): (string | number | boolean)[][] => {
  const scalarAt = scalars(host, block);
  return mapCells(block, (row, column) => scalarAt(row, column) ?? "");
};

/** A formula where there is one, otherwise the value. */
export const readFormulas = (host: Host, block: SheetBlock): (string | number | boolean)[][] => {
  const scalarAt = scalars(host, block);
  const { unitId, engine, switches } = host;
  const { sheetId } = block;
  const formulaAt = (row: number, column: number): string =>
    switches.spilledFormulas ? engine.formulaAt({ unitId, sheetId, row, column }) : engine.ownFormulaAt(unitId, sheetId, row, column);
  return mapCells(block, (row, column) => formulaAt(row, column) || (scalarAt(row, column) ?? ""));
};

export const readNumberFormats = (host: Host, block: SheetBlock): string[][] => {
  const sheet = host.gridSheet(block.sheetId);
  return mapCells(block, (row, column) => sheet.getCellStyle(row, column)?.n?.pattern ?? "General");
};

/** What a cell shows, by its number format. */
export const readTexts = (host: Host, block: SheetBlock): string[][] => {
  const formats = readNumberFormats(host, block);
  return readValues(host, block).map((row, r) => row.map((value, c) => shownText(value, formats[r]![c]!, host.locale)));
};

function shownText(value: string | number | boolean, format: string, { name, decimal, words }: Locale): string {
  const truth = String(value).toUpperCase();
  if (typeof value === "boolean") return words[truth] ?? truth;
  if (typeof value === "string") return value;
  if (format === "@") return String(value).replace(".", decimal);
  return numfmt.format(format, value, name === "en-US" ? {} : { locale: name });
}

export const readValueTypes = (host: Host, block: SheetBlock): `${Excel.RangeValueType}`[][] => {
  const { unitId, engine } = host;
  return readValues(host, block).map((row, r) =>
    row.map((value, c) => {
      // A formula that answers with an empty text holds a text.
      if (value === "") return engine.ownFormulaAt(unitId, block.sheetId, block.row + r, block.column + c) ? "String" : "Empty";
      if (typeof value === "string") return /^#[A-Z/0-9]+[!?A]?$/u.test(value) ? "Error" : "String";
      return typeof value === "boolean" ? "Boolean" : "Double";
    }),
  );
};
