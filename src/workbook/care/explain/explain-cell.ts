import { isReferenceNode } from "@borgar/fx";
import { isErrorText } from "../../grid/evaluate/cells";
import { letParts, nodesOf, parsed } from "../../grid/evaluate/parse";
import { askForNames, readWorld } from "../../grid/evaluate/read-world";
import { referenceOf } from "../../grid/evaluate/references";
import type { World } from "../../grid/evaluate/world";
import { gyleCalls, withInner } from "../../grid/formulas";
import { localAddress, position } from "../../grid/plan/addresses";
import { explainCall, type Offset } from "./explain-call";
import type { CallExplanation, CellExplanation, Problem } from "./explanation";
import { cellProblem } from "./mend";

/**
 * Explains the active cell. Reads, in two round trips (one where there is no GYLE formula); writes nothing. A cell that
 * another cell's formula spills into is explained by that formula, for its own row.
 */
export async function explainActiveCell(context: Excel.RequestContext): Promise<CellExplanation> {
  const cell = context.workbook.getActiveCell();
  const worksheet = context.workbook.worksheets.getActiveWorksheet();
  cell.load("address,formulas,formulasLocal,text,values");
  worksheet.load("name");
  const parent = cell.getSpillParentOrNullObject();
  parent.load("address,formulas,formulasLocal,values");
  const asked = askForNames(context, worksheet);
  await context.sync();

  const sheet = worksheet.name;
  const address = localAddress(cell.address);
  const anchor = parent.isNullObject ? address : localAddress(parent.address);
  const formula = String((parent.isNullObject ? cell.formulas : parent.formulas)[0]?.[0] ?? "");
  const written = String((parent.isNullObject ? cell.formulasLocal : parent.formulasLocal)[0]?.[0] ?? "");
  const value: unknown = cell.values[0]?.[0] ?? "";
  const base = {
    sheet,
    address,
    names: asked.names.items.filter(({ formula: target }) => covers(String(target), address)).map(({ name }) => name),
    shown: cell.text[0]?.[0] ?? "",
    formula,
    written,
    ...(anchor !== address && { spilledFrom: anchor }),
  };
  if (!formula.startsWith("=")) return { ...base, formula: "", written: "", kind: value === "" ? "empty" : "constant", calls: [] };
  const calls = withInner(gyleCalls(formula));
  if (calls.length === 0) return { ...base, kind: "native", calls: [], ...problemOf(value, formula, [], undefined) };
  const world = await readWorld(context, asked, sheet, position(anchor), [formula]);
  const tree = parsed(formula);
  const parts = tree ? letParts(tree) : new Map<string, never>();
  const explained = calls.map((call) => explainCall(call, world, parts, offsetIn(anchor, address)));
  return { ...base, kind: "gyle", calls: explained, ...problemOf(value, formula, explained, world) };
}

function offsetIn(anchor: string, cell: string): Offset {
  const [from, to] = [position(anchor), position(cell)];
  return { row: to.row - from.row, column: to.column - from.column };
}

/** A name of this very cell; names of larger ranges would only confuse. */
const covers = (target: string, address: string): boolean => localAddress(target.replace(/^=/, "")) === address;

function problemOf(value: unknown, formula: string, calls: readonly CallExplanation[], world: World | undefined): { problem?: Problem } {
  if (!isErrorText(value)) return {};
  const ofCell = cellProblem(value, calls.length > 0 && calls.every(({ exists }) => exists), world ? unknownNames(formula, world) : []);
  if (ofCell) return { problem: ofCell };
  if (calls.some(({ problem, answer }) => problem !== undefined && answer !== "")) return {};
  return {
    problem: {
      what: `The cell shows ${value}, and none of its GYLE functions does.`,
      mend: "The error comes from the part of the formula around them.",
    },
  };
}

/** Names in a formula that neither the sheet nor the workbook knows. */
function unknownNames(formula: string, world: World): string[] {
  const tree = parsed(formula);
  if (!tree) return [];
  const own = letParts(tree);
  return [...nodesOf(tree)].flatMap((node) => {
    const reference = isReferenceNode(node) ? referenceOf(node.kind, node.value) : undefined;
    if (reference?.kind !== "name" || own.has(reference.name.toLowerCase())) return [];
    return world.name(reference.sheet ?? world.sheet, reference.name) === undefined ? [reference.name] : [];
  });
}
