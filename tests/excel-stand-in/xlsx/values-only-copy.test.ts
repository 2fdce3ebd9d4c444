import { describe, expect, it } from "vitest";
import { saveWorkbook, valuesOnlyCopy } from "../../../src/excel-stand-in/xlsx";
import type { GridNotes } from "../../../src/excel-stand-in/xlsx/notes";
import { readResource, RESOURCE } from "../../../src/excel-stand-in/xlsx/resources";
import { fullWorkbook } from "./support/full-workbook";
import { packageProblems } from "./support/package-problems";
import { cellXml, textOf } from "./support/parts";

describe("a copy with values for our functions", async () => {
  const { snapshot, computed } = fullWorkbook();
  const untouched = structuredClone(snapshot);
  const copy = valuesOnlyCopy(snapshot, computed);
  const cells = copy.sheets.one!.cellData!;
  const notes = readResource<Record<string, GridNotes>>(copy, RESOURCE.notes)!;

  it("leaves the original alone", () => expect(snapshot).toEqual(untouched));

  it.each([
    ["a number", 3, 1, 5.1],
    ["a text", 4, 1, "strong"],
    ["an error", 5, 2, "#VALUE!"],
    ["nested", 5, 1, 10.2],
    ["a spill's first cell", 10, 0, "heat"],
    ["a spilled cell", 11, 1, 66],
  ])("has the value of %s", (_, row, column, value) => {
    expect(cells[row]?.[column]).toMatchObject({ v: value });
    expect(cells[row]?.[column]?.f).toBeUndefined();
  });

  it("keeps the look of those cells and the formula in a note", () => {
    expect(cells[3]?.[1]?.s).toBe("result");
    expect(notes.one?.[3]?.[1]?.note).toBe("=GYLE.BEER.ABV(og,fg)");
    expect(notes.one?.[1]?.[1]?.note).toContain("hydrometer");
  });

  it("keeps native formulas", () => expect(cells[4]?.[2]?.f).toBe('=B5&"!"'));

  it("is written without any custom function in its cells", async () => {
    const saved = await saveWorkbook(copy, computed);
    expect(packageProblems(saved)).toEqual([]);
    expect(textOf(saved, "xl/worksheets/sheet1.xml")).not.toContain("_xldudf_");
    expect(cellXml(saved, "B12")).toBe('<c r="B12"><v>66</v></c>');
    expect(cellXml(saved, "C6")).toBe('<c r="C6" t="e"><v>#VALUE!</v></c>');
  });
});
