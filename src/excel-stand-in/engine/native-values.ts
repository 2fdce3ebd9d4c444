import { getNumfmtParseValueFilter, type Nullable } from "@univerjs/core";
import {
  BooleanValueObject,
  ErrorType,
  ErrorValueObject,
  NumberValueObject,
  StringValueObject,
  type ArrayValueObject,
  type BaseReferenceObject,
  type BaseValueObject,
  type FunctionVariantType,
} from "@univerjs/engine-formula";

/** A value of a cell as Excel tells them apart; an error by its text. */
export type NativeValue = number | string | boolean | null | { error: string };

export const isErrorValue = (value: NativeValue): value is { error: string } => typeof value === "object" && value !== null;

export function nativeOf(value: Nullable<BaseValueObject>): NativeValue {
  if (value == null || value.isNull()) return null;
  if (value.isError()) return { error: String(value.getValue()) };
  if (value.isNumber()) return Number(value.getValue());
  if (value.isBoolean()) return Boolean(value.getValue());
  return String(value.getValue());
}

export function valueObjectOf(value: NativeValue): BaseValueObject {
  if (value === null) return NumberValueObject.create(0);
  if (isErrorValue(value)) return ErrorValueObject.create(value.error as ErrorType);
  if (typeof value === "number") return Number.isFinite(value) ? NumberValueObject.create(value) : ErrorValueObject.create(ErrorType.NUM);
  if (typeof value === "boolean") return BooleanValueObject.create(value);
  return StringValueObject.create(value);
}

/** Values in rows, as they came: of a range, of a block of values, or one value. */
export function rowsOf(given: FunctionVariantType): BaseValueObject[][] {
  const value = given.isReferenceObject() ? (given as BaseReferenceObject).toArrayValueObject() : (given as BaseValueObject);
  if (!value.isArray()) return [[value]];
  return (value as ArrayValueObject).getArrayValue() as BaseValueObject[][];
}

export const nativeRowsOf = (given: FunctionVariantType): NativeValue[][] => rowsOf(given).map((row) => Array.from(row ?? [], nativeOf));

/** The number, truth value or error that a text would become in a cell; else the text. */
export function typed(text: string): NativeValue {
  const trimmed = text.trim();
  if (trimmed === "") return text;
  if (/^(?:TRUE|FALSE)$/iu.test(trimmed)) return /^T/iu.test(trimmed);
  if (/^#(?:DIV\/0!|N\/A|NAME\?|NULL!|NUM!|REF!|VALUE!|SPILL!|CALC!)$/iu.test(trimmed)) return { error: trimmed.toUpperCase() };
  return numberOf(text) ?? text;
}

/** A text as a number, by itself or as a date, time or share (12%); undefined if it is none. */
export function numberOf(text: string): number | undefined {
  const trimmed = text.trim();
  if (trimmed === "") return undefined;
  if (/^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/iu.test(trimmed)) return Number(trimmed);
  // " 12 " is a number to Excel, " 2026-01-16 " is none.
  if (trimmed !== text) return undefined;
  const read: { v?: unknown } | undefined = getNumfmtParseValueFilter(text) ?? undefined;
  return typeof read?.v === "number" ? read.v : undefined;
}

/** The order of values in Excel: numbers, then texts, then truth values; undefined where there is none. */
export function compareValues(one: NativeValue, other: NativeValue): number | undefined {
  const [left, right] = [rank(one), rank(other)];
  if (left === undefined || right === undefined) return undefined;
  if (left !== right) return left - right;
  if (typeof one === "string") return compareTexts(one, other as string);
  return Number(one) - Number(other);
}

export function compareTexts(one: string, other: string): number {
  const [left, right] = [one.toLowerCase(), other.toLowerCase()];
  return left === right ? 0 : left < right ? -1 : 1;
}

function rank(value: NativeValue): number | undefined {
  if (typeof value === "number") return 0;
  if (typeof value === "string") return 1;
  return typeof value === "boolean" ? 2 : undefined;
}
