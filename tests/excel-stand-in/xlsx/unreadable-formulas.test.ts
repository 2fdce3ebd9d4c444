import type { IWorkbookData } from "@univerjs/core";
import { expect, it } from "vitest";
import { openWorkbook, saveWorkbook } from "../../../src/excel-stand-in/xlsx";
import { cellXml } from "./support/parts";

const formulas: Record<number, [formula: string, shown: string | number]> = {
  0: ["=GYLE.BEER.ABV(1.05,1.01))", "#VALUE!"],
  1: ["=GYLE.BEER.ABV(1.05;1.01)", "#N/A"],
  2: ["=1+", "#VALUE!"],
  3: ['=GYLE.BEER.ABV(1.05,"soon")', "#VALUE!"],
  4: ["=SUM(A1#)", "#VALUE!"],
  // Whatever it is, it works.
  5: ["=1 2", 12],
};
const cellData = Object.fromEntries(Object.entries(formulas).map(([row, [f, v]]) => [row, { 0: { f, v } }]));
const snapshot = {
  id: "book",
  sheetOrder: ["one"],
  sheets: { one: { id: "one", name: "Sheet 1", cellData } },
  styles: {},
} as unknown as IWorkbookData;

it("a formula that no spreadsheet program could read goes into the file as a text, and is named", async () => {
  const texts: string[] = [];
  const bytes = await saveWorkbook(snapshot, {}, undefined, { savedAsText: (address) => texts.push(address) });
  expect(texts).toEqual(["Sheet 1!A1", "Sheet 1!A2", "Sheet 1!A3"]);
  for (const address of ["A1", "A2", "A3"]) expect(cellXml(bytes, address)).not.toContain("<f");
  for (const address of ["A4", "A5", "A6"]) expect(cellXml(bytes, address)).toContain("<f");
  const again = await openWorkbook(bytes);
  expect(again.snapshot.sheets[again.snapshot.sheetOrder[0]!]!.cellData![0]![0]!.v).toBe("=GYLE.BEER.ABV(1.05,1.01))");
});
