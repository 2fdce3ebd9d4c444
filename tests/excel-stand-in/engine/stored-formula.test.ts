import { afterAll, beforeAll, beforeEach, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
const cellData = {
  0: { 0: { v: 1 }, 1: { f: "=A1:A3*2", custom: { legacy: true, unlocked: true } }, 2: { f: "=A1+1", custom: { array: [1, 1] } } },
};
const marks = (address: string) => bench.univerAPI.getActiveWorkbook()!.getActiveSheet().getRange(address).getCellData()?.custom;

beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());
beforeEach(() =>
  bench.load({
    id: `book-${Math.random()}`,
    sheetOrder: ["one"],
    sheets: { one: { id: "one", name: "Sheet1", cellData: structuredClone(cellData) } },
  }),
);

it("a formula typed over a stored one is a new one, and undo brings the old one back", async () => {
  const sheet = bench.univerAPI.getActiveWorkbook()!.getActiveSheet();
  sheet.getRange("B1").setValue({ f: "=A1:A3*3" });
  sheet.getRange("C1").setValue({ f: "=A1+2" });
  await bench.calculate();
  expect([marks("B1"), marks("C1")]).toEqual([{ unlocked: true }, undefined]);
  await bench.univerAPI.undo();
  await bench.univerAPI.undo();
  expect([marks("B1"), marks("C1")]).toEqual([{ legacy: true, unlocked: true }, { array: [1, 1] }]);
});

it("so is one that a program writes", async () => {
  await bench.Excel.run(async (context) => {
    context.workbook.worksheets.getFirst().getRange("B1:C1").formulas = [["=A1:A3*3", "=A1+2"]];
    await context.sync();
  });
  expect([marks("B1"), marks("C1")]).toEqual([{ unlocked: true }, undefined]);
  await bench.univerAPI.undo();
  expect([marks("B1"), marks("C1")]).toEqual([{ legacy: true, unlocked: true }, { array: [1, 1] }]);
});

it("a formula that only moves stays the stored one", async () => {
  const sheet = bench.univerAPI.getActiveWorkbook()!.getActiveSheet();
  sheet.insertRowsBefore(0, 1);
  await bench.calculate();
  expect(sheet.getRange("B2").getFormula()).toBe("=A2:A4*2");
  expect(marks("B2")).toEqual({ legacy: true, unlocked: true });
});
