import { RANGE_TYPE } from "@univerjs/core";
import {
  ArrayValueObject,
  BaseFunction,
  ErrorType,
  ErrorValueObject,
  type BaseReferenceObject,
  type BaseValueObject,
  type FunctionVariantType,
} from "@univerjs/engine-formula";
import {
  compareTexts,
  compareValues,
  isErrorValue,
  nativeOf,
  nativeRowsOf,
  rowsOf,
  typed,
  valueObjectOf,
  type NativeValue,
} from "./native-values";
import { wildcards } from "./wildcards";

type Test = (value: NativeValue) => boolean;

/**
 * What a criterion of COUNTIF and its like lets through. As Excel: ">5" looks at numbers only, "<>x" lets everything else through,
 * blank cells too; "=" means really blank, "<>" not blank; "" and "x" may be texts with wildcards; 23 also finds the text 23.
 */
export function criterionTest(criterion: NativeValue): Test {
  if (criterion === null) return (value) => value === 0;
  if (typeof criterion !== "string") return equals(criterion);
  const [, sign = "", rest = ""] = /^(<>|<=|>=|<|>|=)?([^]*)$/u.exec(criterion)!;
  if (sign === "") return criterion === "" ? (value) => value === null || value === "" : equals(typed(criterion));
  if (rest === "") {
    if (sign === "=") return (value) => value === null;
    return sign === "<>" ? (value) => value !== null : () => false;
  }
  const wanted = typed(rest);
  if (sign === "=") return equals(wanted);
  if (sign === "<>") {
    const same = typeof wanted === "number" ? (value: NativeValue) => value === wanted : equals(wanted);
    return (value) => !same(value);
  }
  return (value) => {
    if (typeof value !== typeof wanted) return false;
    const order = typeof value === "string" ? compareTexts(value, wanted as string) : compareValues(value, wanted);
    if (order === undefined) return false;
    return sign === "<" ? order < 0 : sign === "<=" ? order <= 0 : sign === ">" ? order > 0 : order >= 0;
  };
}

function equals(wanted: NativeValue): Test {
  if (typeof wanted === "string") {
    const pattern = wildcards(wanted);
    return (value) => typeof value === "string" && pattern.matches(value);
  }
  if (isErrorValue(wanted)) return (value) => isErrorValue(value) && value.error === wanted.error;
  if (typeof wanted === "number") return (value) => value === wanted || (typeof value === "string" && typed(value) === wanted);
  return (value) => value === wanted;
}

/** What the function does with the values that are let through. */
type Gather = (values: readonly NativeValue[]) => NativeValue;

const numbersOf = (values: readonly NativeValue[]): number[] => values.filter((value) => typeof value === "number");
const ofNumbers =
  (gather: (numbers: number[]) => NativeValue): Gather =>
  (values) =>
    values.find(isErrorValue) ?? gather(numbersOf(values));

const sum = ofNumbers((numbers) => numbers.reduce((total, one) => total + one, 0));
const average = ofNumbers((numbers) =>
  numbers.length === 0 ? { error: ErrorType.DIV_BY_ZERO } : numbers.reduce((total, one) => total + one, 0) / numbers.length,
);
const largest = ofNumbers((numbers) => numbers.reduce((most, one) => Math.max(most, one), numbers[0] ?? 0));
const smallest = ofNumbers((numbers) => numbers.reduce((least, one) => Math.min(least, one), numbers[0] ?? 0));

export const LAST_ROW = 1_048_576;
export const LAST_COLUMN = 16_384;

/** SUMIF and the like: how the arguments are laid out, and what is done with what is let through; no `gather` counts. */
class CriteriaFunction extends BaseFunction {
  override minParams = 2;
  override maxParams: number;
  override needsReferenceObject = true;

  constructor(
    name: string,
    private readonly layout: "one" | "many" | "answers first",
    private readonly gather?: Gather,
  ) {
    super(name);
    this.maxParams = layout === "one" ? (gather ? 3 : 2) : 255;
  }

