import type { AnyDescriptor, Parameter } from "../../functions/describe";
import { microsecondsPer } from "./microseconds";
import { shippedFunctions, type WorksheetFunction } from "./shipped-functions";

const liftedRows = 1000;

/** What every function costs through the wrapper, in the file that ships: one cell, and each row of a lifted column. */
export function functionCosts(registry: readonly AnyDescriptor[]): string {
  const shipped = shippedFunctions();
  const lines = registry.map((descriptor) => {
    const [example] = descriptor.examples;
    const worksheetFunction = shipped[descriptor.id];
    if (example === undefined || worksheetFunction === undefined) throw new Error(`${descriptor.id} is not in dist/functions.js`);
    const parameters = Object.values(descriptor.parameters as Record<string, Parameter>);
    const typed = parameters.map((_, index) => asExcelSends(example.arguments[index] ?? null));
    const scalar = microsecondsPer(() => worksheetFunction(...typed));
    return `| ${descriptor.id} | ${shown(scalar)} | ${liftedCost(descriptor, worksheetFunction, parameters, typed)} |`;
  });
  return ["| function | one call, µs | lifted, µs a row |", "|---|---|---|", ...lines].join("\n");
}

function liftedCost(
  descriptor: AnyDescriptor,
  worksheetFunction: WorksheetFunction,
  parameters: readonly Parameter[],
  typed: readonly unknown[],
): string {
  const at = parameters.findIndex(({ kind }, index) => kind === "number" && typed[index] !== null);
  if (descriptor.result.kind === "grid" || at < 0) return "–";
  const cell = (typed[at] as unknown[][])[0]?.[0];
  const column = typed.map((argument, index) => (index === at ? Array.from({ length: liftedRows }, () => [cell]) : argument));
  return shown(microsecondsPer(() => worksheetFunction(...column)) / liftedRows);
}

const asExcelSends = (argument: unknown): unknown => (argument === null || Array.isArray(argument) ? argument : [[argument]]);

const shown = (microseconds: number): string => (microseconds >= 100 ? microseconds.toFixed(0) : microseconds.toPrecision(2));
