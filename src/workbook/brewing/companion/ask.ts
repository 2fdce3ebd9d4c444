import { callScalar } from "../../../functions/call";
import { CellError } from "../../../functions/cell-error";
import type { AnyDescriptor } from "../../../functions/describe";

/** A number, or why there is none: "" where something is not filled in yet. */
export type Asked = { readonly value: number; readonly problem?: undefined } | { readonly value?: undefined; readonly problem: string };

/** Asks a worksheet function as a cell would, through the same wrapper. */
export function ask(descriptor: AnyDescriptor, ...typed: readonly unknown[]): Asked {
  const answer = callScalar(descriptor, typed);
  if (typeof answer === "number") return { value: answer };
  return { problem: answer instanceof CellError ? answer.message : answer };
}

/** As `ask`, for a function that answers in words: "" where something is missing, and an error's own words. */
export function askText(descriptor: AnyDescriptor, ...typed: readonly unknown[]): string {
  const answer = callScalar(descriptor, typed);
  return answer instanceof CellError ? answer.message : String(answer);
}
