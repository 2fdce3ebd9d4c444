import type { IRange, IUnitRange } from "@univerjs/core";

interface Box {
  minX: number;
  minY: number;
  maxX: number;
  maxY: number;
  id: number;
}

/** The engine's register of what is read where, with the part that it keeps to itself. */
export interface RangeTree {
  _oneCellCache: Map<string, Map<string, Map<number, Map<number, Set<number>>>>>;
  _enableOneCellCache: boolean;
  _searchByOneCellCache(search: IUnitRange): number[];
  _removeOneCellCache(unitId: string, sheetId: string, row: number, column: number, id: number): void;
  getTree(unitId: string, sheetId: string): { search(box: Omit<Box, "id">): Box[]; remove(box: Box): void };
  bulkSearch(ranges: readonly IUnitRange[]): Set<number>;
  openKdTree(): void;
  closeKdTree(): void;
  clear(): void;
}

/**
 * Single cells that are read stand in a map by row and column. The engine makes a tree of all of them for each pass, only
 * to look a few up; here they are looked up in the map.
 */
export function searchCellsDirectly(tree: RangeTree): void {
  if (!(tree._oneCellCache instanceof Map) || typeof tree._searchByOneCellCache !== "function")
    throw new Error("The grid's register of ranges has changed.");
  tree.openKdTree = () => undefined;
  tree.closeKdTree = () => undefined;
  tree._searchByOneCellCache = ({ unitId, sheetId, range }) => {
    const found: number[] = [];
    for (const columns of within(tree._oneCellCache.get(unitId)?.get(sheetId), range.startRow, range.endRow)) {
      for (const ids of within(columns, range.startColumn, range.endColumn)) found.push(...ids);
    }
    return found;
  };
}

/** The entries of a map whose keys lie between two numbers; one that is not a number leaves that side open. */
export function* within<T>(map: ReadonlyMap<number, T> | undefined, from: number, to: number): Generator<T> {
  if (!map) return;
  if (to - from < map.size) {
    for (let key = from; key <= to; key++) {
      const value = map.get(key);
      if (value !== undefined) yield value;
    }
    return;
  }
  for (const [key, value] of map) if (!(key < from) && !(key > to)) yield value;
}

/** Takes out exactly what was put in. The engine takes a formula's ranges by the box around them, and misses whole columns. */
export function removeRanges(tree: RangeTree, ranges: readonly IUnitRange[], id: number): void {
  for (const { unitId, sheetId, range } of ranges) {
    if (tree._enableOneCellCache && range.startRow === range.endRow && range.startColumn === range.endColumn) {
      tree._removeOneCellCache(unitId, sheetId, range.startRow, range.startColumn, id);
      continue;
    }
    const box = boxOf(range);
    const boxes = tree.getTree(unitId, sheetId);
    for (const one of boxes.search(box)) {
      if (one.id === id && one.minX === box.minX && one.minY === box.minY && one.maxX === box.maxX && one.maxY === box.maxY)
        boxes.remove(one);
    }
  }
}

const boxOf = ({ startRow, startColumn, endRow, endColumn }: IRange): Omit<Box, "id"> => ({
  minX: Number.isNaN(startColumn) ? 0 : startColumn,
  minY: Number.isNaN(startRow) ? 0 : startRow,
  maxX: Number.isNaN(endColumn) ? Number.POSITIVE_INFINITY : endColumn,
  maxY: Number.isNaN(endRow) ? Number.POSITIVE_INFINITY : endRow,
});
