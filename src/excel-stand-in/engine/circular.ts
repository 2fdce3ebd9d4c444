import type { Injector } from "@univerjs/core";
import { IFormulaDependencyGenerator } from "@univerjs/engine-formula";
import type { CellPlace } from "./cell-key";

interface DependencyTree {
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
    const check = generator._checkIsCycleDependency.bind(generator);
    generator._checkIsCycleDependency = (trees) => {
      const circular = check(trees);
      const formulas = [...generator._dependencyTreeCache.values()];
      // Earlier circles stay known while their cells are still formulas and were not part of this calculation.
      const earlier = this.found.filter(
        (place) => formulas.some((tree) => sameCell(tree, place)) && !trees.some((tree) => sameCell(tree, place)),
      );
      this.found = circular ? [...earlier, ...cellsOnCircles(generator, trees)] : earlier;
      return circular;
    };
  }

  /** Cells that depend on themselves, as of the last calculation that touched them. */
  cells(): readonly CellPlace[] {
    return this.found;
  }
}

const sameCell = (tree: DependencyTree, place: CellPlace): boolean =>
  tree.unitId === place.unitId && tree.subUnitId === place.sheetId && tree.row === place.row && tree.column === place.column;

function cellsOnCircles(generator: GeneratorSteps, trees: readonly DependencyTree[]): CellPlace[] {
  const users = (tree: DependencyTree): DependencyTree[] =>
    [...generator._dependencyManagerService.searchDependency(tree.toRTreeItem())].flatMap(
      (id) => generator._dependencyTreeCache.get(id) ?? [],
    );
  return trees
    .filter((tree) => reaches(tree, tree, users))
    .map(({ unitId, subUnitId, row, column }) => ({ unitId, sheetId: subUnitId, row, column }));
}

function reaches(from: DependencyTree, target: DependencyTree, users: (tree: DependencyTree) => DependencyTree[]): boolean {
  const seen = new Set<DependencyTree>();
  const stack = users(from);
  for (let tree = stack.pop(); tree; tree = stack.pop()) {
    if (tree === target) return true;
    if (seen.has(tree)) continue;
    seen.add(tree);
    stack.push(...users(tree));
  }
  return false;
}
