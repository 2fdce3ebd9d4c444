import type { IWorkbookData } from "@univerjs/core";
import { describe, expect, it } from "vitest";
import { openWorkbook, saveWorkbook } from "../../../src/excel-stand-in/xlsx";
import { cellXml, goldenWith, replaceIn } from "./support/parts";

/** golden.xlsx with a plain formula over a range, and with two formulas entered for a fixed block ([MS-XLSX] 2.2.2.4: no `cm`). */
const file = goldenWith((parts) =>
  replaceIn(
    parts,
    "xl/worksheets/sheet1.xml",
    /<row r="11"[^>]*>/,
    '$&<c r="H11"><f>$B$11:$B$13*2</f><v>2</v></c><c r="I11"><f t="array" ref="I11:I12">7</f><v>7</v></c><c r="J11"><f t="array" ref="J11">SUM(LEN($B$11:$B$12))</f><v>2</v></c>',
  ),
);

const cellOf = (snapshot: IWorkbookData, row: number, column: number) => snapshot.sheets[snapshot.sheetOrder[0]!]!.cellData![row]![column]!;

describe("how a file stored a formula", async () => {
  const opened = await openWorkbook(file);

  it("stands in the cell's custom data", () => {
    expect(cellOf(opened.snapshot, 10, 7).custom).toEqual({ legacy: true });
    expect(cellOf(opened.snapshot, 10, 8).custom).toEqual({ array: [2, 1] });
    expect(cellOf(opened.snapshot, 10, 9).custom).toEqual({ array: [1, 1] });
    // D1 holds a dynamic array formula, B4 one of our functions.
    expect(cellOf(opened.snapshot, 0, 3).custom).toBeUndefined();
    expect(cellOf(opened.snapshot, 3, 1).custom ?? {}).not.toHaveProperty("legacy");
  });

  it("is written back so, whatever the grid makes of it", async () => {
    const sheetId = opened.snapshot.sheetOrder[0]!;
    const computed = structuredClone(opened.computed);
    // The grid lets the range spill, and gives the one value of =7 once.
    computed[sheetId]!.spills = computed[sheetId]!.spills.filter((one) => one.startColumn !== 8);
    delete computed[sheetId]!.values[11]![8];
    computed[sheetId]!.spills.push({ startRow: 10, startColumn: 7, endRow: 12, endColumn: 7 });
    const saved = await saveWorkbook(opened.snapshot, computed, opened.carry);
    expect(cellXml(saved, "H11")).toContain("<f>$B$11:$B$13*2</f>");
    expect(cellXml(saved, "H11")).not.toContain("cm=");
    expect(cellXml(saved, "I11")).toContain('<f t="array" ref="I11:I12">7</f>');
    expect(cellXml(saved, "I11")).not.toContain("cm=");
    expect(cellXml(saved, "I12")).toContain("<v>7</v>");
    expect(cellXml(saved, "J11")).toContain('<f t="array" ref="J11">');
    expect(cellXml(saved, "D1")).toContain('cm="1"');
  });
});
