import type { CellOptions, SheetBuilder } from "../../grid/plan/sheet-builder";
import type { CellContent, NumberFormat, StyleName } from "../../grid/plan/sheet-plan";
import type { BatchFields } from "../fields";
import type { BatchCell } from "../fields/cells";
import type { LinesOf, SheetField as Field, TableColumn } from "../derived/sheet-lines";

/*
 * The kinds of line that the batch sheet is made of: label, value and unit on the left (A, B, C), and the same
 * on the right (E to G, H, I). Inputs are underlined and results shaded, so that print tells them apart too.
 */
export type { SheetField as Field } from "../derived/sheet-lines";

/** The builder of a batch sheet: it knows the names that there are. */
export type BatchBuilder = SheetBuilder<BatchCell>;

/** What is described, as lines that a section places. */
export type BatchLines = LinesOf<BatchFields>;

/** Words and moments stand at the left and want room; numbers stand at the right, their unit beside them. */
const isWide = ({ format, choices }: Field): boolean => format === "text" || format === "dateTime" || choices !== undefined;

function styleOf(field: Field): StyleName {
  const { content, style } = field;
  if (style) return style;
  const calculates = typeof content === "string" && content.startsWith("=");
  const words = isWide(field);
  return calculates ? (words ? "resultText" : "result") : words ? "inputText" : "input";
}

function options(field: Field): CellOptions<BatchCell> {
  const { format, name, note, choices, between } = field;
  return {
    style: styleOf(field),
    ...(format && { format }),
    ...(name && { name }),
    ...(note && { note }),
    ...(choices && { choices }),
    ...(between && { between }),
  };
}

export function leftField(b: BatchBuilder, label: string, field: Field, row = b.row): void {
  b.put("A", label, { style: "label" }, row);
  const wide = isWide(field);
  b.put("B", field.content, { ...options(field), ...(wide && { mergeTo: "D" }) }, row);
  if (!wide && field.unit) b.put("C", field.unit, { style: "unit" }, row);
}

export function rightField(b: BatchBuilder, label: string, field: Field, row = b.row): void {
  b.put("E", label, { style: "label", mergeTo: "G" }, row);
  const wide = isWide(field);
  b.put("H", field.content, { ...options(field), ...(wide && { mergeTo: "I" }) }, row);
  if (!wide && field.unit) b.put("I", field.unit, { style: "unit" }, row);
}

/** Kit that is set once, and what it makes of a batch: label, value and unit to the right of a section, outside the printed page. */
export function workings(b: BatchBuilder, lines: readonly [string, Field][], first: number): void {
  for (const [index, [label, field]] of lines.entries()) {
    const row = first + index;
    const calculates = typeof field.content === "string" && field.content.startsWith("=");
    b.put("K", label, { style: "label" }, row);
    b.put("L", field.content, { ...options(field), style: field.style ?? (calculates ? "result" : "input") }, row);
    b.put("M", field.unit ?? "", { style: "unit" }, row);
  }
}

/** A section's heading across the sheet; leaves `row` on the line below. */
export function section(b: BatchBuilder, number: number, title: string, hint: string): void {
  b.height(18);
  b.put("A", `${number}  ${title}`, { style: "section", mergeTo: "D" });
  b.put("E", hint, { style: "sectionHint", mergeTo: "I" });
  b.row += 1;
}

/** Fields side by side, one pair a row; a side that is shorter leaves its cells empty. `lastRow` fills one more. */
export function fieldRows(
  b: BatchBuilder,
  left: readonly [string, Field][],
  right: readonly [string, Field][],
  lastRow?: (row: number) => void,
): void {
  for (let index = 0; index < Math.max(left.length, right.length); index += 1) {
    const [leftLabel, leftValue] = left[index] ?? [];
    const [rightLabel, rightValue] = right[index] ?? [];
    if (leftLabel !== undefined && leftValue) leftField(b, leftLabel, leftValue);
    if (rightLabel !== undefined && rightValue) rightField(b, rightLabel, rightValue);
    b.row += 1;
  }
  if (lastRow) {
    lastRow(b.row);
    b.row += 1;
  }
  b.gap();
}

/** A column without a number format holds words. */
const isNumeric = (format: NumberFormat | undefined): boolean => format !== undefined && format !== "text" && format !== "dateTime";

/** A heading row and a table of inputs with at least `usualRows` rows (or those that the sheet has already), more where there are more lines; returns the body's first and last row. */
export function inputTable(
  b: BatchBuilder,
  name: string,
  columns: readonly TableColumn[],
  lines: readonly (readonly CellContent[])[],
  usualRows: number,
): { first: number; last: number } {
  const rows = Math.max(b.tableRows[name] ?? usualRows, lines.length);
  const heading = b.row;
  for (const { letter, heading: text, format } of columns) b.put(letter, text, { style: isNumeric(format) ? "headingRight" : "heading" });
  for (let index = 0; index < rows; index += 1) {
    columns.forEach(({ letter, format }, position) => {
      b.put(
        letter,
        lines[index]?.[position] ?? "",
        { style: isNumeric(format) ? "input" : "inputText", ...(format && { format }) },
        heading + 1 + index,
      );
    });
  }
  const letters = columns.map(({ letter }) => letter);
  b.table({ name, range: `${letters[0]}${heading}:${letters.at(-1)}${heading + rows}` });
  b.row = heading + rows + 1;
  return { first: heading + 1, last: heading + rows };
}

/** What is typed into a cell of a block's own table. */
export function tableInput(b: BatchBuilder, letter: string, [, field]: [string, Field], row: number, mergeTo?: string): void {
  b.put(letter, field.content, { ...options(field), ...(mergeTo && { mergeTo }) }, row);
}
