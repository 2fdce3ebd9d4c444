import { isExpressionNode, type AstExpression } from "@borgar/fx";
import { call } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import { registry } from "../../src/functions/registry";
import { broadcast, joined, single, type Cell, type Cells } from "../../src/workbook/grid/evaluate/cells";
import { asNumber, binary, unary } from "../../src/workbook/grid/evaluate/operators";
import { parsed } from "../../src/workbook/grid/evaluate/parse";
import { gyleId } from "../../src/workbook/grid/formulas";
import { address, block, position, type Block } from "../../src/workbook/grid/plan/addresses";
import type { SheetPlan } from "../../src/workbook/grid/plan/sheet-plan";

/**
 * A planned sheet worked out in Node, cell by cell as it is asked for, in milliseconds: for tests that change one
 * formula after the other. It knows only what planned sheets use; `by-hand.test.ts` holds it against the grid's engine.
 */
export interface PaperGrid {
  at(cell: string): Cell;
}

type Argument = () => Cells;

/** @param changed formulas or values in the place of planned ones, by their cell */
export function paperGrid(plan: SheetPlan, changed: ReadonlyMap<string, string | number> = new Map()): PaperGrid {
  const content = new Map<string, string | number>(plan.cells.map((cell) => [cell.address, cell.content]));
  for (const [cell, formula] of changed) content.set(cell, formula);
  const names = new Map(plan.names.map(({ name, range }) => [name.toLowerCase(), range]));
  const spills = plan.cells.flatMap(({ address: first, spillsTo }) => (spillsTo ? [block(`${first}:${spillsTo}`)] : []));
  const known = new Map<string, Cells>();

  function whole(cell: string): Cells {
    const found = known.get(cell);
    if (found) return found;
    const held = content.get(cell);
    let value: Cells;
    if (typeof held === "string" && held.startsWith("=")) {
      const tree = parsed(held);
      if (!tree) throw new Error(`${cell} cannot be read: ${held}`);
      known.set(cell, single(new CellError("#REF!", `${cell} leads back to itself`)));
      value = work(tree);
    } else value = single(held === undefined || held === "" ? null : held);
    known.set(cell, value);
    return value;
  }

  function at(cell: string): Cell {
    const { row, column } = position(cell);
    const spill = content.get(cell)
      ? undefined
      : spills.find(({ from, to }) => row >= from.row && row <= to.row && column >= from.column && column <= to.column);
    if (!spill) return whole(cell)[0]?.[0] ?? null;
    return whole(address(spill.from.row, spill.from.column))[row - spill.from.row]?.[column - spill.from.column] ?? null;
  }

  function range(text: string): Cells {
    const { from, to } = block(text.replaceAll("$", ""));
    return Array.from({ length: to.row - from.row + 1 }, (_, row) =>
      Array.from({ length: to.column - from.column + 1 }, (_2, column) => at(address(from.row + row, from.column + column))),
    );
  }

  function work(node: AstExpression): Cells {
    if (node.type === "Literal") return single(node.value);
    if (node.type === "ArrayExpression")
      return node.elements.map((row) =>
        row.map((element) => (element.type === "Literal" ? element.value : (work(element as AstExpression)[0]?.[0] ?? null)) as Cell),
      );
    if (node.type === "ReferenceIdentifier") return range(names.get(node.value.toLowerCase()) ?? node.value);
    if (node.type === "UnaryExpression") return defined(node.arguments[0] && unary(node.operator, work(node.arguments[0])), node.operator);
    if (node.type === "BinaryExpression") {
      const [left, right] = node.arguments;
      return joined(work(defined(left, "left")), work(defined(right, "right")), defined(binary(node.operator), node.operator));
    }
    if (node.type !== "CallExpression" || node.callee.type !== "Identifier") throw new Error(`the paper grid cannot work out ${node.type}`);
    const { name } = node.callee;
    const places = askingPlaces[name.toUpperCase()];
    if (places) return places(placeOf(node.arguments[0] as AstExpression));
    const given = node.arguments.map((argument): Argument | undefined =>
      argument && isExpressionNode(argument) ? () => work(argument) : undefined,
    );
    const id = gyleId(name);
    if (id === undefined) return defined(natives[name.toUpperCase()], name)(given.map((argument) => argument ?? (() => single(null))));
    const descriptor = registry.find((candidate) => candidate.id === id);
    return descriptor
      ? call(
          descriptor,
          given.map((argument) => argument?.()),
        )
      : single(new CellError("#NAME?", name));
  }

  /** Where a range stands, or the cell or column of it that INDEX names. */
  function placeOf(node: AstExpression): Block {
    if (node.type === "ReferenceIdentifier") return block((names.get(node.value.toLowerCase()) ?? node.value).replaceAll("$", ""));
    if (node.type !== "CallExpression" || node.callee.type !== "Identifier" || node.callee.name !== "INDEX")
      throw new Error("the paper grid cannot tell where this stands");
    const [whole, ...counted] = node.arguments;
    const [row = 1, column = 1] = counted.map((count) => Number(work(count as AstExpression)[0]?.[0]));
    const { from, to } = placeOf(whole as AstExpression);
    const cell = { row: from.row + Math.max(row, 1) - 1, column: from.column + Math.max(column, 1) - 1 };
    return { from: cell, to: { row: row === 0 ? to.row : cell.row, column: column === 0 ? to.column : cell.column } };
  }
  return { at };
}

