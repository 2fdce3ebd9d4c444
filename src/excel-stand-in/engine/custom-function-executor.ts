import { BaseFunction } from "@univerjs/engine-formula";
import type { BaseValueObject } from "@univerjs/engine-formula";
import type { CellPlace } from "./cell-key";
import { firstError, toMatrix, type Blank, type EngineValue } from "./custom-function-input";
import { fromError, fromResult, type ErrorListener } from "./custom-function-output";
import type { CellErrors } from "./cell-errors";
import type { FunctionMetadata } from "./custom-functions-metadata";
import { ErrorCode, CustomFunctionError } from "./custom-function-error";
import type { UnknownFunctions } from "./unknown-functions";

export interface ExecutorContext {
  cellErrors: CellErrors;
  blank(): Blank;
  /** The associated function; undefined before `associate` ran. */
  implementation(id: string): Function | undefined;
  takesErrors: boolean;
  unknown: UnknownFunctions;
}

/**
 * One of our functions inside the grid's engine. The engine's own way to register functions loses blanks, errors and
 * literals, and a throw there stops the whole calculation, so nothing may escape from `calculate`.
 */
export class CustomFunctionExecutor extends BaseFunction {
  /** The engine is not to count arguments: it would answer with an error that says nothing. */
  override minParams = -1;
  override maxParams = -1;

  constructor(
    name: string,
    private readonly metadata: FunctionMetadata,
    private readonly context: ExecutorContext,
  ) {
    super(name);
  }

  /** Otherwise the engine would read texts such as "5%" or "2026-01-16" as numbers. */
  override isArgumentsIgnoreNumberPattern(): boolean {
    return true;
  }

  override calculate(...values: EngineValue[]): BaseValueObject {
    const place: CellPlace = {
      unitId: this.unitId ?? "",
      sheetId: this.subUnitId ?? "",
      row: this.row,
      column: this.column,
    };
    this.context.cellErrors.enter(place);
    const onError: ErrorListener = (row, column, message) => this.context.cellErrors.keep(place, row, column, message);
    try {
      if (this.context.unknown.at(place)) throw new CustomFunctionError(ErrorCode.invalidName);
      return fromResult(this.call(values), onError);
    } catch (error) {
      return fromError(error, 0, 0, onError);
    }
  }

  private call(values: EngineValue[]): unknown {
    this.checkCount(values.length);
    const blank = this.context.blank();
    const matrices = this.metadata.parameters.map((_, index) => toMatrix(values[index], blank));
    const inputError = this.context.takesErrors ? undefined : firstError(matrices);
    if (inputError) return inputError;
    const implementation = this.context.implementation(this.metadata.id);
    if (!implementation) throw new CustomFunctionError(ErrorCode.notAvailable, `${this.metadata.id} is not associated.`);
    const invocation: CustomFunctions.Invocation = { functionName: this.metadata.id };
    return implementation(...matrices, invocation);
  }

  /** Excel does not take such a formula at all. The commonest reason is a comma or semicolon after another language's fashion. */
  private checkCount(given: number): void {
    const { parameters } = this.metadata;
    const needed = parameters.filter((parameter) => !parameter.optional).length;
    if (given >= needed && given <= parameters.length) return;
    const names = parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(", ");
    const count = needed === parameters.length ? String(needed) : `${needed} to ${parameters.length}`;
    throw new CustomFunctionError(
      ErrorCode.notAvailable,
      `${this.name}(${names}) takes ${count} ${count === "1" ? "argument" : "arguments"}, not ${given} (arguments are parted by commas, and 1.05 is written with a point)`,
    );
  }
}
