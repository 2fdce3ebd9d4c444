import { isReferenceNode } from "@borgar/fx";
import { CellError } from "../../../functions/cell-error";
import { registry } from "../../../functions/registry";
import { isErrorText } from "../../grid/evaluate/cells";
import { letParts, nodesOf, parsed } from "../../grid/evaluate/parse";
import { referenceOf } from "../../grid/evaluate/references";
import type { World } from "../../grid/evaluate/world";
import { explainCall } from "../explain/explain-call";
import { likelyFunction } from "../explain/likely-function";
import { gyleCalls, gyleId, separatorWords, withInner, withOurSeparators } from "../../grid/formulas";
import { position } from "../../grid/plan/addresses";
import type { NamedCells } from "../../grid/read/named-cells";
import type { Finding } from "./finding";

/** A quick look before a formula is taken apart: a season has tens of thousands. */
const mayBeOurs = (formula: unknown): formula is string =>
  typeof formula === "string" && formula.startsWith("=") && /gyle[._]/i.test(formula);

/**
 * As a user types it: Excel files spell our functions `_xldudf_GYLE_BEER_ABV`, and another add-in is known to put the
 * number of a workbook before that, `[2]!_xldudf_…` (office-js issue 2568). Neither can be entered again as it stands.
 */
export function typedSpelling(formula: string): string {
  return formula.replace(
    /(?:\[\d+\]!)?_xldudf_GYLE_[A-Z0-9_]+(?=\s*\()/gi,
    (name) => `GYLE.${gyleId(name.replace(/^\[\d+\]!/, "")) ?? ""}`,
  );
}

/** Every cell with a GYLE formula that shows an error: what it means, and whether entering it again will help. */
export function formulaErrors(sheet: NamedCells, world: World): Finding[] {
  return [...sheet.filled()].flatMap(({ address, value, formula }): Finding[] => {
    if (!mayBeOurs(formula)) return [];
    // A formula that Excel has left as a text of its own: "=GYLE…" behind an apostrophe is the user's doing, and stays.
    if (!isErrorText(value)) return [];
    const typed = withOurSeparators(formula);
    if (typed !== undefined) {
      const { what, remedy } = separatorWords(typed);
      return [{ sheet: sheet.sheetName, address, weight: "look", words: `${what} ${remedy}` }];
    }
    const found =
      value === "#NAME?"
        ? unknownName(sheet.sheetName, address, formula, world)
        : otherError(sheet.sheetName, address, value, formula, world);
    return found ? [found] : [];
  });
}

function unknownName(sheet: string, address: string, was: string, world: World): Finding | undefined {
  const formula = typedSpelling(was);
  const base = { sheet, address, weight: "look" as const };
  const calls = withInner(gyleCalls(formula));
  if (calls.length === 0) return undefined;
  const unknown = calls.find(({ id }) => !registry.some((descriptor) => descriptor.id === id));
  if (unknown) {
    const likely = likelyFunction(unknown.id);
    return { ...base, words: `There is no function GYLE.${unknown.id}.${likely ? ` Did you mean GYLE.${likely}?` : ""}` };
  }
  const names = missingNames(formula, world);
  if (names.length > 0) return { ...base, words: `There is no name ${names.join(", ")} here: it was deleted or mistyped.` };
  return {
    ...base,
    words: "Excel left this GYLE formula at #NAME?. Entered again, it will calculate.",
    repair: { sheet, address, formula, was, kind: "stuck" },
  };
}

function missingNames(formula: string, world: World): string[] {
  const tree = parsed(formula);
  if (!tree) return [];
  const own = letParts(tree);
  return [
    ...new Set(
      [...nodesOf(tree)].flatMap((node) => {
        const reference = isReferenceNode(node) ? referenceOf(node.kind, node.value) : undefined;
        if (reference?.kind !== "name" || own.has(reference.name.toLowerCase())) return [];
        return world.name(reference.sheet ?? world.sheet, reference.name) === undefined ? [reference.name] : [];
      }),
    ),
  ];
}

/** A cell that only passes on the error of another is left out: that one is reported. */
function otherError(sheet: string, address: string, value: string, formula: string, world: World): Finding | undefined {
  const base = { sheet, address, weight: "look" as const };
  if (value === "#SPILL!")
    return { ...base, words: "The answer needs more cells than are empty: clear what stands below or beside it, or move it." };
  if (value === "#REF!") return { ...base, words: "The formula points at cells that were deleted." };
  if (/^#(BUSY!|GETTING_DATA|CONNECT!)$/.test(value)) return undefined;
  const tree = parsed(formula);
  const parts = tree ? letParts(tree) : new Map<string, never>();
  const own = withInner(gyleCalls(formula)).map((call) =>
    explainCall(call, { ...world, row: position(address).row }, parts, { row: 0, column: 0 }),
  );
  const failed = own.find(({ answer }) => answer instanceof CellError);
  if (!failed?.problem)
    return own.some(({ answer }) => answer === undefined)
      ? { ...base, words: `Shows ${value}: select it and open Explain to see why.` }
      : undefined;
  if (failed.problem.what.includes("itself, and that is passed on")) return undefined;
  return { ...base, words: `GYLE.${failed.id}: ${failed.problem.what}` };
}
