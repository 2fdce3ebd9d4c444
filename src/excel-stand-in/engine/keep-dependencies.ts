import type { IRange, IUnitRange, Injector } from "@univerjs/core";
import {
  IDependencyManagerService,
  IFormulaCurrentConfigService,
  IFormulaDependencyGenerator,
  IFormulaRuntimeService,
  IOtherFormulaManagerService,
  ISuperTableService,
} from "@univerjs/engine-formula";
import { CellIndex } from "./cell-index";
import type { FormulaMeanings } from "./install-intersection";
import type { TableWithTotals } from "./table-totals";
import { removeRanges, searchCellsDirectly, type RangeTree } from "./range-tree";

/** A formula taken apart by the engine. One with a `refTree` is another cell's formula, moved. */
interface Tree {
  treeId: number;
  formula: string;
  unitId: string;
  subUnitId: string;
  row: number;
  column: number;
  rowCount: number;
  columnCount: number;
  refOffsetX: number;
  refOffsetY: number;
  isVirtual: boolean;
  isDirty: boolean;
  featureId?: string;
  formulaId?: string;
  refTree?: Tree;
  rangeList: IUnitRange[];
  addressFunctionNodes: Node[];
  resetState(): void;
  toRTreeItem(): IUnitRange[];
  isExcludeRange(excluded: unknown): boolean;
  dependencySheetName(changed: unknown): boolean;
}

interface Node {
  nodeType: number;
  getChildren(): Node[];
  getToken(): string;
  getDefinedNames?(): string[] | undefined;
}

interface FormulaItem {
  f: string;
  si?: string;
  x?: number;
  y?: number;
}
type ByCell<T> = Record<string, Record<string, T | null | undefined> | null | undefined>;
type BySheet<T> = Record<string, Record<string, T | null | undefined> | null | undefined>;
interface OtherFormula {
  f: string;
  ranges: IRange[];
}

/** What the engine's own generator of dependencies keeps to itself. */
interface DependencyGenerator {
  generate(model?: boolean): Promise<Tree[]>;
  _updateRangeFlatten(): void;
  _dependencyTreeCache: Map<number, Tree>;
  _dependencyRTreeCacheForAddressFunction: RangeTree;
  _executedAddressFunctionNodeIds: Set<number>;
  _createFDtree(unitId: string, sheetId: string, row: number, column: number, unitData: unknown, item: FormulaItem): Tree;
  _createVirtualFDtree(master: Tree, item: FormulaItem): Tree;
  _registerOtherFormulas(data: BySheet<Record<string, OtherFormula>>, units: string[], trees: Tree[]): void;
  _registerFeatureFormulas(trees: Tree[]): void;
  _getTreeNode(tree: Tree): Node;
  _getAddressFunctionNodeList(node: Node): Node[];
  _getRangeListByNode(data: { node: Node; refOffsetX: number; refOffsetY: number }): Promise<IUnitRange[]>;
  _nodeTraversalRef(node: Node, found: Node[]): void;
  _detectForcedRecalculationNode(tree: Tree, node: Node): boolean;
  _addDependencyTreeByAddressFunction(tree: Tree, ranges: IUnitRange[]): void;
  _calculateAddressFunction(cells: { bulkSearch(ranges: IUnitRange[]): Set<number> }, tree: Tree): Promise<void>;
  _calculateRunList(trees: Tree[]): Tree[];
  _checkIsCycleDependency(trees: Tree[]): boolean;
}

