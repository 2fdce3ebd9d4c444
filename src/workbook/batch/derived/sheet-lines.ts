import type { CellOptions, SheetBuilder } from "../../grid/plan/sheet-builder";
import type { CellContent, NumberFormat, StyleName } from "../../grid/plan/sheet-plan";
import {
  forSheet,
  noteOf,
  type Fields,
  type NumberField,
  type On,
  type Single,
  type Table,
  type Value,
  type Values,
  type ValuesOf,
} from "../describe/field";
import { unitOf } from "../describe/measures";
import type { BatchCell } from "../fields/cells";
import { isOptional } from "./usual-values";

/** A cell of the sheet with what stands beside it. */
export interface SheetField extends Pick<CellOptions<BatchCell>, "name" | "note" | "choices" | "between"> {
  readonly content: CellContent;
  readonly format?: NumberFormat;
  readonly unit?: string;
  readonly style?: StyleName;
}

export type SheetLine = [label: string, field: SheetField];

/** The lines of described fields, under their own keys: a section says where each stands. */
export type LinesOf<F> = {
  readonly [Key in keyof F]: F[Key] extends { kind: "group"; fields: infer Inside }
    ? LinesOf<Inside> | (F[Key] extends { optional: true } ? undefined : never)
    : F[Key] extends { kind: "table" | "list" }
      ? never
      : SheetLine;
};

export function sheetLines<F extends Fields>(fields: F, values: ValuesOf<F>, on: On): LinesOf<F> {
  return Object.fromEntries(
    Object.entries(fields).flatMap(([key, field]): [string, unknown][] => {
      const value = (values as Values)[key];
      if (field.kind === "table" || field.kind === "list") return [];
      if (isOptional(field) && value === undefined) return [];
      if (field.kind === "group") return [[key, sheetLines(field.fields, value as ValuesOf<Fields>, on)]];
      return [[key, [forSheet(field.label, on), sheetField(field, value, on)]]];
    }),
  ) as unknown as LinesOf<F>;
}

function sheetField(field: Single, value: Value, on: On): SheetField {
  const note = noteOf(field, on);
  return {
    content: (field.kind === "number" && field.emptyAtZero && value === 0 ? "" : value) as CellContent,
    ...looks(field, on),
    ...(field.cell !== undefined && { name: field.cell as BatchCell }),
    ...(note !== undefined && { note }),
  };
}

function looks(field: Single, on: On): Omit<SheetField, "content"> {
  switch (field.kind) {
    case "number": {
      const unit = unitBeside(field, on);
      return {
        format: forSheet(field.format, on),
        ...(unit !== "" && { unit }),
        ...(field.held && { between: forSheet(field.limits, on) }),
      };
    }
    case "moment":
      return { format: field.format };
    case "choice":
      return { choices: field.choices };
    case "text":
      return field.offers ? { choices: field.offers } : field.general ? {} : { format: "text" };
    default:
      return {};
  }
}

export const unitBeside = ({ unit, measure }: NumberField, on: On): string =>
  unit === undefined ? unitOf(measure, on.units) : forSheet(unit, on);

export interface TableColumn {
  readonly letter: string;
  readonly heading: string;
  readonly format?: NumberFormat;
}

/** The columns of a table with their headings, without what stands beside it. */
export const tableColumns = ({ columns }: Table, on: On): TableColumn[] =>
  Object.values(columns)
    .filter(({ beside }) => !beside)
    .map((column) => {
      const label = forSheet(column.label, on);
      const unit = column.kind === "number" ? unitBeside(column, on) : "";
      const { format } = looks(column, on);
      return { letter: column.column, heading: unit === "" ? label : `${label} ${unit}`, ...(format && { format }) };
    });

/** Names of the table's parts, and what may be typed into its columns. */
export function nameTable(
  b: SheetBuilder,
  { columns, areas }: Table,
  on: On,
  { first, last }: { readonly first: number; readonly last: number },
): void {
  for (const [name, letters] of Object.entries(areas)) {
    const [from = "", to = ""] = letters.split(":");
    b.name(name, `${from}${first}:${to}${last}`);
  }
  for (const column of Object.values(columns)) {
    const range = `${column.column}${first}:${column.column}${last}`;
    if (column.kind === "choice" && column.message !== undefined)
      b.validate({ kind: "list", range, choices: column.choices, message: column.message });
    if (column.kind === "number" && column.held) b.between(range, forSheet(column.limits, on));
  }
}

/** What stands in those columns, line by line. */
export const tableCells = ({ columns }: Table, lines: readonly object[]): CellContent[][] => {
  const keys = Object.entries(columns).flatMap(([key, { beside }]) => (beside ? [] : [key]));
  return lines.map((line) => keys.map((key) => (line as Readonly<Record<string, CellContent>>)[key] ?? ""));
};
