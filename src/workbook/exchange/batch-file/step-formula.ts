import { tokenize, tokenTypes } from "@borgar/fx";
import { registry } from "../../../functions/registry";
import { gyleId } from "../../grid/formulas";

/** Native functions that a step of the brew day may use: sums, choices and words, nothing that fetches, links or moves. */
const allowedFunctions = new Set([
  "ABS",
  "AND",
  "CEILING",
  "COUNTIF",
  "FIXED",
  "FLOOR",
  "IF",
  "IFERROR",
  "INT",
  "ISNUMBER",
  "MAX",
  "MIN",
  "N",
  "NOT",
  "OR",
  "ROUND",
  "ROUNDDOWN",
  "ROUNDUP",
  "SUM",
  "TEXT",
]);
const allowedTypes = new Set<string>([
  tokenTypes.OPERATOR,
  tokenTypes.FUNCTION,
  tokenTypes.REF_NAMED,
  tokenTypes.STRING,
  tokenTypes.NUMBER,
  tokenTypes.BOOLEAN,
  tokenTypes.WHITESPACE,
  tokenTypes.FX_PREFIX,
]);
const gyleIds = new Set(registry.map(({ id }) => id));

/**
 * What speaks against a step's formula from a file; undefined when it only uses the batch sheet's own names, a few
 * harmless native functions and ours. References to cells, other sheets and other workbooks never pass.
 */
export function stepFormulaProblem(formula: string, names: ReadonlySet<string>): string | undefined {
  if (formula.length > 400) return "a formula of more than 400 characters";
  for (const { type, value } of tokenize(formula, { mergeRefs: true })) {
    if (!allowedTypes.has(type)) return `a formula with “${value.slice(0, 40)}”`;
    if (type === tokenTypes.OPERATOR && !/^([-+*/^&=<>(),%]|<=|>=|<>)$/.test(value)) return `a formula with “${value}”`;
    if (type === tokenTypes.FUNCTION && !allowedFunctions.has(value.toUpperCase()) && !gyleIds.has(gyleId(value) ?? ""))
      return `a formula with the function ${value.slice(0, 40)}`;
    if (type === tokenTypes.REF_NAMED && !names.has(value.toLowerCase()))
      return `a formula with “${value.slice(0, 40)}”, which no batch sheet has`;
  }
  return undefined;
}
