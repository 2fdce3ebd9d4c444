import type { AnyDescriptor, Parameter } from "../../../functions/describe";
import { registry } from "../../../functions/registry";
import type { GyleCall } from "../../grid/formulas";
import { bracketDepth, partsOf, type Part } from "./parts-of-formula";
import { hasHeading } from "./headings";
import { cellByCell, whole } from "./native-functions";
import { plainForms } from "./plain";
import { atom } from "./plain/formula-parts";
import type { Operand } from "./plain/operands";
import { PlainArguments } from "./plain/plain-arguments";
import { gridSize, plainCell, type PutWorkings } from "./plain/plain-call";
import { NoPlainForm } from "./plain/no-plain-form";
import { isValueOnly, type Place, type PlainForm } from "./plain/plain-form";
import { cellOf, rangeOperand, type Shape, type Surroundings } from "./references";

/** Excel takes 8192 characters and 64 levels of brackets. */
const longestFormula = 8000;
const deepestBrackets = 60;

const one: Shape = { rows: 1, columns: 1 };
const functions = new Map(registry.map((descriptor) => [descriptor.id, descriptor]));

/**
 * Formulas with GYLE calls as plain spreadsheet formulas: the same sums, in functions that every spreadsheet program
 * knows, one formula for each cell of a spill.
 */
export class PlainFormulas {
  /** @param put where workings go that some of the sums rest on; without it those have no plain form */
  constructor(
    private readonly around: Surroundings,
    private readonly put: PutWorkings = () => {
      throw new NoPlainForm("there is no room for its workings");
    },
  ) {}

  /**
   * The cell of a block that a formula fills.
   *
   * @param formula with its equals sign
   * @param block the size of its spill; one cell where it does not spill
   * @throws NoPlainForm when a call in it has none, with the reason in words
   */
  cell(formula: string, block: Shape, place: Place): string {
    const text = `=${this.text(formula.replace(/^=/, ""), block, place)}`;
    if (text.length > longestFormula) throw new NoPlainForm("the plain formula would be longer than Excel takes");
    if (bracketDepth(text) > deepestBrackets) throw new NoPlainForm("the plain formula would be nested deeper than Excel takes");
    return text;
  }

  /** How many cells the answer of a formula fills at most: one that is blank now may fill more once it is filled in. */
  size(formula: string): Shape {
    return this.shape(formula.replace(/^=/, ""));
  }

  private text(text: string, block: Shape, place: Place): string {
    const pieces: string[] = [];
    let at = 0;
    for (const part of partsOf(text)) {
      pieces.push(text.slice(at, part.start));
      pieces.push(part.call === undefined ? this.reference(part, block, place) : this.call(part.call, part, block, place));
      at = part.end;
    }
    return pieces.join("") + text.slice(at);
  }

  private reference(part: Part, block: Shape, place: Place): string {
    const { text, inside } = part;
    const written = this.around.spillRange?.(text);
    if (written !== undefined) return this.reference({ ...part, text: written }, block, place);
    const shape = this.around.shapeOf(text);
    if (shape === undefined || isOne(shape) || inside.some((name) => whole.has(name))) return text;
    const unknown = inside.find((name) => !cellByCell.has(name));
    if (unknown !== undefined) throw new NoPlainForm(`what ${unknown} makes of a range is not known here`);
    if (isOne(block)) throw new NoPlainForm("it calculates with a whole range in one cell");
    return element(text, shape, place);
  }

  private call(call: GyleCall, { inside, indexed }: Part, block: Shape, place: Place): string {
    const { descriptor, form } = formOf(call.id);
    if (descriptor.result.kind === "grid") {
      if (indexed === undefined && inside.length > 0) throw new NoPlainForm("several cells of an answer are used within one formula");
      const x = this.arguments(descriptor, call, one, { row: 0, column: 0 });
      const size = gridSize(form, x);
      const picked =
        indexed === undefined
          ? place
          : indexed.length === 1 && size.rows === 1
            ? { row: 0, column: (indexed[0] ?? 1) - 1 }
            : { row: (indexed[0] ?? 1) - 1, column: (indexed[1] ?? 1) - 1 };
      if (picked.row < 0 || picked.column < 0 || picked.row >= size.rows || picked.column >= size.columns) return '""';
      return plainCell(form, x, picked, this.put);
    }
    const shape = this.shape(call.text);
    if (!isOne(shape) && inside.some((name) => !cellByCell.has(name)))
      throw new NoPlainForm("several answers are drawn together in one cell");
    if (shape.rows > block.rows || shape.columns > block.columns) throw new NoPlainForm("its answers have no room");
    return plainCell(form, this.arguments(descriptor, call, block, place), { row: 0, column: 0 }, this.put);
  }

