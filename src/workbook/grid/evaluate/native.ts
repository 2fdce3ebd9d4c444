import { CellError } from "../../../functions/cell-error";
import { broadcast, isSingle, joined, single, type Cell, type Cells } from "./cells";
import { asNumber, wordsOf } from "./operators";

/** Arguments are worked out when they are asked for: IF must not look at the branch that it does not take. */
type Argument = () => Cells;
/** Undefined where a function is used in a way that we do not follow. */
type Native = (given: readonly Argument[]) => Cells | undefined;

const first = (cells: Cells): Cell => cells[0]?.[0] ?? null;
const one = (argument: Argument | undefined): Cell => (argument ? first(argument()) : null);
const cellsOf = (argument: Argument | undefined): Cells => argument?.() ?? single(null);
const isTrue = (cell: Cell): boolean => (typeof cell === "string" ? cell.toLowerCase() === "true" : Boolean(cell));

/** Cell by cell, whatever is in it. */
const map =
  (compute: (cell: Cell) => Cell): Native =>
  ([cells]) =>
    cellsOf(cells).map((row) => row.map(compute));
/** Cell by cell; an error passes through. */
const passing = (compute: (cell: Exclude<Cell, CellError>) => Cell): Native =>
  map((cell) => (cell instanceof CellError ? cell : compute(cell)));
const finite = (value: number): Cell => (Number.isFinite(value) ? value : new CellError("#NUM!", "there is no finite answer"));
const onNumber = (compute: (value: number) => Cell): Native =>
  map((cell) => {
    const value = asNumber(cell);
    return value instanceof CellError ? value : compute(value);
  });

/** Two arguments that go side by side, as native functions of two numbers do. */
const eachNumber =
  (compute: (value: number, by: number) => Cell): Native =>
  ([value, by]) =>
    joined(cellsOf(value), by?.() ?? single(0), (cell, other) => {
      const [number, digits] = [asNumber(cell), asNumber(other)];
      return number instanceof CellError ? number : digits instanceof CellError ? digits : compute(number, digits);
    });

