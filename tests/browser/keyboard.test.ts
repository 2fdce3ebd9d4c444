import { beforeAll, expect, test } from "vitest";
import { useBench } from "./support/bench-fixture";
import type { BenchPage } from "./support/bench-page";
import { openScreen } from "./support/pane-screens";

const bench = useBench({ profile: "whole file" });
const written = "Written by the pane";
const typed = "Typed by hand";
let tab: BenchPage;

interface Cell {
  row: number;
  column: number;
  value: string | number | boolean | null;
  formula: string;
}

beforeAll(async () => {
  tab = await bench.open();
  // A small grid is drawn sooner.
  await tab.page.setViewportSize({ width: 1000, height: 600 });
});

test("a batch goes in by the keyboard alone, Tab by Tab, and its sheet then shows what the same batch shows when the pane writes it", async () => {
  await writeBatch(written, "An example pale ale to change");
  await writeBatch(typed, "Blank, I fill in my own");
  const [example, blank] = [await cellsOf(written), await cellsOf(typed)];
  const at = (cells: Cell[], { row, column }: Cell) => cells.find((cell) => cell.row === row && cell.column === column);
  const toType = example.filter(
    (cell) =>
      cell.formula === "" && cell.value !== null && at(blank, cell)?.value !== cell.value && at(blank, cell)?.formula !== cell.value,
  );
  const own = toType.filter(({ value }) => value !== written);
  // The bill has choices in it, and lines of several cells; otherwise this would prove little.
  expect(own.length).toBeGreaterThan(30);
  expect(own.some(({ value }) => value === "steep")).toBe(true);
  expect(own.some(({ value }) => value === "pellets")).toBe(true);

  await tab.click(typed, "A4");
  for (const { row, column, value } of own) {
    await goTo(row, column);
    await tab.page.keyboard.type(String(value));
    await press("Tab");
  }
  await tab.calculated();

  const shown = await cellsOf(typed);
  const differing = example.filter((cell) => !same(at(shown, cell)?.value ?? null, cell.value) && cell.value !== written);
  expect(differing.map((cell) => [cell, at(shown, cell)?.value])).toEqual([]);
}, 600_000);

test("the list of a cell with choices opens by Alt and an arrow and by F4, and arrows and Enter take from it", async () => {
  const { row, column } = (await cellsOf(written)).find(({ value }) => value === "steep")!;
  await bringToFront(written);
  await tab.click(written, "A4");
  await goTo(row, column);
  const list = tab.page.locator("[data-u-comp='sheets-dropdown-list']");
  await tab.page.keyboard.press("Alt+ArrowDown");
  await list.locator("[data-marked]", { hasText: "steep" }).waitFor();
  await tab.page.keyboard.press("ArrowDown");
  await list.locator("[data-marked]", { hasText: "extract" }).waitFor();
  await tab.page.keyboard.press("Enter");
  await list.waitFor({ state: "detached" });
  await expect.poll(() => valueAt(written, row, column)).toBe("extract");
  await tab.page.keyboard.press("F4");
  await list.locator("[data-marked]").waitFor();
  await tab.page.keyboard.press("Escape");
  await list.waitFor({ state: "detached" });
  expect(await valueAt(written, row, column)).toBe("extract");
  // The keyboard is still the grid's.
  await type("mash", "Enter");
  expect(await valueAt(written, row, column)).toBe("mash");
});

test("what a cell refuses leaves the keyboard in the grid when its box is closed", async () => {
  const { row, column } = (await cellsOf(written)).find(({ value }) => value === "extract")!;
  await bringToFront(written);
  await tab.click(written, "A4");
  await goTo(row, column);
  await tab.page.keyboard.type("extrakt");
  await tab.page.keyboard.press("Enter");
  // The keyboard goes to the box that refuses it, and Enter closes the box.
  await tab.page.waitForFunction(() => document.activeElement?.tagName === "BUTTON");
  await tab.page.keyboard.press("Enter");
  await tab.page.waitForFunction(() => document.activeElement?.tagName !== "BUTTON");
  await type("sugar", "Enter");
  expect(await valueAt(written, row, column)).toBe("sugar");
});

async function writeBatch(name: string, recipe: string): Promise<void> {
  const pane = await tab.pane();
  await openScreen(pane, "Plan", "New batch");
  await pane.getByLabel("Name of the batch").fill(name);
  await pane.getByLabel("US: gal, lb, °F").check();
  await pane.getByLabel(recipe).check();
  await pane.getByRole("button", { name: "Write the batch sheet" }).click();
  await pane.getByText(`“${name}” is in the workbook`).waitFor();
  await tab.calculated();
}

const bringToFront = (name: string) =>
  tab.page.evaluate((name) => {
    const workbook = window.gylebookBench.univerAPI.getActiveWorkbook()!;
    workbook.setActiveSheet(workbook.getSheetByName(name)!);
  }, name);

function cellsOf(name: string): Promise<Cell[]> {
  return tab.page.evaluate((name) => {
    const { univerAPI, engine } = window.gylebookBench;
    const sheet = univerAPI.getActiveWorkbook()!.getSheetByName(name)!;
    // The first rows hold the title and the sheet's own mark.
    return Array.from({ length: 137 * 15 }, (_, index) => {
      const range = sheet.getRange(3 + Math.floor(index / 15), index % 15);
      return {
        row: range.getRow(),
        column: range.getColumn(),
        value: window.gylebookBench.valueAt(name, range.getA1Notation()),
        formula: engine.formulaAt({
          unitId: range.getUnitId(),
          sheetId: range.getSheetId(),
          row: range.getRow(),
          column: range.getColumn(),
        }),
      };
    });
  }, name);
}

const valueAt = (name: string, row: number, column: number): Promise<unknown> =>
  tab.valueAt(name, `${String.fromCharCode(65 + column)}${row + 1}`);

const same = (one: unknown, other: unknown): boolean =>
  typeof one === "number" && typeof other === "number" ? Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(other)) : one === other;

/** Through the sheet by Tab and the arrows, looking at the selection as a person does. */
async function goTo(row: number, column: number): Promise<void> {
  for (let step = 0; step < 400; step++) {
    const here = await selection();
    if (here.row === row && here.column === column) return;
    await press(here.row < row ? "ArrowDown" : here.row > row ? "ArrowUp" : here.column < column ? "Tab" : "ArrowLeft");
  }
  throw new Error(`The keyboard does not lead to row ${row + 1}, column ${column + 1}.`);
}

const selection = () =>
  tab.page.evaluate(() => {
    const range = window.gylebookBench.univerAPI.getActiveWorkbook()!.getActiveRange()!;
    return { row: range.getRow(), column: range.getColumn() };
  });

async function type(text: string, end: string): Promise<void> {
  await tab.page.keyboard.type(text);
  await press(end);
  await tab.calculated();
}

/** Presses a key that leaves the cell, and waits until another one is selected. */
async function press(key: string): Promise<void> {
  const before = await selection();
  await tab.page.keyboard.press(key);
  await tab.page.waitForFunction(
    ({ row, column }) => {
      const workbook = window.gylebookBench.univerAPI.getActiveWorkbook()!;
      const range = workbook.getActiveRange();
      return !workbook.isCellEditing() && range !== null && (range.getRow() !== row || range.getColumn() !== column);
    },
    before,
    { polling: 10 },
  );
}
