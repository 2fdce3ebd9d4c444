import { BrewingError } from "../core/brewing-error";
import { ArgumentProblem, CellError, type CellErrorCode } from "./cell-error";
import type { AnyDescriptor, Matrix, Parameter } from "./describe";
import { messages } from "./messages";
import { prepare, readWhole, type Prepared, type PreparedParameter } from "./prepare";
import { quantity, type UnitSystem } from "./quantities";
import { missing } from "./read-cell";

export type Answer = Matrix<number | string | CellError>;
type Ranges = readonly (Matrix | undefined)[];

/**
 * The one door to every worksheet function: Excel, the bench, the pane and the tests all come through here.
 *
 * Arguments arrive as Excel sends them when a parameter is declared a matrix: `[[value]]` for a single cell, a
 * matrix for a range, `null` for one left out. Scalar parameters broadcast as native functions do (one cell, a row,
 * a column, or the full block), so one call serves a column; tables and lists are taken whole. An argument that is
 * not filled in yet makes the answer an empty text. Problems become `CellError`s in the cell that they concern.
 *
 * An answer has as many rows as its longest range, also for a whole column of which fifty cells are filled, as a native
 * function's has: a shorter one would no longer stand beside the column when another formula takes both. But a row
 * that holds what the row above it holds is not worked out again.
 */
export function call(descriptor: AnyDescriptor, typed: readonly unknown[]): Answer {
  try {
    const prepared = prepare(descriptor);
    const ranges = prepared.parameters.map(({ parameter }, index) => asRange(typed[index], parameter));
    const shape = liftedShape(descriptor, prepared, ranges);
    const evaluate = evaluator(descriptor, prepared, ranges);
    if (descriptor.result.kind === "grid") return evaluate(0, 0) as Answer;
    const lifted = ranges.filter(
      (range, index): range is Matrix => prepared.parameters[index]?.isScalar === true && range !== undefined && range.length > 1,
    );
    const answer: Answer = [];
    for (let row = 0; row < shape.rows; row++) {
      const above = answer[row - 1];
      answer.push(above !== undefined && isAsAbove(lifted, row) ? above.slice() : evaluatedRow(evaluate, row, shape.columns));
    }
    return answer;
  } catch (problem) {
    return [[asCellError(problem, descriptor.id)]];
  }
}

/** As `call`, for one cell: the number, text or error that the top left cell would show. */
export function callScalar(descriptor: AnyDescriptor, typed: readonly unknown[]): number | string | CellError {
  return call(descriptor, typed)[0]?.[0] ?? "";
}

/** The answer for one cell of the lifted block. */
type Evaluate = (row: number, column: number) => unknown;

function evaluatedRow(evaluate: Evaluate, row: number, columns: number): Answer[number] {
  const cells = [evaluate(row, 0)] as Answer[number];
  for (let column = 1; column < columns; column++) cells.push(evaluate(row, column) as number | string | CellError);
  return cells;
}

/** Plain loops: closures made anew for each row would cost a row as much as all its checks. */
function isAsAbove(lifted: readonly Matrix[], row: number): boolean {
  for (const range of lifted) if (!sameCells(range[row], range[row - 1])) return false;
  return true;
}

function sameCells(one: readonly unknown[] | undefined, other: readonly unknown[] | undefined): boolean {
  if (one === undefined || other === undefined) return one === other;
  for (let at = 0; at < one.length; at++) if (one[at] !== other[at]) return false;
  return one.length === other.length;
}

/** `undefined` when the argument was left out. */
function asRange(typed: unknown, parameter: Parameter): Matrix | undefined {
  if (typed === undefined || typed === null) return undefined;
  const range: Matrix = Array.isArray(typed) ? (Array.isArray(typed[0]) ? (typed as Matrix) : [typed as unknown[]]) : [[typed]];
  const single = range.length === 1 && range[0]?.length === 1;
  // An optional argument that points at an empty cell was left out as far as the brewer is concerned.
  return single && parameter.optional === true && (range[0]?.[0] === null || range[0]?.[0] === "") ? undefined : range;
}

function liftedShape(descriptor: AnyDescriptor, { parameters }: Prepared, ranges: Ranges) {
  let rows = 1;
  let columns = 1;
  parameters.forEach(({ name, isScalar }, index) => {
    const range = ranges[index];
    if (!range || !isScalar) return;
    const height = range.length;
    const width = range[0]?.length ?? 0;
    if (descriptor.result.kind === "grid" && (height > 1 || width > 1)) throw new ArgumentProblem("#VALUE!", messages.oneCellOnly(name));
    rows = Math.max(rows, height);
    columns = Math.max(columns, width);
  });
  return { rows, columns };
}

/** What is the same in every cell of the block is read once for each unit system, the unit system itself where it is the same. */
function evaluator(descriptor: AnyDescriptor, prepared: Prepared, ranges: Ranges): Evaluate {
  const { units } = prepared;
  const unitsRange = units && ranges[prepared.parameters.indexOf(units)];
  const byUnits: Partial<Record<UnitSystem, Evaluate>> = {};
  let only: Evaluate | undefined;
  return (row, column) => {
    try {
      if (only !== undefined) return only(row, column);
      const system = units === undefined ? "metric" : unitSystem(units, cellAt(unitsRange, row, column, "units"));
      const found = (byUnits[system] ??= inUnits(descriptor, prepared, ranges, system));
      if (units === undefined || !variesByCell(units, unitsRange)) only = found;
      return found(row, column);
    } catch (problem) {
      const error = asCellError(problem, descriptor.id);
      return descriptor.result.kind === "grid" ? [[error]] : error;
    }
  };
}

