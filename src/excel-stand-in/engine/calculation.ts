import { ICommandService, type ICommandInfo, type IExecutionOptions, type Injector } from "@univerjs/core";
import {
  IActiveDirtyManagerService,
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStartMutation,
  SetFormulaCalculationStopMutation,
} from "@univerjs/engine-formula";
import { SetRangeValuesMutation, SetStyleCommand, SetBorderCommand, ClearSelectionFormatCommand } from "@univerjs/sheets";
import { calculateAtOnce } from "./calculate-at-once";

/**
 * Knows whether the engine still has something to calculate. The grid collects edits for a tenth of a second, then
 * calculates, and may stop and start again when more edits come; its own "calculation ended" event says nothing about
 * edits still being collected.
 */
export class CalculationWatch {
  private collecting = false;
  private running = 0;
  private readonly waiting: (() => void)[] = [];
  private readonly starts: (() => void)[] = [];
  private hurried: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly injector: Injector) {
    injector.get(ICommandService).onCommandExecuted((command, options) => this.onCommand(command, options));
  }

  onStart(listener: () => void): void {
    this.starts.push(listener);
  }

  /** Call after opening a workbook: the grid asks for its calculation a moment later. */
  expectCalculation(): void {
    this.collecting = true;
  }

  get busy(): boolean {
    return this.collecting || this.running > 0;
  }

  /** Resolves when every edit made so far has been calculated and its results stand in the cells. */
  settled(): Promise<void> {
    if (!this.busy) return Promise.resolve();
    this.hurry();
    return new Promise((resolve) => this.waiting.push(resolve));
  }

  private onCommand(command: Readonly<ICommandInfo>, options?: IExecutionOptions): void {
    if (command.id === SetFormulaCalculationStartMutation.id) {
      this.collecting = false;
      this.running++;
      for (const start of this.starts) start();
    } else if (command.id === SetFormulaCalculationStopMutation.id) {
      this.collecting = false;
    } else if (command.id === SetFormulaCalculationNotificationMutation.id) {
      this.onNotification(command.params as { functionsExecutedState?: number });
    } else if (this.makesDirty(command, options)) {
      this.collecting = true;
      if (this.waiting.length > 0) this.hurry();
    }
  }

  /** Somebody waits: what was edited is calculated once the grid has done what it does after an edit, in a turn of its own. */
  private hurry(): void {
    clearTimeout(this.hurried);
    this.hurried = setTimeout(() => calculateAtOnce(this.injector), 0);
  }

  private onNotification(notice: { functionsExecutedState?: number }): void {
    if (notice.functionsExecutedState === undefined) return;
    this.running = Math.max(0, this.running - 1);
    // Other listeners of the same notice may still start a calculation, so look again afterwards.
    setTimeout(() => {
      if (!this.busy) for (const resolve of this.waiting.splice(0)) resolve();
    }, 0);
  }

  /** The same test the grid uses to decide whether an edit leads to a calculation. */
  private makesDirty(command: Readonly<ICommandInfo>, options?: IExecutionOptions): boolean {
    if (!this.injector.get(IActiveDirtyManagerService).get(command.id)) return false;
    if (command.id !== SetRangeValuesMutation.id) return true;
    return options?.onlyLocal !== true && !changesLooksOnly(command);
  }
}

/** The grid writes values and looks by the same mutation; what set it off tells which. */
export function changesLooksOnly(command: Readonly<ICommandInfo>): boolean {
  const { trigger } = command.params as { trigger?: string };
  return [SetStyleCommand.id, SetBorderCommand.id, ClearSelectionFormatCommand.id].includes(trigger ?? "");
}
