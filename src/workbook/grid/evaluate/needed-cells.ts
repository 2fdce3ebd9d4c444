import { isReferenceNode, type AstExpression } from "@borgar/fx";
import { nodesOf, parsed } from "./parse";
import { referenceOf } from "./references";
import type { World } from "./world";

/** What must be read before a formula can be worked out. */
export interface NeededCells {
  /** By sheet and range, "B7#" for a spill. */
  readonly ranges: Map<string, { readonly sheet: string; readonly range: string }>;
  /** Names of tables; "" for the one that the cell stands in. */
  readonly tables: Set<string>;
}

export const rangeKey = (sheet: string, range: string): string => `${sheet.toLowerCase()}!${range}`;

/** Follows names to what they stand for. */
export function neededCells(formulas: readonly string[], { sheet, name }: Pick<World, "sheet" | "name">): NeededCells {
  const needed: NeededCells = { ranges: new Map(), tables: new Set() };
  const followed = new Set<string>();
  const follow = (text: string): void => {
    if (followed.has(text)) return;
    followed.add(text);
    const tree = parsed(text);
    for (const node of tree ? nodesOf(tree) : []) note(node);
  };
  const note = (node: AstExpression): void => {
    if (node.type === "UnaryExpression" && node.operator === "#") {
      const [operand] = node.arguments;
      if (operand && isReferenceNode(operand)) noteRange(operand.value, "#");
    } else if (isReferenceNode(node)) {
      const reference = referenceOf(node.kind, node.value);
      if (reference?.kind === "cells") noteRange(node.value, "");
      if (reference?.kind === "table") needed.tables.add(reference.table);
      if (reference?.kind === "name") {
        const formula = name(reference.sheet ?? sheet, reference.name);
        if (formula !== undefined) follow(formula);
      }
    }
  };
  const noteRange = (text: string, ending: string): void => {
    const reference = referenceOf("range", text);
    if (reference?.kind !== "cells") return;
    const where = { sheet: reference.sheet ?? sheet, range: reference.range + ending };
    needed.ranges.set(rangeKey(where.sheet, where.range), where);
  };
  for (const formula of formulas) follow(formula);
  return needed;
}
