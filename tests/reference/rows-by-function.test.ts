import { describe, expect, it } from "vitest";
import { registry } from "../../src/functions/registry";
import { reasonsForNoDocument } from "./reasons";
import { bases, rowsByFunction } from "./rows-by-function";

const counts = rowsByFunction();
const ids = registry.map(({ id }) => id);

describe("the check values behind each function", () => {
  it("name functions that exist, and a known basis", () => {
    expect(Object.keys(counts).filter((id) => !ids.includes(id))).toEqual([]);
    expect(Object.values(counts).flatMap((own) => Object.keys(own)).filter((basis) => !(bases as readonly string[]).includes(basis))).toEqual([]);
  });

  it.each(ids)("%s: some were read in a document, or it is said why not", (id) => {
    const read = counts[id]?.["document"] ?? 0;
    const reason = reasonsForNoDocument[id];
    if (read > 0) expect(reason, "a reason that no longer holds").toBeUndefined();
    else expect(reason?.length ?? 0, "a reason in tests/reference/reasons.ts").toBeGreaterThan(10);
  });

  it("give reasons for functions that exist only, and are many in all", () => {
    const reasons = Object.keys(reasonsForNoDocument);
    expect(reasons.filter((id) => !ids.includes(id))).toEqual([]);
    expect(Object.values(counts).reduce((sum, own) => sum + (own["document"] ?? 0), 0)).toBeGreaterThan(120);
  });
});
