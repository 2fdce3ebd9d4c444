import { isExpressionNode, isReferenceNode, type AstExpression } from "@borgar/fx";
import { call } from "../../../functions/call";
import { CellError } from "../../../functions/cell-error";
import { registry } from "../../../functions/registry";
import { gyleId } from "../formulas";
import { block, type Block } from "../plan/addresses";
import { joined, single, type Cell, type Cells } from "./cells";
import { nativeFunctions } from "./native";
import { binary, unary } from "./operators";
import { parsed } from "./parse";
import { referenceOf, type Reference } from "./references";
import { tablePart } from "./table-part";
import type { World } from "./world";

/** An expression that only the spreadsheet itself can work out; the message says which part of it. */
export class OnlyTheSheetKnows extends Error {
  constructor(part: string) {
    super(part);
    this.name = "OnlyTheSheetKnows";
  }
}

/** What LET calls its parts, in small letters. */
export type LetParts = ReadonlyMap<string, AstExpression>;

const noParts: LetParts = new Map();
/** Names may lead to names; more than this is a circle. */
const deepest = 12;

/**
 * The present value of an expression, from cells that were read beforehand: references, names, tables, arrays, operators,
 * our own functions by their wrapper, and the few native functions that our sheets use in arguments.
 *
 * @throws OnlyTheSheetKnows for anything else
 */
export function evaluate(node: AstExpression, world: World, parts: LetParts = noParts, depth = 0): Cells {
  const inner = (argument: AstExpression): Cells => evaluate(argument, world, parts, depth);
  switch (node.type) {
    case "Literal":
      return single(node.value);
    case "ErrorLiteral":
      return single(new CellError(node.value as never, `is ${node.value}`));
    case "ArrayExpression":
      return node.elements.map((row) =>
        row.map((element) => (element.type === "Literal" ? (element.value as Cell) : (inner(element as AstExpression)[0]?.[0] ?? null))),
      );
    case "ReferenceIdentifier":
      return lookedUp(node.kind, node.value, world, parts, depth);
    case "UnaryExpression": {
      const [operand] = node.arguments;
      if (node.operator === "#" && operand && isReferenceNode(operand)) return spilled(operand.value, world);
      return (operand && unary(node.operator, inner(operand))) ?? refuse(`the sign ${node.operator}`);
    }
    case "BinaryExpression": {
      const [left, right] = node.arguments;
      const join = binary(node.operator);
      return join && left && right ? joined(inner(left), inner(right), join) : refuse(`the sign "${node.operator}"`);
    }
    case "CallExpression": {
      const name = node.callee.type === "Identifier" ? node.callee.name : "";
      const values = (): (Cells | undefined)[] =>
        node.arguments.map((argument) => (argument && isExpressionNode(argument) ? inner(argument) : undefined));
      const id = gyleId(name);
      if (id !== undefined) return called(id, values());
      const askPlace = askingPlaces[name.toUpperCase()];
      if (askPlace) return askPlace(placeOf(node.arguments[0], world) ?? refuse(`${name}(…)`));
      const native = nativeFunctions.get(name.toUpperCase().replace(/^_XLFN\./, ""));
      return (
        native?.(node.arguments.map((argument) => () => (argument && isExpressionNode(argument) ? inner(argument) : single(null)))) ??
        refuse(`${name}(…)`)
      );
    }
    case "LetExpression":
      return node.body ? inner(node.body) : refuse("LET(…)");
    default:
      return refuse("a LAMBDA");
  }
}

/** What asks where cells stand, not what they hold. */
const askingPlaces: Readonly<Record<string, (cells: Block) => Cells>> = {
  ROW: ({ from, to }) => Array.from({ length: to.row - from.row + 1 }, (_, index) => [from.row + index]),
  COLUMN: ({ from, to }) => [Array.from({ length: to.column - from.column + 1 }, (_, index) => from.column + index)],
  ROWS: ({ from, to }) => single(to.row - from.row + 1),
  COLUMNS: ({ from, to }) => single(to.column - from.column + 1),
};

/** Where a range or a named one stands, or the cell or column of it that INDEX names. */
function placeOf(node: AstExpression | null | undefined, world: World): Block | undefined {
  if (node?.type === "ReferenceIdentifier") {
    const reference = referenceOf(node.kind, node.value);
    if (reference?.kind === "cells") return block(reference.range);
    const formula = reference?.kind === "name" ? world.name(reference.sheet ?? world.sheet, reference.name) : undefined;
    return formula === undefined ? undefined : placeOf(parsed(formula), world);
  }
  if (node?.type !== "CallExpression" || node.callee.type !== "Identifier" || node.callee.name.toUpperCase() !== "INDEX") return undefined;
  const [whole, ...counted] = node.arguments;
  const place = placeOf(whole, world);
  if (!place) return undefined;
  const [row = 1, column = 1] = counted.map((asked) => Number(asked && evaluate(asked, world)[0]?.[0]));
  const cell = { row: place.from.row + Math.max(row, 1) - 1, column: place.from.column + Math.max(column, 1) - 1 };
  return { from: cell, to: { row: row === 0 ? place.to.row : cell.row, column: column === 0 ? place.to.column : cell.column } };
}

function refuse(part: string): never {
  throw new OnlyTheSheetKnows(part);
}

const descriptors = new Map(registry.map((descriptor) => [descriptor.id, descriptor]));

function called(id: string, values: (Cells | undefined)[]): Cells {
  const descriptor = descriptors.get(id);
  return descriptor ? call(descriptor, values) : single(new CellError("#NAME?", `there is no function GYLE.${id}`));
}

function lookedUp(kind: Parameters<typeof referenceOf>[0], text: string, world: World, parts: LetParts, depth: number): Cells {
  const part = kind === "name" ? parts.get(text.toLowerCase()) : undefined;
  if (part) return evaluate(part, world, parts, depth + 1);
  const reference = referenceOf(kind, text);
  return (reference && cellsAt(reference, text, world, depth)) ?? refuse(text);
}

function cellsAt(reference: Reference, text: string, world: World, depth: number): Cells | undefined {
  if (reference.kind === "cells")
    return world.cells(reference.sheet ?? world.sheet, reference.range) ?? single(new CellError("#REF!", `there is no ${text}`));
  if (reference.kind === "table") {
    const table = world.table(reference.table);
    return table && tablePart(table, reference, world.row);
  }
  const formula = world.name(reference.sheet ?? world.sheet, reference.name);
  if (formula === undefined) return single(new CellError("#NAME?", `there is no name ${text}`));
  const node = depth < deepest ? parsed(formula) : undefined;
  return node && evaluate(node, world, noParts, depth + 1);
}

function spilled(text: string, world: World): Cells {
  const reference = referenceOf("range", text);
  const cells = reference?.kind === "cells" ? world.cells(reference.sheet ?? world.sheet, `${reference.range}#`) : undefined;
  return cells ?? refuse(`${text}#`);
}