/** What asks where cells stand, not what they hold. */
const askingPlaces: Readonly<Record<string, (cells: Block) => Cells>> = {
  ROW: ({ from, to }) => Array.from({ length: to.row - from.row + 1 }, (_, index) => [from.row + index]),
  COLUMN: ({ from, to }) => [Array.from({ length: to.column - from.column + 1 }, (_, index) => from.column + index)],
  ROWS: ({ from, to }) => single(to.row - from.row + 1),
  COLUMNS: ({ from, to }) => single(to.column - from.column + 1),
};

function defined<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`the paper grid does not know ${what}`);
  return value;
}

const one = (argument: Argument | undefined): Cell => argument?.()[0]?.[0] ?? null;
const truth = (cell: Cell): boolean => (typeof cell === "string" ? cell.toUpperCase() === "TRUE" : Boolean(cell));
const numbers = (given: readonly Argument[]): number[] | CellError => {
  const cells = given.flatMap((argument) => argument().flat());
  const error = cells.find((cell) => cell instanceof CellError);
  return error instanceof CellError ? error : cells.filter((cell) => typeof cell === "number");
};
const over =
  (compute: (found: number[]) => Cell) =>
  (given: readonly Argument[]): Cells => {
    const found = numbers(given);
    return single(found instanceof CellError ? found : compute(found));
  };
const map =
  (compute: (cell: Cell) => Cell) =>
  ([cells]: readonly Argument[]): Cells =>
    cells!().map((row) => row.map(compute));
const passing = (compute: (cell: Exclude<Cell, CellError>) => Cell) => map((cell) => (cell instanceof CellError ? cell : compute(cell)));
const onNumber = (compute: (value: number) => Cell) =>
  map((cell) => {
    const value = asNumber(cell);
    return value instanceof CellError ? value : compute(value);
  });
const all =
  (holds: (found: boolean[]) => boolean) =>
  (given: readonly Argument[]): Cells => {
    const cells = given.flatMap((argument) => argument().flat());
    return single(
      cells.find((cell) => cell instanceof CellError) ??
        holds(cells.filter((cell) => typeof cell !== "string" && cell !== null).map(truth)),
    );
  };

/** What COUNTIFS and its kin ask: ">0", "<=1", "steep". */
function fits(asked: Cell): (cell: Cell) => boolean {
  const [, sign = "=", wanted = ""] = /^(<=|>=|<>|<|>|=)?(.*)$/.exec(String(asked)) ?? [];
  const bound = Number(wanted);
  if (wanted === "" || Number.isNaN(bound))
    return (cell) => (String(cell ?? "").toLowerCase() === wanted.toLowerCase()) === (sign !== "<>");
  return (cell) =>
    typeof cell === "number" &&
    { "=": cell === bound, "<>": cell !== bound, "<": cell < bound, ">": cell > bound, "<=": cell <= bound, ">=": cell >= bound }[sign]!;
}
const fitting = (pairs: readonly Argument[]): boolean[] => {
  const columns = Array.from({ length: pairs.length / 2 }, (_, index) => {
    const holds = fits(one(pairs[2 * index + 1]));
    return pairs[2 * index]!().flat().map(holds);
  });
  return (columns[0] ?? []).map((_, row) => columns.every((column) => column[row]));
};
const chosen = (cells: Cells, held: readonly boolean[]): number[] =>
  cells.flat().filter((cell, index): cell is number => typeof cell === "number" && held[index] === true);

