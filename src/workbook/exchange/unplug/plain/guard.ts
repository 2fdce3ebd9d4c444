import type { ChoiceParameter, Column, ListParameter, NumberParameter, Parameter, TableParameter } from "../../../../functions/describe";
import { quantity } from "../../../../functions/quantities";
import { num, quote } from "./formula-parts";
import { layoutOf, type PlainArguments } from "./plain-arguments";
import { byUnits, typedLimit, type PlainUnits } from "./units";

/** Of one argument: when the answer is still blank (any of these), and what must hold for there to be one (all of these). */
interface Guard {
  readonly blanks: string[];
  readonly tests: string[];
}

/** One thing to ask before the sum: where any of the blanks holds the answer is blank, where a test fails it is refused. */
export type Question = { readonly blanks: readonly string[] } | { readonly tests: readonly string[] };

/**
 * What the call wrapper asks before it computes, in its order, from the function's description; see `src/functions/call.ts`.
 * The order matters: a wrong argument before one that is not filled in is an error, one behind it is not looked at. Units
 * come first of all. A range is refused for a wrong cell even where others are not filled in.
 */
export function questionsOf(x: PlainArguments): Question[] {
  const parameters = Object.entries(x.descriptor.parameters as Record<string, Parameter>);
  const inOrder = [...parameters.filter(([key]) => key === "units"), ...parameters.filter(([key]) => key !== "units")];
  return inOrder.flatMap(([key, parameter]): Question[] => {
    const { blanks, tests } = guardOf(x, key, parameter);
    return x.operand(key).kind === "range" ? [{ tests }, { blanks }] : [{ blanks }, { tests }];
  });
}

function guardOf(x: PlainArguments, key: string, parameter: Parameter): Guard {
  const guard: Guard = { blanks: [], tests: [] };
  const operand = x.operand(key);
  if (operand.kind === "range") {
    if (parameter.kind === "table") guardTable(guard, x, key, parameter);
    else if (parameter.kind === "list") guardList(guard, operand.all, parameter, x.units);
  } else if (operand.kind === "omitted") {
    if (parameter.optional !== true && !(parameter.kind === "number" && parameter.blank === "zero")) guard.blanks.push("TRUE");
  } else if (operand.kind === "constant") guardConstant(guard, operand.value, parameter, x.units);
  else if (parameter.kind === "number") guardNumber(guard, operand.text, parameter, x.units);
  else if (parameter.kind === "choice") guardChoice(guard, operand.text, parameter);
  return guard;
}

/** What is known already needs no test in the formula: a good constant leaves nothing, a bad one is refused outright. */
function guardConstant({ blanks, tests }: Guard, value: number | string | boolean, parameter: Parameter, units: PlainUnits): void {
  if (parameter.kind !== "number" && parameter.kind !== "choice") return;
  if (value === 0 && (parameter.kind === "choice" || parameter.blank === "missing")) {
    if (asksAboutZero(parameter, units)) {
      blanks.push(byUnits(units, "FALSE", "TRUE"));
      tests.push("FALSE");
    } else if (parameter.optional !== true) blanks.push("TRUE");
    return;
  }
  if (parameter.kind === "choice") {
    if (!parameter.choices.some((choice) => choice.toLowerCase() === String(value).trim().toLowerCase())) tests.push("FALSE");
  } else if (typeof value !== "number") tests.push("FALSE");
  else if (!("fixed" in units)) tests.push(...inLimits(parameter, num(value), units));
  else if (!isWithin(parameter, quantity(parameter.quantity).toCore(value, units.fixed))) tests.push("FALSE");
}

function isWithin({ limits: { above, atLeast, below, atMost }, covered, slip }: NumberParameter, core: number): boolean {
  const hair = 1e-9 * Math.max(1, Math.abs(core));
  const lower = above === undefined ? core >= (atLeast ?? -Infinity) - hair : core > above;
  const upper = below === undefined ? core <= (atMost ?? Infinity) + hair : core < below;
  if (slip !== undefined && core >= slip.from && core < slip.below) return false;
  return lower && upper && (covered === undefined || (core >= covered.from - hair && core <= covered.to + hair));
}

function guardNumber({ blanks, tests }: Guard, text: string, parameter: NumberParameter, units: PlainUnits): void {
  const within = inLimits(parameter, text, units);
  if (parameter.blank === "zero") tests.push(`OR(${text}="",AND(${within.join(",")}))`);
  else if (parameter.optional === true) tests.push(`OR(${text}="",${text}=0,AND(${within.join(",")}))`);
  else if (parameter.blank === "waits") {
    blanks.push(`${text}=""`);
    tests.push(...within);
  } else if (asksAboutZero(parameter, units)) {
    // Here an empty cell can be told from 0 °C.
    blanks.push(`${text}=""`, ...("fixed" in units ? [] : [byUnits(units, "FALSE", `${text}=0`)]));
    tests.push(byUnits(units, `${text}<>0`, "TRUE"), ...within);
  } else {
    blanks.push(`${text}=""`, `${text}=0`);
    tests.push(...within);
  }
}

