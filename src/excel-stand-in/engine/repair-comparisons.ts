import { CELL_INVERTED_INDEX_CACHE } from "@univerjs/engine-formula";

/**
 * The engine remembers where in a column which values stand, to compare faster the second time, and takes 0, an empty
 * cell and "" for the same then, and a text "0" for the number: `A1=""` is FALSE for a cell with 0 the first time, as
 * in Excel, and TRUE the next. Without that memory every comparison looks at the cell.
 */
export function repairComparisons(): void {
  CELL_INVERTED_INDEX_CACHE.canUseCache = () => ({ rowsInCache: [], rowsNotInCache: [] });
  CELL_INVERTED_INDEX_CACHE.set = () => undefined;
  CELL_INVERTED_INDEX_CACHE.setContinueBuildingCache = () => undefined;
}
