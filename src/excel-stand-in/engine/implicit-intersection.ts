import {
  isArrayNode,
  isBinaryNode,
  isCallNode,
  isIdentifierNode,
  isReferenceNode,
  isUnaryNode,
  parse,
  parseA1Ref,
  tokenize,
  type BinaryExpression,
  type CallExpression,
  type ReferenceIdentifier,
  type UnaryExpression,
} from "@borgar/fx";
import { columnLetters } from "../xlsx/addresses";
import { GIVES_BLOCK, GIVES_RANGE, parameterKind, type ParameterKind } from "./parameter-kinds";

/** Takes one cell out of a range, and the first value out of a block of values: Excel's `@`. */
export const SINGLE = "SINGLE";
/** Makes an answer fill a block of so many rows and columns, and no more. */
export const FILL_BLOCK = "FILLBLOCK";

export interface Place {
  row: number;
  column: number;
}

/** What a formula's text does not say by itself. */
export interface Surroundings {
  /** Whether a name stands for more than one cell. */
  isRange(name: string): boolean;
  isFunction(name: string): boolean;
}

/**
 * A formula that was not marked as a dynamic array formula, as the engine is to calculate it in the cell `at`: where one value is asked
 * for and a range stands, the range's cell in the formula's own row or column takes its place; of a block of values the first.
 * Plain ranges are replaced by that cell's address, so that the formula depends on this one cell only.
 */
export function asLegacy(formula: string, at: Place, around: Surroundings): string {
  if (asksForSingleCells(formula, around)) return formula;
  return rewrite(formula, (tree, edits) => {
    new Walk(at, around, edits).walk(tree, "value");
    if (mayBeBlock(tree, around)) edits.push(...call(SINGLE, tree));
  });
}

/**
 * Whether it is plain without taking it apart, which costs ten times as much, that a formula reads one cell wherever it reads any: no range,
 * table or block of constants, no name of a range, no function that may answer with a range or a block, no joined references.
 */
