import {
  ArrayValueObject,
  BooleanValueObject,
  ErrorValueObject,
  NumberValueObject,
  StringValueObject,
  type BaseValueObject,
  type ErrorType,
} from "@univerjs/engine-formula";
import { CustomFunctionError, ErrorCode } from "./custom-function-error";

/** Told of each error in a result, by row and column from its first cell. */
export type ErrorListener = (row: number, column: number, message: string | undefined) => void;

/** What a function gave back, as the engine's value: a 1 by 1 matrix is a scalar, a bigger one spills. */
export function fromResult(result: unknown, onError: ErrorListener): BaseValueObject {
  if (!Array.isArray(result)) return fromScalar(result, 0, 0, onError);
  const rows = result as unknown[][];
  const columnCount = Array.isArray(rows[0]) ? rows[0].length : 0;
  if (columnCount === 0 || rows.some((row) => !Array.isArray(row) || row.length !== columnCount)) {
    return fromError(new CustomFunctionError(ErrorCode.invalidValue, "The function gave back rows of unequal length."), 0, 0, onError);
  }
  if (rows.length === 1 && columnCount === 1) return fromScalar(rows[0]![0], 0, 0, onError);
  return ArrayValueObject.create({
    calculateValueList: rows.map((row, r) => row.map((cell, c) => fromScalar(cell, r, c, onError))),
    rowCount: rows.length,
    columnCount,
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
}

function fromScalar(value: unknown, row: number, column: number, onError: ErrorListener): BaseValueObject {
  if (value instanceof Error) return fromError(value, row, column, onError);
  switch (typeof value) {
    case "number":
      if (Number.isFinite(value)) return NumberValueObject.create(value);
      return fromError(
        new CustomFunctionError(Number.isNaN(value) ? ErrorCode.invalidValue : ErrorCode.invalidNumber),
        row,
        column,
        onError,
      );
    case "boolean":
      return BooleanValueObject.create(value);
    case "string":
      return StringValueObject.create(value);
    // Excel shows null in a result as 0.
    default:
      return NumberValueObject.create(0);
  }
}

/** Excel drops the text of an ordinary Error; the bench keeps it, because here it helps whoever wrote the function. */
export function fromError(error: unknown, row: number, column: number, onError: ErrorListener): BaseValueObject {
  const code = error instanceof CustomFunctionError ? error.code : ErrorCode.invalidValue;
  const message = error instanceof Error ? error.message : String(error);
  onError(row, column, message);
  return ErrorValueObject.create(code as ErrorType, message);
}
