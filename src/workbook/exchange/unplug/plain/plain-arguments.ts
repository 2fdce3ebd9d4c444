import type { AnyDescriptor, ChoiceParameter, NumberParameter, Parameter } from "../../../../functions/describe";
import { quantity, type QuantityName } from "../../../../functions/quantities";
import { atom, num, quote } from "./formula-parts";
import type { Operand, RangeOperand } from "./operands";
import { NoPlainForm } from "./no-plain-form";
import { byUnits, fromCoreText, scale, toCoreText, type PlainUnits } from "./units";

/** The arguments of one call as pieces of formula: what a plain form is put together from. */
export class PlainArguments {
  readonly units: PlainUnits;

  constructor(
    readonly descriptor: AnyDescriptor,
    private readonly operands: ReadonlyMap<string, Operand>,
  ) {
    this.units = unitsOf(this.operand("units"));
  }

  parameter(key: string): Parameter | undefined {
    return (this.descriptor.parameters as Record<string, Parameter>)[key];
  }

  operand(key: string): Operand {
    const operand = this.operands.get(key) ?? { kind: "omitted" };
    // As in the call wrapper: an empty text counts as left out.
    return operand.kind === "constant" && operand.value === "" ? { kind: "omitted" } : operand;
  }

  /** A number argument in the core's unit, with its default; a name or a bracketed sum. */
  core(key: string): string {
    const parameter = this.parameter(key) as NumberParameter;
    const { default: fallback, blank, quantity: name, optional } = parameter;
    const operand = this.operand(key);
    const whenBlank = fallback ?? 0;
    if (operand.kind === "omitted") return num(whenBlank);
    if (operand.kind === "constant") {
      // A word where a number belongs: the guard refuses it, whatever stands here.
      if (typeof operand.value !== "number") return num(whenBlank);
      if (operand.value === 0 && blank === "missing") return num(whenBlank);
      return "fixed" in this.units
        ? num(quantity(name).toCore(operand.value, this.units.fixed))
        : atom(toCoreText(name, num(operand.value), this.units));
    }
    if (operand.kind === "range") throw new NoPlainForm(`${key} is a range`);
    const { text } = operand;
    if (blank === "zero" && whenBlank === 0) return atom(toCoreText(name, `N(${text})`, this.units));
    const core = toCoreText(name, text, this.units);
    if (blank === "zero") return `IF(${text}="",${num(whenBlank)},${core})`;
    return optional === true && fallback !== undefined ? `IF(OR(${text}="",${text}=0),${num(fallback)},${core})` : atom(core);
  }

  /** The same call with one word fixed: what it comes to if the cell that is asked says so. */
  with(key: string, value: string): PlainArguments {
    return new PlainArguments(this.descriptor, new Map([...this.operands, [key, { kind: "constant", value }]]));
  }

  /** Whether an argument without a default was given: true, false, or the condition for it. */
  given(key: string): boolean | string {
    const operand = this.operand(key);
    if (operand.kind === "constant") return operand.value !== 0 && operand.value !== "";
    return operand.kind === "text" ? `NOT(OR(${operand.text}="",${operand.text}=0))` : operand.kind === "range";
  }

  /** The piece of formula that belongs to the word chosen; where a cell says the word, all of them in nested IFs. */
  choice(key: string, pieces: Readonly<Record<string, string>>): string {
    const { choices, default: fallback } = this.parameter(key) as ChoiceParameter;
    const operand = this.operand(key);
    const last = fallback ?? choices[choices.length - 1] ?? "";
    if (operand.kind !== "text") {
      const word = operand.kind === "constant" && operand.value !== 0 ? String(operand.value).trim().toLowerCase() : last.toLowerCase();
      const found = choices.find((choice) => choice.toLowerCase() === word);
      // An unknown word is an error whatever stands here: see the guard.
      return (found === undefined ? undefined : pieces[found]) ?? pieces[last] ?? "";
    }
    return choices
      .filter((choice) => choice !== last)
      .reduceRight((otherwise, choice) => `IF(${operand.text}=${quote(choice)},${pieces[choice] ?? ""},${otherwise})`, pieces[last] ?? "");
  }

  /** The number or text that belongs to the word chosen, looked up where a cell says the word; for required words. */
  lookUp(key: string, values: Readonly<Record<string, string>>): string {
    const operand = this.operand(key);
    if (operand.kind !== "text") return this.choice(key, values);
    return `INDEX({${Object.values(values).join(",")}},MATCH(${operand.text},{${Object.keys(values).map(quote).join(",")}},0))`;
  }

  range(key: string): RangeOperand {
    const operand = this.operand(key);
    if (operand.kind !== "range") throw new NoPlainForm(`${key} is no plain range of cells`);
    return operand;
  }

  /** A column of a table argument, without its heading; undefined where the layout leaves it out. */
  column(key: string, column: string): string | undefined {
    const range = this.range(key);
    const index = layoutOf(this.parameter(key), range.columns).indexOf(column);
    return index < 0 ? undefined : range.column(index);
  }

  /** One cell of a table argument. */
  cell(key: string, column: string, row: number): string | undefined {
    const range = this.range(key);
    const index = layoutOf(this.parameter(key), range.columns).indexOf(column);
    return index < 0 ? undefined : range.cell(row, index);
  }

  /** What a column of amounts is multiplied by to come to the core's unit. */
  scale(name: QuantityName): string {
    return scale(name, this.units);
  }

  /** A core value as it is shown: for the cells of a grid. */
  show(name: QuantityName, core: string): string {
    return fromCoreText(name, core, this.units);
  }

  byUnits(metric: string, us: string): string {
    return byUnits(this.units, metric, us);
  }
}

function unitsOf(operand: Operand): PlainUnits {
  if (operand.kind === "text") return { asked: operand.text };
  return { fixed: operand.kind === "constant" && String(operand.value).trim().toLowerCase() === "us" ? "us" : "metric" };
}

/** The columns of a table that is so many cells wide. */
export function layoutOf(parameter: Parameter | undefined, width: number): readonly (string | null)[] {
  const layout = parameter?.kind === "table" ? parameter.layouts.find((columns) => columns.length === width) : undefined;
  if (!layout) throw new NoPlainForm(`a range of ${width} columns does not fit`);
  return layout;
}
