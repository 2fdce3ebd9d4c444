import type { Nullable } from "@univerjs/core";
import type { ArrayValueObject, BaseReferenceObject, BaseValueObject, ErrorValueObject } from "@univerjs/engine-formula";
import { CustomFunctionError, type ErrorCodeValue } from "./custom-function-error";

/** What a blank cell inside a range arrives as: 0 on Excel's desktop, null in the browser, "" in some versions. */
export type Blank = "zero" | "null" | "text";
export type EngineValue = BaseValueObject | BaseReferenceObject;

const blankValues: Record<Blank, unknown> = { zero: 0, null: null, text: "" };

/** An argument as Excel hands it to a matrix parameter of type any: one cell is [[v]], an omitted argument is null. */
export function toMatrix(argument: EngineValue | undefined, blank: Blank): unknown[][] | null {
  if (argument === undefined) return null;
  const value = argument as BaseValueObject;
  if (!value.isArray()) return value.isNull() ? null : [[toPlain(value, blank)]];
  const array = value as ArrayValueObject;
  const rows: unknown[][] = [];
  array.iterator((cell, row, column) => {
    (rows[row] ??= [])[column] = toPlain(cell, blank);
  });
  return rows;
}

function toPlain(cell: Nullable<BaseValueObject | void>, blank: Blank): unknown {
  if (cell == null || cell.isNull()) return blankValues[blank];
  if (cell.isError()) return toError(cell);
  return cell.getValue();
}

function toError(cell: BaseValueObject): CustomFunctionError {
  const error = cell as ErrorValueObject;
  return new CustomFunctionError(error.getErrorType() as ErrorCodeValue, error.getErrorContent() || undefined);
}

/** The first error in reading order, which is the one Excel passes on when a function does not take errors. */
export function firstError(matrices: readonly (unknown[][] | null)[]): CustomFunctionError | undefined {
  for (const matrix of matrices) {
    for (const row of matrix ?? []) {
      for (const cell of row) if (cell instanceof CustomFunctionError) return cell;
    }
  }
  return undefined;
}
