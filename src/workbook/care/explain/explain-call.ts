import type { AstExpression } from "@borgar/fx";
import { call } from "../../../functions/call";
import { CellError } from "../../../functions/cell-error";
import { argumentName, type AnyDescriptor, type Parameter } from "../../../functions/describe";
import { parameterText } from "../../../functions/parameter-text";
import type { UnitSystem } from "../../../functions/quantities";
import { registry } from "../../../functions/registry";
import { layoutText } from "../../../functions/read-range";
import { broadcast, isSingle, type Cell, type Cells } from "../../grid/evaluate/cells";
import { evaluate, OnlyTheSheetKnows, type LetParts } from "../../grid/evaluate/evaluate";
import { parsed } from "../../grid/evaluate/parse";
import { referenceOf } from "../../grid/evaluate/references";
import type { World } from "../../grid/evaluate/world";
import type { GyleCall } from "../../grid/formulas";
import { likelyFunction } from "./likely-function";
import { callProblem } from "./problems";
import type { ArgumentExplanation, CallExplanation, Place } from "./explanation";
import { filledRows, showCell, showCells, unitOf } from "./show-value";
import { spreadOfCall } from "./usual-spread";

/** Where in a spilled answer the selected cell is: 0, 0 for the cell with the formula. */
export interface Offset {
  readonly row: number;
  readonly column: number;
}

interface GivenArgument {
  readonly typed: string;
  readonly node: AstExpression | undefined;
  /** Undefined where it was left out, or only the sheet can work it out. */
  readonly cells: Cells | undefined;
  readonly onlySheetKnows: string | undefined;
}

/** One call with its arguments, answer, ± and what is wrong. */
export function explainCall(
  { id, text, depth, arguments: typed }: GyleCall,
  world: World,
  parts: LetParts,
  offset: Offset,
): CallExplanation {
  const descriptor = registry.find((candidate) => candidate.id === id);
  if (!descriptor) {
    const likely = likelyFunction(id);
    return {
      id,
      text,
      depth,
      exists: false,
      arguments: [],
      shown: "",
      unit: "",
      problem: {
        what: `There is no function GYLE.${id}.`,
        remedy: likely ? `Did you mean GYLE.${likely}?` : "Look it up under Functions, and type its name as it stands there.",
      },
    };
  }
  const given = typed.map((argument) => givenArgument(argument.text, world, parts));
  const parameters = Object.entries(descriptor.parameters as Record<string, Parameter>);
  const units = unitsOf(parameters, given);
  const base = { id, text, depth, exists: true, unit: resultUnit(descriptor, units) };
  const unknown = given.find(({ onlySheetKnows }) => onlySheetKnows !== undefined);
  if (unknown)
    return {
      ...base,
      arguments: parameters.map(([key, parameter], index) => explainArgument(key, parameter, given[index], units, world, offset, "")),
      shown: `only the sheet can work out ${unknown.onlySheetKnows ?? "a part"}`,
    };
  if (typed.length > parameters.length) {
    return {
      ...base,
      arguments: [],
      shown: "",
      problem: {
        what: `GYLE.${id} takes ${parameters.length} arguments, not ${typed.length}.`,
        remedy: "A comma too many? Where your Excel writes numbers with a comma, arguments are parted by semicolons.",
      },
    };
  }
  const answers = call(
    descriptor,
    given.map(({ cells }) => cells),
  );
  const answer = atOffset(answers, offset);
  const message = answer instanceof CellError ? answer.message : "";
  const explained = parameters.map(([key, parameter], index) =>
    explainArgument(key, parameter, given[index], units, world, offset, message),
  );
  const scalars = parameters.map(([, parameter], index) =>
    isScalar(parameter) && given[index]?.cells ? broadcast(given[index]?.cells ?? [], offset.row, offset.column) : undefined,
  );
  return {
    ...base,
    arguments: explained,
    answer,
    shown: shownAnswer(descriptor, answers, answer),
    ...(typeof answer === "number" &&
      descriptor.result.kind === "number" &&
      parameters.every(([, parameter]) => isScalar(parameter) || parameter.optional) &&
      spreadOfCall(descriptor, scalars, units)),
    ...(answer instanceof CellError && { problem: callProblem(answer, explained) }),
    ...(answer === "" && missingOf(parameters, given, offset, explained)),
  };
}

const isScalar = ({ kind }: Parameter): boolean => kind === "number" || kind === "choice" || kind === "text";

function givenArgument(typed: string, world: World, parts: LetParts): GivenArgument {
  if (typed === "") return { typed, node: undefined, cells: undefined, onlySheetKnows: undefined };
  const node = parsed(typed);
  if (!node) return { typed, node, cells: undefined, onlySheetKnows: typed };
  try {
    return { typed, node, cells: evaluate(node, world, parts), onlySheetKnows: undefined };
  } catch (problem) {
    if (!(problem instanceof OnlyTheSheetKnows)) throw problem;
    return { typed, node, cells: undefined, onlySheetKnows: problem.message };
  }
}

