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

  it("tells the starter: how much, of what, by when, and with how many packs", () => {
    const { starter } = batch;
    const alive = laidOver(calculatedSheet(planBatch(batch)));
    const asked = (name: string) => Number(alive.ask(`=${name}`)[0]?.[0]);
    expect(asked("starter_volume")).toBeGreaterThan(0.1);
    expect(beside("Starter", "C")).toBe(
      `${asked("starter_volume").toFixed(2)} ${units === "us" ? "US gal" : "L"} of 1.036, still, with ${asked("starter_extract").toFixed(2)} ${units === "us" ? "lb" : "kg"} of ${starter!.extractName} and 1 pack of yeast; made by 3 Sept. Foil over it, never a tight lid.`,
    );
  });

  it("tells each part by its own name, volume and verdict, without an error", () => {
    expect([...shown].filter(([, words]) => /^#(REF|VALUE|NUM|NAME|DIV|NULL|N\/A|SPILL)|\[object/.test(words))).toEqual([]);
    const parts = [batch.partsOfWort!.one, batch.partsOfWort!.two];
    for (const { name, volume, into } of parts)
      expect(beside(String(name), "C")).toMatch(
        new RegExp(`^${Number(volume).toFixed(2).replace(".", "\\.")}.* ${into}: .*(sugar|bar|psi|no figure)`),
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

describe.each([
  ["metric", "lactic", 80, "lactic 4.5 mL of 80 %, into the mash", "mL"],
  ["us", "lactic", "", "lactic 4.5 mL of 88 %, into the mash", "mL"],
  ["metric", "slaked lime", "", "slaked lime 4.5 g, into the mash", "g"],
] as const)("what goes into the water (%s, %s)", (units, corrector, strengthPercent, words, measure) => {
  const batch = filledBlocks(units, "Salted");
  const water = batch.waterTreatment!;
  const salted = { ...batch, waterTreatment: { ...water, mash: { ...water.mash, corrector, strengthPercent, amount: 4.5 } } };

  it("stands on the recipe page, the caution beside it", () => {
    const page = shownOn(salted, planRecipe);
    const row = rowsWith(page, "A").find(([, label]) => label === "Into the water")?.[0] ?? 0;
    expect(page.get(`C${row}`)).toMatch(/gypsum.* 3\.0 g; .*calcium chloride.* 2\.0 g; /i);
    expect(page.get(`C${row}`)).toContain(words);
    expect(page.get(`A${row + 1}`)).toContain("goggles");
    const without = shownOn(
      { ...salted, waterTreatment: { ...salted.waterTreatment, mash: { ...salted.waterTreatment.mash, amount: "" } } },
      planRecipe,
    );
    expect(without.get(`A${row + 1}`)).toBe("");
  });

  it("stands on the shopping list, each salt by itself", () => {
    const list = shownOn(salted, planShopping);
    const needed = rowsWith(list, "B").map(([row, what]): [string, string, string] => [
      what,
      list.get(`C${row}`) ?? "",
      list.get(`D${row}`) ?? "",
    ]);
    expect(needed).toContainEqual([expect.stringMatching(/gypsum/i), "3", expect.anything()]);
    expect(needed).toContainEqual([expect.stringMatching(/calcium chloride/i), "2", expect.anything()]);
    expect(needed.find(([what]) => what.startsWith("For the mash"))?.slice(0, 2)).toEqual([expect.stringContaining(corrector), "4.5"]);
    const row = rowsWith(list, "B").find(([, what]) => what.startsWith("For the mash"))![0];
    const unit = planShopping(
      { sheetName: salted.sheetName, contents: salted, cells: calculatedSheet(planBatch(salted)) },
      "List",
    ).cells.find(({ address }) => address === `D${row}`)!.content;
    expect(
      laidOver(calculatedSheet(planBatch(salted))).ask(
        String(unit).replace(`IF(C${row}="","",`, "IF(FALSE,0,").replaceAll(sheetPrefix(salted.sheetName), ""),
      ),
    ).toEqual([[measure]]);
  });
});

it("the shopping list names the sugar of each part", () => {
  const shown = shownOn(filledBlocks("metric", "In parts"), planShopping);
  expect(rowsWith(shown, "B").map(([, words]) => words)).toContainEqual(expect.stringMatching(/^Priming sugar for Bottles: \w/));
});
