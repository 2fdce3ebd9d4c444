import { parseA1Ref, parseStructRef } from "@borgar/fx";
import { address } from "../plan/addresses";

/** Where an expression looks: cells, a name, or a part of a table. */
export type Reference =
  | { readonly kind: "cells"; readonly sheet?: string; readonly range: string }
  | { readonly kind: "name"; readonly sheet?: string; readonly name: string }
  | { readonly kind: "table"; readonly table: string; readonly columns: readonly string[]; readonly sections: readonly string[] };

/** By kind and text: the same few hundred are asked for again and again. */
const known = new Map<string, Reference | undefined>();
const mostKnown = 5000;

/** Cells of another workbook, or of another kind than we read, give `undefined`. */
export function referenceOf(kind: "name" | "range" | "beam" | "table", text: string): Reference | undefined {
  const key = `${kind} ${text}`;
  if (known.has(key)) return known.get(key);
  if (known.size >= mostKnown) known.clear();
  const reference = taken(kind, text);
  known.set(key, reference);
  return reference;
}

function taken(kind: "name" | "range" | "beam" | "table", text: string): Reference | undefined {
  if (kind === "table") return tableReference(text);
  const found = parseA1Ref(text);
  const [sheet, ...more] = found?.context ?? [];
  if (!found || more.length > 0 || /\[/.test(sheet ?? "")) return undefined;
  const where = sheet === undefined ? {} : { sheet };
  if ("name" in found) return { kind: "name", ...where, name: found.name };
  const { top, left, bottom, right } = found.range;
  // Whole columns and rows are a million cells: nobody wants them shown.
  if (top == null || left == null || bottom == null || right == null) return undefined;
  const from = address(top + 1, left + 1);
  const to = address(bottom + 1, right + 1);
  return { kind: "cells", ...where, range: from === to ? from : `${from}:${to}` };
}

function tableReference(text: string): Reference | undefined {
  const found = parseStructRef(text);
  return found ? { kind: "table", table: found.table ?? "", columns: found.columns ?? [], sections: found.sections ?? [] } : undefined;
}
