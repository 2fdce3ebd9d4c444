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
