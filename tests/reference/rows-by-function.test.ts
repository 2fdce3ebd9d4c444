import { describe, expect, it } from "vitest";
import { readReferenceTable } from "../support/reference-table";
import { registry } from "../../src/functions/registry";
import { reasonsForNoDocument } from "./reasons";
import { basisNames } from "./bases";
import { rowsByFunction, tables } from "./rows-by-function";

const counts = rowsByFunction();
const ids = registry.map(({ id }) => id);

describe("the check values behind each function", () => {
  it("name functions that exist, and a known basis", () => {
    expect(Object.keys(counts).filter((id) => !ids.includes(id))).toEqual([]);
    expect(
      Object.values(counts)
        .flatMap((own) => Object.keys(own))
        .filter((basis) => !(basisNames as readonly string[]).includes(basis)),
    ).toEqual([]);
  });

  it.each(ids)("%s: some were read in a document, or it is said why not", (id) => {
    const read = counts[id]?.["document"] ?? 0;
    const reason = reasonsForNoDocument[id];
    if (read > 0) expect(reason, "a reason that no longer holds").toBeUndefined();
    else expect(reason?.length ?? 0, "a reason in tests/reference/reasons.ts").toBeGreaterThan(10);
  });

  /** Whole tables that the code was made from, whatever a row calls itself. */
  it("count no row as independent that the code was made from, or that only turns another round", () => {
    const independent = (table: string) => readReferenceTable(table).filter(({ basis }) => basis === "document");
    expect(independent("beer/styles.csv")).toEqual([]);
    expect(independent("wort/gravity-scales.csv").filter(({ source }) => source.includes("Table 114"))).toEqual([]);
    // Of one pair of numbers only one direction counts: a row that wants what another was given, and was given what that one wants.
    const all = tables()
      .flatMap(independent)
      .map((row) => ({ ...row, given: (JSON.stringify(JSON.parse(row.arguments)).match(/-?\d+(\.\d+)?/g) ?? []).map(Number) }));
    const turned = all.filter((row) =>
      all.some(
        (other) =>
          other.function !== row.function && other.given.includes(Number(row.expected)) && row.given.includes(Number(other.expected)),
      ),
    );
    expect(turned.map((row) => `${row.function}${row.arguments}`)).toEqual([]);
  });

  it("give reasons for functions that exist only, and are many in all", () => {
    const reasons = Object.keys(reasonsForNoDocument);
    expect(reasons.filter((id) => !ids.includes(id))).toEqual([]);
    expect(Object.values(counts).reduce((sum, own) => sum + (own["document"] ?? 0), 0)).toBeGreaterThan(120);
  });
});
