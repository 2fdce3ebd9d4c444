import type { QuantityName, UnitSystem } from "./quantities";

/** What a cell can hold when it reaches us, already freed of Excel's own objects (see `CellError`). */
export type CellValue = number | string | boolean | null;
export type Matrix<T = unknown> = T[][];

/** Limits in the core's unit. Outside them the answer is #VALUE!. */
export interface Limits {
  readonly above?: number;
  readonly atLeast?: number;
  readonly below?: number;
  readonly atMost?: number;
}

/** Range that the cited source covers, in the core's unit. Outside it (but within the limits) the answer is #N/A. */
export interface Covered {
  readonly from: number;
  readonly to: number;
  readonly by: string;
}

/** A stretch of numbers, in the core's unit, that only a mistake leads to. */
export interface Slip {
  readonly from: number;
  readonly below: number;
  /** "no malt, extract or sugar gives 20 to 47 %". */
  readonly why: string;
  readonly hint: (typed: number) => string;
}

interface Described {
  /** Meaning in a brewer's words, without the unit (it is added from the quantity). */
  readonly doc: string;
  readonly optional?: boolean;
}

export interface NumberParameter extends Described {
  readonly kind: "number";
  readonly quantity: QuantityName;
  readonly limits: Limits;
  readonly covered?: Covered;
  /** Within the limits, but surely a slip of the hand: refused like a number outside them. */
  readonly slip?: Slip;
  /**
   * What an empty cell (0, null or "" depending on the platform) means: not filled in yet, or a real nought. "waits": 0 is
   * a value, as of distilled water, and a cell that is known to be empty is not filled in yet.
   */
  readonly blank: "missing" | "zero" | "waits";
  /** Of a temperature where 0 °C is real, too: typed as such it is asked about, since an empty cell looks the same. */
  readonly zero?: "asked";
  /** A usual value in the core's unit, for help and for tests. */
  readonly typical: number;
  /** Value when an optional argument is left out, in the core's unit. */
  readonly default?: number;
  /** Words that help when a number is outside the limits ("looks like °P: wrap it in GYLE.WORT.SG"). */
  readonly hint?: (typed: number) => string | undefined;
  /** In a column of a table: words that a cell may hold instead of a number. */
  readonly words?: readonly string[];
}

export interface ChoiceParameter<Choice extends string = string> extends Described {
  readonly kind: "choice";
  readonly choices: readonly Choice[];
  readonly default?: Choice;
  /** Words that help when it is none of the choices; `typed` comes in small letters. */
  readonly hint?: (typed: string) => string | undefined;
}

/** A column of numbers (times, gravities); blank cells arrive as `null`, so that columns stay side by side. */
export interface ListParameter extends Described {
  readonly kind: "list";
  readonly quantity: QuantityName;
  readonly limits: Limits;
  readonly blank: "missing" | "zero";
  readonly typical: number;
  readonly hint?: (typed: number) => string | undefined;
}

/** Free words: a name, a note. */
export interface TextParameter extends Described {
  readonly kind: "text";
}

export type Column = NumberParameter | ChoiceParameter | TextParameter;

/**
 * A range with named columns. `layouts` lists the accepted column orders, one for each width; `null` marks a column
 * that this function passes over. Columns missing from a layout arrive as `undefined` and must be optional.
 */
export interface TableParameter<Columns extends Record<string, Column> = Record<string, Column>> extends Described {
  readonly kind: "table";
  readonly columns: Columns;
  readonly layouts: readonly (readonly ((keyof Columns & string) | null)[])[];
  /** A table that may be left out, and of which `compute` wants to know that a row lacks a cell (`incomplete`), to answer blank; else it counts as left out then. */
  readonly halfFilled?: "waits";
}

/**
 * Rows and columns of one kind of number, as many of each as there are: scores. Rows with nothing in them are skipped, and so is
 * a heading of words; 0 and blank cells arrive as `null`.
 */
export interface BlockParameter extends Described {
  readonly kind: "block";
  readonly quantity: QuantityName;
  readonly limits: Limits;
  readonly blank: "missing";
  readonly typical: number;
  readonly hint?: (typed: number) => string | undefined;
}

/** A row or a column of cells as typed, whatever is in them: another function's arguments. */
export interface CellsParameter extends Described {
  readonly kind: "cells";
}

export type Parameter =
  NumberParameter | ChoiceParameter | TextParameter | ListParameter | BlockParameter | TableParameter | CellsParameter;

type Omissible<P, V> = P extends { default: {} } ? V : P extends { optional: true } ? V | undefined : V;

