import type { Injector } from "@univerjs/core";
import type { BaseFunction } from "@univerjs/engine-formula";
import {
  ArrayValueObject,
  ErrorType,
  ErrorValueObject,
  IFormulaCurrentConfigService,
  IFunctionService,
  NullValueObject,
  NumberValueObject,
  StringValueObject,
  type BaseReferenceObject,
  type BaseValueObject,
  type FunctionVariantType,
} from "@univerjs/engine-formula";
import { criteriaFunctions, criterionTest, isWholeColumn, isWholeRow, LAST_COLUMN, LAST_ROW } from "./native-criteria";
import { searchIn } from "./native-lookup";
import { isErrorValue, nativeOf, nativeRowsOf, numberOf, rowsOf, typed, valueObjectOf, type NativeValue } from "./native-values";
import { wildcards } from "./wildcards";

/**
 * Functions of Excel's own that the grid's library gets wrong, each found by holding workbooks that Excel has computed against it
 * (tests/excel-stand-in/engine/excel-computed.test.ts). What can be put right in what they are given, or in what they answer, is put
 * right there; the sums stay the library's.
 */
export function repairNativeFunctions(injector: Injector): void {
  readTextsAsNumbers();
  const functions = injector.get(IFunctionService);
  functions.registerExecutors(...criteriaFunctions());
  const change = (names: string, how: (original: BaseFunction) => BaseFunction["calculate"]): void => {
    for (const name of names.trim().split(/\s+/u)) {
      const executor = functions.getExecutor(name) as BaseFunction | undefined;
      if (!executor) throw new Error(`The grid's formula engine has changed: it has no ${name} any more.`);
      executor.calculate = how(executor);
    }
  };
  const Precise = (functions.getExecutor("CEILING.PRECISE") as BaseFunction).constructor as new (name: string) => BaseFunction;
  functions.registerExecutors(new Precise("ISO.CEILING"));
  change(
    "AVERAGE MAX MIN PRODUCT STDEV STDEVP STDEV.S STDEV.P VAR VARP VAR.S VAR.P MEDIAN GEOMEAN HARMEAN AVEDEV DEVSQ SUMSQ",
    errorsFirst,
  );
  change("LARGE SMALL PERCENTILE PERCENTILE.INC PERCENTILE.EXC QUARTILE QUARTILE.INC QUARTILE.EXC", errorsFirst);
  change("CORREL PEARSON RSQ SLOPE INTERCEPT STEYX COVAR COVARIANCE.P COVARIANCE.S", (original) => pairsOnly(original, 0));
  change("FORECAST FORECAST.LINEAR", (original) => pairsOnly(original, 1));
  change("COUNTA", () => countFilled);
  change("AVERAGEA", () => averageOfAll);
  change("TEXT", refuseCrosses);
  change("SEARCH", searchWithWildcards);
  change("ROWS", (original) => wholeLines(original, isWholeColumn, LAST_ROW));
  change("COLUMNS", (original) => wholeLines(original, isWholeRow, LAST_COLUMN));
  change("AND OR XOR", (original) => withTexts(original, truthOf));
  change("OFFSET", wholeSteps);
  change("INDIRECT", (original) => onSheetsThere(original, injector.get(IFormulaCurrentConfigService)));
  change("TIME", () => timeOfDay);
  change("DAVERAGE DCOUNT DCOUNTA DMAX DMIN DPRODUCT DSTDEV DSTDEVP DSUM DVAR DVARP", (original) => ofRecords(original, functions));
  change("DGET", oneRecord);
  change("XLOOKUP", lookUp);
  change("XMATCH", (original) => matchIn(original));
}

/** Blank texts are no numbers, and a date or share with a blank before or behind it is none. */
function readTextsAsNumbers(): void {
  StringValueObject.prototype.convertToNumberObjectValue = function () {
    const text = String(this.getValue());
    const read = numberOf(text);
    if (read === undefined) return ErrorValueObject.create(ErrorType.VALUE);
    return Number.isFinite(read) ? NumberValueObject.create(read) : ErrorValueObject.create(ErrorType.NUM);
  };
}

