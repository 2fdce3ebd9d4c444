import type { QuantityName, UnitSystem } from "../../../functions/quantities";
import type { NumberFormat } from "../../grid/plan/sheet-plan";
import type { PlanVersion } from "./plan-version";

/** How the sugar comes about: bought as extract (with some grain steeped for taste), or mashed from malt. */
export const methods = ["extract", "all-grain"] as const;
export type Method = (typeof methods)[number];

/** What a batch sheet is made for: words, units and usual values go by it. */
export interface On {
  readonly units: UnitSystem;
  readonly method: Method;
}

/** One thing for every sheet, or one for each unit system, or whatever the sheet asks for. */
export type For<T> = T | Readonly<Record<UnitSystem, T>> | ((on: On) => T);

/** What a number measures. Maltsters' colours are °L on a US sheet and EBC on a metric one. */
export type Measure = QuantityName | "maltColour";

/** Lowest and highest, in the units of the sheet. */
export type Limits = readonly [number, number];

interface Described {
  /** Its name on the sheet; left out where it stands in a table, or on no sheet at all. */
  readonly cell?: string;
  /** Row and column within a named block, for a cell without a name of its own. */
  readonly within?: readonly [block: string, row: number, column: number];
  /** What stands before it on the sheet, or above it in a table. */
  readonly label: For<string>;
  /** What it is called in a sentence; left out: the label, without its capital. */
  readonly called?: string;
  readonly note?: For<string> | ((on: On) => string | undefined);
  /**
   * "plan" unless said otherwise. What was measured, tasted and noted belongs to the beer that was brewed: a plan made from it
   * begins without. Prices stay behind where the brewer wishes it.
   */
  readonly role?: "plan" | "measured" | "price";
  /** The plan that brought it; older sheets and files lack it. */
  readonly since?: PlanVersion;
}

export interface NumberField extends Described {
  readonly kind: "number";
  /** Left out: a count, or a number that is the same in both unit systems. */
  readonly measure?: Measure;
  readonly format: For<NumberFormat>;
  /** Beside the cell; left out: that of the measure. */
  readonly unit?: For<string>;
  readonly limits: For<Limits>;
  /** The sheet refuses what is outside the limits while it is typed. */
  readonly held?: true;
  /** May be left empty: not measured yet, or none. Else an emptied cell counts as 0, unless its group says otherwise. */
  readonly blank?: true;
  readonly usual?: For<number>;
  /** 0 is shown as an empty cell. */
  readonly emptyAtZero?: true;
  /** Words that may stand there in place of a number. */
  readonly words?: readonly string[];
  /** An amount that goes into the batch: it grows and shrinks with the volume. */
  readonly grows?: true;
  /** Whole numbers only. */
  readonly whole?: true;
  /** Steps in which a converted or scaled figure is still told apart, where the measure's own would be too coarse. */
  readonly step?: number;
  /** Beyond these it is the other system's unit, or a slip: in the core's unit, with the words that come before the figure. */
  readonly plausible?: { readonly from: number; readonly to: number; readonly words: string };
  /** A percentage that may be typed as a share of one by mistake: what is asked about, "A yield". */
  readonly percentOf?: string;
}

/** A day, a time of day or both, as Excel counts them. */
export interface MomentField extends Described {
  readonly kind: "moment";
  readonly format: "date" | "time" | "dateTime";
  readonly blank?: true;
  readonly usual?: number;
  /** Left out: days of our time. */
  readonly limits?: Limits;
}

export interface ChoiceField extends Described {
  readonly kind: "choice";
  readonly choices: readonly string[];
  readonly usual?: string;
  /** What an unknown word counts as; left out: the usual one, else the first. */
  readonly otherwise?: string;
  /** What the sheet says of the choices. */
  readonly message?: string;
}

export interface TextField extends Described {
  readonly kind: "text";
  /** Characters that a file may bring. */
  readonly longest: number;
  /** Offered on the sheet; a word of one's own may stand there, too. */
  readonly offers?: readonly string[];
  readonly usual?: string;
  /** Excel may take it for a number. */
  readonly general?: true;
  /** In a table: left out of the line where it is empty. */
  readonly optional?: true;
}

/** Letters and digits that nobody reads: a batch's own mark, the name of its sheet. */
export interface MarkField extends Described {
  readonly kind: "mark";
  readonly longest: number;
  readonly pattern?: RegExp;
}

/** Words, or a formula over the sheet's own names, or (`numbers`) a number within these limits. */
export interface FormulaField extends Described {
  readonly kind: "formula";
  readonly longest: number;
  readonly numbers?: Limits;
}

export type Single = NumberField | MomentField | ChoiceField | TextField | MarkField | FormulaField;

