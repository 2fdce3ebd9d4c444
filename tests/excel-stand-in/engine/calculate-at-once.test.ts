import { afterAll, afterEach, beforeAll, expect, it, vi } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { loadHeadlessBench } from "../../support/headless-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = (await loadHeadlessBench()).createHeadlessBench({ metadata: { functions: [] } });
  await bench.calculate();
});
afterAll(() => bench.dispose());
afterEach(() => vi.restoreAllMocks());

const write = (cells: Readonly<Record<string, number | string>>) =>
  bench.Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getFirst();
    for (const [address, content] of Object.entries(cells)) sheet.getRange(address).formulas = [[content]];
    await context.sync();
  });
const name = () => bench.univerAPI.getActiveWorkbook()!.getSheets()[0]!.getSheetName();

/** From now on nothing happens that waits longer than a moment: the grid's own tenth of a second never comes. */
function stopLongWaits(): void {
  const { setTimeout: real } = globalThis;
  const stopped = ((run: () => void, ms = 0) => (ms < 50 ? real(run, ms) : 0)) as typeof setTimeout;
  vi.spyOn(globalThis, "setTimeout").mockImplementation(stopped);
}

it("whoever waits for results has them without waiting for more edits first", async () => {
  stopLongWaits();
  await write({ A1: 2, B1: "=A1*3", C1: "=B1+1" });
  await bench.calculate();
  expect([bench.valueAt(name(), "B1"), bench.valueAt(name(), "C1")]).toEqual([6, 7]);
});

it("what is edited while somebody waits is calculated too", async () => {
  stopLongWaits();
  await write({ A1: 5 });
  const calculated = bench.calculate();
  await write({ B2: "=C1*10" });
  await calculated;
  await bench.calculate();
  expect([bench.valueAt(name(), "C1"), bench.valueAt(name(), "B2")]).toEqual([16, 160]);
});

it("a workbook that is opened is calculated at once", async () => {
  stopLongWaits();
  await bench.load({
    id: "another",
    sheetOrder: ["one"],
    sheets: { one: { id: "one", name: "One", cellData: { 0: { 0: { v: 4 }, 1: { f: "=A1^2" } } } } },
  });
  expect(bench.valueAt("One", "B1")).toBe(16);
});