type Calculate = BaseFunction["calculate"];

/** The first error among the values is the answer, whichever it is. */
function errorsFirst(original: BaseFunction): Calculate {
  const calculate = original.calculate.bind(original);
  return (...given) => firstError(given) ?? calculate(...given);
}

function firstError(given: readonly FunctionVariantType[]): BaseValueObject | undefined {
  for (const one of given) for (const row of rowsOf(one)) for (const value of row ?? []) if (value?.isError()) return value;
  return undefined;
}

/** Pairs of which one is no number are left out of both ranges. */
function pairsOnly(original: BaseFunction, from: number): Calculate {
  const calculate = original.calculate.bind(original);
  return (...given) => {
    const [one, other] = [given[from], given[from + 1]];
    if (!one || !other) return calculate(...given);
    const error = firstError(given);
    if (error) return error;
    const [ones, others] = [nativeRowsOf(one).flat(), nativeRowsOf(other).flat()];
    if (ones.length !== others.length) return calculate(...given);
    const kept = ones.map((value, index) => typeof value === "number" && typeof others[index] === "number");
    if (kept.every(Boolean)) return calculate(...given);
    const pick = (values: NativeValue[]) => columnOf(values.filter((_, index) => kept[index]));
    if (!kept.some(Boolean)) return ErrorValueObject.create(ErrorType.DIV_BY_ZERO);
    const cleaned = [...given];
    cleaned.splice(from, 2, pick(ones), pick(others));
    return calculate(...cleaned);
  };
}

function columnOf(values: NativeValue[]): BaseValueObject {
  const list = values.map((value) => [valueObjectOf(value)]);
  return arrayOf(list);
}

/** Everything but blank cells counts, errors too. */
const countFilled: Calculate = (...given) => {
  let count = 0;
  for (const one of given) {
    const isCells = one.isReferenceObject() || one.isArray();
    for (const row of rowsOf(one)) for (const value of row ?? []) if (!isCells || nativeOf(value) !== null) count++;
  }
  return NumberValueObject.create(count);
};

/** In cells a text is 0 and TRUE is 1; a text that is given by itself must be a number. */
const averageOfAll: Calculate = (...given) => {
  let total = 0;
  let count = 0;
  for (const one of given) {
    const isCells = one.isReferenceObject() || one.isArray();
    for (const value of nativeRowsOf(one).flat()) {
      if (isErrorValue(value)) return valueObjectOf(value);
      if (value === null && isCells) continue;
      const number = typeof value === "string" ? (isCells ? 0 : numberOf(value)) : Number(value ?? 0);
      if (number === undefined) return ErrorValueObject.create(ErrorType.VALUE);
      total += number;
      count++;
    }
  }
  return valueObjectOf(count === 0 ? { error: ErrorType.DIV_BY_ZERO } : total / count);
};

/** A date that there is none of is an error, not a row of crosses. */
function refuseCrosses(original: BaseFunction): Calculate {
  const calculate = original.calculate.bind(original);
  return (...given) =>
    each(calculate(...given) as BaseValueObject, (value) =>
      /^#{4,}$/u.test(String(value.getValue())) ? ErrorValueObject.create(ErrorType.VALUE) : value,
    );
}

/** SEARCH takes wildcards; FIND does not. */
function searchWithWildcards(original: BaseFunction): Calculate {
  const calculate = original.calculate.bind(original);
  return (...given) => {
    const [wanted, within, start] = given.map((one) => (isSingle(one) ? nativeOf(rowsOf(one)[0]![0]) : undefined));
    if (typeof wanted !== "string" || !/[*?~]/u.test(wanted) || within === undefined || within === null || isErrorValue(within))
      return calculate(...given);
    const from = start === undefined ? 1 : typeof start === "number" ? Math.floor(start) : undefined;
    const text = String(within);
    if (from === undefined) return calculate(...given);
    if (from < 1 || from > text.length) return ErrorValueObject.create(ErrorType.VALUE);
    const found = wildcards(wanted).indexIn(text.slice(from - 1));
    return found < 0 ? ErrorValueObject.create(ErrorType.VALUE) : NumberValueObject.create(found + from);
  };
}

