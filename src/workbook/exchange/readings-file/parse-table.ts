import Papa from "papaparse";
import { withDecimalCommas } from "./decimal-commas";

/** A table of a device as text: what stands in its heading, and its rows. */
export interface TextTable {
  /** Words of the heading; "Column 1"… where there is none. */
  readonly heading: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Line of the file, from 1, on which the first row stands. */
  readonly firstLine: number;
}

/** A file that cannot be read as a table, in words for the brewer. */
export class TableRefused extends Error {
  constructor(message: string) {
    super(message);
    this.name = "TableRefused";
  }
}

/** The commas of a table can be read in two ways, and only the user can tell which is meant. */
export class CommasUnsure extends TableRefused {
  constructor(
    /** Each comma is one between two columns. */
    readonly separating: TextTable,
    /** Some are decimal commas: 1,050 is one number. */
    readonly decimal: TextTable,
  ) {
    super("The commas of this table can be read in two ways. Save it with semicolons between the columns, or with decimal points.");
    this.name = "CommasUnsure";
  }
}

const longestText = 8_000_000;
export const mostRows = 50_000;

/**
 * Takes a text apart into rows and columns: separated by comma, semicolon, tab or bar, quoted or not. Lines above the
 * heading (a device's name, a serial number) are passed over.
 *
 * @throws CommasUnsure with both tables where a comma separates columns and may be a decimal comma, too
 * @throws TableRefused
 */
export function parseTable(text: string): TextTable {
  if (text.length > longestText)
    throw new TableRefused(`This file has ${Math.round(text.length / 1e6)} MB; up to ${longestText / 1e6} MB can be read.`);
  const { data, meta } = Papa.parse<string[]>(text.replace(/^\ufeff/, ""), { skipEmptyLines: false });
  const lines = data.map((row) => row.map((cell) => cell.trim()));
  const joined = meta.delimiter === "," ? withDecimalCommas(lines) : undefined;
  if (joined === "undecided")
    throw new TableRefused(
      "This table has commas between its columns and inside its numbers, and it cannot be told which is which. Save it with semicolons between the columns, or with decimal points.",
    );
  if (joined) throw new CommasUnsure(tableOf(lines), tableOf(joined));
  return tableOf(lines);
}

function tableOf(lines: readonly (readonly string[])[]): TextTable {
  const width = usualWidth(lines);
  if (width < 2)
    throw new TableRefused(
      "No table was found: two columns at least are needed, a time and a gravity, separated by commas, semicolons or tabs.",
    );
  const isRow = (row: readonly string[]): boolean => row.length >= 2 && row.filter((cell) => cell !== "").length >= 2;
  const first = lines.findIndex((row) => isRow(row) && row.length >= width - 1);
  const head = lines[first] ?? [];
  const headed = !head.some(looksLikeValue);
  const start = headed ? first + 1 : first;
  const rows = lines.slice(start).filter((row) => row.some((cell) => cell !== ""));
  if (rows.length === 0) throw new TableRefused("The table has a heading and no rows.");
  if (rows.length > mostRows)
    throw new TableRefused(`The table has ${rows.length} rows; up to ${mostRows} can be read. Cut it down to this batch.`);
  return {
    heading: Array.from({ length: width }, (_, index) => (headed && head[index] ? head[index] : `Column ${index + 1}`)),
    rows,
    firstLine: start + 1,
  };
}

/** A number, a date or a time: what a heading does not hold. */
const looksLikeValue = (cell: string): boolean => /^[+-]?\d+([.,]\d+)?$/.test(cell) || /\d{1,4}[-./]\d{1,2}[-./]\d{1,4}/.test(cell);

/** How many columns most lines have. */
function usualWidth(lines: readonly (readonly string[])[]): number {
  const counts = new Map<number, number>();
  for (const { length } of lines) counts.set(length, (counts.get(length) ?? 0) + 1);
  return [...counts].filter(([width]) => width > 1).sort(([, a], [, b]) => b - a)[0]?.[0] ?? 1;
}