export type Column = Exclude<Single, MarkField> & {
  /** Where it stands. */
  readonly column: string;
  /** Beside the table, not in it: a line that holds nothing else is empty. */
  readonly beside?: true;
  /** A line without a number here does not count. */
  readonly needed?: true;
};

export interface Group {
  readonly kind: "group";
  readonly label: string;
  readonly since?: PlanVersion;
  /** A cell of it that was emptied, or that the sheet never had, counts as its usual value. */
  readonly emptied?: "usual";
  readonly fields: Fields;
  /** Only there where somebody asked for it; `area` tells whether a sheet has it. */
  readonly optional?: true;
  /** Only for batches that are brewed so; left out: for all. */
  readonly method?: Method;
  /** Name over all that stands of it on the sheet. */
  readonly area?: string;
}

/** Lines of the same columns. */
export interface Table {
  readonly kind: "table";
  readonly label: string;
  readonly role?: "measured";
  readonly columns: Readonly<Record<string, Column>>;
  /** Names on the sheet, each for these columns of all lines ("B:D"); the first one tells where the lines are. */
  readonly areas: Readonly<Record<string, string>>;
  /** Lines that a file may bring; the sheet grows with them. */
  readonly longest: number;
  /** Only there when somebody has changed what the sheet says by itself. */
  readonly optional?: true;
}

/** One cell beside each line of something. */
export interface List {
  readonly kind: "list";
  readonly label: string;
  readonly role?: "measured";
  readonly cell: string;
  readonly each: MomentField;
  readonly longest: number;
}

export type Field = Single | Group | Table | List;
export type Fields = Readonly<Record<string, Field>>;

/** Checks a description at compile time; changes nothing. */
export const describeFields = <const F extends Fields>(fields: F): F => fields;

type Blank = "";
type SingleValue<F> = F extends { kind: "number"; words: readonly (infer Word)[] }
  ? number | Word
  : F extends { kind: "number" | "moment"; blank: true }
    ? number | Blank
    : F extends { kind: "number" | "moment" }
      ? number
      : F extends { kind: "choice"; choices: readonly (infer Choice)[] }
        ? Choice
        : F extends { kind: "text" | "mark" }
          ? string
          : F extends { kind: "formula"; numbers: Limits }
            ? number | string
            : F extends { kind: "formula" }
              ? string
              : never;

type ValueOf<F> = F extends { kind: "group"; fields: infer Inside }
  ? ValuesOf<Inside>
  : F extends { kind: "table"; columns: infer Columns }
    ? readonly ValuesOf<Columns>[]
    : F extends { kind: "list"; each: infer Each }
      ? readonly SingleValue<Each>[]
      : SingleValue<F>;

type OptionalKeys<F> = { [Key in keyof F]: F[Key] extends { optional: true } ? Key : never }[keyof F];

/** What stands in fields that are described so: the contents' type follows from the description. */
export type ValuesOf<F> = { readonly [Key in Exclude<keyof F, OptionalKeys<F>>]: ValueOf<F[Key]> } & {
  readonly [Key in OptionalKeys<F>]?: ValueOf<F[Key]>;
} extends infer Both
  ? { [Key in keyof Both]: Both[Key] }
  : never;

/** The names that described fields have on the sheet. */
export type CellsOf<F> = F extends { kind: "group"; fields: infer Inside }
  ? { [Key in keyof Inside]: CellsOf<Inside[Key]> }[keyof Inside] | (F extends { area: infer Area extends string } ? Area : never)
  : F extends { kind: "table"; areas: infer Areas }
    ? keyof Areas & string
    : F extends { cell: infer Cell extends string }
      ? Cell
      : never;

/** What stands at a place of the description that is not known at compile time. */
export type Value = number | string | Values | readonly Value[] | undefined;
export interface Values {
  readonly [key: string]: Value;
}

/** What a description says for this sheet. */
export function forSheet<T>(what: For<T>, on: On): T {
  if (typeof what === "function") return (what as (on: On) => T)(on);
  const forEach = what as Readonly<Record<UnitSystem, T>>;
  return typeof what === "object" && what !== null && "metric" in what ? forEach[on.units] : what;
}

/** What the sheet says of a field in a note. */
export const noteOf = ({ note }: Single | Column, on: On): string | undefined =>
  typeof note === "function" ? note(on) : note && forSheet(note, on);

/** What a field is called within a sentence. */
export function called(field: Field | Column): string {
  if ("called" in field && field.called !== undefined) return field.called;
  // A label that goes by the sheet says the same for both.
  const label = forSheet(field.label, { units: "metric", method: "all-grain" });
  return label.charAt(0).toLowerCase() + label.slice(1);
}
