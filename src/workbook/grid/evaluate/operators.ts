import { CellError } from "../../../functions/cell-error";
import { isSingle, type Cell, type Cells } from "./cells";

/** A blank counts as 0 and TRUE as 1, a text that is a number as that number, any other text is an error. */
export function asNumber(cell: Cell): number | CellError {
  if (cell instanceof CellError) return cell;
  if (cell === null) return 0;
  if (typeof cell === "number") return cell;
  if (typeof cell === "boolean") return cell ? 1 : 0;
  const number = cell.trim() === "" ? NaN : Number(cell);
  return Number.isFinite(number) ? number : new CellError("#VALUE!", `"${cell}" is a text, not a number`);
}

const finite = (value: number): Cell => (Number.isFinite(value) ? value : new CellError("#NUM!", "there is no finite answer"));

const arithmetic =
  (compute: (one: number, other: number) => Cell) =>
  (one: Cell, other: Cell): Cell => {
    const [left, right] = [asNumber(one), asNumber(other)];
    if (left instanceof CellError) return left;
    return right instanceof CellError ? right : compute(left, right);
  };

const comparison =
  (holds: (order: number) => boolean) =>
  (one: Cell, other: Cell): Cell => {
    if (one instanceof CellError) return one;
    return other instanceof CellError ? other : holds(order(one, other));
  };

/** Numbers stand before texts, texts before TRUE and FALSE; a blank is whatever makes it equal to the other's nothing. */
function order(one: Exclude<Cell, CellError>, other: Exclude<Cell, CellError>): number {
  const [left, right] = [one ?? nothingLike(other), other ?? nothingLike(one)];
  const rank = (value: number | string | boolean) => (typeof value === "number" ? 0 : typeof value === "string" ? 1 : 2);
  if (rank(left) !== rank(right)) return rank(left) - rank(right);
  if (typeof left === "string" && typeof right === "string")
    return left.toLowerCase() === right.toLowerCase() ? 0 : left.toLowerCase() < right.toLowerCase() ? -1 : 1;
  return Number(left) - Number(right);
}

const nothingLike = (other: Exclude<Cell, CellError>): number | string | boolean =>
  typeof other === "string" ? "" : typeof other === "boolean" ? false : 0;

/** A cell as a text, as the spreadsheet writes it: truths in capitals. */
export const wordsOf = (cell: Exclude<Cell, CellError>): string =>
  cell === null ? "" : typeof cell === "boolean" ? (cell ? "TRUE" : "FALSE") : String(cell);

const operators: Readonly<Record<string, (one: Cell, other: Cell) => Cell>> = {
  "+": arithmetic((one, other) => finite(one + other)),
  "-": arithmetic((one, other) => finite(one - other)),
  "*": arithmetic((one, other) => finite(one * other)),
  "/": arithmetic((one, other) =>
    other === 0 ? new CellError("#DIV/0!", "divided by nothing: an empty cell counts as 0") : finite(one / other),
  ),
  "^": arithmetic((one, other) => finite(one ** other)),
  "&": (one, other) => (one instanceof CellError ? one : other instanceof CellError ? other : wordsOf(one) + wordsOf(other)),
  "=": comparison((found) => found === 0),
  "<>": comparison((found) => found !== 0),
  "<": comparison((found) => found < 0),
  ">": comparison((found) => found > 0),
  "<=": comparison((found) => found <= 0),
  ">=": comparison((found) => found >= 0),
};

/** Undefined for the signs that join ranges. */
export const binary = (sign: string): ((one: Cell, other: Cell) => Cell) | undefined => operators[sign];

export function unary(sign: string, operand: Cells): Cells | undefined {
  const each = (compute: (value: number) => number): Cells =>
    operand.map((row) =>
      row.map((cell) => {
        const number = asNumber(cell);
        return number instanceof CellError ? number : compute(number);
      }),
    );
  if (sign === "-") return each((value) => -value);
  if (sign === "+") return operand;
  if (sign === "%") return each((value) => value / 100);
  return sign === "@" && isSingle(operand) ? operand : undefined;
}