function unitsOf(parameters: readonly [string, Parameter][], given: readonly GivenArgument[]): UnitSystem {
  const index = parameters.findIndex(([key]) => key === "units");
  const cell = index < 0 ? null : (given[index]?.cells?.[0]?.[0] ?? null);
  return typeof cell === "string" && cell.trim().toLowerCase() === "us" ? "us" : "metric";
}

function explainArgument(
  key: string,
  parameter: Parameter,
  given: GivenArgument | undefined,
  units: UnitSystem,
  world: World,
  offset: Offset,
  message: string,
): ArgumentExplanation {
  const name = argumentName(key);
  const { typed = "", node, cells, onlySheetKnows } = given ?? {};
  const place = node && placeOf(node, world);
  return {
    name,
    doc: parameterText(parameter),
    unit: unitOf(parameter, units),
    typed,
    shown: shownArgument(parameter, cells, onlySheetKnows, offset),
    ...(place && { place }),
    ...(parameter.kind === "table" && cells && { table: tableText(parameter, cells) }),
    isWrong: new RegExp(`^${name}( row \\d+)?\\b`).test(message),
  };
}

function shownArgument(parameter: Parameter, cells: Cells | undefined, onlySheetKnows: string | undefined, offset: Offset): string {
  if (onlySheetKnows !== undefined) return "only the sheet can work this out";
  const quantityName = "quantity" in parameter ? parameter.quantity : undefined;
  if (cells === undefined)
    return "default" in parameter && parameter.default !== undefined
      ? `not given: ${String(parameter.default)}${typeof parameter.default === "number" ? defaultUnit(parameter) : ""} is taken`
      : "not given";
  if (parameter.kind === "table") return `${filledRows(cells, Infinity).length} of ${cells.length} rows filled`;
  if (!isScalar(parameter) || isSingle(cells)) return showCells(cells, quantityName);
  return `${showCell(broadcast(cells, offset.row, offset.column), quantityName)} in this row (${showCells(cells, quantityName)})`;
}

/** A default is kept in the core's unit, which is the metric one. */
const defaultUnit = (parameter: Parameter): string => {
  const unit = unitOf(parameter, "metric");
  return unit === "" ? "" : ` ${unit}`;
};

const atOffset = (answers: readonly (readonly (number | string | CellError)[])[], { row, column }: Offset): Cell =>
  answers[row]?.[column] ?? answers[0]?.[0] ?? "";

function tableText(parameter: Extract<Parameter, { kind: "table" }>, cells: Cells): string[][] {
  const layout = parameter.layouts.find(({ length }) => length === cells[0]?.length);
  return [...(layout ? [layoutText(parameter, layout).split(" | ")] : []), ...filledRows(cells, 12)];
}

/** Only for an argument that is a reference and nothing else. */
function placeOf(node: AstExpression, world: World): Place | undefined {
  if (node.type !== "ReferenceIdentifier") return undefined;
  const reference = referenceOf(node.kind, node.value);
  if (reference?.kind === "cells") return { sheet: reference.sheet ?? world.sheet, range: reference.range };
  const formula = reference?.kind === "name" ? world.name(reference.sheet ?? world.sheet, reference.name) : undefined;
  const behind = formula === undefined ? undefined : parsed(formula);
  return behind?.type === "ReferenceIdentifier" && behind.kind === "range" ? placeOf(behind, world) : undefined;
}

function resultUnit({ result }: AnyDescriptor, units: UnitSystem): string {
  return (result as { kind: string }).kind === "number"
    ? unitOf({ ...result, limits: {}, blank: "missing", typical: 0 } as Parameter, units)
    : "";
}

function shownAnswer({ result }: AnyDescriptor, answers: Cells, answer: Cell): string {
  const quantityName = (result as { quantity?: Parameters<typeof showCell>[1] }).quantity;
  if (answer === "") return "empty";
  if (isSingle(answers) || (result as { kind: string }).kind !== "grid") return showCell(answer, quantityName);
  return `${answers.length} rows of ${answers[0]?.length ?? 0}, spilling below and to the right`;
}

/** Nothing is wrong when something is still to be filled in; but it helps to know what. */
function missingOf(
  parameters: readonly [string, Parameter][],
  given: readonly GivenArgument[],
  offset: Offset,
  explained: readonly ArgumentExplanation[],
) {
  const index = parameters.findIndex(([, parameter], position) => {
    if (parameter.optional || ("blank" in parameter && parameter.blank === "zero")) return false;
    const cells = given[position]?.cells;
    if (!cells) return true;
    if (parameter.kind === "table") return filledRows(cells, 1).length === 0;
    const cell = broadcast(cells, offset.row, offset.column);
    if ("blank" in parameter && parameter.blank === "waits") return cell === null || cell === "";
    return isScalar(parameter)
      ? cell === null || cell === "" || cell === 0
      : cells.flat().every((one) => one === null || one === "" || one === 0);
  });
  const wanted = explained[index];
  return {
    problem: wanted
      ? {
          what: `${wanted.name} is not filled in yet, so the answer is empty.`,
          remedy: "Nothing is wrong: fill it in when you know it.",
          ...(wanted.place && { place: wanted.place }),
        }
      : {
          what: "Something that it needs is not filled in yet, so the answer is empty.",
          remedy: "Nothing is wrong: look for a row above that is filled in only in part.",
        },
  };
}
