import { call, type Answer } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import {
  argumentName,
  type AnyDescriptor,
  type Example,
  type Matrix,
  type NumberParameter,
  type Parameter,
  type TableParameter,
} from "../../src/functions/describe";
import { quantity, type QuantityName, type UnitSystem } from "../../src/functions/quantities";

/** A parameter with its place among the arguments. */
export interface Place {
  readonly index: number;
  readonly name: string;
  readonly parameter: Parameter;
}

export const placesOf = (descriptor: AnyDescriptor): Place[] =>
  Object.entries(descriptor.parameters as Record<string, Parameter>).map(([key, parameter], index) => ({
    index,
    name: argumentName(key),
    parameter,
  }));

export const isScalar = ({ parameter }: Place): boolean =>
  parameter.kind !== "list" && parameter.kind !== "table" && parameter.kind !== "block" && parameter.kind !== "cells";

/** The arguments of an example, one for each parameter, free to change. */
export const argumentsOf = (descriptor: AnyDescriptor, example: Example): unknown[] =>
  placesOf(descriptor).map(({ index }) => structuredClone(example.arguments[index] ?? null));

/** The same call with one argument changed. */
export const withArgument = (typed: readonly unknown[], index: number, value: unknown): unknown[] =>
  typed.map((old, at) => (at === index ? value : old));

export function unitsOf(descriptor: AnyDescriptor, typed: readonly unknown[]): UnitSystem {
  const at = placesOf(descriptor).find(({ name }) => name === "units")?.index;
  return at !== undefined && typed[at] === "us" ? "us" : "metric";
}

export const typedValue = (name: QuantityName, coreValue: number, units: UnitSystem): number => quantity(name).fromCore(coreValue, units);

/** A cell of an answer without the words of its error: enough to compare, and readable when it differs. */
export const plain = (answer: Answer): (string | number)[][] =>
  answer.map((row) => row.map((cell) => (cell instanceof CellError ? `${cell.code} ${cell.message}` : cell)));

export const answerOf = (descriptor: AnyDescriptor, typed: readonly unknown[]): (string | number)[][] => plain(call(descriptor, typed));

/** A place where a number is typed: an argument, a cell of a list, or a cell of a table. */
export interface NumberPlace {
  /** As a message names it: "volume", "hops row 2: mass". */
  readonly label: string;
  readonly parameter: Pick<NumberParameter, "quantity" | "limits" | "blank">;
  readonly put: (value: number) => unknown[];
}

/** Every place of a call where a number may be typed; of a list, a block and a table, the last row that is filled in. */
export function numberPlaces(descriptor: AnyDescriptor, typed: readonly unknown[]): NumberPlace[] {
  return placesOf(descriptor).flatMap(({ index, name, parameter }): NumberPlace[] => {
    if (parameter.kind === "number") return [{ label: name, parameter, put: (value) => withArgument(typed, index, value) }];
    if (parameter.kind === "choice" || parameter.kind === "text" || parameter.kind === "cells") return [];
    const range = typed[index];
    if (!Array.isArray(range)) return [];
    const cells = range as Matrix;
    const inCell = (row: number, column: number) => (value: number) =>
      withArgument(
        typed,
        index,
        cells.map((line, at) => (at === row ? withArgument(line, column, value) : line)),
      );
    if (parameter.kind === "list") {
      const last = cells.flat().findLastIndex((cell) => typeof cell === "number");
      const inOneRow = cells.length === 1;
      return [{ label: `${name} row ${last + 1}`, parameter, put: inCell(inOneRow ? 0 : last, inOneRow ? last : 0) }];
    }
    if (parameter.kind === "block") {
      const row = cells.length - 1;
      const column = (cells[row]?.length ?? 0) - 1;
      return [{ label: `${name} row ${row + 1}, column ${column + 1}`, parameter, put: inCell(row, column) }];
    }
    const columns = tableColumns(parameter, cells);
    const last = cells.findLastIndex((row) => columns.every(({ position }) => typeof row[position] === "number"));
    return columns.map(({ key, column, position }) => ({
      label: `${name} row ${last + 1}: ${argumentName(key)}`,
      parameter: column,
      put: inCell(last, position),
    }));
  });
}

/** The columns of numbers in a table as typed. */
export function tableColumns(parameter: TableParameter, cells: Matrix): { key: string; column: NumberParameter; position: number }[] {
  const layout = parameter.layouts.find((columns) => columns.length === cells[0]?.length) ?? [];
  return layout.flatMap((key, position) => {
    const column = key === null ? undefined : parameter.columns[key];
    return key !== null && column?.kind === "number" ? [{ key, column, position }] : [];
  });
}