/** TEXT for "0", "0.00", "0%" and FIXED, dates by their parts. */
function shown(value: Cell, pattern: string): Cell {
  const number = asNumber(value);
  if (number instanceof CellError) return typeof value === "string" ? value : number;
  const digits = /0\.(0+)/.exec(pattern)?.[1]?.length ?? 0;
  if (/^[#,]*0(\.0+)?%?$/.test(pattern)) return pattern.endsWith("%") ? `${(number * 100).toFixed(digits)}%` : number.toFixed(digits);
  const day = new Date(Math.round((number - 25569) * 86_400_000));
  return pattern.replace(
    /yyyy|mmmm|mm|dd|hh|d|h/g,
    (part) =>
      ({
        yyyy: String(day.getUTCFullYear()),
        mm: String(day.getUTCMonth() + 1).padStart(2, "0"),
        dd: String(day.getUTCDate()).padStart(2, "0"),
        hh: String(day.getUTCHours()).padStart(2, "0"),
        d: String(day.getUTCDate()),
        h: String(day.getUTCHours()),
        mmmm: day.toLocaleString("en", { month: "long", timeZone: "UTC" }),
      })[part] ?? part,
  );
}
const dayOf = (number: number): Date => new Date(Math.floor(number - 25569) * 86_400_000);

const natives: Readonly<Record<string, (given: readonly Argument[]) => Cells>> = {
  IF: ([test, then, otherwise]) => {
    const tested = test!();
    if (tested.length > 1 || (tested[0]?.length ?? 0) > 1) {
      const [yes, no] = [then!(), otherwise?.() ?? single(false)];
      return tested.map((row, r) => row.map((cell, c) => (cell instanceof CellError ? cell : broadcast(truth(cell) ? yes : no, r, c))));
    }
    const held = tested[0]?.[0] ?? null;
    if (held instanceof CellError) return single(held);
    if (typeof held === "string" && !/^(true|false)$/i.test(held)) return single(new CellError("#VALUE!", `IF asks about "${held}"`));
    return truth(held) ? then!() : (otherwise?.() ?? single(false));
  },
  IFERROR: ([value, instead]) =>
    value!().map((row, r) => row.map((cell, c) => (cell instanceof CellError ? broadcast(instead!(), r, c) : cell))),
  CHOOSE: ([which, ...choices]) => {
    const wanted = which!();
    return wanted.length === 1 && wanted[0]?.length === 1
      ? (choices[Number(one(which)) - 1]?.() ?? single(new CellError("#VALUE!", "CHOOSE")))
      : wanted.map((row) => row.map((number) => one(choices[Number(number) - 1])));
  },
  INDEX: ([cells, row, column]) => {
    const [found, wanted, place] = [cells!(), one(row), column ? one(column) : null];
    for (const asked of [wanted, place]) if (asked instanceof CellError) return single(asked);
    const [line, at] = found.length === 1 && !column ? [1, Number(wanted)] : [Number(wanted), Number(place ?? 1)];
    if (line === 0) return found.map((cellsOfRow) => [cellsOfRow[at - 1] ?? null]);
    return single(found[line - 1]?.[at - 1] ?? null);
  },
  MATCH: ([wanted, cells]) => {
    const [asked, found] = [one(wanted), cells!().flat()];
    if (asked instanceof CellError) return single(asked);
    const place = found.findIndex((cell) =>
      typeof cell === "string" && typeof asked === "string" ? cell.toLowerCase() === asked.toLowerCase() : cell === asked,
    );
    return single(place < 0 ? new CellError("#N/A", "MATCH finds nothing") : place + 1);
  },
  SUM: over((found) => found.reduce((sum, number) => sum + number, 0)),
  MIN: over((found) => (found.length > 0 ? Math.min(...found) : 0)),
  MAX: over((found) => (found.length > 0 ? Math.max(...found) : 0)),
  AVERAGE: over((found) =>
    found.length > 0 ? found.reduce((sum, number) => sum + number, 0) / found.length : new CellError("#DIV/0!", "AVERAGE of nothing"),
  ),
  COUNT: (given) => single(given.flatMap((argument) => argument().flat()).filter((cell) => typeof cell === "number").length),
  COUNTA: (given) => single(given.flatMap((argument) => argument().flat()).filter((cell) => cell !== null).length),
  COUNTIF: (given) => single(fitting(given).filter(Boolean).length),
  COUNTIFS: (given) => single(fitting(given).filter(Boolean).length),
  MAXIFS: ([values, ...pairs]) => single(Math.max(0, ...chosen(values!(), fitting(pairs)))),
  AVERAGEIFS: ([values, ...pairs]) => {
    const found = chosen(values!(), fitting(pairs));
    return single(
      found.length === 0 ? new CellError("#DIV/0!", "nothing to average") : found.reduce((sum, number) => sum + number, 0) / found.length,
    );
  },
  MINIFS: ([values, ...pairs]) => {
    const found = chosen(values!(), fitting(pairs));
    return single(found.length > 0 ? Math.min(...found) : 0);
  },
  SUMIF: ([cells, asked, values]) =>
    single(chosen((values ?? cells)!(), fitting([cells!, asked!])).reduce((sum, number) => sum + number, 0)),
  SUMIFS: ([values, ...pairs]) => single(chosen(values!(), fitting(pairs)).reduce((sum, number) => sum + number, 0)),
  SUMPRODUCT: (given) => {
    const columns = given.map((argument) => argument().flat());
    const error = columns.flat().find((cell) => cell instanceof CellError);
    return single(
      error ??
        (columns[0] ?? []).reduce<number>(
          (sum, _, row) => sum + columns.reduce((product, column) => product * (typeof column[row] === "number" ? column[row] : 0), 1),
          0,
        ),
    );
  },
  AND: all((found) => found.every(Boolean)),
  OR: all((found) => found.some(Boolean)),
  NOT: passing((cell) => !truth(cell)),
  ABS: onNumber(Math.abs),
  INT: onNumber(Math.floor),
  ROUND: ([value, digits]) =>
    onNumber((number) => {
      const scale = 10 ** Number(one(digits));
      return (Math.sign(number) * Math.round(Math.abs(number) * scale + 1e-9)) / scale;
    })([value!]),
  ROUNDUP: ([value, digits]) =>
    onNumber((number) => {
      const scale = 10 ** Number(one(digits));
      return (Math.sign(number) * Math.ceil(Math.abs(number) * scale - 1e-9)) / scale;
    })([value!]),
  MOD: ([value, by]) => onNumber((number) => number - Math.floor(number / Number(one(by))) * Number(one(by)))([value!]),
  EXP: onNumber(Math.exp),
  LN: onNumber(Math.log),
  N: map((cell) => (cell instanceof CellError ? cell : typeof cell === "string" ? 0 : Number(cell))),
  ISNUMBER: map((cell) => typeof cell === "number"),
  ISTEXT: map((cell) => typeof cell === "string"),
  ISERROR: map((cell) => cell instanceof CellError),
  ISBLANK: map((cell) => cell === null),
  LEN: passing((cell) => String(cell ?? "").length),
  LOWER: passing((cell) => String(cell ?? "").toLowerCase()),
  TRIM: passing((cell) => String(cell ?? "").trim()),
  LEFT: ([text, count]) => passing((cell) => String(cell ?? "").slice(0, count ? Number(one(count)) : 1))([text!]),
  RIGHT: ([text, count]) =>
    passing((cell) => {
      const words = String(cell ?? "");
      return words.slice(words.length - (count ? Number(one(count)) : 1));
    })([text!]),
  MID: ([text, from, count]) =>
    passing((cell) => String(cell ?? "").slice(Number(one(from)) - 1, Number(one(from)) - 1 + Number(one(count))))([text!]),
  SEARCH: ([wanted, text]) =>
    passing((cell) => {
      const place = String(cell ?? "")
        .toLowerCase()
        .indexOf(String(one(wanted)).toLowerCase());
      return place < 0 ? new CellError("#VALUE!", "SEARCH finds nothing") : place + 1;
    })([text!]),
  FIND: ([wanted, text]) =>
    passing((cell) => {
      const place = String(cell ?? "").indexOf(String(one(wanted)));
      return place < 0 ? new CellError("#VALUE!", "FIND finds nothing") : place + 1;
    })([text!]),
  SUBSTITUTE: ([text, was, is]) => passing((cell) => String(cell ?? "").replaceAll(String(one(was)), String(one(is) ?? "")))([text!]),
  TEXT: ([value, pattern]) => map((cell) => (cell instanceof CellError ? cell : shown(cell, String(one(pattern)))))([value!]),
  FIXED: ([value, digits]) => onNumber((number) => number.toFixed(digits ? Number(one(digits)) : 2))([value!]),
  DAY: onNumber((number) => dayOf(number).getUTCDate()),
  MONTH: onNumber((number) => dayOf(number).getUTCMonth() + 1),
  YEAR: onNumber((number) => dayOf(number).getUTCFullYear()),
  HOUR: onNumber((number) => Math.floor((number % 1) * 24 + 1e-9) % 24),
  MINUTE: onNumber((number) => Math.floor((number % 1) * 1440 + 1e-9) % 60),
  WEEKDAY: ([value, kind]) =>
    onNumber((number) => {
      const day = dayOf(number).getUTCDay();
      return Number(one(kind)) === 2 ? ((day + 6) % 7) + 1 : day + 1;
    })([value!]),
};