const isSingle = (given: FunctionVariantType): boolean => {
  const rows = rowsOf(given);
  return rows.length === 1 && rows[0]?.length === 1;
};

/** A whole column has as many rows as Excel has, not as many as the grid shows; so has a row columns. */
function wholeLines(original: BaseFunction, isWhole: (given: FunctionVariantType) => boolean, all: number): Calculate {
  const calculate = original.calculate.bind(original);
  original.needsReferenceObject = true;
  return (given) => {
    if (isWhole(given)) return NumberValueObject.create(all);
    return calculate(given.isReferenceObject() ? (given as unknown as BaseReferenceObject).toArrayValueObject() : given);
  };
}

/** A single text is read as what it says. */
function withTexts(original: BaseFunction, read: (text: BaseValueObject) => BaseValueObject): Calculate {
  const calculate = original.calculate.bind(original);
  return (...given) => calculate(...given.map((one) => (!one.isReferenceObject() && one.isString() ? read(one) : one)));
}

const truthOf = (text: BaseValueObject): BaseValueObject => {
  const read = typed(String(text.getValue()));
  return typeof read === "boolean" ? valueObjectOf(read) : text;
};

/** Steps and sizes of OFFSET lose what stands behind the point. */
function wholeSteps(original: BaseFunction): Calculate {
  const calculate = original.calculate.bind(original);
  return (reference, ...steps) =>
    calculate(
      reference,
      ...steps.map((step) => {
        const value = isSingle(step) ? nativeOf(rowsOf(step)[0]![0]) : undefined;
        return typeof value === "number" && !Number.isInteger(value) ? NumberValueObject.create(Math.trunc(value)) : step;
      }),
    );
}

/** A reference to a sheet that is not there is none; one that is there is known in small letters, too. */
function onSheetsThere(original: BaseFunction, config: IFormulaCurrentConfigService): Calculate {
  const calculate = original.calculate.bind(original);
  return (...given) => {
    const found = calculate(...given);
    if (!found.isReferenceObject()) return found;
    const reference = found as BaseReferenceObject;
    const wanted = reference.getForcedSheetName();
    if (!wanted) return found;
    const there = Object.keys(config.getSheetNameMap()[original.unitId ?? ""] ?? {});
    const name = there.find((one) => one.toLowerCase() === wanted.toLowerCase());
    if (name === undefined) return ErrorValueObject.create(ErrorType.REF);
    reference.setForcedSheetName(name);
    return found;
  };
}

/** Minutes and seconds may be below 0 or above 59; the whole days go. */
const timeOfDay: Calculate = (...given) => {
  const error = firstError(given);
  if (error) return error;
  const at = (row: number, column: number): BaseValueObject => {
    const parts = given.map((one) => {
      const rows = rowsOf(one);
      const value = nativeOf(rows[rows.length === 1 ? 0 : row]?.[rows[0]?.length === 1 ? 0 : column]);
      return Math.trunc(typeof value === "string" ? (numberOf(value) ?? NaN) : Number(value ?? 0));
    });
    if (parts.some(Number.isNaN)) return ErrorValueObject.create(ErrorType.VALUE);
    const [hours = 0, minutes = 0, seconds = 0] = parts;
    const total = hours * 3600 + minutes * 60 + seconds;
    if (total < 0 || parts.some((part) => part > 32_767)) return ErrorValueObject.create(ErrorType.NUM);
    return NumberValueObject.create((total % 86_400) / 86_400);
  };
  const all = given.map(rowsOf);
  const [height, width] = [Math.max(...all.map((rows) => rows.length)), Math.max(...all.map((rows) => rows[0]?.length ?? 1))];
  if (height === 1 && width === 1) return at(0, 0);
  return arrayOf(Array.from({ length: height }, (_, row) => Array.from({ length: width }, (__, column) => at(row, column))));
};