  private arguments(descriptor: AnyDescriptor, call: GyleCall, block: Shape, place: Place): PlainArguments {
    const parameters = Object.entries(descriptor.parameters as Record<string, Parameter>);
    if (call.arguments.length > parameters.length) throw new NoPlainForm("it has more arguments than the function takes");
    return new PlainArguments(
      descriptor,
      new Map(parameters.map(([key, parameter], index) => [key, this.operand(parameter, call.arguments[index]?.text ?? "", block, place)])),
    );
  }

  private operand(parameter: Parameter, text: string, block: Shape, place: Place): Operand {
    if (text === "") return { kind: "omitted" };
    if (parameter.kind === "table" || parameter.kind === "list") {
      const reference = this.around.spillRange?.(text) ?? text;
      const shape = this.around.shapeOf(reference);
      if (shape === undefined) throw new NoPlainForm("a range of cells is wanted where a sum or a list of constants stands");
      const heading = hasHeading(parameter, this.around.valuesOf(reference));
      if (heading && shape.rows === 1) throw new NoPlainForm("a heading stands in a row of numbers");
      return rangeOperand(reference, shape, heading);
    }
    return constant(text) ?? { kind: "text", text: atom(this.text(text, block, place)) };
  }

  /** The size of what a text comes to, its calls lifted over ranges. */
  private shape(text: string): Shape {
    return partsOf(text).reduce<Shape>((size, { call, text: reference, inside, indexed }) => {
      if (inside.some((name) => !cellByCell.has(name)) || indexed !== undefined) return size;
      return larger(size, call === undefined ? (this.around.shapeOf(reference) ?? one) : this.callShape(call));
    }, one);
  }

  private callShape(call: GyleCall): Shape {
    const descriptor = functions.get(call.id);
    const form = plainForms.get(call.id);
    if (descriptor === undefined || form === undefined) return one;
    if (descriptor.result.kind === "grid") {
      return isValueOnly(form) ? one : gridSize(form, this.arguments(descriptor, call, one, { row: 0, column: 0 }));
    }
    const parameters = Object.values(descriptor.parameters as Record<string, Parameter>);
    return call.arguments.reduce<Shape>((size, argument, index) => {
      const kind = parameters[index]?.kind;
      return kind === "number" || kind === "choice" || kind === "text" ? larger(size, this.shape(argument.text)) : size;
    }, one);
  }
}

const isOne = ({ rows, columns }: Shape): boolean => rows === 1 && columns === 1;
const larger = (size: Shape, other: Shape): Shape => ({
  rows: Math.max(size.rows, other.rows),
  columns: Math.max(size.columns, other.columns),
});

/** Native broadcasting: a single row or column repeats, and beyond a block that is too short stands #N/A. */
function element(reference: string, { rows, columns }: Shape, { row, column }: Place): string {
  if ((rows > 1 && row >= rows) || (columns > 1 && column >= columns)) return "NA()";
  return cellOf(reference, rows === 1 ? 0 : row, columns === 1 ? 0 : column);
}

function constant(text: string): Operand | undefined {
  if (/^[-+]?(\d+\.?\d*|\.\d+)(E[-+]?\d+)?$/i.test(text)) return { kind: "constant", value: Number(text) };
  if (/^"([^"]|"")*"$/.test(text)) return { kind: "constant", value: text.slice(1, -1).replaceAll('""', '"') };
  return /^(TRUE|FALSE)$/i.test(text) ? { kind: "constant", value: text.toUpperCase() === "TRUE" } : undefined;
}

function formOf(id: string): { descriptor: AnyDescriptor; form: PlainForm } {
  const descriptor = functions.get(id);
  const form = plainForms.get(id);
  if (descriptor === undefined || form === undefined) throw new NoPlainForm(`there is no function GYLE.${id}`);
  if (isValueOnly(form)) throw new NoPlainForm(form.value);
  return { descriptor, form };
}