/** An argument that has to be looked at in each cell of the block: it varies, or there is something wrong with it. */
interface Step {
  readonly parameter: PreparedParameter;
  /** `missing` where it is not filled in. */
  readonly read: Evaluate;
}

/** As `evaluator`, in one unit system. The values are handed to `compute` in one object, written anew for each cell. */
function inUnits(descriptor: AnyDescriptor, prepared: Prepared, ranges: Ranges, units: UnitSystem): Evaluate {
  // Every key from the beginning and in order: the object keeps its layout while the cells change.
  const values: Record<string, unknown> = { ...prepared.standIns };
  const steps: Step[] = [];
  prepared.parameters.forEach((parameter, index) => {
    const range = ranges[index];
    if (range !== undefined && variesByCell(parameter, range)) {
      steps.push({ parameter, read: varyingReader(parameter, range, units) });
      return;
    }
    try {
      const value = readOnce(parameter, range, units);
      if (value === missing && !parameter.isOptional) steps.push({ parameter, read: () => missing });
      else if (value !== missing) values[parameter.key] = value;
    } catch (problem) {
      // An error, as a gap, waits for its turn: what is wrong before it comes first.
      steps.push({ parameter, read: () => rethrown(problem) });
    }
  });
  const { result } = descriptor;
  const context = prepared.context[units];
  return (row, column) => {
    for (const { parameter, read } of steps) {
      const value = read(row, column);
      if (value !== missing) values[parameter.key] = value;
      else if (parameter.isOptional) values[parameter.key] = parameter.standIn;
      else return result.kind === "grid" ? [[""]] : "";
    }
    return finished(result, descriptor.compute(values, context), units);
  };
}

function varyingReader({ readCell, name }: PreparedParameter, range: Matrix, units: UnitSystem): Evaluate {
  const read = readCell[units];
  return (row, column) => {
    // Nearly always a column.
    const line = range[row];
    return read(line?.length === 1 && range.length > 1 ? line[0] : cellAt(range, row, column, name));
  };
}

const variesByCell = ({ isScalar }: PreparedParameter, range: Matrix | undefined): boolean =>
  isScalar && range !== undefined && (range.length !== 1 || range[0]?.length !== 1);

/** An argument that is the same in all cells of the block: a single cell, one left out, a table or a list. */
function readOnce(parameter: PreparedParameter, range: Matrix | undefined, units: UnitSystem): unknown {
  if (!parameter.isScalar) return readWhole(parameter, range, units);
  return range === undefined && parameter.isOptional ? missing : parameter.readCell[units](range?.[0]?.[0] ?? null);
}

function rethrown(problem: unknown): never {
  throw problem;
}

function unitSystem({ parameter, readCell }: PreparedParameter, typed: unknown): UnitSystem {
  return parameter.kind === "choice" && readCell.metric(typed) === "us" ? "us" : "metric";
}

/** Native broadcasting: a single row or column repeats; beyond a block that is too short stands #N/A. */
function cellAt(range: Matrix | undefined, row: number, column: number, argument: string): unknown {
  if (range === undefined) return null;
  const line = range.length === 1 ? range[0] : range[row];
  if (line === undefined || (line.length > 1 && column >= line.length)) return new CellError("#N/A", messages.tooFewCells(argument));
  return line.length === 1 ? line[0] : line[column];
}

/** Converts to the brewer's unit and lets nothing through that is not a finite number or a text. */
function finished(result: AnyDescriptor["result"], computed: unknown, units: UnitSystem): unknown {
  // A function that asks another one has no answer yet while that one has none.
  if (computed === "" || result.kind === "text") return computed;
  if (result.kind === "number") {
    const value = quantity(result.quantity).fromCore(computed as number, units);
    if (typeof value !== "number" || !Number.isFinite(value)) throw new ArgumentProblem("#NUM!", "there is no finite answer");
    return value;
  }
  return (computed as Matrix<number | string>).map((row) =>
    row.map((cell) => (typeof cell === "number" && !Number.isFinite(cell) ? new CellError("#NUM!", "there is no finite answer") : cell)),
  );
}

const codeOfReason: Record<BrewingError["reason"], CellErrorCode> = { impossible: "#VALUE!", uncovered: "#N/A", unsolvable: "#NUM!" };

/** A brewer's mistake keeps its words; a bug of ours is logged and says only that it is one. */
function asCellError(problem: unknown, id: string): CellError {
  if (problem instanceof ArgumentProblem) return new CellError(problem.code, problem.message);
  if (problem instanceof BrewingError) return new CellError(codeOfReason[problem.reason], problem.message);
  console.error(`GYLE.${id}`, problem);
  return new CellError("#VALUE!", messages.internal(id));
}