const lookUp = (): Calculate => {
  return (wanted, lookedIn, answers, ifNotFound, match, order) => {
    const list = nativeRowsOf(lookedIn);
    const rows = rowsOf(answers);
    const across = list.length === 1 && (list[0]?.length ?? 0) > 1;
    const upright = list.every((row) => row.length === 1);
    if ((!across && !upright) || (across ? rows[0]?.length !== list[0]!.length : rows.length !== list.length))
      return ErrorValueObject.create(ErrorType.VALUE);
    const modes = modesOf(match, order);
    if (!Array.isArray(modes)) return modes;
    const values = across ? list[0]! : list.map((row) => row[0]!);
    const missing = isLeftOut(ifNotFound)
      ? ErrorValueObject.create(ErrorType.NA)
      : (rowsOf(ifNotFound)[0]![0] ?? ErrorValueObject.create(ErrorType.NA));
    const find = (value: BaseValueObject): number | undefined => searchIn(values, nativeOf(value), ...modes);
    const several = rowsOf(wanted).length > 1 || (rowsOf(wanted)[0]?.length ?? 1) > 1;
    if (several) {
      return each(arrayOf(rowsOf(wanted)), (value) => {
        const at = value.isError() ? undefined : find(value);
        if (value.isError()) return value;
        return (at === undefined ? missing : across ? rows[0]![at] : rows[at]![0]) ?? NullValueObject.create();
      });
    }
    const value = rowsOf(wanted)[0]![0]!;
    if (value.isError()) return value;
    const at = find(value);
    if (at === undefined) return missing;
    const block = across ? rows.map((row) => [row[at]!]) : [rows[at]!];
    return block.length === 1 && block[0]!.length === 1 ? (block[0]![0] ?? NullValueObject.create()) : arrayOf(block);
  };
};

function matchIn(original: BaseFunction): Calculate {
  const calculate = original.calculate.bind(original);
  return (wanted, lookedIn, match, order) => {
    const modes = modesOf(match, order);
    const list = nativeRowsOf(lookedIn);
    const flat = list.length === 1 || list.every((row) => row.length === 1);
    if (!isSingle(wanted) || !Array.isArray(modes) || !flat)
      return calculate(...[wanted, lookedIn, match, order].filter((one) => one !== undefined));
    const value = rowsOf(wanted)[0]![0]!;
    if (value.isError()) return value;
    const at = searchIn(list.flat(), nativeOf(value), ...modes);
    return at === undefined ? ErrorValueObject.create(ErrorType.NA) : NumberValueObject.create(at + 1);
  };
}

/** How to match and in which order, or the error that they make. */
function modesOf(
  match: FunctionVariantType | undefined,
  order: FunctionVariantType | undefined,
): [match: number, order: number] | BaseValueObject {
  const modes: number[] = [];
  for (const [given, usual, allowed] of [
    [match, 0, [0, -1, 1, 2]],
    [order, 1, [1, -1, 2, -2]],
  ] as const) {
    const value = isLeftOut(given) ? usual : nativeOf(rowsOf(given!)[0]![0]);
    if (isErrorValue(value)) return valueObjectOf(value);
    const mode = Math.trunc(typeof value === "string" ? (numberOf(value) ?? NaN) : Number(value));
    if (!(allowed as readonly number[]).includes(mode)) return ErrorValueObject.create(ErrorType.VALUE);
    modes.push(mode);
  }
  const [matching, ordering] = modes as [number, number];
  if (matching === 2 && Math.abs(ordering) === 2) return ErrorValueObject.create(ErrorType.VALUE);
  return [matching, ordering];
}

const isLeftOut = (given: FunctionVariantType | undefined): boolean =>
  given === undefined || (!given.isReferenceObject() && (given as BaseValueObject).isNull());

function each(given: BaseValueObject, change: (value: BaseValueObject) => BaseValueObject): BaseValueObject {
  if (!given.isArray()) return change(given);
  return arrayOf(rowsOf(given).map((row) => Array.from(row, (value) => change(value ?? NullValueObject.create()))));
}

