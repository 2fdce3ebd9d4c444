import { IUndoRedoService, type Injector, type IUndoRedoItem } from "@univerjs/core";

/**
 * The grid can gather several changes into one undo step, but then undoes the first change before the last, which fails
 * as soon as they build on each other (a sheet is added, then renamed). Undoing has to go backwards.
 */
export function repairUndoBatches(injector: Injector): void {
  const service = injector.get(IUndoRedoService) as unknown as { _tryBatchingElements(item: IUndoRedoItem, next: IUndoRedoItem): void };
  if (!service._tryBatchingElements) throw new Error("The grid's undo service has changed: batches cannot be repaired.");
  service._tryBatchingElements = (item, next) => {
    item.redoMutations.push(...next.redoMutations);
    item.undoMutations.unshift(...next.undoMutations);
  };
}
