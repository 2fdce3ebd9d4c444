import { CellError } from "../../../functions/cell-error";
import { broadcast, isSingle, joined, single, type Cell, type Cells } from "./cells";
import { asNumber } from "./operators";

/** Arguments are worked out when they are asked for: IF must not look at the branch that it does not take. */
type Argument = () => Cells;
/** Undefined where a function is used in a way that we do not follow. */
type Native = (given: readonly Argument[]) => Cells | undefined;

const first = (cells: Cells): Cell => cells[0]?.[0] ?? null;
const isTrue = (cell: Cell): boolean => (typeof cell === "string" ? cell.toLowerCase() === "true" : Boolean(cell));

/** The numbers among cells; in ranges, texts and blanks are passed over. The first error is the answer. */
function overNumbers(compute: (numbers: readonly number[]) => Cell): Native {
  return (given) => {
    const cells = given.flatMap((argument) => argument().flat());
    const error = cells.find((cell) => cell instanceof CellError);
    return single(error ?? compute(cells.filter((cell) => typeof cell === "number")));
  };
}

const eachNumber =
  (compute: (value: number, by: number) => number): Native =>
  ([value, by]) =>
    joined(value?.() ?? single(null), by?.() ?? single(0), (cell, other) => {
      const [number, digits] = [asNumber(cell), asNumber(other)];
      return number instanceof CellError ? number : digits instanceof CellError ? digits : compute(number, digits);
    });

const condition: Native = ([test, then, otherwise]) => {
  const tested = test?.() ?? single(null);
  if (!isSingle(tested)) return undefined;
  const held = first(tested);
  if (held instanceof CellError) return single(held);
  if (typeof held === "string" && !/^(true|false)$/i.test(held))
    return single(new CellError("#VALUE!", `IF asks about the text "${held}"`));
  return isTrue(held) ? (then?.() ?? single(true)) : (otherwise?.() ?? single(false));
};

const choose: Native = ([which, ...choices]) => {
  const wanted = which?.() ?? single(null);
  const chosen = choices.map((choice) => choice());
  if (isSingle(wanted)) return chosen[Number(first(wanted)) - 1];
  if (!chosen.every(isSingle)) return undefined;
  return wanted.map((row) =>
    row.map((number) => first(chosen[Number(number) - 1] ?? single(new CellError("#VALUE!", "CHOOSE has no such choice")))),
  );
};

const index: Native = ([block, row, column]) => {
  const cells = block?.() ?? single(null);
  const at = (argument: Argument | undefined) => Number(first(argument?.() ?? single(1)) ?? 1);
  const [line, place] = cells.length === 1 && column === undefined ? [1, at(row)] : [at(row), at(column)];
  return line >= 1 && place >= 1
    ? single(
        cells[line - 1]?.[place - 1] ??
          (cells[line - 1] && place <= (cells[0]?.length ?? 0)
            ? null
            : new CellError("#REF!", "INDEX asks for a cell outside of the block")),
      )
    : undefined;
};

const logical =
  (join: (tests: readonly boolean[]) => boolean): Native =>
  (given) => {
    const cells = given.flatMap((argument) => argument().flat());
    return single(
      cells.find((cell) => cell instanceof CellError) ??
        join(cells.filter((cell) => typeof cell === "boolean" || typeof cell === "number").map(isTrue)),
    );
  };

const ifError: Native = ([value, instead]) => {
  const cells = value?.() ?? single(null);
  const other = cells.flat().some((cell) => cell instanceof CellError) ? (instead?.() ?? single(null)) : single(null);
  return cells.map((row, r) => row.map((cell, c) => (cell instanceof CellError ? broadcast(other, r, c) : cell)));
};

/** Only what stands in arguments of our sheets: the spreadsheet knows them all, and a second engine is not wanted. */
export const nativeFunctions: ReadonlyMap<string, Native> = new Map<string, Native>([
  ["IF", condition],
  ["IFERROR", ifError],
  ["CHOOSE", choose],
  ["INDEX", index],
  [
    "N",
    ([value]) =>
      value
        ? single(typeof first(value()) === "string" ? 0 : ((cell) => (cell instanceof CellError ? cell : asNumber(cell)))(first(value())))
        : undefined,
  ],
  ["ISNUMBER", ([value]) => value?.().map((row) => row.map((cell) => typeof cell === "number"))],
  ["SUM", overNumbers((numbers) => numbers.reduce((sum, number) => sum + number, 0))],
  ["MIN", overNumbers((numbers) => (numbers.length > 0 ? Math.min(...numbers) : 0))],
  ["MAX", overNumbers((numbers) => (numbers.length > 0 ? Math.max(...numbers) : 0))],
  [
    "AVERAGE",
    overNumbers((numbers) =>
      numbers.length > 0
        ? numbers.reduce((sum, number) => sum + number, 0) / numbers.length
        : new CellError("#DIV/0!", "AVERAGE of no number"),
    ),
  ],
  ["COUNT", ([...given]) => single(given.flatMap((argument) => argument().flat()).filter((cell) => typeof cell === "number").length)],
  ["ABS", eachNumber((value) => Math.abs(value))],
  ["ROUND", eachNumber((value, digits) => (Math.round(Math.abs(value) * 10 ** digits + 1e-9) / 10 ** digits) * Math.sign(value))],
  ["AND", logical((tests) => tests.every(Boolean))],
  ["OR", logical((tests) => tests.some(Boolean))],
]);
