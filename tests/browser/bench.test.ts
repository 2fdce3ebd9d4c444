import { unzipSync, zipSync } from "fflate";
import type { Locator } from "playwright-core";
import { beforeAll, beforeEach, expect, test } from "vitest";
import type { BenchPage } from "./support/bench-page";
import { useBench, wideGrid } from "./support/bench-fixture";

const bench = useBench({ profile: "whole file", viewport: wideGrid });
let tab: BenchPage;
const sheet = "Sheet 1";
/** 5.31: the example in src/functions/beer/abv.ts. */
const strength = "=GYLE.BEER.ABV(1.05,1.01)";

beforeAll(async () => {
  tab = await bench.open();
});
beforeEach(() => tab.startEmpty());

test("a formula typed into a cell shows its result", async () => {
  await tab.enter(sheet, "B3", strength);
  expect(await tab.valueAt(sheet, "B3")).toBeCloseTo(5.31, 2);
});

test("the start of a function's name lists it, and its arguments are explained", async () => {
  await tab.click(sheet, "B3");
  await tab.page.keyboard.type("=GYLE.BEER.AB", { delay: 30 });
  const suggestion = tab.page.getByText("Alcohol by volume of a beer").first();
  await suggestion.waitFor();
  await tab.page.keyboard.type("V(", { delay: 30 });
  await tab.page.getByText("Specific gravity of the wort when the yeast went in").first().waitFor();
  await tab.page.keyboard.press("Escape");
});

test("hovering an error says in our words what is wrong", async () => {
  await tab.setValue(sheet, "B3", '=GYLE.BEER.ABV(1.05,"soon")');
  expect(await tab.valueAt(sheet, "B3")).toBe("#VALUE!");
  await tab.hover(sheet, "B3");
  await tab.page.getByText('must be a number, not the text "soon"').first().waitFor();
});

test("a long message of an error stays inside its box and the window, also at the window's edge and in a narrow one", async () => {
  const formula = "=GYLE.BEER.ABV(12.4,1.01)";
  for (const cell of ["B3", "J25"]) {
    await tab.setValue(sheet, cell, formula);
    await tab.hover(sheet, cell);
    await expectInside(tab.page.getByText("wrap it in GYLE.WORT.SG(12.4)").first());
  }
  const size = tab.page.viewportSize()!;
  await tab.page.setViewportSize({ width: 400, height: 750 });
  await tab.page.locator("#pane-button").click();
  await tab.setValue(sheet, "C6", formula);
  await tab.hover(sheet, "C6");
  await expectInside(tab.page.getByText("wrap it in GYLE.WORT.SG(12.4)").first());
  // Nothing of the page lies beyond the narrow window, so that nothing can scroll it away.
  expect(
    await tab.page.evaluate(
      () => [...document.querySelectorAll(".bench-bar *")].filter((one) => one.getBoundingClientRect().right > innerWidth).length,
    ),
  ).toBe(0);
  await tab.page.setViewportSize(size);
  await tab.page.locator("#pane-button").click();
});

test("going to an error by the keyboard says what is wrong, and going on takes the words away", async () => {
  await tab.setValue(sheet, "B4", "=GYLE.BEER.ABV(1,05;1,01)");
  await tab.click(sheet, "B3");
  const words = tab.page.getByText("Commas and semicolons are exchanged").first();
  await tab.page.keyboard.press("ArrowDown");
  await words.waitFor();
  await tab.page.keyboard.press("ArrowDown");
  await words.waitFor({ state: "detached" });
});

test("the argument that is being typed is explained without a click, the optional ones and their choices too", async () => {
  await tab.click(sheet, "B3");
  await tab.page.keyboard.type("=gyle.pack.priming(19,", { delay: 30 });
  const hint = tab.page.locator("[data-u-comp='rect-popup']", { hasText: "GYLE.PACK.PRIMING(" });
  await expectInside(hint.getByText("2.2 to 2.6 suits most ales"));
  expect(await hint.getByText("Beer to be bottled").isVisible()).toBe(false);
  await tab.page.keyboard.type("2.4,20,", { delay: 30 });
  await expectInside(hint.getByText("One of: dextrose, glucose, sucrose, malt extract, honey"));
  await tab.page.keyboard.press("Escape");
  await tab.page.keyboard.press("Escape");
});

test("Ctrl+Z takes an entry back, and what depends on it follows", async () => {
  await tab.setValue(sheet, "B3", "=B2*2");
  await tab.enter(sheet, "B2", "21");
  expect(await tab.valueAt(sheet, "B3")).toBe(42);
  await tab.page.keyboard.press("Control+z");
  await tab.page.waitForFunction(() => window.gylebookBench.valueAt("Sheet 1", "B2") === null);
  await tab.calculated();
  expect(await tab.valueAt(sheet, "B3")).toBe(0);
});

