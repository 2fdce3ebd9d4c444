import type { AnyDescriptor, CellValue, Example } from "./describe";

/** A worked example as it is typed into a cell: `=GYLE.BEER.ABV(1.05, 1.01, "kit")`. */
export function formulaText(descriptor: AnyDescriptor, example: Example): string {
  return `=GYLE.${descriptor.id}(${example.arguments.map(literal).join(", ")})`;
}

function literal(argument: Example["arguments"][number]): string {
  if (Array.isArray(argument)) return `{${argument.map((row) => row.map(cellLiteral).join(", ")).join("; ")}}`;
  // An argument left out is nothing between two commas; in an array there must be something.
  return argument === null ? "" : cellLiteral(argument);
}

function cellLiteral(cell: CellValue): string {
  if (cell === null) return '""';
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  return typeof cell === "number" ? String(cell) : quoted(cell);
}

/** A text within a formula: its quotation marks doubled. */
export const quoted = (words: string): string => `"${words.replaceAll('"', '""')}"`;