/** The numbers among cells; in ranges, texts and blanks are passed over. The first error is the answer. */
const overNumbers =
  (compute: (numbers: readonly number[]) => Cell): Native =>
  (given) => {
    const cells = given.flatMap((argument) => argument().flat());
    const error = cells.find((cell) => cell instanceof CellError);
    return single(error ?? compute(cells.filter((cell) => typeof cell === "number")));
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

const condition: Native = ([test, then, otherwise]) => {
  const tested = cellsOf(test);
  if (!isSingle(tested)) {
    const [yes, no] = [cellsOf(then), otherwise?.() ?? single(false)];
    return tested.map((row, r) => row.map((cell, c) => (cell instanceof CellError ? cell : broadcast(isTrue(cell) ? yes : no, r, c))));
  }
  const held = first(tested);
  if (held instanceof CellError) return single(held);
  if (typeof held === "string" && !/^(true|false)$/i.test(held))
    return single(new CellError("#VALUE!", `IF asks about the text "${held}"`));
  return isTrue(held) ? (then?.() ?? single(true)) : (otherwise?.() ?? single(false));
};

const ifError: Native = ([value, instead]) => {
  const cells = cellsOf(value);
  const other = cells.flat().some((cell) => cell instanceof CellError) ? cellsOf(instead) : single(null);
  return cells.map((row, r) => row.map((cell, c) => (cell instanceof CellError ? broadcast(other, r, c) : cell)));
};

const choose: Native = ([which, ...choices]) => {
  const wanted = cellsOf(which);
  if (isSingle(wanted)) {
    const held = first(wanted);
    if (held instanceof CellError) return single(held);
    return choices[Math.trunc(Number(held)) - 1]?.() ?? single(new CellError("#VALUE!", "CHOOSE has no such choice"));
  }
  const chosen = choices.map((choice) => choice());
  if (!chosen.every(isSingle)) return undefined;
  return wanted.map((row) =>
    row.map((number) => first(chosen[Number(number) - 1] ?? single(new CellError("#VALUE!", "CHOOSE has no such choice")))),
  );
};

const index: Native = ([block, row, column]) => {
  const cells = cellsOf(block);
  const [asked, beside] = [row ? one(row) : 1, column ? one(column) : 1];
  for (const cell of [asked, beside]) if (cell instanceof CellError) return single(cell);
  const [line, place] = cells.length === 1 && column === undefined ? [1, Number(asked ?? 0)] : [Number(asked ?? 0), Number(beside ?? 0)];
  if (line === 0 && place >= 1) return cells.map((cellsOfRow) => [cellsOfRow[place - 1] ?? null]);
  if (place === 0 && line >= 1 && column !== undefined)
    return [cells[line - 1] ?? [new CellError("#REF!", "INDEX asks for a row outside of the block")]];
  if (!(line >= 1 && place >= 1)) return undefined;
  return single(
    cells[line - 1]?.[place - 1] ??
      (cells[line - 1] && place <= (cells[0]?.length ?? 0) ? null : new CellError("#REF!", "INDEX asks for a cell outside of the block")),
  );
};

const match: Native = ([wanted, cells, kind]) => {
  const [asked, found] = [one(wanted), cellsOf(cells).flat()];
  if (asked instanceof CellError) return single(asked);
  const exact = kind !== undefined && one(kind) === 0;
  const isSame = (cell: Cell) =>
    typeof cell === "string" && typeof asked === "string" ? cell.toLowerCase() === asked.toLowerCase() : cell === asked;
  // Without a 0 the last one that is not larger: the columns of ours that it is asked about rise.
  const place = exact ? found.findIndex(isSame) : found.findLastIndex((cell) => typeof cell === typeof asked && cell! <= asked!);
  return single(place < 0 ? new CellError("#N/A", "MATCH finds nothing") : place + 1);
};

const textOf = (cell: Cell): string => (cell instanceof CellError ? cell.code : wordsOf(cell));

/** What COUNTIFS and its kin ask: ">0", "<=1", "steep". */
function fits(asked: Cell): (cell: Cell) => boolean {
  const [, sign = "=", wanted = ""] = /^(<=|>=|<>|<|>|=)?(.*)$/s.exec(textOf(asked)) ?? [];
  const bound = Number(wanted);
  if (wanted === "" || Number.isNaN(bound))
    return (cell) => !(cell instanceof CellError) && (wordsOf(cell).toLowerCase() === wanted.toLowerCase()) === (sign !== "<>");
  const holds: Readonly<Record<string, (value: number) => boolean>> = {
    "=": (value) => value === bound,
    "<>": (value) => value !== bound,
    "<": (value) => value < bound,
    ">": (value) => value > bound,
    "<=": (value) => value <= bound,
    ">=": (value) => value >= bound,
  };
  return (cell) => (typeof cell === "number" ? holds[sign]?.(cell) === true : sign === "<>");
}

/** Which lines fit every pair of a column and what is asked of it. */
function fitting(pairs: readonly Argument[]): boolean[] {
  const columns = Array.from({ length: pairs.length / 2 }, (_, at) => {
    const holds = fits(one(pairs[2 * at + 1]));
    return cellsOf(pairs[2 * at])
      .flat()
      .map(holds);
  });
  return (columns[0] ?? []).map((_, row) => columns.every((column) => column[row]));
}
const chosenBy = (cells: Argument | undefined, pairs: readonly Argument[]): number[] => {
  const held = fitting(pairs);
  return cellsOf(cells)
    .flat()
    .filter((cell, row): cell is number => typeof cell === "number" && held[row] === true);
};
const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0);
const mean = (numbers: readonly number[]): Cell =>
  numbers.length > 0 ? sum(numbers) / numbers.length : new CellError("#DIV/0!", "the mean of no number");
const count: Native = (given) => single(fitting(given).filter(Boolean).length);

const sumProduct: Native = (given) => {
  const columns = given.map((argument) => argument().flat());
  const error = columns.flat().find((cell) => cell instanceof CellError);
  if (error) return single(error);
  if (columns.some((column) => column.length !== columns[0]?.length))
    return single(new CellError("#VALUE!", "SUMPRODUCT takes columns of one length"));
  return single(
    (columns[0] ?? []).reduce<number>(
      (total, _, row) => total + columns.reduce((product, column) => product * (typeof column[row] === "number" ? column[row] : 0), 1),
      0,
    ),
  );
};

/** Excel rounds what it shows: 15 digits, halves away from nought. */
function rounded(value: number, digits: number, round: (value: number) => number = Math.round): number {
  const scale = 10 ** digits;
  return (Math.sign(value) * round(Number((Math.abs(value) * scale).toPrecision(15)))) / scale;
}
const fixed = (value: number, digits: number): string => rounded(value, digits).toFixed(Math.max(0, digits));
const withThousands = (text: string): string => text.replace(/\B(?=(\d{3})+(?!\d))(?<!\.\d*)/g, ",");

