import { call, callScalar } from "../../../functions/call";
import { functionNamed } from "../../../functions/registry";

/** What a worksheet function answers to one question: undefined while something is missing, and where it shows an error. */
export function askNumber(id: string, ...typed: readonly unknown[]): number | undefined {
  const answer = callScalar(functionNamed(id), typed);
  return typeof answer === "number" ? answer : undefined;
}

/** All cells of the answer, row by row; an error is undefined, as is a cell that stays empty. */
export function askTable(id: string, ...typed: readonly unknown[]): (number | string | undefined)[][] {
  return call(functionNamed(id), typed).map((row) =>
    row.map((cell) => (typeof cell === "number" || (typeof cell === "string" && cell !== "") ? cell : undefined)),
  );
}

/** A column of numbers as the functions take it. */
export const column = (values: readonly unknown[]): unknown[][] => values.map((value) => [value]);
