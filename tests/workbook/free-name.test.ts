import { describe, expect, it } from "vitest";
import { freeName } from "../../src/workbook/grid/write/insert-sheet";
import { shortened } from "../../src/workbook/grid/words/shortened";
import { sheetNameProblem } from "../../src/workbook/grid/words/sheet-name";

describe("a name that is made of a sheet's", () => {
  it.each<[string, string, string, string]>([
    ["whole where it fits", "Eel Weir Brown", ", again", "Eel Weir Brown, again"],
    ["shortened at a word of the stem, never at its end", "Sluice Keeper's Bitter", " unplugged", "Sluice Keeper's unplugged"],
    ["without the comma that is left over", "The Heron, the Reed, the Weir", " shopping", "The Heron, the Reed shopping"],
    ["at a letter where one word fills it", "x".repeat(40), " recipe", `${"x".repeat(24)} recipe`],
  ])("is %s", (_, stem, ending, name) => {
    expect(shortened(stem, ending)).toBe(name);
    expect(sheetNameProblem(name)).toBeUndefined();
  });
});

describe("a free name for a sheet", () => {
  it.each<[string, readonly string[], string, string]>([
    ["what was asked for, where nobody has it", ["Batch 2"], "Batch 1", "Batch 1"],
    ["in another case of letters it is the same name", ["BATCH 1"], "Batch 1", "Batch 1 (2)"],
    ["the first number that is free", ["Ale", "ale (2)"], "Ale", "Ale (3)"],
    ["shortened to 31 characters", ["x".repeat(31)], "x".repeat(31), `${"x".repeat(27)} (2)`],
    ["an emoji at the cut goes as a whole", [`${"x".repeat(26)}🍺abc`], `${"x".repeat(26)}🍺abc`, `${"x".repeat(26)} (2)`],
    [
      "an apostrophe at the cut does no harm",
      [`${"x".repeat(26)}'${"y".repeat(4)}`],
      `${"x".repeat(26)}'${"y".repeat(4)}`,
      `${"x".repeat(26)}' (2)`,
    ],
  ])("%s", (_, taken, wanted, free) => {
    expect(freeName(taken, wanted)).toBe(free);
    expect(sheetNameProblem(free)).toBeUndefined();
    expect(free).not.toMatch(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])/);
  });
});
