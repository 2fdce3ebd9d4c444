import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayNumber, isoDay } from "../../src/workbook/grid/words/day-number";
import { freeName } from "../../src/workbook/batch/insert-batch";
import { address, block, columnLetters, columnNumber } from "../../src/workbook/grid/plan/addresses";
import { rectangles } from "../../src/workbook/grid/plan/areas";
import { columnWidthPt, pageHeight, widthScale } from "../../src/workbook/grid/plan/print-scale";
import { SheetBuilder } from "../../src/workbook/grid/plan/sheet-builder";
import { sheetNameProblem } from "../../src/workbook/grid/words/sheet-name";

describe("addresses", () => {
  it("letters and numbers of columns belong together", () => {
    expect([1, 26, 27, 702, 703, 16384].map(columnLetters)).toEqual(["A", "Z", "AA", "ZZ", "AAA", "XFD"]);
    fc.assert(fc.property(fc.integer({ min: 1, max: 16384 }), (number) => columnNumber(columnLetters(number)) === number));
  });
  it("refuses what is not an address", () => expect(() => block("7B")).toThrow('"7B" is not the address of a cell'));
});

describe("rectangles", () => {
  it("covers exactly the cells given, none twice", () => {
    const cells = fc.uniqueArray(fc.tuple(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 6 })), {
      selector: ([row, column]) => `${row},${column}`,
      minLength: 1,
    });
    fc.assert(
      fc.property(cells, (positions) => {
        const wanted = positions.map(([row, column]) => address(row, column)).sort();
        const covered = rectangles(wanted).flatMap((area) => {
          const { from, to } = block(area);
          const inside: string[] = [];
          for (let row = from.row; row <= to.row; row += 1)
            for (let column = from.column; column <= to.column; column += 1) inside.push(address(row, column));
          return inside;
        });
        expect(covered.sort()).toEqual(wanted);
      }),
    );
  });
  it("joins a block into one", () => expect(rectangles(["A1", "A2", "B1", "B2"])).toEqual(["A1:B2"]));
});

describe("day numbers", () => {
  // Microsoft's documentation of the DATEVALUE function: 22 August 2011 is 40777; 1 January 2008 is 39448 (DATE function).
  it.each([
    ["2011-08-22", 40777],
    ["2008-01-01", 39448],
    ["2026-09-05T12:00", 46270.5],
  ])("%s is %d", (iso, number) => expect(dayNumber(iso)).toBe(number));
  it("and back", () => fc.assert(fc.property(fc.integer({ min: 32874, max: 73415 }), (number) => dayNumber(isoDay(number)) === number)));
  it.each(["2026-02-30", "5.9.2026", "", "2026-13-01"])("refuses %j", (text) => expect(() => dayNumber(text)).toThrow());
});

describe("names of sheets", () => {
  it.each([
    ["", "needs a name"],
    ["a/b", 'may not hold "/"'],
    ["x".repeat(32), "may have 31"],
    ["'quoted", "apostrophe"],
    ["History", "keeps the name"],
  ])("%j is refused in words", (name, words) => expect(sheetNameProblem(name)).toContain(words));
  it("lets an ordinary name pass", () => expect(sheetNameProblem("Footbridge Pale 3 (2nd try)")).toBeUndefined());
  it("finds a free name that still fits into 31 characters", () => {
    expect(freeName(["Batch 1"], "Batch 2")).toBe("Batch 2");
    expect(freeName(["batch 1", "Batch 1 (2)"], "Batch 1")).toBe("Batch 1 (3)");
    expect(freeName(["x".repeat(31)], "x".repeat(31))).toBe(`${"x".repeat(27)} (2)`);
  });
});

describe("print scale", () => {
  // ECMA-376 part 1, 18.3.1.13: width in characters × 7 pixels + 5 pixels of padding (Calibri 11).
  it("a column of 10 characters is 75 pixels, 56.25 points", () => expect(columnWidthPt(10)).toBe(56.25));
  it("fits the width of the paper, never larger than it is", () => {
    // A4 is 595 points wide, Letter 792 when it lies; less two margins of 18. A column of 200 characters is 1053.75 points.
    expect(widthScale([10], "a4")).toBe(1);
    expect(widthScale([200], "a4")).toBeCloseTo(559 / 1053.75, 9);
    expect(widthScale([200], "letter", true)).toBeCloseTo(756 / 1053.75, 9);
  });
  it("leaves as much height as the paper has at that scale, less a twenty-fifth", () => {
    expect(pageHeight([10], "a4")).toBeCloseTo((842 - 34 - 42) * 0.96, 9);
    expect(pageHeight([200], "letter", true)).toBeCloseTo(((612 - 34 - 42) * 0.96) / (756 / 1053.75), 9);
  });
});

describe("the builder", () => {
  it("refuses to plan a cell or a name twice", () => {
    const b = new SheetBuilder();
    b.put("A", 1, { style: "label", name: "one" });
    expect(() => b.put("A", 2, { style: "label" })).toThrow("two things are planned for A1");
    expect(() => b.put("B", 2, { style: "label", name: "one" })).toThrow("the name one is planned twice");
  });
});