/** What the engine's register of dependencies keeps to itself. */
interface Register {
  _dependencyRTreeCache: RangeTree;
  reset(): void;
  getFormulaDependency(unitId: string, sheetId: string, row: number, column: number): number | undefined;
  getOtherFormulaDependency(unitId: string, sheetId: string, formulaId: string): unknown;
  addFormulaDependency(unitId: string, sheetId: string, row: number, column: number, tree: Tree): void;
  removeFormulaDependency(unitId: string, sheetId: string, row: number, column: number): void;
  removeOtherFormulaDependency(unitId: string, sheetId: string, formulaIds: string[]): void;
  clearFormulaDependency(unitId: string, sheetId?: string): void;
  clearOtherFormulaDependency(unitId: string, sheetId?: string): void;
  clearFeatureFormulaDependency(unitId: string, sheetId?: string): void;
  addDependencyRTreeCache(tree: Tree): void;
  searchDependency(ranges: readonly IUnitRange[]): Set<number>;
}

/** Kinds of node, as the engine numbers them. */
const reference = 1;
const union = 10;
const suffix = 12;

/** A formula and what was found out about it when it was entered. */
interface Kept {
  readonly tree: Tree;
  readonly item: FormulaItem;
  /** How a file stored it, which decides what it means. */
  readonly stored: unknown;
  /** Its text with tokens for names. */
  readonly withNames: string;
  /** The names that the engine has put its formulas in for. */
  readonly names: readonly string[];
  /** Its calls of OFFSET, INDIRECT and the like: which cells they lead to hangs on values. */
  readonly addressNodes: readonly Node[];
  /** A range one end of which is calculated, as in A1:INDEX(A:A,B1). */
  readonly unsteady: boolean;
  /** What stands in the register for it; below, what its address functions led to the last time. */
  ranges: readonly IUnitRange[];
  led: readonly IUnitRange[];
  /** Its words in capitals; looked up when a name or a table changes. */
  words?: ReadonlySet<string>;
}

interface OtherKept {
  readonly data: OtherFormula;
  readonly text: string;
  readonly matrix: unknown;
  readonly size: string;
  readonly kept: readonly Kept[];
}

/**
 * For every calculation, and again for every pass over spills, the engine takes all formulas of the workbook apart anew:
 * one number typed into a season of twelve batches cost a second. Here a formula is taken apart when it was entered, has
 * moved, or reads a name, a table or a sheet that has changed; the rest is kept between passes and between edits.
 */
export function keepDependencies(injector: Injector, meanings: FormulaMeanings): void {
  const generator = injector.get(IFormulaDependencyGenerator) as unknown as DependencyGenerator;
  const register = injector.get(IDependencyManagerService) as unknown as Register;
  for (const method of [
    "_registerOtherFormulas",
    "_addDependencyTreeByAddressFunction",
    "_calculateAddressFunction",
    "_calculateRunList",
    "_getRangeListByNode",
  ] as const) {
    if (typeof generator[method] !== "function") throw new Error(`The grid's formula engine has changed: it has no ${method} any more.`);
  }
  searchCellsDirectly(register._dependencyRTreeCache);
  new KeptDependencies(injector, meanings, generator, register).takeOver();
}

class KeptDependencies {
  private readonly config;
  private readonly runtime;
  private readonly others;
  private readonly tables;
  private readonly trees = new Map<number, Tree>();
  private readonly byTree = new Map<Tree, Kept>();
  private readonly cells = new CellIndex<Kept>();
  private readonly otherFormulas = new Map<string, OtherKept>();
  private readonly forced = new Set<Kept>();
  private readonly unsteady = new Set<Kept>();
  /** The formulas of each sheet as they were when all of them had been taken apart. */
  private readonly taken = new Map<string, object>();
  private withAddresses = 0;
  private knownTables = new Map<string, string>();
  /** What the last calculation has marked. */
  private marked: Tree[] = [];
  private startOver = true;
  /** Whether a calculation begins: between its passes no formula changes. */
  private begins = true;

  constructor(
    injector: Injector,
    private readonly meanings: FormulaMeanings,
    private readonly generator: DependencyGenerator,
    private readonly register: Register,
  ) {
    this.config = injector.get(IFormulaCurrentConfigService);
    this.runtime = injector.get(IFormulaRuntimeService);
    this.others = injector.get(IOtherFormulaManagerService);
    this.tables = injector.get(ISuperTableService);
  }

