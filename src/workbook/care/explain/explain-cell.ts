import { isReferenceNode } from "@borgar/fx";
import { registry } from "../../../functions/registry";
import { isErrorText } from "../../grid/evaluate/cells";
import { letParts, nodesOf, parsed } from "../../grid/evaluate/parse";
import { askForNames, readWorld } from "../../grid/evaluate/read-world";
import { referenceOf } from "../../grid/evaluate/references";
import type { World } from "../../grid/evaluate/world";
import { gyleCalls, separatorWords, withInner, withOurSeparators } from "../../grid/formulas";
import { block, isWithin, localAddress, position } from "../../grid/plan/addresses";
import { loadSheet, namedCells, rangeOf } from "../../grid/read/read-sheets";
import { ownNames } from "../../grid/read/own-names";
import { explainCall, type Offset } from "./explain-call";
import { checkNames, explainCheck } from "./explain-check";
import type { CallExplanation, CellExplanation, CheckExplanation, Problem } from "./explanation";
import { cellProblem } from "./problems";

/**
 * Explains the active cell. Reads, in two round trips (one where there is neither a GYLE formula nor a check); writes nothing. A cell that
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
  // A spill that something stands in the way of shows its error at its own cell, and nothing in those that it would have filled.
  const source = parent.isNullObject || parent.values[0]?.[0] === "#SPILL!" ? cell : parent;
  const anchor = localAddress(source.address);
  const formula = String(source.formulas[0]?.[0] ?? "");
  const written = String(source.formulasLocal[0]?.[0] ?? "");
  const value: unknown = cell.values[0]?.[0] ?? "";
  const base = {
    sheet,
    address,
    names: ownNames(worksheet)
      .filter(({ formula: target }) => covers(String(target), address))
      .map(({ name }) => name),
    shown: cell.text[0]?.[0] ?? "",
    formula,
    written,
    ...(anchor !== address && { spilledFrom: anchor }),
  };
  if (!formula.startsWith("=")) return { ...base, formula: "", written: "", kind: value === "" ? "empty" : "constant", calls: [] };
  const calls = withInner(gyleCalls(formula));
  if (calls.length === 0) {
    const check = isCheck(ownNames(worksheet), address) ? await checkAt(context, worksheet, address) : undefined;
    return { ...base, kind: "native", calls: [], ...problemOf(value, formula, [], undefined), ...(check && { check }) };
  }
  if (misreadAs(value, formula) !== undefined) {
    const unread = calls.map(({ id, text, depth }) => ({ id, text, depth, exists: isFunction(id), arguments: [], shown: "", unit: "" }));
    return { ...base, kind: "gyle", calls: unread, ...problemOf(value, formula, unread, undefined) };
  }
  const world = await readWorld(context, asked, sheet, position(anchor), [formula]);
  const tree = parsed(formula);
  const parts = tree ? letParts(tree) : new Map<string, never>();
  const explained = calls.map((call) => explainCall(call, world, parts, offsetIn(anchor, address)));
  return { ...base, kind: "gyle", calls: explained, ...problemOf(value, formula, explained, world) };
}

/** A cell of the sheet's own checks, by their names. */
const isCheck = (names: readonly Excel.NamedItem[], address: string): boolean =>
  names.some(({ name, formula }) => {
    const range = checkNames.includes(name.toLowerCase()) ? rangeOf(String(formula)) : undefined;
    return range !== undefined && isWithin(block(range), position(address));
  });

/** The rules look at the whole sheet: it is read, in one round trip, where a check is asked about. */
async function checkAt(context: Excel.RequestContext, worksheet: Excel.Worksheet, address: string): Promise<CheckExplanation | undefined> {
  const loaded = loadSheet(worksheet);
  await context.sync();
  return explainCheck(namedCells(loaded), address);
}

function offsetIn(anchor: string, cell: string): Offset {
  const [from, to] = [position(anchor), position(cell)];
  return { row: to.row - from.row, column: to.column - from.column };
}

/** A name of this very cell; names of larger ranges would only confuse. */
const covers = (target: string, address: string): boolean => localAddress(target.replace(/^=/, "")) === address;

/** The formula as it was meant, where its commas and semicolons are exchanged: what its arguments seem to be then means nothing. */
const misreadAs = (value: unknown, formula: string): string | undefined => (isErrorText(value) ? withOurSeparators(formula) : undefined);

const isFunction = (id: string): boolean => registry.some((descriptor) => descriptor.id === id);

function problemOf(value: unknown, formula: string, calls: readonly CallExplanation[], world: World | undefined): { problem?: Problem } {
  if (!isErrorText(value)) return {};
  const typed = misreadAs(value, formula);
  if (typed !== undefined) return { problem: separatorWords(typed) };
  const ofCell = cellProblem(value, calls.length > 0 && calls.every(({ exists }) => exists), world ? unknownNames(formula, world) : []);
  if (ofCell) return { problem: ofCell };
  if (calls.some(({ problem, answer }) => problem !== undefined && answer !== "")) return {};
  return {
    problem: {
      what: `The cell shows ${value}, and none of its GYLE functions does.`,
      remedy: "The error comes from the part of the formula around them.",
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
