import { BrewingError } from "../core/brewing-error";
import { ArgumentProblem, CellError, type CellErrorCode } from "./cell-error";
import { argumentName, type AnyDescriptor, type Context, type Matrix, type Parameter } from "./describe";
import { messages } from "./messages";
import { quantity, type UnitSystem } from "./quantities";
import { missing, readChoice, readNumber, readText, waiting } from "./read-cell";
import { readCells, readList, readTable } from "./read-range";

export type Answer = Matrix<number | string | CellError>;

/**
 * The one door to every worksheet function: Excel, the bench, the pane and the tests all come through here.
 *
 * Arguments arrive as Excel sends them when a parameter is declared a matrix: `[[value]]` for a single cell, a
 * matrix for a range, `null` for one left out. Scalar parameters broadcast as native functions do (one cell, a row,
 * a column, or the full block), so one call serves a column; tables and lists are taken whole. An argument that is
 * not filled in yet makes the answer an empty text. Problems become `CellError`s in the cell that they concern.
 */
export function call(descriptor: AnyDescriptor, typed: readonly unknown[]): Answer {
  try {
    const parameters = Object.entries(descriptor.parameters as Record<string, Parameter>);
    const ranges = parameters.map(([, parameter], index) => asRange(typed[index], parameter));
    const shape = liftedShape(descriptor, parameters, ranges);
    const evaluate = evaluator(descriptor, parameters, ranges);
    if (descriptor.result.kind === "grid") return evaluate(0, 0) as Answer;
    return Array.from({ length: shape.rows }, (_, row) =>
      Array.from({ length: shape.columns }, (__, column) => evaluate(row, column) as number | string | CellError),
    );
  } catch (problem) {
    return [[asCellError(problem, descriptor.id)]];
  }
}

/** As `call`, for one cell: the number, text or error that the top left cell would show. */
export function callScalar(descriptor: AnyDescriptor, typed: readonly unknown[]): number | string | CellError {
  return call(descriptor, typed)[0]?.[0] ?? "";
}

/** `undefined` when the argument was left out. */
function asRange(typed: unknown, parameter: Parameter): Matrix | undefined {
  if (typed === undefined || typed === null) return undefined;
  const range: Matrix = Array.isArray(typed) ? (Array.isArray(typed[0]) ? (typed as Matrix) : [typed as unknown[]]) : [[typed]];
  const single = range.length === 1 && range[0]?.length === 1;
  // An optional argument that points at an empty cell was left out as far as the brewer is concerned.
  return single && parameter.optional === true && (range[0]?.[0] === null || range[0]?.[0] === "") ? undefined : range;
}

const isScalar = (parameter: Parameter): boolean => parameter.kind !== "list" && parameter.kind !== "table" && parameter.kind !== "cells";

function liftedShape(descriptor: AnyDescriptor, parameters: [string, Parameter][], ranges: (Matrix | undefined)[]) {
  let rows = 1;
  let columns = 1;
  parameters.forEach(([key, parameter], index) => {
    const range = ranges[index];
    if (!range || !isScalar(parameter)) return;
    const height = range.length;
    const width = range[0]?.length ?? 0;
    if (descriptor.result.kind === "grid" && (height > 1 || width > 1)) throw new ArgumentProblem("#VALUE!", messages.oneCellOnly(argumentName(key)));
    rows = Math.max(rows, height);
    columns = Math.max(columns, width);
  });
  return { rows, columns };
}