  takeOver(): void {
    const { generator, register, config } = this;
    const generate = generator.generate.bind(generator);
    generator.generate = async (model = false) => {
      if (!model) return this.generate();
      register.reset();
      return generate(model);
    };
    const load = config.load.bind(config);
    config.load = (data) => {
      this.begins = true;
      load(data);
    };
    for (const method of ["reset", "clearFormulaDependency", "clearOtherFormulaDependency", "clearFeatureFormulaDependency"] as const) {
      const original = register[method].bind(register) as (...given: unknown[]) => void;
      register[method] = (...given: unknown[]) => {
        this.startOver = true;
        original(...given);
      };
    }
    const removeFormula = register.removeFormulaDependency.bind(register);
    register.removeFormulaDependency = (unitId, sheetId, row, column) => {
      const kept = this.cells.get(unitId, sheetId, row, column);
      if (kept) this.drop(kept);
      removeFormula(unitId, sheetId, row, column);
    };
    const lead = generator._addDependencyTreeByAddressFunction.bind(generator);
    generator._addDependencyTreeByAddressFunction = (tree, ranges) => {
      const kept = this.byTree.get(tree);
      if (kept) kept.led = ranges;
      lead(tree, ranges);
    };
  }

  private async generate(): Promise<Tree[]> {
    const { generator, config, runtime } = this;
    generator._updateRangeFlatten();
    const cleared = Object.entries(config.getClearDependencyTreeCache() ?? {}).some(([, sheets]) => Object.keys(sheets ?? {}).length > 0);
    for (const tree of this.marked.splice(0)) {
      tree.isDirty = false;
      tree.resetState();
    }
    if (config.isForceCalculate() || this.startOver || (cleared && this.begins)) this.forgetAll();
    generator._dependencyTreeCache = this.trees;
    const byName = this.begins ? await this.bringUpToDate() : [];
    this.begins = false;
    for (const kept of this.unsteady) await this.lookAgain(kept);
    const features: Tree[] = [];
    generator._registerFeatureFormulas(features);
    const dirty = this.dirtyTrees(byName, features);
    if (this.withAddresses > 0) {
      await this.followAddresses(dirty);
      // Only now the values are there that the ends of calculated ranges are found by.
      for (const kept of this.unsteady) if (kept.addressNodes.length > 0) await this.lookAgain(kept);
      for (const tree of this.dirtyTrees(byName, features)) dirty.add(tree);
    }
    const ordered = generator._calculateRunList([...dirty]);
    this.marked = [...dirty, ...ordered];
    if (generator._checkIsCycleDependency(ordered)) runtime.enableCycleDependency();
    for (const { treeId } of features) this.trees.delete(treeId);
    // Others clear what they find there.
    generator._dependencyTreeCache = new Map();
    runtime.clearArrayObjectCache();
    return ordered;
  }

  private forgetAll(): void {
    this.register.reset();
    this.generator._dependencyRTreeCacheForAddressFunction.clear();
    for (const all of [this.trees, this.byTree, this.cells, this.otherFormulas, this.forced, this.unsteady, this.taken]) all.clear();
    this.withAddresses = 0;
    this.startOver = false;
  }

