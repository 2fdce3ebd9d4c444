import { CommandType, ICommandService, type IExecutionOptions, type Injector } from "@univerjs/core";

/** Mutations that change nothing in the workbook: the engine's messages about its work, the editor's own document. */
const passing = [
  "formula.mutation.",
  "doc.",
  "data-validation.mutation.update-rule-status",
  "sheet.mutation.data-validation-formula-mark-dirty",
];

export interface ChangeListeners {
  /** Someone, or a program, changed the workbook. */
  edited: () => void;
  /** Only results changed. */
  recalculated: () => void;
}

/** Tells edits from the results that follow them. Both are worth keeping; only edits can be lost. */
export function watchChanges(injector: Injector, { edited, recalculated }: ChangeListeners): void {
  injector.get(ICommandService).onCommandExecuted(({ id, type }, options?: IExecutionOptions & { fromFormula?: boolean }) => {
    if (type !== CommandType.MUTATION || passing.some((start) => id.startsWith(start))) return;
    if (options?.fromFormula === true) recalculated();
    else edited();
  });
}