test("a saved file opens with the same values, spilled ones too", async () => {
  await tab.setValue(sheet, "B3", strength);
  await tab.setValue(sheet, "D3", "=SEQUENCE(3,2)");
  const bytes = await tab.saveFile();
  await tab.page.getByRole("button", { name: "New" }).click();
  await tab.page.getByRole("button", { name: "Empty workbook" }).click();
  await expect.poll(() => tab.valueAt(sheet, "B3"), { timeout: 30_000 }).toBeNull();
  await tab.openFile(bytes, "Pale ale.xlsx");
  await tab.page.waitForFunction(() => document.title.startsWith("Pale ale"));
  await tab.calculated();
  expect(await tab.valueAt(sheet, "B3")).toBeCloseTo(5.31, 2);
  expect(await tab.valueAt(sheet, "E5")).toBe(6);
});

test("Ctrl+S hands over an .xlsx file with what is still being typed", async () => {
  await tab.click(sheet, "B3");
  await tab.page.keyboard.type("77");
  const download = tab.page.waitForEvent("download");
  await tab.page.keyboard.press("Control+s");
  expect((await download).suggestedFilename()).toBe("Workbook.xlsx");
  expect(await tab.valueAt(sheet, "B3")).toBe(77);
});

test("saving names a formula that no spreadsheet program could read", async () => {
  await tab.setValue(sheet, "B3", "=GYLE.BEER.ABV(1.05,1.01))");
  await tab.setValue(sheet, "B4", '=GYLE.BEER.ABV(1.05,"soon")');
  const download = tab.page.waitForEvent("download");
  await tab.page.keyboard.press("Control+s");
  await download;
  const notice = tab.notices.getByText("the file holds it as a text");
  expect(await notice.textContent()).toContain("as a text: Sheet 1!B3. ");
  await tab.notices.getByRole("button", { name: "Close" }).click();
});

test("a file that is none is refused in words, and the work stays", async () => {
  bench.allowErrors();
  await tab.setValue(sheet, "B3", 7);
  await tab.openFile(new TextEncoder().encode("not a workbook"), "notes.xlsx");
  await tab.page.getByRole("button", { name: "Open without saving" }).click();
  await tab.notices.getByText("notes.xlsx could not be opened").waitFor();
  expect(await tab.valueAt(sheet, "B3")).toBe(7);
});

test("a file with a part missing, or one that the grid refuses, leaves the work as it was, also what is kept of it", async () => {
  bench.allowErrors();
  await tab.setValue(sheet, "B3", "Quillmarsh");
  await tab.keepNow();
  const parts = unzipSync(await tab.saveFile());
  delete parts["xl/sharedStrings.xml"];
  await tab.openFile(zipSync(parts), "lost texts.xlsx");
  await tab.page.getByRole("button", { name: "Open without saving" }).click();
  await tab.notices.getByText("its part xl/sharedStrings.xml is missing").waitFor();
  expect(await tab.valueAt(sheet, "B3")).toBe("Quillmarsh");
  const bytes = await tab.saveFile();
  await tab.page.evaluate(() => {
    const { engine } = window.gylebookBench.session;
    const open = engine.openWorkbook.bind(engine);
    engine.openWorkbook = (data) => {
      open({ id: "half", sheetOrder: [], sheets: {} });
      engine.openWorkbook = open;
      throw new Error(`no grid for ${data.id}`);
    };
  });
  await tab.openFile(bytes, "refused.xlsx");
  await tab.page.getByRole("button", { name: "Open without saving" }).click();
  await tab.notices.getByText("refused.xlsx could not be opened: no grid").waitFor();
  expect(await tab.valueAt(sheet, "B3")).toBe("Quillmarsh");
  await tab.keepNow();
  await tab.reload();
  expect(await tab.valueAt(sheet, "B3")).toBe("Quillmarsh");
});

test("what could not be saved first is not replaced by another file", async () => {
  bench.allowErrors();
  const bytes = await tab.saveFile();
  await tab.setValue(sheet, "B3", 7);
  await tab.page.evaluate(() => {
    window.gylebookBench.session.toFile = () => Promise.reject(new Error("no room"));
  });
  await tab.openFile(bytes, "Other.xlsx");
  await tab.page.getByRole("button", { name: "Save first, then open" }).click();
  await tab.notices.getByText("The file could not be written: no room").waitFor();
  await tab.page.waitForTimeout(500);
  expect(await tab.valueAt(sheet, "B3")).toBe(7);
  await tab.page.evaluate(() => {
    delete (window.gylebookBench.session as { toFile?: unknown }).toFile;
  });
});

test("what is still being typed counts as a change when another file is opened", async () => {
  const bytes = await tab.saveFile();
  await tab.click(sheet, "B3");
  await tab.page.keyboard.type("77");
  await tab.openFile(bytes, "Other.xlsx");
  await tab.page.getByText("which has changes that are in no file yet").waitFor();
  await tab.page.getByRole("button", { name: "Cancel" }).click();
  expect(await tab.valueAt(sheet, "B3")).toBe(77);
});