  /** Takes apart what is new or reads something that has changed. Returns what reads a changed name. */
  private async bringUpToDate(): Promise<Kept[]> {
    const places = this.dropReadersOfChanges();
    const formulas = this.config.getFormulaData() as unknown as BySheet<ByCell<FormulaItem>>;
    for (const [unitId, sheets] of Object.entries(formulas)) {
      for (const [sheetId, data] of Object.entries(sheets ?? {}))
        if (!this.isTaken(unitId, sheetId, data)) await this.takeSheet(unitId, sheetId, data ?? {});
    }
    for (const [unitId, sheetId] of this.cells.places()) {
      const data = formulas[unitId]?.[sheetId];
      if (this.isTaken(unitId, sheetId, data)) continue;
      for (const kept of [...this.cells.ofSheet(unitId, sheetId)]) if (data?.[kept.tree.row]?.[kept.tree.column] == null) this.drop(kept);
    }
    for (const [unitId, sheets] of Object.entries(formulas))
      for (const [sheetId, data] of Object.entries(sheets ?? {})) if (data) this.taken.set(`${unitId}!${sheetId}`, data);
    await this.takeOtherFormulas();
    const readers = places.flatMap(([unitId, sheetId, row, column]) => this.cells.get(unitId, sheetId, row, column) ?? []);
    // Rows put into a name's range make it longer, and make the engine forget everything at the same time.
    const names = this.changedNames();
    if (names.size > 0)
      for (const kept of this.byTree.values())
        if (kept.tree.formulaId === undefined && kept.names.some((name) => names.has(name))) readers.push(kept);
    return readers;
  }

  /** Whether nothing has changed on a sheet since its formulas were taken apart: then it holds its formulas in the same object. */
  private isTaken(unitId: string, sheetId: string, data: object | null | undefined): boolean {
    return data != null && this.taken.get(`${unitId}!${sheetId}`) === data;
  }

  private async takeSheet(unitId: string, sheetId: string, data: ByCell<FormulaItem>): Promise<void> {
    const unitData = this.config.getUnitData();
    const sheet = unitData[unitId]?.[sheetId];
    if (!sheet) return;
    const masters = new Map<string, Tree>();
    const moved: [row: number, column: number, item: FormulaItem][] = [];
    const take = async (row: number, column: number, item: FormulaItem, master?: Tree): Promise<Tree> => {
      const kept = this.cells.get(unitId, sheetId, row, column);
      const stored = this.meanings.storedAs(unitId, sheetId, row, column);
      if (kept && isSame(kept.item, item) && kept.tree.refTree === master && kept.stored === stored) {
        if (!master) Object.assign(kept.tree, { rowCount: sheet.rowCount, columnCount: sheet.columnCount });
        return kept.tree;
      }
      if (kept) this.drop(kept);
      const tree = master
        ? this.generator._createVirtualFDtree(master, item)
        : this.generator._createFDtree(unitId, sheetId, row, column, unitData, item);
      const id = this.register.getFormulaDependency(unitId, sheetId, row, column);
      if (id === undefined || id === null) this.register.addFormulaDependency(unitId, sheetId, row, column, tree);
      else tree.treeId = id;
      this.cells.set(unitId, sheetId, row, column, await this.keep(tree, item, stored));
      return tree;
    };
    for (const row in data) {
      for (const column in data[row]) {
        const item = data[row][column];
        if (item == null) continue;
        const isMaster = !item.x && !item.y && item.si != null;
        if (item.si && !isMaster) moved.push([Number(row), Number(column), item]);
        else {
          const tree = await take(Number(row), Number(column), item);
          if (isMaster) masters.set(item.si!, tree);
        }
      }
    }
    for (const [row, column, item] of moved) await take(row, column, item, masters.get(item.si!));
  }

