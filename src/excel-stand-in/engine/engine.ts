import { IUniverInstanceService, LocaleType, type Injector, type IWorkbookData, type Univer } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { FormulaDataModel, IFunctionService } from "@univerjs/engine-formula";
import { CalculationMode } from "@univerjs/sheets-formula";
import { CalculationWatch } from "./calculation";
import { CellErrors } from "./cell-errors";
import type { CellPlace } from "./cell-key";
import { CircularReferences } from "./circular";
import type { Grid } from "./create-univer";
import { hostCustomFunctions, type CustomFunctionsHost } from "./custom-functions";
import type { FunctionsMetadata } from "./custom-functions-metadata";
import { markUsersOfNames } from "./dirty-names";
import { expandOnEntry } from "./expand-on-entry";
import { forgetHowStored } from "./forget-how-stored";
import { forgetErrorsOfEdits } from "./forget-errors";
import { keepDependencies } from "./keep-dependencies";
import { keepFormulaData } from "./keep-formula-data";
import { describeFunctions } from "./function-descriptions";
import { FormulaMeanings } from "./install-intersection";
import { installScopedNames } from "./install-scoped-names";
import { moveInNamedSheet } from "./move-in-named-sheet";
import { renameNames } from "./rename-names";
import { renameQualifiedNames } from "./rename-qualified-names";
import { repairNativeFunctions } from "./native-functions";
import { repairChoose } from "./repair-choose";
import { repairComparisons } from "./repair-comparisons";
import { repairSpillPasses } from "./repair-spill-passes";
import { repairSpilledCells } from "./repair-spilled-cells";
import { repairUndoBatches } from "./repair-undo-batches";
import { rewriteConcerned } from "./rewrite-concerned";
import { carryScopedNames } from "./scoped-name-copies";
import { ScopedNames } from "./scoped-names";
import { tellTotals, type HasTotals } from "./table-totals";
import { keepTableNamesUnique } from "./unique-table-names";
import { installSpillReferences } from "./spill-references";
import { Spills } from "./spills";
import { Runaways } from "./stop-runaways";

export interface EngineOptions {
  metadata: FunctionsMetadata;
  namespace?: string;
}

/** The grid's engine with our functions and our repairs. One per page or headless bench; workbooks come and go in it. */
export class Engine {
  readonly univer: Univer;
  readonly univerAPI: FUniver;
  readonly injector: Injector;
  readonly cellErrors = new CellErrors();
  readonly functions: CustomFunctionsHost;
  readonly spills: Spills;
  /** Set by whoever keeps what the grid's tables cannot hold. */
  tableHasTotals: HasTotals = () => false;
  private parts: { watch: CalculationWatch; names: ScopedNames; circular: CircularReferences; runaways: Runaways } | undefined;

  constructor(grid: Grid, options: EngineOptions) {
    this.univer = grid.univer;
    this.univerAPI = grid.univerAPI;
    this.injector = grid.univer.__getInjector();
    this.functions = hostCustomFunctions(this.injector, options.metadata, options.namespace ?? "GYLE", this.cellErrors);
    this.spills = new Spills(this.injector);
    tellTotals(this.injector, (...table) => this.tableHasTotals(...table));
    this.univerAPI.getFormula().setInitialFormulaComputing(CalculationMode.FORCED);
  }

  /** Closes the workbook that is open, if any, and opens `data`. Every formula is calculated. */
  openWorkbook(data: Partial<IWorkbookData>): void {
    const open = this.univerAPI.getActiveWorkbook();
    if (open) this.univerAPI.disposeUnit(open.getId());
    this.cellErrors.clear();
    const workbook = this.univerAPI.createWorkbook({ locale: LocaleType.EN_US, ...data });
    // Undo works on the workbook in focus, which only a page would set.
    this.injector.get(IUniverInstanceService).focusUnit(workbook.getId());
    this.parts ??= this.install();
    this.parts.watch.expectCalculation();
  }

  /** Resolves when all edits so far are calculated. */
  calculated(): Promise<void> {
    return this.ready.watch.settled();
  }

  get watch(): CalculationWatch {
    return this.ready.watch;
  }

  get names(): ScopedNames {
    return this.ready.names;
  }

  /** Cells that depend on themselves; the grid itself says nothing about them. */
  get circular(): CircularReferences {
    return this.ready.circular;
  }

  /** Formulas that were stopped because they took too long. */
  get runaways(): Runaways {
    return this.ready.runaways;
  }

  /** The message behind the error that a cell shows, if one of our functions gave one. */
  errorMessageAt(unitId: string, sheetId: string, row: number, column: number): string | undefined {
    const shown = this.spills.valueAt(unitId, sheetId, row, column);
    if (typeof shown !== "string" || !shown.startsWith("#")) return undefined;
    return this.cellErrors.messageAt({ unitId, sheetId, row, column });
  }

  /** The formula that a cell's value comes from, also where it spills into the cell; empty text where there is none. */
  formulaAt({ unitId, sheetId, row, column }: CellPlace): string {
    const spill = this.spills.extentAt(unitId, sheetId, row, column);
    return this.ownFormulaAt(unitId, sheetId, spill?.startRow ?? row, spill?.startColumn ?? column);
  }

  /** The formula that stands in the cell itself; empty text where there is none. */
  ownFormulaAt(unitId: string, sheetId: string, row: number, column: number): string {
    return this.injector.get(FormulaDataModel).getFormulaStringByCell(row, column, sheetId, unitId) ?? "";
  }

  hasFunction(name: string): boolean {
    return this.injector.get(IFunctionService).hasExecutor(name.toUpperCase());
  }

  private get ready(): NonNullable<Engine["parts"]> {
    if (!this.parts) throw new Error("Open a workbook first: the grid starts its services with the first one.");
    return this.parts;
  }

  /** The grid starts most of its services with the first workbook; none of this can be done before. */
  private install(): NonNullable<Engine["parts"]> {
    const { injector } = this;
    const names = new ScopedNames(injector);
    installScopedNames(injector, names);
    markUsersOfNames(injector, names);
    carryScopedNames(injector);
    renameQualifiedNames(injector);
    renameNames(injector, names);
    rewriteConcerned(injector);
    expandOnEntry(injector);
    forgetHowStored(injector);
    keepTableNamesUnique(injector);
    moveInNamedSheet(injector);
    installSpillReferences(injector);
    repairChoose(injector);
    repairNativeFunctions(injector);
    repairSpillPasses(injector);
    repairSpilledCells(injector);
    keepFormulaData(injector);
    keepDependencies(injector, new FormulaMeanings(injector, names));
    repairComparisons();
    repairUndoBatches(injector);
    describeFunctions(injector, this.functions.functions);
    forgetErrorsOfEdits(injector, this.cellErrors);
    this.functions.unknown.follow();
    const watch = new CalculationWatch(injector);
    const runaways = new Runaways(injector, this.cellErrors);
    watch.onStart(() => {
      this.cellErrors.beginCalculation();
      runaways.begin();
    });
    return { watch, names, circular: new CircularReferences(injector), runaways };
  }
}