test("a spill goes to other programs with all its values, comes anew beside its formula, and as values without it", async () => {
  await bench.context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await tab.setValue(sheet, "D3", "=SEQUENCE(2,2)");
  await drag("D3", "E4");
  await tab.page.keyboard.press("Control+c");
  await expect.poll(() => tab.page.evaluate(() => navigator.clipboard.readText())).toBe("1\t2\n3\t4");
  await tab.click(sheet, "G3");
  await tab.page.keyboard.press("Control+v");
  await expect.poll(() => tab.valueAt(sheet, "H4")).toBe(4);
  expect(await formulaAt("G3")).toBe("=SEQUENCE(2,2)");
  await drag("E3", "E4");
  await tab.page.keyboard.press("Control+c");
  await expect.poll(() => tab.page.evaluate(() => navigator.clipboard.readText())).toBe("2\n4");
  await tab.click(sheet, "G8");
  await tab.page.keyboard.press("Control+v");
  await expect.poll(() => tab.valueAt(sheet, "G9")).toBe(4);
  expect(await formulaAt("G8")).toBe("");
});

const formulaAt = (a1: string) =>
  tab.page.evaluate((a1) => window.gylebookBench.univerAPI.getActiveWorkbook()!.getActiveSheet().getRange(a1).getFormula(), a1);

async function drag(from: string, to: string): Promise<void> {
  await tab.click(sheet, from);
  await tab.page.keyboard.down("Shift");
  await tab.click(sheet, to);
  await tab.page.keyboard.up("Shift");
}

test("there is room far to the right, in a new workbook, on a new sheet and in a file", async () => {
  const bytes = await tab.saveFile();
  await typeFarRight(sheet);
  await tab.page
    .getByRole("button", { name: "Add Sheet" })
    .or(tab.page.locator("[data-u-comp='slide-tab-bar'] ~ button, .univerjs-icon-increase-icon"))
    .first()
    .click();
  await expect.poll(() => tab.page.evaluate(() => window.gylebookBench.univerAPI.getActiveWorkbook()!.getSheets().length)).toBe(2);
  await typeFarRight("Sheet1");
  await tab.page.evaluate((content) => window.gylebookBench.open(new Uint8Array(content), "Far.xlsx"), [...bytes]);
  await typeFarRight(sheet);
});

async function typeFarRight(name: string): Promise<void> {
  await tab.scrollTo(name, "CX3");
  await tab.enter(name, "CX3", "=1+1");
  expect(await tab.valueAt(name, "CX3")).toBe(2);
}

test("the pane works on the workbook beside it", async () => {
  const frame = await tab.pane();
  const values = await frame.evaluate(() =>
    Excel.run(async (context) => {
      const range = context.workbook.worksheets.getActiveWorksheet().getRange("A1:B1");
      range.values = [[1.05, "=GYLE.BEER.ABV(A1,1.01)"]];
      range.load("values");
      await context.sync();
      return range.values;
    }),
  );
  expect(values[0]![1]).toBeCloseTo(5.31, 2);
  expect(await tab.valueAt(sheet, "B1")).toBeCloseTo(5.31, 2);
});

test("the pane can be hidden, also from the keyboard", async () => {
  const frame = tab.page.locator("#pane");
  expect(await frame.isVisible()).toBe(true);
  await tab.page.locator("#pane-button").focus();
  await tab.page.keyboard.press("Enter");
  expect(await frame.isVisible()).toBe(false);
  expect(await tab.page.locator("#pane-button").getAttribute("aria-expanded")).toBe("false");
});

test("merging cells for the pane leaves the selected cell where it is", async () => {
  await tab.click(sheet, "C7");
  await (
    await tab.pane()
  ).evaluate(() =>
    Excel.run(async (context) => {
      context.workbook.worksheets.getActiveWorksheet().getRange("A1:B2").merge();
      await context.sync();
    }),
  );
  const found = await tab.page.evaluate(() => {
    const worksheet = window.gylebookBench.univerAPI.getActiveWorkbook()!.getActiveSheet();
    const { startRow, startColumn, isMerged } = worksheet.getSelection()!.getCurrentCell()!;
    return { startRow, startColumn, isMerged, merged: worksheet.getMergedRanges().length };
  });
  // The grid would have had the cell begin at A1.
  expect(found).toEqual({ startRow: 6, startColumn: 2, isMerged: false, merged: 1 });
});

test("formulas that depend on themselves are named, until they are put right", async () => {
  await tab.setValue(sheet, "B3", "=B4+1");
  await tab.setValue(sheet, "B4", "=B3+1");
  const warning = tab.notices.getByText("depend on themselves");
  await warning.waitFor();
  expect(await warning.textContent()).toContain("Sheet 1!B3");
  await tab.setValue(sheet, "B4", 1);
  await warning.waitFor({ state: "detached" });
});

/** Seen, and neither cut off by its own box nor by the window's edge. */
async function expectInside(words: Locator): Promise<void> {
  await words.waitFor();
  await words.page().waitForTimeout(300);
  const { overflow, box } = await words.evaluate((element) => {
    const popup = element.closest("[data-u-comp='rect-popup']")!;
    const { left, right, top, bottom } = popup.getBoundingClientRect();
    return {
      overflow: element.scrollWidth - element.clientWidth,
      box: { left, right: innerWidth - right, top, bottom: innerHeight - bottom },
    };
  });
  expect(overflow).toBeLessThanOrEqual(0);
  expect(Math.min(...Object.values(box))).toBeGreaterThanOrEqual(0);
}
