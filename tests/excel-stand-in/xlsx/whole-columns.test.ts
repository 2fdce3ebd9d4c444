import type { IWorkbookData } from "@univerjs/core";
import { describe, expect, it } from "vitest";
import { NOTHING_COMPUTED, openWorkbook, saveWorkbook } from "../../../src/excel-stand-in/xlsx";
import { goldenWith, replaceIn } from "./support/parts";

describe("columns and rows that were formatted as a whole", async () => {
  const snapshot = {
    id: "b",
    name: "b",
    appVersion: "",
    locale: "enUS",
    styles: { blue: { bg: { rgb: "#0000FF" }, bl: 1 } },
    sheetOrder: ["s"],
    resources: [],
    sheets: {
      s: {
        id: "s",
        name: "S",
        rowCount: 5,
        columnCount: 4,
        columnData: { 1: { s: "blue" } },
        rowData: { 2: { s: { it: 1 } } },
        cellData: { 0: { 1: { v: 1, t: 2, s: { bg: { rgb: "#00FF00" } } } }, 4: { 1: { v: 2, t: 2 } } },
      },
    },
  } as unknown as IWorkbookData;
  const again = (await openWorkbook(await saveWorkbook(snapshot, NOTHING_COMPUTED))).snapshot;
  const styleAt = (row: number, column: number): unknown =>
    again.styles[again.sheets[again.sheetOrder[0]!]!.cellData?.[row]?.[column]?.s as string];

  it("give their look to each cell, under the cell's own", () => {
    expect(styleAt(0, 1)).toEqual({ bg: { rgb: "#00FF00" }, bl: 1 });
    expect(styleAt(4, 1)).toEqual({ bg: { rgb: "#0000FF" }, bl: 1 });
    expect(styleAt(1, 1)).toEqual({ bg: { rgb: "#0000FF" }, bl: 1 });
    expect(styleAt(2, 1)).toEqual({ bg: { rgb: "#0000FF" }, bl: 1, it: 1 });
    expect(styleAt(2, 3)).toEqual({ it: 1 });
    expect(styleAt(1, 0)).toBeUndefined();
  });
});

describe("an array formula that claims the whole sheet", () => {
  it("is taken to fill what has cells", async () => {
    const bytes = goldenWith((parts) => replaceIn(parts, "xl/worksheets/sheet1.xml", 'ref="D1:F3"', 'ref="D1:XFD1048576"'));
    const { computed, snapshot, carry } = await openWorkbook(bytes);
    expect(computed[snapshot.sheetOrder[0]!]?.spills).toEqual([{ startRow: 0, startColumn: 3, endRow: 14, endColumn: 5 }]);
    expect((await saveWorkbook(snapshot, computed, carry)).length).toBeLessThan(20_000);
  });
});