/** Returns the answer for one cell of the lifted block. Tables and lists are read once for each unit system. */
function evaluator(descriptor: AnyDescriptor, parameters: [string, Parameter][], ranges: (Matrix | undefined)[]) {
  const unitsIndex = parameters.findIndex(([key]) => key === "units");
  const wholes = new Map<string, unknown>();
  return (row: number, column: number): unknown => {
    try {
      const units = unitsIndex < 0 ? "metric" : unitSystem(parameters[unitsIndex]?.[1], cellAt(ranges[unitsIndex], row, column, "units"));
      const values: Record<string, unknown> = {};
      for (const [index, [key, parameter]] of parameters.entries()) {
        const range = ranges[index];
        const value = isScalar(parameter)
          ? readScalar(key, parameter, cellAt(range, row, column, argumentName(key)), range === undefined, units)
          : remember(wholes, `${units} ${key}`, () => readWhole(key, parameter, range, units));
        if (value === missing || value === waiting) {
          if (parameter.optional !== true || value === waiting) return descriptor.result.kind === "grid" ? [[""]] : "";
          values[key] = "default" in parameter ? parameter.default : undefined;
        } else values[key] = value;
      }
      return convertResult(descriptor, descriptor.compute(values, context(units)), units);
    } catch (problem) {
      const error = asCellError(problem, descriptor.id);
      return descriptor.result.kind === "grid" ? [[error]] : error;
    }
  };
}

function unitSystem(parameter: Parameter | undefined, typed: unknown): UnitSystem {
  if (parameter?.kind !== "choice") return "metric";
  const value = readChoice("units", typed, parameter);
  return value === "us" ? "us" : "metric";
}

function readScalar(key: string, parameter: Parameter, typed: unknown, leftOut: boolean, units: UnitSystem): unknown {
  if (leftOut && parameter.optional === true) return missing;
  if (parameter.kind === "number") return readNumber(argumentName(key), typed, parameter, units);
  if (parameter.kind === "choice") return readChoice(argumentName(key), typed, parameter);
  return parameter.kind === "text" ? readText(typed) : missing;
}

function readWhole(key: string, parameter: Parameter, range: Matrix | undefined, units: UnitSystem): unknown {
  if (range === undefined) return missing;
  if (parameter.kind === "list") return readList(argumentName(key), range, parameter, units);
  if (parameter.kind === "cells") return readCells(argumentName(key), range);
  return parameter.kind === "table" ? readTable(argumentName(key), range, parameter, units) : missing;
}

/** Native broadcasting: a single row or column repeats; beyond a block that is too short stands #N/A. */
function cellAt(range: Matrix | undefined, row: number, column: number, argument: string): unknown {
  if (range === undefined) return null;
  const line = range.length === 1 ? range[0] : range[row];
  if (line === undefined || (line.length > 1 && column >= line.length)) return new CellError("#N/A", messages.tooFewCells(argument));
  return line.length === 1 ? line[0] : line[column];
}

function remember(cache: Map<string, unknown>, key: string, make: () => unknown): unknown {
  if (!cache.has(key)) cache.set(key, make());
  return cache.get(key);
}

function context(units: UnitSystem): Context {
  return { units, show: (name, coreValue) => quantity(name).fromCore(coreValue, units) };
}

/** Converts to the brewer's unit and lets nothing through that is not a finite number or a text. */
function convertResult(descriptor: AnyDescriptor, computed: unknown, units: UnitSystem): unknown {
  const { result } = descriptor;
  // A function that asks another one has no answer yet while that one has none.
  if (computed === "") return "";
  if (result.kind === "number") {
    const value = quantity(result.quantity).fromCore(computed as number, units);
    if (typeof value !== "number" || !Number.isFinite(value)) throw new ArgumentProblem("#NUM!", "there is no finite answer");
    return value;
  }
  if (result.kind === "text") return computed;
  const grid = computed as Matrix<number | string>;
  return grid.map((row) => row.map((cell) => (typeof cell === "number" && !Number.isFinite(cell) ? new CellError("#NUM!", "there is no finite answer") : cell)));
}

const codeOfReason: Record<BrewingError["reason"], CellErrorCode> = { impossible: "#VALUE!", uncovered: "#N/A", unsolvable: "#NUM!" };

/** A brewer's mistake keeps its words; a bug of ours is logged and says only that it is one. */
function asCellError(problem: unknown, id: string): CellError {
  if (problem instanceof ArgumentProblem) return new CellError(problem.code, problem.message);
  if (problem instanceof BrewingError) return new CellError(codeOfReason[problem.reason], problem.message);
  console.error(`GYLE.${id}`, problem);
  return new CellError("#VALUE!", messages.internal(id));
}