  override calculate(...given: FunctionVariantType[]): BaseValueObject {
    const answers = this.layout === "answers first" ? given[0] : this.layout === "one" ? given[2] : undefined;
    const pairs = this.layout === "answers first" ? given.slice(1) : this.layout === "one" ? given.slice(0, 2) : given;
    const ranges = pairs.filter((_, index) => index % 2 === 0);
    const criteria = pairs.filter((_, index) => index % 2 === 1);
    if (ranges.length !== criteria.length || ranges.some((range) => !range.isReferenceObject())) {
      const error = ranges.find((range) => range.isError());
      return (error as BaseValueObject | undefined) ?? ErrorValueObject.create(ErrorType.VALUE);
    }
    const looked = ranges.map(nativeRowsOf);
    const [height, width] = [looked[0]!.length, looked[0]![0]?.length ?? 0];
    if (looked.some((rows) => rows.length !== height || (rows[0]?.length ?? 0) !== width)) return ErrorValueObject.create(ErrorType.VALUE);
    const values = this.gather ? this.answersFor(answers ?? ranges[0]!, height, width) : undefined;
    if (values === undefined && this.gather) return ErrorValueObject.create(ErrorType.VALUE);
    const wanted = criteria.map(rowsOf);
    const rows = Math.max(...wanted.map((one) => one.length));
    const columns = Math.max(...wanted.map((one) => one[0]?.length ?? 1));
    // Rows below the grid are blank, and belong to a whole column all the same; so do columns beside it to a row.
    const below = ranges.every(isWholeColumn) ? (LAST_ROW - height) * width : 0;
    const beside = ranges.every(isWholeRow) ? (LAST_COLUMN - width) * height : 0;
    const beyond = Math.max(0, below + beside);
    const at = (row: number, column: number): BaseValueObject => {
      const tests = wanted.map((one) => criterionTest(nativeOf(one[one.length === 1 ? 0 : row]?.[one[0]?.length === 1 ? 0 : column])));
      return valueObjectOf(this.answer(tests, looked, values, beyond));
    };
    if (rows === 1 && columns === 1) return at(0, 0);
    return ArrayValueObject.create({
      calculateValueList: Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => at(row, column))),
      rowCount: rows,
      columnCount: columns,
      unitId: this.unitId ?? "",
      sheetId: this.subUnitId ?? "",
      row: this.row,
      column: this.column,
    });
  }

  private answer(tests: Test[], looked: NativeValue[][][], values: NativeValue[][] | undefined, beyond: number): NativeValue {
    const through: NativeValue[] = [];
    looked[0]!.forEach((cells, row) =>
      cells.forEach((_, column) => {
        if (tests.every((test, index) => test(looked[index]![row]?.[column] ?? null)))
          through.push(values ? (values[row]?.[column] ?? null) : null);
      }),
    );
    if (this.gather) return this.gather(through);
    return through.length + (beyond > 0 && tests.every((test) => test(null)) ? beyond : 0);
  }

  /** The cells to add up: for SUMIF as many as are looked at, from the first cell of the third argument on. */
  private answersFor(given: FunctionVariantType, height: number, width: number): NativeValue[][] | undefined {
    if (!given.isReferenceObject()) return undefined;
    const range = given as BaseReferenceObject;
    const { startRow, startColumn, endRow, endColumn } = range.getRangePosition();
    if (endRow - startRow + 1 === height && endColumn - startColumn + 1 === width) return nativeRowsOf(range);
    if (this.layout !== "one") return undefined;
    const block = { startRow, startColumn, endRow: startRow + height - 1, endColumn: startColumn + width - 1 };
    const cells = this.createReferenceObject(range, block) as BaseReferenceObject;
    // For a cell of its own sheet the grid puts the workbook's id in the place of the sheet's.
    cells.setForcedSheetIdDirect(range.getSheetId());
    return nativeRowsOf(cells);
  }
}

const isWhole = (given: FunctionVariantType, type: RANGE_TYPE): boolean =>
  given.isReferenceObject() && (given as BaseReferenceObject).getRangeData().rangeType === type;

export const isWholeRow = (given: FunctionVariantType): boolean => isWhole(given, RANGE_TYPE.ROW);
export const isWholeColumn = (given: FunctionVariantType): boolean => isWhole(given, RANGE_TYPE.COLUMN);

export const criteriaFunctions = (): BaseFunction[] => [
  new CriteriaFunction("COUNTIF", "one"),
  new CriteriaFunction("COUNTIFS", "many"),
  new CriteriaFunction("SUMIF", "one", sum),
  new CriteriaFunction("SUMIFS", "answers first", sum),
  new CriteriaFunction("AVERAGEIF", "one", average),
  new CriteriaFunction("AVERAGEIFS", "answers first", average),
  new CriteriaFunction("MAXIFS", "answers first", largest),
  new CriteriaFunction("MINIFS", "answers first", smallest),
];
