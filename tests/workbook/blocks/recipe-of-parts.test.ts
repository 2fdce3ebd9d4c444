import { describe, expect, it } from "vitest";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { laidOver } from "../../../src/workbook/batch/rules/what-it-says";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { OnlyTheSheetKnows } from "../../../src/workbook/grid/evaluate/evaluate";
import { sheetPrefix } from "../../../src/workbook/grid/words/sheet-reference";
import { planRecipe } from "../../../src/workbook/sheets/pages/recipe-plan";
import { planShopping } from "../../../src/workbook/sheets/pages/shopping-plan";
import type { BatchInWorkbook } from "../../../src/workbook/sheets/batches-in-workbook";
import { calculatedSheet } from "../../support/calculated-sheet";
import { filledBlocks } from "../../support/filled-blocks";

/* Pages of a batch with every block: their formulas are asked of the batch sheet itself, as a grid would ask them. */

/** What the page's cells of these columns show, those that point at the batch sheet alone. */
function shownOn(
  contents: BatchContents,
  plan: (batch: BatchInWorkbook, name: string) => { cells: readonly { address: string; content: unknown }[] },
) {
  const cells = calculatedSheet(planBatch(contents));
  const prefix = sheetPrefix(contents.sheetName);
  const world = laidOver(cells);
  const shown = new Map<string, string>();
  for (const { address, content } of plan({ sheetName: contents.sheetName, contents, cells }, "Page").cells) {
    const text = String(content);
    if (!text.startsWith("=")) shown.set(address, text);
    // Lists are found by counts on the page itself; they have their own test in the grid.
    else if (
      !/[=$(,+][A-Z]{1,2}\$?\d/.test(
        text.replaceAll(new RegExp(`${prefix.replaceAll(/[^\w]/g, "\\$&")}[A-Z]+\\d+(:[A-Z]+\\d+)?`, "g"), "BATCH"),
      )
    )
      try {
        shown.set(address, String(world.ask(`=${text.slice(1).replaceAll(prefix, "")}`)[0]?.[0] ?? ""));
      } catch (problem) {
        // The date in the head: what stands in it is asked by the test in the grid.
        if (!(problem instanceof OnlyTheSheetKnows)) throw problem;
      }
  }
  return shown;
}
const rowsWith = (shown: ReadonlyMap<string, string>, letter: string): [number, string][] =>
  [...shown].flatMap(([cell, words]): [number, string][] =>
    cell.replace(/\d/g, "") === letter ? [[Number(cell.slice(letter.length)), words]] : [],
  );

describe.each(["metric", "us"] as const)("the recipe page of a batch in parts (%s)", (units) => {
  const batch = filledBlocks(units, "In parts");
  const shown = shownOn(batch, planRecipe);
  const beside = (label: string, letter: string): string => {
    const row = rowsWith(shown, label === "Keg pressure" || label === "Kind of bottle" ? "E" : "A").find(
      ([, words]) => words === label,
    )?.[0];
    expect(row, label).toBeDefined();
    const words = shown.get(`${letter}${row}`);
    expect(words, label).toBeDefined();
    return words ?? "";
  };

  it("tells each part by its own name, volume and verdict, without an error", () => {
    expect([...shown].filter(([, words]) => /^#(REF|VALUE|NUM|NAME|DIV|NULL|N\/A|SPILL)|\[object/.test(words))).toEqual([]);
    const parts = [batch.partsOfWort!.one, batch.partsOfWort!.two];
    for (const { name, volume, into } of parts)
      expect(beside(String(name), "C")).toMatch(
        new RegExp(`^${Number(volume).toFixed(1).replace(".", "\\.")}.* ${into}: .*(sugar|bar|psi|no figure)`),
      );
    expect(beside("Bottles", "E")).toMatch(/^(within|close|over):/);
  });

  it("says nothing of the whole that holds of a part only", () => {
    expect(beside("Into", "C")).toBe("parts, each with its own below");
    for (const label of ["Carbonation", "Priming sugar"]) expect(beside(label, "C"), label).toBe("");
    expect(beside("Kind of bottle", "F")).toBe("");
    expect(beside("Will it hold?", "C")).toContain("Each part");
  });

  it("says of the whole what section 8 says while no part is typed", () => {
    const { partsOfWort: _, ...whole } = batch;
    const page = shownOn(whole, planRecipe);
    const row = rowsWith(page, "A").find(([, words]) => words === "Into")?.[0];
    expect(page.get(`C${row}`)).toBe(batch.packaging.into);
  });
});

it("the shopping list names the sugar of each part", () => {
  const shown = shownOn(filledBlocks("metric", "In parts"), planShopping);
  expect(rowsWith(shown, "B").map(([, words]) => words)).toContainEqual(expect.stringMatching(/^Priming sugar for Bottles: \w/));
});
