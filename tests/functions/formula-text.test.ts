import { describe, expect, it } from "vitest";
import type { Example } from "../../src/functions/describe";
import { formulaText } from "../../src/functions/formula-text";
import { functionNamed } from "../../src/functions/registry";

const typed = (...values: Example["arguments"]) =>
  formulaText(functionNamed("BEER.ABV"), { arguments: values, value: 0, from: "made up for this test" });

describe("an example as it is typed into a cell", () => {
  it("holds numbers as they are and words in quotes", () => {
    expect(typed(1.05, 1.01, "simple")).toBe('=GYLE.BEER.ABV(1.05, 1.01, "simple")');
    expect(typed('3/8" line')).toBe('=GYLE.BEER.ABV("3/8"" line")');
    expect(typed(true, false)).toBe("=GYLE.BEER.ABV(TRUE, FALSE)");
  });

  it("leaves out what is left out, and puts an array in braces, row by row", () => {
    expect(typed(1.05, null, "us")).toBe('=GYLE.BEER.ABV(1.05, , "us")');
    expect(
      typed([
        ["Perle", 30],
        ["", null],
      ]),
    ).toBe('=GYLE.BEER.ABV({"Perle", 30; "", ""})');
  });
});