  /** Formulas of conditional formats and validation, one tree for each cell that they are for. */
  private async takeOtherFormulas(): Promise<void> {
    const present = new Set<string>();
    for (const [unitId, sheets] of Object.entries(
      this.others.getOtherFormulaData() as unknown as BySheet<Record<string, OtherFormula | null>>,
    )) {
      for (const [sheetId, formulas] of Object.entries(sheets ?? {})) {
        const { rowCount, columnCount } = this.config.getSheetRowColumnCount(unitId, sheetId);
        const size = `${rowCount},${columnCount}`;
        for (const [id, data] of Object.entries(formulas ?? {})) {
          if (!data) continue;
          const key = `${unitId}!${sheetId}!${id}`;
          present.add(key);
          const matrix = this.register.getOtherFormulaDependency(unitId, sheetId, id);
          const known = this.otherFormulas.get(key);
          if (
            known &&
            known.matrix === matrix &&
            known.data === data &&
            known.text === data.f &&
            known.size === size &&
            known.kept.every(({ tree }) => this.byTree.has(tree))
          )
            continue;
          for (const kept of known?.kept ?? []) this.drop(kept);
          if (matrix) this.register.removeOtherFormulaDependency(unitId, sheetId, [id]);
          const trees: Tree[] = [];
          this.generator._registerOtherFormulas({ [unitId]: { [sheetId]: { [id]: data } } }, [unitId], trees);
          const kept: Kept[] = [];
          for (const tree of trees) kept.push(await this.keep(tree, { f: data.f }));
          this.otherFormulas.set(key, {
            data,
            text: data.f,
            size,
            kept,
            matrix: this.register.getOtherFormulaDependency(unitId, sheetId, id),
          });
        }
      }
    }
    for (const [key, { kept }] of this.otherFormulas) {
      if (present.has(key)) continue;
      for (const one of kept) this.drop(one);
      this.otherFormulas.delete(key);
    }
  }

  private async keep(tree: Tree, item: FormulaItem, stored?: unknown): Promise<Kept> {
    const { generator, register } = this;
    const node = tree.formula ? generator._getTreeNode(tree) : undefined;
    const references: Node[] = [];
    if (node) generator._nodeTraversalRef(node, references);
    if (node && !tree.isVirtual) tree.rangeList = await this.rangesOf(tree, node);
    const kept: Kept = {
      tree,
      item: { ...item },
      stored,
      withNames: tree.isVirtual ? "" : this.withNames(tree, item),
      names: node?.getDefinedNames?.() ?? [],
      addressNodes: node ? generator._getAddressFunctionNodeList(node) : [],
      unsteady: references.some((one) => one.nodeType === suffix || isCalculatedRange(one)),
      ranges: [...tree.rangeList],
      led: [],
    };
    register.addDependencyRTreeCache(tree);
    if (belongsToNoCell(tree)) tree.toRTreeItem = nowhere;
    this.trees.set(tree.treeId, tree);
    this.byTree.set(tree, kept);
    // As in Excel, what leads somewhere by a text or a distance is worked out each time: no register knows what it will come to read.
    if (kept.addressNodes.length > 0 || kept.unsteady || (node && generator._detectForcedRecalculationNode(tree, node)))
      this.forced.add(kept);
    if (kept.unsteady && !tree.isVirtual) this.unsteady.add(kept);
    if (kept.addressNodes.length > 0) this.withAddresses++;
    return kept;
  }

  private async rangesOf(tree: Tree, node: Node): Promise<IUnitRange[]> {
    const { refOffsetX, refOffsetY } = tree;
    this.runtime.setCurrent(tree.row, tree.column, tree.rowCount, tree.columnCount, tree.subUnitId, tree.unitId);
    const ranges: IUnitRange[] = [];
    // The engine passes over what a calculated end of a range is calculated from.
    for (const part of [node, ...calculatedEnds(node)])
      ranges.push(...(await this.generator._getRangeListByNode({ node: part, refOffsetX, refOffsetY })));
    return ranges;
  }

  private drop(kept: Kept): void {
    const { tree } = kept;
    if (!this.byTree.delete(tree)) return;
    this.taken.delete(`${tree.unitId}!${tree.subUnitId}`);
    removeRanges(this.register._dependencyRTreeCache, kept.ranges, tree.treeId);
    removeRanges(this.generator._dependencyRTreeCacheForAddressFunction, kept.led, tree.treeId);
    this.trees.delete(tree.treeId);
    if (this.cells.get(tree.unitId, tree.subUnitId, tree.row, tree.column) === kept)
      this.cells.delete(tree.unitId, tree.subUnitId, tree.row, tree.column);
    this.forced.delete(kept);
    this.unsteady.delete(kept);
    if (kept.addressNodes.length > 0) this.withAddresses--;
  }