type ScalarValue<P> = P extends { kind: "number"; words: readonly (infer Word)[] }
  ? Omissible<P, number | Word>
  : P extends { kind: "number" }
    ? Omissible<P, number>
    : P extends { kind: "choice"; choices: readonly (infer C)[] }
      ? Omissible<P, C>
      : P extends { kind: "text" }
        ? Omissible<P, string>
        : never;

/** One filled-in row of a table, with its place in the range as typed (1 = first row) for messages and alignment. */
export type TableRow<Columns> = { readonly [K in keyof Columns]: ScalarValue<Columns[K]> } & { readonly rowNumber: number };

export interface TableRows<Columns> extends ReadonlyArray<TableRow<Columns>> {
  /** Height of the range as typed without its header row: spills that stand beside the table keep this height. */
  readonly height: number;
  /** A row lacks a cell: only where the table is described with `halfFilled: "waits"`. */
  readonly incomplete: boolean;
}

export type ArgumentValue<P> = P extends { kind: "table"; columns: infer Columns }
  ? Omissible<P, TableRows<Columns>>
  : P extends { kind: "list" }
    ? Omissible<P, readonly (number | null)[]>
    : P extends { kind: "block" }
      ? Omissible<P, readonly (readonly (number | null)[])[]>
      : P extends { kind: "cells" }
        ? Omissible<P, readonly unknown[]>
        : ScalarValue<P>;

export type ArgumentValues<Parameters> = { readonly [K in keyof Parameters]: ArgumentValue<Parameters[K]> };

/** What `compute` may ask of the wrapper besides its arguments. */
export interface Context {
  readonly units: UnitSystem;
  /** A core value as a number in the brewer's units: for the cells of a grid result. */
  readonly show: (quantity: QuantityName, coreValue: number) => number;
}

export type ResultKind =
  | { readonly kind: "number"; readonly quantity: QuantityName; readonly doc: string }
  | { readonly kind: "text"; readonly doc: string }
  | { readonly kind: "grid"; readonly doc: string; readonly columns: readonly string[] };

/** A number, or an empty text for "no answer yet" where a function asks another one. */
type ComputedValue<R> = R extends { kind: "number" } ? number | "" : R extends { kind: "text" } ? string : (string | number)[][];

export interface Source {
  /** Author, title, edition or year: something a reader can find. "common practice" where the trade has no source. */
  readonly cite: string;
  /** Equation, table or page. */
  readonly where: string;
}

/** A worked example. Arguments as typed, positional: numbers, texts, `null` for one left out, matrices for ranges. */
export interface Example {
  readonly arguments: readonly (CellValue | CellValue[][])[];
  readonly value: number | string | (number | string)[][];
  /** Absolute, for numbers. */
  readonly tolerance?: number;
  /** Where the value comes from: a source, or "worked by hand" with the sum. */
  readonly from: string;
}

/** How far an equation may be off by itself, whatever goes into it, because its source says so. */
export interface ModelSpread {
  /** ± of the result in the core's unit, 19 times out of 20. */
  readonly plusOrMinus: number;
  /** Who says so. */
  readonly from: string;
}

export interface Descriptor<P extends Record<string, Parameter> = Record<string, Parameter>, R extends ResultKind = ResultKind> {
  /** "BEER.ABV": the worksheet name without the namespace. Never changes once published. */
  readonly id: string;
  /** One sentence: what it is for. */
  readonly summary: string;
  /** In the order in which they are typed. Keys are camelCase here, snake_case for the brewer. */
  readonly parameters: P;
  readonly result: R;
  /** The equation in plain notation. */
  readonly equation: string;
  readonly sources: readonly Source[];
  readonly examples: readonly Example[];
  /** GAUGE.SPREAD and the pane add it to what the readings bring. Left out where no source states one. */
  readonly modelSpread?: ModelSpread;
  /** Safety and pitfalls, each a short sentence. */
  readonly cautions?: readonly string[];
  /** Core units in, core units out (a grid's numbers go through `context.show`). */
  readonly compute: (values: ArgumentValues<P>, context: Context) => ComputedValue<R>;
}

/** A descriptor in the registry: its argument types are known only to itself. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- the registry holds descriptors of every shape
export type AnyDescriptor = Descriptor<any, any>;

/** Checks a worksheet function's description at compile time; changes nothing. */
export function describeFunction<const P extends Record<string, Parameter>, const R extends ResultKind>(
  descriptor: Descriptor<P, R>,
): Descriptor<P, R> {
  return descriptor;
}

/** "finalGravity" → "final_gravity": the argument's name as the brewer sees it. */
export function argumentName(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}
