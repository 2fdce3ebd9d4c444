import type { Injector } from "@univerjs/core";
import { IFormulaDependencyGenerator } from "@univerjs/engine-formula";
import type { CellPlace } from "./cell-key";
import { onCircles } from "./circles";

interface DependencyTree {
  treeId: number;
  unitId: string;
  subUnitId: string;
  row: number;
  column: number;
  toRTreeItem(): unknown;
}

interface GeneratorSteps {
  _checkIsCycleDependency(trees: DependencyTree[]): boolean;
  _dependencyManagerService: { searchDependency(item: unknown): Set<number> };
  _dependencyTreeCache: Map<number, DependencyTree>;
}

/**
 * Circular references. The engine goes round once and says nothing, so the cells on a circle are collected here.
 * Covers circles through cells, ranges, names and table columns, of any length, among the formulas calculated last.
 * Not covered: circles that exist only through OFFSET, INDIRECT or INDEX references.
 */
export class CircularReferences {
  private found: CellPlace[] = [];

  constructor(injector: Injector) {
    const generator = injector.get(IFormulaDependencyGenerator) as unknown as GeneratorSteps;
    generator._checkIsCycleDependency = (trees) => {
      const readers = (tree: DependencyTree) =>
        [...generator._dependencyManagerService.searchDependency(tree.toRTreeItem())].flatMap(
          (id) => generator._dependencyTreeCache.get(id) ?? [],
        );
      const circular = onCircles(trees, readers);
      // Earlier circles stay known while their cells are still formulas and were not part of this calculation.
      const formulas = this.found.length > 0 ? new Set([...generator._dependencyTreeCache.values()].map(keyOf)) : undefined;
      for (const tree of formulas ? trees : []) formulas!.delete(keyOf(tree));
      this.found = [
        ...this.found.filter((place) => formulas!.has(keyOf({ ...place, subUnitId: place.sheetId }))),
        ...circular.map(({ unitId, subUnitId, row, column }) => ({ unitId, sheetId: subUnitId, row, column })),
      ];
      return circular.length > 0;
    };
  }

  /** Cells that depend on themselves, as of the last calculation that touched them. */
  cells(): readonly CellPlace[] {
    return this.found;
  }
}

const keyOf = ({ unitId, subUnitId, row, column }: Pick<DependencyTree, "unitId" | "subUnitId" | "row" | "column">): string =>
  `${unitId}!${subUnitId}!${row},${column}`;