  private async lookAgain(kept: Kept): Promise<void> {
    const { tree } = kept;
    removeRanges(this.register._dependencyRTreeCache, kept.ranges, tree.treeId);
    tree.rangeList = await this.rangesOf(tree, this.generator._getTreeNode(tree));
    kept.ranges = [...tree.rangeList];
    this.register.addDependencyRTreeCache(tree);
  }

  /** Returns the cells whose formula reads a changed name. */
  private dropReadersOfChanges(): [unitId: string, sheetId: string, row: number, column: number][] {
    const names = this.changedNames();
    const tables = this.changedTables();
    const sheets = this.config.getDirtyNameMap() ?? {};
    const sheetNames = Object.values(sheets)
      .flatMap((unit) => Object.values(unit ?? {}))
      .map((name) => String(name).toUpperCase());
    if (names.size + tables.size + sheetNames.length === 0) return [];
    const words = new Set([...tables].map((name) => name.toUpperCase()));
    const readers: [string, string, number, number][] = [];
    for (const kept of [...this.byTree.values()]) {
      const { tree, item } = kept;
      const text = item.f?.toUpperCase() ?? "";
      const byName = kept.names.some((name) => names.has(name)) || (!tree.isVirtual && this.withNames(tree, item) !== kept.withNames);
      const byTable = words.size > 0 && text.includes("[") && hasAny(wordsOf(kept, text), words);
      const bySheet =
        sheetNames.length > 0 &&
        (tree.dependencySheetName(sheets) || (text.includes("!") && sheetNames.some((name) => text.includes(name))));
      if (!byName && !byTable && !bySheet) continue;
      if (byName && tree.formulaId === undefined) readers.push([tree.unitId, tree.subUnitId, tree.row, tree.column]);
      this.drop(kept);
    }
    return readers;
  }

  private changedNames(): Set<string> {
    return new Set(Object.values(this.config.getDirtyDefinedNameMap() ?? {}).flatMap((unit) => Object.keys(unit ?? {})));
  }

  /** The formula with what its names stand for today. */
  private withNames({ unitId, subUnitId }: Tree, item: FormulaItem): string {
    return this.meanings.withNames(item.f, unitId, subUnitId);
  }

  private changedTables(): Set<string> {
    const now = new Map<string, string>();
    for (const unitId of Object.keys(this.config.getUnitData())) {
      for (const [name, table] of this.tables.getTableMap(unitId) ?? []) {
        const { sheetId, range, titleMap, hasTotals } = table as TableWithTotals;
        now.set(name, JSON.stringify([unitId, sheetId, range, [...titleMap], hasTotals?.()]));
      }
    }
    const changed = new Set<string>();
    for (const name of new Set([...now.keys(), ...this.knownTables.keys()]))
      if (now.get(name) !== this.knownTables.get(name)) changed.add(name);
    this.knownTables = now;
    return changed;
  }

  /** What is to be calculated by itself, before what hangs on it. */
  private dirtyTrees(byName: readonly Kept[], features: readonly Tree[]): Set<Tree> {
    const { config, generator, register } = this;
    if (config.isForceCalculate()) return new Set(this.trees.values());
    const dirty = new Set<Tree>();
    for (const { tree } of [...byName, ...this.forced]) dirty.add(tree);
    for (const tree of this.otherTreesNamed()) dirty.add(tree);
    const excluded = config.getExcludedRange();
    const isExcluded = (tree: Tree) => excluded?.[tree.unitId]?.[tree.subUnitId]?.getValue(tree.row, tree.column) != null;
    const sheets = config.getDirtyNameMap() ?? {};
    for (const [unitId, changed] of Object.entries(sheets)) {
      for (const sheetId of Object.keys(changed ?? {}))
        for (const { tree } of this.cells.ofSheet(unitId, sheetId)) if (!isExcluded(tree)) dirty.add(tree);
    }
    if (Object.keys(sheets).length > 0) for (const tree of this.trees.values()) if (tree.dependencySheetName(sheets)) dirty.add(tree);
    const ranges = config.getDirtyRanges();
    for (const { unitId, sheetId, range } of ranges)
      for (const { tree } of this.cells.inRange(unitId, sheetId, range)) if (!isExcluded(tree)) dirty.add(tree);
    const readers = [...register.searchDependency(ranges), ...generator._dependencyRTreeCacheForAddressFunction.bulkSearch(ranges)];
    for (const id of readers) {
      const tree = this.trees.get(id) ?? features.find(({ treeId }) => treeId === id);
      if (tree && !tree.isExcludeRange(excluded)) dirty.add(tree);
    }
    return dirty;
  }