function asksForSingleCells(formula: string, around: Surroundings): boolean {
  const code = formula.replace(/"(?:[^"]|"")*"/gu, '""');
  if (/[:[{#]|\)\s*\(|[\p{L}\p{N}_.)']\s+[\p{L}\p{N}_('$]/u.test(code)) return false;
  // A comma within brackets that belong to no function joins references.
  if (code.includes(",") && /(?<![\p{L}\p{N}_.])\(/u.test(code)) return false;
  return (code.match(WORD) ?? []).every((word) => {
    if (!word.endsWith("(")) return !around.isRange(word);
    const name = word.slice(0, -1);
    return around.isFunction(name) && !GIVES_RANGE.has(name.toUpperCase()) && !GIVES_BLOCK.has(name.toUpperCase());
  });
}

/** A name, with its sheet if there is one, or a function with its bracket; cells' addresses are among them, and are no names. */
const WORD = /(?:'(?:[^']|'')*'!|[\p{L}_][\p{L}\p{N}_.]*!)?[\p{L}_\\][\p{L}\p{N}_.\\?]*\(?/gu;

/** Excel's `@` in any formula. */
export function withAtSigns(formula: string, at: Place, around: Surroundings): string {
  if (!formula.includes("@")) return formula;
  return rewrite(formula, (tree, edits) => {
    for (const node of nodesOf(tree)) {
      if (!isOperation(node) || node.operator !== "@") continue;
      const inner = node.arguments[0]!;
      if (!isReferenceNode(inner)) edits.push(...asCall(formula, node, SINGLE));
      else {
        edits.push({ from: placeOf(node).from, to: placeOf(node).from + 1, text: "" });
        new Walk(at, around, edits).walk(inner, "value");
      }
    }
  });
}

/** The same with calls of the function that files have for it. */
export function atSignsAsCalls(formula: string, functionName: string): string {
  if (!formula.includes("@")) return formula;
  return rewrite(formula, (tree, edits) => {
    for (const node of nodesOf(tree)) if (isOperation(node) && node.operator === "@") edits.push(...asCall(formula, node, functionName));
  });
}

/** The reader of formulas leaves out the brackets around what an @ is for. */
function asCall(formula: string, node: Operation, functionName: string): Edit[] {
  const sign = placeOf(node).from;
  let { from, to } = placeOf(node.arguments[0]!);
  let open = formula.slice(sign + 1, from).split("(").length - 1;
  for (; open > 0 && to < formula.length; to++) if (formula[to] === ")") open--;
  from = sign + 1;
  return [
    { from: sign, to: from, text: `${functionName}(` },
    { from: to, to, text: ")" },
  ];
}

/** A formula that was entered for a block of cells, of which its own is the first. */
export const asBlock = (formula: string, { rows, columns }: { rows: number; columns: number }): string =>
  `=${FILL_BLOCK}(${formula.replace(/^=/u, "")},${rows},${columns})`;

type Node = ReturnType<typeof parse>;
type Operation = UnaryExpression | BinaryExpression;

const isOperation = (node: Node): node is Operation => isUnaryNode(node) || isBinaryNode(node);
const placeOf = (node: Node): { from: number; to: number } => ({ from: node.loc?.[0] ?? 0, to: node.loc?.[1] ?? 0 });

interface Edit {
  from: number;
  to: number;
  text: string;
}

/** Formulas taken apart: when a name changes, every formula is looked at again. */
const trees = new Map<string, Node | undefined>();
const mostTrees = 50_000;

function treeOf(formula: string): Node | undefined {
  if (trees.has(formula)) return trees.get(formula);
  if (trees.size > mostTrees) trees.clear();
  let tree: Node | undefined;
  try {
    tree = parse(tokenize(formula, { mergeRefs: true, withLocation: true }));
  } catch {
    // What cannot be read means nothing; the engine says so in its own way.
  }
  trees.set(formula, tree);
  return tree;
}

function rewrite(formula: string, look: (tree: Node, edits: Edit[]) => void): string {
  const tree = treeOf(formula);
  if (!tree) return formula;
  const edits: Edit[] = [];
  look(tree, edits);
  // Those that only insert share a place with others: the outermost opens first and closes last.
  const ordered = edits.map((edit, number) => ({ edit, number })).sort((a, b) => a.edit.from - b.edit.from || a.number - b.number);
  let text = "";
  let done = 0;
  for (const { edit } of ordered) {
    text += formula.slice(done, edit.from) + edit.text;
    done = Math.max(done, edit.to);
  }
  return text + formula.slice(done);
}

function call(name: string, node: Node): Edit[] {
  const { from, to } = placeOf(node);
  return [
    { from, to: from, text: `${name}(` },
    { from: to, to, text: ")" },
  ];
}

class Walk {
  constructor(
    private readonly at: Place,
    private readonly around: Surroundings,
    private readonly edits: Edit[],
  ) {}

  walk(node: Node | null | undefined, wanted: ParameterKind): void {
    if (!node || wanted === "array") return;
    if (isReferenceNode(node)) {
      if (wanted === "value") this.intersect(node);
    } else if (isOperation(node)) this.walkOperator(node, wanted);
    else if (isCallNode(node) && isIdentifierNode(node.callee)) this.walkCall(node, node.callee.name, wanted);
  }

  private walkOperator(node: Operation, wanted: ParameterKind): void {
    if (node.operator === "@" || node.operator === "#") return;
    const joins = [":", ",", " "].includes(node.operator);
    if (joins && wanted === "value") this.edits.push(...call(SINGLE, node));
    for (const part of node.arguments) this.walk(part, joins ? "range" : "value");
  }

  private walkCall(node: CallExpression, name: string, wanted: ParameterKind): void {
    if (!this.around.isFunction(name)) return;
    if (wanted === "value" && GIVES_RANGE.has(name.toUpperCase())) this.edits.push(...call(SINGLE, node));
    node.arguments.forEach((given, index) => {
      const kind = parameterKind(name, index);
      this.walk(given, kind === "same" ? wanted : kind);
    });
  }

  private intersect(node: ReferenceIdentifier): void {
    const { value, kind } = node;
    if (kind === "name" ? !this.around.isRange(value) : kind !== "table" && !value.includes(":")) return;
    if (kind === "table" && /#This Row|\[\s*@/iu.test(value)) return;
    const cell = kind === "range" || kind === "beam" ? this.cellOf(value) : undefined;
    if (cell === undefined) this.edits.push(...call(SINGLE, node));
    else this.edits.push({ ...placeOf(node), text: cell });
  }

  /** The address of a range's cell in our row or column; undefined if it has none. It moves with the formula as the range would. */
  private cellOf(range: string): string | undefined {
    const found = parseA1Ref(range);
    if (!found || !("range" in found) || !found.range) return undefined;
    const { top, left, bottom, right, $top, $left } = found.range;
    const [row, column] = [within(top, bottom, this.at.row), within(left, right, this.at.column)];
    if (row === undefined || column === undefined) return undefined;
    const sheet = range.slice(0, range.lastIndexOf("!") + 1);
    const fixedRow = top !== null && top === bottom && $top;
    const fixedColumn = left !== null && left === right && $left;
    return `${sheet}${fixedColumn ? "$" : ""}${columnLetters(column)}${fixedRow ? "$" : ""}${row + 1}`;
  }
}

/** Where a range that reaches from `first` to `last`, or over all, has one line, that one; else ours, if it is in it. */
function within(first: number | null | undefined, last: number | null | undefined, ours: number): number | undefined {
  if (first == null || last == null) return ours;
  const [low, high] = [Math.min(first, last), Math.max(first, last)];
  if (low === high) return low;
  return ours >= low && ours <= high ? ours : undefined;
}

/** Whether a formula may answer with more than one value, once its ranges are cells. */
function mayBeBlock(node: Node | null | undefined, around: Surroundings): boolean {
  if (!node) return false;
  if (isArrayNode(node)) return true;
  if (isOperation(node)) return node.operator === "#" || node.arguments.some((part) => mayBeBlock(part, around));
  if (isReferenceNode(node)) return node.kind === "name" && around.isRange(node.value);
  if (isCallNode(node)) {
    const name = isIdentifierNode(node.callee) ? node.callee.name : "";
    if (GIVES_BLOCK.has(name.toUpperCase()) || !around.isFunction(name)) return true;
    return node.arguments.some((given, index) => ["value", "same"].includes(parameterKind(name, index)) && mayBeBlock(given, around));
  }
  return node.type === "LetExpression" || node.type === "LambdaExpression";
}

function* nodesOf(node: Node | null | undefined): Generator<Node> {
  if (!node) return;
  yield node;
  if (isOperation(node) || isCallNode(node)) for (const part of node.arguments) yield* nodesOf(part);
}
