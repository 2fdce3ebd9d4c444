import type { BatchCell } from "../fields/cells";
import type { CellContent } from "../../grid/plan/sheet-plan";
import type { NamedCells } from "../../grid/read/named-cells";
import { called, forSheet, type Column, type On, type Single } from "../describe/field";
import type { Filled } from "../contents";
import { outsideLimits } from "./figure-doubts";
import { fromCell } from "./read-fields";
import { unitBeside } from "./sheet-lines";

/** Fields that a form asks for, each with a cell of its own. */
export type FormFields = Readonly<Record<string, Single & { readonly cell: string }>>;

/** What a form holds of them, in the sheet's units: a number may not be typed yet, whatever the sheet makes of an empty cell. */
export type Typed<F> = {
  readonly [Key in keyof F]: F[Key] extends { kind: "number" | "moment" }
    ? Filled<number>
    : F[Key] extends { kind: "choice"; choices: readonly (infer Choice)[] }
      ? Choice
      : string;
};

/** The form as the sheet stands; an emptied word is the usual one. */
export const typedOn = <F extends FormFields>(fields: F, sheet: NamedCells): Typed<F> =>
  Object.fromEntries(
    Object.entries(fields).map(([key, field]) => [
      key,
      fromCell(field, sheet.value(field.cell), "") || (field.kind === "text" ? (field.usual ?? "") : ""),
    ]),
  ) as unknown as Typed<F>;

/** A cell as a form would fill it. */
export interface FormCell {
  readonly name: BatchCell;
  readonly label: string;
  readonly content: CellContent;
  /** Why the cell may not hold it; undefined where it may. */
  readonly problem: string | undefined;
}

/** Every cell of the form with what the form holds. */
export const formCells = <F extends FormFields>(fields: F, typed: Typed<F>, on: On): FormCell[] =>
  Object.entries(fields).map(([key, field]) => {
    const content = typed[key] as CellContent;
    return { name: field.cell as BatchCell, label: onSheet(field, on), content, problem: formProblem(field, content, on) };
  });

/** What is typed into a form that its cell may not hold, in words. */
export const formProblem = (field: Single, content: CellContent, on: On): string | undefined =>
  field.kind === "number" && typeof content === "number" ? outsideLimits(field, content, on) : undefined;

/** What a brewer finds on the sheet, as messages call it: “Kind of bottle”. */
export const onSheet = (field: Single | Column, on: On): string => `“${forSheet(field.label, on)}”`;

/** What a form writes before a field: "Keg stands at, °C". A heading of a table says less than a form needs: "Beer temperature, °C". */
export function formLabel(field: Single | Column, on: On, words = "column" in field ? called(field) : forSheet(field.label, on)): string {
  const unit = field.kind === "number" ? unitBeside(field, on) : "";
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${unit === "" ? "" : `, ${unit}`}`;
}