/** TEXT in the patterns of noughts that the sheets use, and in the parts of a date: the others only the spreadsheet knows. */
function shown(value: Cell, pattern: string): Cell | undefined {
  const number = asNumber(value);
  if (number instanceof CellError) return typeof value === "string" ? value : number;
  const [, decimals = "", percent] = /^[#,]*0(?:\.(0+))?(%?)$/.exec(pattern) ?? [];
  if (percent !== undefined) return `${fixed(percent ? number * 100 : number, decimals.length)}${percent}`;
  if (!/^(yyyy|mm|dd|hh|d|h|[ .:/-])+$/.test(pattern)) return undefined;
  const day = new Date(Math.round((number - 25569) * 86_400_000));
  const two = (part: number) => String(part).padStart(2, "0");
  const parts: Readonly<Record<string, string>> = {
    yyyy: String(day.getUTCFullYear()),
    mm: two(day.getUTCMonth() + 1),
    dd: two(day.getUTCDate()),
    hh: two(day.getUTCHours()),
    d: String(day.getUTCDate()),
    h: String(day.getUTCHours()),
  };
  return pattern.replace(/yyyy|mm|dd|hh|d|h/g, (part) => parts[part] ?? part);
}

const dayOf = (number: number): Date => new Date(Math.floor(number - 25569) * 86_400_000);
/** What of a day number is left beside whole units, a hair added: a ninth of a day is no whole count of minutes. */
const part = (number: number, ofDay: number, within: number): number => Math.floor((number - Math.floor(number)) * ofDay + 1e-9) % within;
const count0 = (cell: Cell): number => (cell instanceof CellError ? NaN : Number(cell ?? 0));

/** Where a text stands in another. */
const place =
  (find: (words: string, wanted: string) => number): Native =>
  ([wanted, words]) => {
    const asked = one(wanted);
    if (asked instanceof CellError) return single(asked);
    return passing((cell) => {
      const at = find(wordsOf(cell), wordsOf(asked));
      return at < 0 ? new CellError("#VALUE!", "the text is not in it") : at + 1;
    })([() => cellsOf(words)]);
  };

/** Of so many trials: the probability of 0, of 0 or 1, and so on, until `isEnough`; and how far it came. */
function untilEnough(trials: number, chance: number, isEnough: (successes: number, probability: number) => boolean): [number, number] {
  let logarithm = trials * Math.log(1 - chance);
  let below = Math.exp(logarithm);
  let successes = 0;
  while (successes < trials && !isEnough(successes, below)) {
    logarithm += Math.log(((trials - successes) * chance) / ((successes + 1) * (1 - chance)));
    successes += 1;
    below += Math.exp(logarithm);
  }
  return [successes, below];
}
/** BINOMDIST added up, and CRITBINOM: both ask three numbers. */
const ofTrials =
  (compute: (one: number, two: number, three: number) => Cell): Native =>
  (given) => {
    const asked = given.slice(0, 3).map((argument) => asNumber(one(argument)));
    const [first, second, third] = asked;
    return single(
      asked.find((cell) => cell instanceof CellError) ??
        (first === undefined || second === undefined || third === undefined
          ? new CellError("#VALUE!", "three numbers are asked for")
          : compute(Number(first), Number(second), Number(third))),
    );
  };

/** Only what our sheets and their plain forms use: the spreadsheet knows them all, and a second engine is not wanted. */
export const nativeFunctions: ReadonlyMap<string, Native> = new Map<string, Native>(
  Object.entries({
    IF: condition,
    IFERROR: ifError,
    CHOOSE: choose,
    INDEX: index,
    MATCH: match,
    N: ([value]) => {
      const cell = one(value);
      return value ? single(typeof cell === "string" ? 0 : cell instanceof CellError ? cell : asNumber(cell)) : undefined;
    },
    NA: () => single(new CellError("#N/A", "not available")),
    ISNUMBER: map((cell) => typeof cell === "number"),
    ISTEXT: map((cell) => typeof cell === "string"),
    ISERROR: map((cell) => cell instanceof CellError),
    ISBLANK: map((cell) => cell === null),
    AND: logical((tests) => tests.every(Boolean)),
    OR: logical((tests) => tests.some(Boolean)),
    NOT: passing((cell) => !isTrue(cell)),
    SUM: overNumbers(sum),
    MIN: overNumbers((numbers) => (numbers.length > 0 ? Math.min(...numbers) : 0)),
    MAX: overNumbers((numbers) => (numbers.length > 0 ? Math.max(...numbers) : 0)),
    AVERAGE: overNumbers(mean),
    SMALL: ([cells, place]) => {
      const numbers = cellsOf(cells)
        .flat()
        .filter((cell) => typeof cell === "number")
        .sort((a, b) => a - b);
      return single(numbers[count0(one(place)) - 1] ?? new CellError("#NUM!", "SMALL asks for more numbers than there are"));
    },
    COUNT: (given) => single(given.flatMap((argument) => argument().flat()).filter((cell) => typeof cell === "number").length),
    COUNTA: (given) => single(given.flatMap((argument) => argument().flat()).filter((cell) => cell !== null).length),
    COUNTIF: count,
    COUNTIFS: count,
    SUMIF: ([cells, asked, values]) => single(sum(chosenBy(values ?? cells, [() => cellsOf(cells), () => cellsOf(asked)]))),
    SUMIFS: ([values, ...pairs]) => single(sum(chosenBy(values, pairs))),
    MAXIFS: ([values, ...pairs]) => single(Math.max(...((found) => (found.length > 0 ? found : [0]))(chosenBy(values, pairs)))),
    MINIFS: ([values, ...pairs]) => single(Math.min(...((found) => (found.length > 0 ? found : [0]))(chosenBy(values, pairs)))),
    AVERAGEIFS: ([values, ...pairs]) => single(mean(chosenBy(values, pairs))),
    SUMPRODUCT: sumProduct,
    ABS: onNumber(Math.abs),
    INT: onNumber(Math.floor),
    ROUND: eachNumber((value, digits) => rounded(value, digits)),
    ROUNDUP: eachNumber((value, digits) => rounded(value, digits, Math.ceil)),
    ROUNDDOWN: eachNumber((value, digits) => rounded(value, digits, Math.floor)),
    MOD: eachNumber((value, by) => (by === 0 ? new CellError("#DIV/0!", "divided by nothing") : value - Math.floor(value / by) * by)),
    SQRT: onNumber((value) => finite(Math.sqrt(value))),
    EXP: onNumber((value) => finite(Math.exp(value))),
    LN: onNumber((value) => finite(value > 0 ? Math.log(value) : NaN)),
    TANH: onNumber((value) => finite(Math.tanh(value))),
    SINH: onNumber((value) => finite(Math.sinh(value))),
    ASINH: onNumber((value) => finite(Math.asinh(value))),
    BINOMDIST: ofTrials((successes, trials, chance) =>
      successes < 0 || successes > trials
        ? new CellError("#NUM!", "more successes than trials, or fewer than none")
        : untilEnough(trials, chance, (at) => at === successes)[1],
    ),
    CRITBINOM: ofTrials((trials, chance, probability) => untilEnough(trials, chance, (_, below) => below >= probability)[0]),
    PI: () => single(Math.PI),
    LEN: passing((cell) => wordsOf(cell).length),
    LOWER: passing((cell) => wordsOf(cell).toLowerCase()),
    TRIM: passing((cell) => wordsOf(cell).trim()),
    LEFT: ([words, length]) => passing((cell) => wordsOf(cell).slice(0, length ? count0(one(length)) : 1))([() => cellsOf(words)]),
    RIGHT: ([words, length]) =>
      passing((cell) => {
        const whole = wordsOf(cell);
        return whole.slice(Math.max(0, whole.length - (length ? count0(one(length)) : 1)));
      })([() => cellsOf(words)]),
    MID: ([words, from, length]) =>
      passing((cell) => wordsOf(cell).slice(count0(one(from)) - 1, count0(one(from)) - 1 + count0(one(length))))([() => cellsOf(words)]),
    SEARCH: place((words, wanted) => words.toLowerCase().indexOf(wanted.toLowerCase())),
    FIND: place((words, wanted) => words.indexOf(wanted)),
    SUBSTITUTE: ([words, was, is]) =>
      joined(cellsOf(words), cellsOf(is), (cell, other) => {
        if (cell instanceof CellError) return cell;
        return other instanceof CellError ? other : wordsOf(cell).replaceAll(textOf(one(was)), wordsOf(other));
      }),
    TEXT: ([value, pattern]) => {
      const words = cellsOf(value).map((row) => row.map((cell) => (cell instanceof CellError ? cell : shown(cell, textOf(one(pattern))))));
      return words.flat().includes(undefined) ? undefined : (words as Cells);
    },
    FIXED: ([value, digits, plain]) =>
      onNumber((number) => {
        const text = fixed(number, digits ? count0(one(digits)) : 2);
        return plain && isTrue(one(plain)) ? text : withThousands(text);
      })([() => cellsOf(value)]),
    DAY: onNumber((number) => dayOf(number).getUTCDate()),
    MONTH: onNumber((number) => dayOf(number).getUTCMonth() + 1),
    YEAR: onNumber((number) => dayOf(number).getUTCFullYear()),
    HOUR: onNumber((number) => part(number, 24, 24)),
    MINUTE: onNumber((number) => part(number, 1440, 60)),
    WEEKDAY: ([value, kind]) =>
      onNumber((number) => {
        const day = dayOf(number).getUTCDay();
        return count0(one(kind)) === 2 ? ((day + 6) % 7) + 1 : day + 1;
      })([() => cellsOf(value)]),
  } satisfies Record<string, Native>),
);