  private *otherTreesNamed(): Generator<Tree> {
    for (const [unitId, sheets] of Object.entries(this.config.getDirtyUnitOtherFormulaMap() ?? {})) {
      for (const [sheetId, ids] of Object.entries(sheets ?? {})) {
        for (const id of Object.keys(ids ?? {}))
          for (const { tree } of this.otherFormulas.get(`${unitId}!${sheetId}!${id}`)?.kept ?? []) yield tree;
      }
    }
  }

  /** Where INDEX, OFFSET and the like lead to can only have changed where something changes that they read. */
  private async followAddresses(dirty: ReadonlySet<Tree>): Promise<void> {
    const { generator, register } = this;
    const reached = new Set<Tree>(dirty);
    for (const tree of reached) {
      const place = tree.toRTreeItem();
      for (const id of [...register.searchDependency(place), ...generator._dependencyRTreeCacheForAddressFunction.bulkSearch(place)]) {
        const reader = this.trees.get(id);
        if (reader) reached.add(reader);
      }
    }
    const leading = [...reached].flatMap((tree) => this.byTree.get(tree) ?? []).filter(({ addressNodes }) => addressNodes.length > 0);
    for (const kept of leading) {
      removeRanges(generator._dependencyRTreeCacheForAddressFunction, kept.led, kept.tree.treeId);
      kept.led = [];
      kept.tree.addressFunctionNodes = [...kept.addressNodes];
    }
    const places = {
      bulkSearch: (ranges: readonly IUnitRange[]) => {
        const found = new Set<number>();
        for (const { unitId, sheetId, range } of ranges)
          for (const { tree } of this.cells.inRange(unitId, sheetId, range)) found.add(tree.treeId);
        return found;
      },
    };
    generator._executedAddressFunctionNodeIds.clear();
    for (const { tree } of leading) await generator._calculateAddressFunction(places, tree);
  }
}

/**
 * Formulas of conditional formats and validation stand in no cell. The engine takes them for cells at the top of the sheet, so
 * that what reads those cells would be calculated after them, or be circular.
 */
const belongsToNoCell = (tree: Tree): boolean => tree.formulaId !== undefined || tree.refTree?.formulaId !== undefined;
const nowhere = (): IUnitRange[] => [];

const isSame = (one: FormulaItem, other: FormulaItem): boolean =>
  one.f === other.f && one.si === other.si && (one.x ?? 0) === (other.x ?? 0) && (one.y ?? 0) === (other.y ?? 0);

/** The ends of ranges that are calculated, however deep in a formula. */
function calculatedEnds(formula: Node): Node[] {
  const found: Node[] = [];
  const open = [formula];
  for (let node = open.pop(); node; node = open.pop()) {
    if (node.nodeType === union) found.push(...node.getChildren().filter((end) => end.nodeType !== reference));
    open.push(...node.getChildren());
  }
  return found;
}

const isCalculatedRange = (node: Node): boolean => node.nodeType === union && node.getChildren().some((end) => end.nodeType !== reference);

function wordsOf(kept: Kept, text: string): ReadonlySet<string> {
  return (kept.words ??= new Set(text.match(/[\p{L}\p{N}_.\\?]+/gu)));
}

function hasAny(one: ReadonlySet<string>, other: ReadonlySet<string>): boolean {
  for (const word of one) if (other.has(word)) return true;
  return false;
}
