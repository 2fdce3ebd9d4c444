import type { Injector } from "@univerjs/core";
import {
  ErrorType,
  ErrorValueObject,
  ICalculateFormulaService,
  IFormulaRuntimeService,
  Interpreter,
  NullValueObject,
  NumberValueObject,
  type ArrayValueObject,
  type BaseValueObject,
  type FunctionVariantType,
} from "@univerjs/engine-formula";
import type { CellErrors } from "./cell-errors";
import { cellKey, type CellPlace } from "./cell-key";

/** Called by the engine's loops every few thousand turns; fast-properties-loader.cjs puts the calls in. */
const WATCH = Symbol.for("watch over formula loops");

class StoppedError extends Error {}

/** How much a calculation may take. The page answers between two formulas, but not while one is calculated. */
interface Limits {
  /** Milliseconds that one formula may take. */
  formula: number;
  /** Milliseconds that all slow formulas of one calculation may take together; after that each has only `hurried`. */
  together: number;
  hurried: number;
  /** How many numbers one formula may make on its way; some hundred bytes each. */
  numbers: number;
}

/**
 * Nothing that a formula does may freeze the page or stop the calculation of all others: a formula that takes too long,
 * makes too many numbers, goes round in itself until the stack ends, or makes the engine throw, becomes an error in its
 * cell, with words, and the rest is calculated.
 */
export class Runaways {
  readonly limits: Limits = { formula: 4000, together: 12_000, hurried: 200, numbers: 6_000_000 };
  private readonly stopped = new Map<string, CellPlace>();
  private until = Infinity;
  private numbers = 0;
  private slow = 0;

  constructor(
    injector: Injector,
    private readonly cellErrors: CellErrors,
  ) {
    this.watchLoops();
    const runtime = injector.get(IFormulaRuntimeService);
    const place = (): CellPlace => ({
      unitId: runtime.currentUnitId,
      sheetId: runtime.currentSubUnitId,
      row: runtime.currentRow,
      column: runtime.currentColumn,
    });
    const interpreter = injector.get(Interpreter);
    const execute = interpreter.execute.bind(interpreter);
    interpreter.execute = (node) => finished(this.within(place(), () => execute(node)));
    const executePart = interpreter.executePreCalculateNode.bind(interpreter);
    interpreter.executePreCalculateNode = (node) => this.within(place(), () => executePart(node));
    const executeAsync = interpreter.executeAsync.bind(interpreter);
    interpreter.executeAsync = (node) => executeAsync(node).catch((error: unknown) => this.give(place(), error));
    const service = injector.get(ICalculateFormulaService) as unknown as { _executeStep(): Promise<unknown> };
    const step = service._executeStep.bind(service);
    // A calculation that was broken off must still say that it is over, or nothing is ever calculated again.
    service._executeStep = () =>
      step().catch((error: unknown) => {
        console.error(error);
        return undefined;
      });
  }

  /** Call when a calculation starts. */
  begin(): void {
    this.slow = 0;
  }

  /** Cells whose formula was stopped and has been neither changed nor calculated since. */
  cells(): readonly CellPlace[] {
    return [...this.stopped.values()].filter((place) => this.cellErrors.messageAt(place) !== undefined);
  }

  private watchLoops(): void {
    (globalThis as unknown as Record<symbol, () => void>)[WATCH] = () => {
      if (this.until !== Infinity && performance.now() > this.until) throw new StoppedError("it took too long to calculate");
    };
    const create = NumberValueObject.create.bind(NumberValueObject);
    NumberValueObject.create = (...given) => {
      if (++this.numbers > this.limits.numbers && this.until !== Infinity) throw new StoppedError("its answer is too large");
      return create(...given);
    };
  }

  private within<Answer>(place: CellPlace, calculate: () => Answer): Answer | ErrorValueObject {
    // A part of a formula that is calculated by itself, from inside it, has the time of the whole.
    if (this.until !== Infinity) return calculate();
    const { formula, together, hurried } = this.limits;
    const started = performance.now();
    this.until = started + Math.max(hurried, Math.min(formula, together - this.slow));
    this.numbers = 0;
    try {
      const answer = calculate();
      if (this.stopped.size > 0) this.stopped.delete(cellKey(place));
      return answer;
    } catch (error) {
      return this.give(place, error);
    } finally {
      this.until = Infinity;
      const took = performance.now() - started;
      if (took > hurried) this.slow += took;
    }
  }

  private give(place: CellPlace, error: unknown): ErrorValueObject {
    this.cellErrors.enter(place);
    if (!(error instanceof StoppedError)) {
      this.cellErrors.keep(place, 0, 0, "the grid cannot work this formula out");
      return ErrorValueObject.create(ErrorType.VALUE);
    }
    this.cellErrors.keep(place, 0, 0, `this formula was stopped: ${error.message}`);
    this.stopped.set(cellKey(place), place);
    return ErrorValueObject.create(ErrorType.CALC);
  }
}

/** What a cell shows: a blank as 0, as Excel does, and no number that is none. */
function finished(answer: FunctionVariantType): FunctionVariantType {
  if (answer.isReferenceObject()) return answer;
  const value = onlyValue(answer as BaseValueObject);
  if (value === undefined) return answer;
  if (value.isNull()) return NumberValueObject.create(0);
  return value.isNumber() && !Number.isFinite(value.getValue()) ? ErrorValueObject.create(ErrorType.NUM) : answer;
}

/** What is not a block of several values. */
function onlyValue(answer: BaseValueObject): BaseValueObject | undefined {
  if (!answer.isArray()) return answer;
  const array = answer as ArrayValueObject;
  return array.getRowCount() === 1 && array.getColumnCount() === 1 ? (array.get(0, 0) ?? NullValueObject.create()) : undefined;
}
