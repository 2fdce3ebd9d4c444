import { BaseFunction } from "@univerjs/engine-formula";
import type { BaseValueObject } from "@univerjs/engine-formula";
import type { CellPlace } from "./cell-key";
import { firstError, toMatrix, type Blank, type EngineValue } from "./custom-function-input";
import { fromError, fromResult, type ErrorListener } from "./custom-function-output";
import type { CellErrors } from "./cell-errors";
import type { FunctionMetadata } from "./custom-functions-metadata";
import { ErrorCode, CustomFunctionError } from "./custom-function-error";

export interface ExecutorContext {
  cellErrors: CellErrors;
  blank(): Blank;
  /** The associated function; undefined before `associate` ran. */
  implementation(id: string): Function | undefined;
  takesErrors: boolean;
}

/**
 * One of our functions inside the grid's engine. The engine's own way to register functions loses blanks, errors and
 * literals, and a throw there stops the whole calculation, so nothing may escape from `calculate`.
 */
export class CustomFunctionExecutor extends BaseFunction {
  override minParams: number;
  override maxParams: number;

  constructor(name: string, private readonly metadata: FunctionMetadata, private readonly context: ExecutorContext) {
    super(name);
    this.minParams = metadata.parameters.filter((parameter) => !parameter.optional).length;
    this.maxParams = metadata.parameters.length;
  }

  /** Otherwise the engine would read texts such as "5%" or "2026-01-16" as numbers. */
  override isArgumentsIgnoreNumberPattern(): boolean {
    return true;
  }

  override calculate(...values: EngineValue[]): BaseValueObject {
    const place: CellPlace = {
      unitId: this.unitId ?? "", sheetId: this.subUnitId ?? "", row: this.row, column: this.column,
    };
    this.context.cellErrors.enter(place);
    const onError: ErrorListener = (row, column, message) => this.context.cellErrors.keep(place, row, column, message);
    try {
      return fromResult(this.call(values), onError);
    } catch (error) {
      return fromError(error, 0, 0, onError);
    }
  }

  private call(values: EngineValue[]): unknown {
    const blank = this.context.blank();
    const matrices = this.metadata.parameters.map((_, index) => toMatrix(values[index], blank));
    const inputError = this.context.takesErrors ? undefined : firstError(matrices);
    if (inputError) return inputError;
    const implementation = this.context.implementation(this.metadata.id);
    if (!implementation) throw new CustomFunctionError(ErrorCode.notAvailable, `${this.metadata.id} is not associated.`);
    const invocation: CustomFunctions.Invocation = { functionName: this.metadata.id };
    return implementation(...matrices, invocation);
  }
}