/** 0 °C may be meant; 0 °F is far below any beer, and counts as empty. */
const asksAboutZero = (parameter: ChoiceParameter | NumberParameter, units: PlainUnits): boolean =>
  parameter.kind === "number" && parameter.zero === "asked" && !("fixed" in units && units.fixed === "us");

function guardChoice({ blanks, tests }: Guard, text: string, { choices, optional }: ChoiceParameter): void {
  const empty = [`${text}=""`, `${text}=0`];
  if (optional !== true) blanks.push(...empty);
  tests.push(`OR(${[...(optional === true ? empty : []), ...choices.map((choice) => `${text}=${quote(choice)}`)].join(",")})`);
}

/** Both ends of the limits. Every number has an upper one, which keeps texts out too: to Excel they are above all numbers. */
function inLimits({ limits, quantity, covered, slip }: NumberParameter, text: string, units: PlainUnits): string[] {
  const { above, atLeast, below, atMost } = limits;
  const low = covered && covered.from > (atLeast ?? above ?? -Infinity) ? covered.from : undefined;
  const high = covered && covered.to < (atMost ?? below ?? Infinity) ? covered.to : undefined;
  const lower = low ?? atLeast ?? above;
  const upper = high ?? atMost ?? below;
  return [
    ...(lower === undefined
      ? []
      : [`${text}${low === undefined && atLeast === undefined ? ">" : ">="}${typedLimit(quantity, lower, "low", units)}`]),
    ...(upper === undefined
      ? [`ISNUMBER(${text})`]
      : [`${text}${high === undefined && atMost === undefined ? "<" : "<="}${typedLimit(quantity, upper, "high", units)}`]),
    // As a sum, which goes through a whole column where OR would not.
    ...(slip === undefined ? [] : [`((${text}<${num(slip.from)})+(${text}>=${num(slip.below)})>0)`]),
  ];
}

/** Cells of a whole list at once: SUMPRODUCT calculates with ranges in every spreadsheet program, of any age. */
function guardList({ blanks, tests }: Guard, all: string, parameter: ListParameter, units: PlainUnits): void {
  const filled = filledCells(all, parameter.blank);
  if (parameter.blank === "missing") blanks.push(`SUMPRODUCT(${filled})=0`);
  tests.push(
    `SUMPRODUCT(${[filled, ...inLimits({ ...parameter, kind: "number" }, all, units).map(bracketed)].join("*")})=SUMPRODUCT(${filled})`,
    noText(all),
  );
}

function guardTable({ blanks, tests }: Guard, x: PlainArguments, key: string, parameter: TableParameter): void {
  const range = x.range(key);
  const columns = layoutOf(parameter, range.columns).flatMap((name, index) => {
    const column = name === null ? undefined : parameter.columns[name];
    return column === undefined ? [] : [{ column, text: range.column(index) }];
  });
  const [first, ...others] = columns;
  if (first === undefined) return;
  const filled = first.column.kind === "number" ? filledCells(first.text, first.column.blank) : `(${first.text}<>"")*(${first.text}<>0)`;
  // A table that may be left out may be empty, too.
  if (parameter.optional !== true) blanks.push(`SUMPRODUCT(${filled})=0`);
  const gaps = others
    .filter(({ column }) => column.optional !== true && !(column.kind === "number" && column.blank === "zero"))
    .map(({ text }) => `(${text}="")+(${text}=0)`);
  if (gaps.length > 0) blanks.push(`SUMPRODUCT(${filled}*(${gaps.join("+")}>0))>0`);
  const good = columns.map(({ column, text }) => columnIsGood(column, text, x.units)).filter((factor) => factor !== "");
  tests.push(`SUMPRODUCT(${[filled, ...good].join("*")})=SUMPRODUCT(${filled})`);
  if (first.column.kind === "number") tests.push(noText(first.text));
}

/** A factor of 1 for a good cell or one that is not filled in, 0 for one that would be refused. */
function columnIsGood(column: Column, text: string, units: PlainUnits): string {
  const empty = `(${text}="")+(${text}=0)`;
  if (column.kind === "choice") return `((${empty}+${column.choices.map((choice) => `(${text}=${quote(choice)})`).join("+")})>0)`;
  if (column.kind !== "number") return "";
  const within = inLimits(column, text, units).map(bracketed).join("*");
  const words = (column.words ?? []).map((word) => `+(${text}=${quote(word)})`).join("");
  return `((${column.blank === "zero" ? `(${text}="")` : empty}+ISNUMBER(${text})*${within}${words})>0)`;
}

const bracketed = (condition: string): string => `(${condition})`;
const filledCells = (text: string, blank: NumberParameter["blank"]): string =>
  blank === "missing" ? `ISNUMBER(${text})*(${text}<>0)` : `ISNUMBER(${text})*1`;
const noText = (text: string): string => `SUMPRODUCT(ISTEXT(${text})*(${text}<>""))=0`;
