import type { ICellData, Injector, Nullable } from "@univerjs/core";
import {
  ArrayValueObject,
  BaseFunction,
  ErrorType,
  ErrorValueObject,
  IFormulaCurrentConfigService,
  IFormulaDependencyGenerator,
  IFunctionService,
  type BaseReferenceObject,
  type BaseValueObject,
  type FunctionVariantType,
} from "@univerjs/engine-formula";
import { asBlock, asLegacy, FILL_BLOCK, SINGLE, withAtSigns, type Surroundings } from "./implicit-intersection";
import type { ScopedNames } from "./scoped-names";
import { arrayBlock, isLegacyFormula } from "./stored-formula";

/** Excel's `@`: of a range the cell in the formula's own row or column, of a block of values the first. */
class Single extends BaseFunction {
  override minParams = 1;
  override maxParams = 1;
  override needsReferenceObject = true;

  constructor() {
    super(SINGLE);
  }

  override calculate(given: FunctionVariantType): FunctionVariantType {
    if (!given.isReferenceObject()) return firstValue(given as BaseValueObject);
    const range = given as BaseReferenceObject;
    const { startRow, endRow, startColumn, endColumn } = range.getRangePosition();
    const row = startRow === endRow ? startRow : this.row;
    const column = startColumn === endColumn ? startColumn : this.column;
    if (!(row >= startRow && row <= endRow && column >= startColumn && column <= endColumn))
      return ErrorValueObject.create(ErrorType.VALUE);
    return this.createReferenceObject(range, { startRow: row, endRow: row, startColumn: column, endColumn: column });
  }
}

function firstValue(value: BaseValueObject): BaseValueObject {
  if (!value.isArray()) return value;
  return (value as ArrayValueObject).get(0, 0) ?? (value as ArrayValueObject).getFirstCell();
}

/** What a formula entered for a block shows: one value, row or column is repeated over it; beyond a smaller answer stands #N/A. */
class FillBlock extends BaseFunction {
  override minParams = 3;
  override maxParams = 3;

  constructor() {
    super(FILL_BLOCK);
  }

  override calculate(answer: BaseValueObject, rows: BaseValueObject, columns: BaseValueObject): BaseValueObject {
    const [rowCount, columnCount] = [Number(rows.getValue()), Number(columns.getValue())];
    const array = answer.isArray() ? (answer as ArrayValueObject) : undefined;
    const [height, width] = [array?.getRowCount() ?? 1, array?.getColumnCount() ?? 1];
    const at = (row: number, column: number): Nullable<BaseValueObject> => {
      if (!array) return answer;
      const [from, across] = [height === 1 ? 0 : row, width === 1 ? 0 : column];
      return from < height && across < width ? array.get(from, across) : ErrorValueObject.create(ErrorType.NA);
    };
    if (rowCount === 1 && columnCount === 1) return at(0, 0) ?? answer;
    return ArrayValueObject.create({
      calculateValueList: Array.from({ length: rowCount }, (_, row) =>
        Array.from({ length: columnCount }, (__, column) => at(row, column) ?? null),
      ),
      rowCount,
      columnCount,
      unitId: this.unitId ?? "",
      sheetId: this.subUnitId ?? "",
      row: this.row,
      column: this.column,
    });
  }
}

/** A formula, and the cell that it stands in. */
export interface PlacedFormula {
  formula: string;
  unitId: string;
  sheetId: string;
  row: number;
  column: number;
}

/**
 * What a cell's formula means, by the way it was stored: the engine knows dynamic array formulas only. What is shown, saved and
 * moved is the formula as it was written; only the engine sees this one.
 */
export class FormulaMeanings {
  private readonly config;
  private readonly functions;

  constructor(
    injector: Injector,
    private readonly names: ScopedNames,
  ) {
    this.config = injector.get(IFormulaCurrentConfigService);
    this.functions = injector.get(IFunctionService);
    this.functions.registerExecutors(new Single(), new FillBlock());
    const generator = injector.get(IFormulaDependencyGenerator) as unknown as {
      _createFDtree(
        unitId: string,
        sheetId: string,
        row: number,
        column: number,
        unitData: unknown,
        item: { f: string },
      ): { formula: string };
    };
    const createTree = generator._createFDtree.bind(generator);
    generator._createFDtree = (unitId, sheetId, row, column, ...rest) => {
      const tree = createTree(unitId, sheetId, row, column, ...rest);
      tree.formula = this.of({ formula: tree.formula, unitId, sheetId, row, column });
      return tree;
    };
  }

  /** The formula as the engine is to calculate it. */
  of({ formula, unitId, sheetId, row, column }: PlacedFormula): string {
    const custom = this.storedAs(unitId, sheetId, row, column);
    const around: Surroundings = {
      isRange: (name) => /[:[(]/u.test(this.names.find(unitId, sheetId, ...nameAndSheet(name))?.formulaOrRefString ?? ""),
      isFunction: (name) => this.functions.hasExecutor(name.toUpperCase()),
    };
    const block = arrayBlock({ custom });
    const meant = withAtSigns(formula, { row, column }, around);
    const text = block ? asBlock(meant, block) : isLegacyFormula({ custom }) ? asLegacy(meant, { row, column }, around) : meant;
    return this.withNames(text, unitId, sheetId);
  }

  /** The formula with every name replaced by a token for what it stands for. */
  withNames(formula: string, unitId: string, sheetId: string): string {
    return this.names.qualify(formula, unitId, sheetId);
  }

  /** The cell's notes on how a file stored its formula. */
  storedAs(unitId: string, sheetId: string, row: number, column: number): ICellData["custom"] {
    return this.config.getUnitData()[unitId]?.[sheetId]?.cellData.getValue(row, column)?.custom;
  }
}

function nameAndSheet(written: string): [name: string, sheet: string | undefined] {
  const split = written.lastIndexOf("!");
  if (split < 0) return [written, undefined];
  const sheet = written.slice(0, split);
  return [written.slice(split + 1), sheet.startsWith("'") ? sheet.slice(1, -1).replaceAll("''", "'") : sheet];
}
