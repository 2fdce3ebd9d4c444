import { ICommandService, type ICommandInfo, type Injector } from "@univerjs/core";
import { SetFormulaCalculationStartMutation, SetFormulaCalculationStopMutation } from "@univerjs/engine-formula";
import { TriggerCalculationController } from "@univerjs/sheets-formula";

/** What the grid's controller keeps to itself. */
interface Collecting {
  _setTimeoutKey: ReturnType<typeof setTimeout>;
  _waitingCommandQueue: ICommandInfo[];
  _executingDirtyData: object;
  readonly _executionInProgressParams: object | null;
  _restartCalculation: boolean;
  _generateDirty(commands: readonly ICommandInfo[]): object;
  _mergeDirty(one: object, other: object): object;
}

/**
 * Calculates the edits that the grid has collected. By itself it does so a tenth of a second after the last of them, in the same
 * way; whoever waits for the results has made them all.
 */
export function calculateAtOnce(injector: Injector): void {
  const grid = injector.get(TriggerCalculationController) as unknown as Collecting;
  if (grid._waitingCommandQueue.length === 0) return;
  clearTimeout(grid._setTimeoutKey);
  grid._executingDirtyData = grid._mergeDirty(grid._executingDirtyData, grid._generateDirty(grid._waitingCommandQueue));
  grid._waitingCommandQueue = [];
  const commands = injector.get(ICommandService);
  if (grid._executionInProgressParams === null) {
    void commands.executeCommand(SetFormulaCalculationStartMutation.id, { ...grid._executingDirtyData }, { onlyLocal: true });
  } else {
    grid._restartCalculation = true;
    void commands.executeCommand(SetFormulaCalculationStopMutation.id, {});
  }
}
