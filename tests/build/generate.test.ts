import { describe, expect, it } from "vitest";
import { functionTable, signature } from "../../src/build/function-table";
import { replaceBetweenMarkers } from "../../src/build/markers";
import { functionNamed, registry } from "../../src/functions/registry";

describe("the markers of a generated part", () => {
  const page = "before\n<!-- functions -->\nold\n<!-- /functions -->\nafter\n";

  it("keep what stands around them", () => {
    expect(replaceBetweenMarkers(page, "functions", "new")).toBe("before\n<!-- functions -->\nnew\n<!-- /functions -->\nafter\n");
  });

  it("give the same page when filled in twice", () => {
    const once = replaceBetweenMarkers(page, "functions", "new\nlines\n");
    expect(replaceBetweenMarkers(once, "functions", "new\nlines\n")).toBe(once);
  });

  it("are missed when they are not there", () => {
    expect(() => replaceBetweenMarkers("no markers", "functions", "new")).toThrow("<!-- functions -->");
    expect(() => replaceBetweenMarkers("<!-- /functions --><!-- functions -->", "functions", "new")).toThrow("missing");
  });
});

describe("the README's function table", () => {
  it("has a question for each function, in the registry's order, and no two the same", () => {
    const lines = [...functionTable(registry).matchAll(/^\| (.+\?) \| `([\w.]+)\(/gm)];
    expect(lines.map(([, , id]) => id)).toEqual(registry.map(({ id }) => id));
    expect(new Set(lines.map(([, question]) => question)).size).toBe(registry.length);
  });

  it("marks what may be left out", () => {
    expect(signature(functionNamed("BEER.ABV"))).toBe("BEER.ABV(original_gravity, final_gravity, [method], [primed])");
  });

  it("keeps a stroke in a sentence from ending a cell", () => {
    expect(functionTable([{ ...functionNamed("BEER.ABV"), id: "BEER.NEW", summary: "a | b" }])).toContain("| a \\| b |");
  });
});