function arrayOf(rows: BaseValueObject[][]): BaseValueObject {
  const size = { rowCount: rows.length, columnCount: rows[0]?.length ?? 0 };
  return ArrayValueObject.create({ calculateValueList: rows, ...size, unitId: "", sheetId: "", row: -1, column: -1 });
}

/** DSUM and the like: the records that the criteria let through, added up by SUM and the like. */
function ofRecords(original: BaseFunction, functions: IFunctionService): Calculate {
  const name = String(original.name).slice(1);
  const gather = functions.getExecutor(name) as BaseFunction;
  return (...given) => {
    const found = recordsFor(given, name.startsWith("COUNT"));
    if (!Array.isArray(found)) return found;
    const error = name.startsWith("COUNT") ? undefined : found.find(isErrorValue);
    if (error) return valueObjectOf(error);
    const kept = found.filter((value) => value !== null && (name === "COUNTA" || typeof value === "number"));
    if (kept.length === 0 && name.startsWith("COUNT")) return NumberValueObject.create(0);
    if (kept.length === 0)
      return name === "AVERAGE" ? ErrorValueObject.create(ErrorType.DIV_BY_ZERO) : gather.calculate(NumberValueObject.create(0));
    return gather.calculate(columnOf(kept));
  };
}

const oneRecord = (): Calculate => {
  return (...given) => {
    const found = recordsFor(given, false);
    if (!Array.isArray(found)) return found;
    if (found.length !== 1) return ErrorValueObject.create(found.length === 0 ? ErrorType.VALUE : ErrorType.NUM);
    return valueObjectOf(found[0]!);
  };
};

/** The field's values in the records that fulfil one row of the criteria; without a field, the records themselves. */
function recordsFor(given: readonly FunctionVariantType[], fieldMayBeMissing: boolean): NativeValue[] | BaseValueObject {
  const [database, field, criteria] = given;
  if (!database || !criteria) return ErrorValueObject.create(ErrorType.VALUE);
  const [heads = [], ...records] = nativeRowsOf(database);
  const [wantedHeads = [], ...rows] = nativeRowsOf(criteria);
  if (records.length === 0) return ErrorValueObject.create(ErrorType.VALUE);
  const columnFor = (head: NativeValue): number =>
    heads.findIndex(
      (one) =>
        one !== null &&
        head !== null &&
        !isErrorValue(one) &&
        !isErrorValue(head) &&
        String(one).toLowerCase() === String(head).toLowerCase(),
    );
  const wantedField = isLeftOut(field) ? null : nativeOf(rowsOf(field!)[0]![0]);
  if (isErrorValue(wantedField)) return valueObjectOf(wantedField);
  if (wantedField === null && !fieldMayBeMissing) return ErrorValueObject.create(ErrorType.VALUE);
  const at = typeof wantedField === "number" ? Math.trunc(wantedField) - 1 : wantedField === null ? -1 : columnFor(wantedField);
  if (wantedField !== null && (at < 0 || at >= heads.length)) return ErrorValueObject.create(ErrorType.VALUE);
  const tests = rows.map((row) =>
    row.flatMap((criterion, index) => {
      if (criterion === null) return [];
      const column = columnFor(wantedHeads[index] ?? null);
      // A text asks for what begins with it.
      const wanted =
        typeof criterion === "string" && !/^[<>=]/u.test(criterion) && typeof typed(criterion) === "string" ? `${criterion}*` : criterion;
      // Under a heading that is none stands a condition by itself.
      const holds = criterion === true || (typeof criterion === "number" && criterion !== 0);
      return [column < 0 ? { column: 0, test: () => holds } : { column, test: criterionTest(wanted) }];
    }),
  );
  return records
    .filter((record) => tests.some((all) => all.every(({ column, test }) => test(record[column] ?? null))))
    .map((record) => (at < 0 ? 1 : (record[at] ?? null)));
}
