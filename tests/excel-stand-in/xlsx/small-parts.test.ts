import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blockAddress, columnIndex, columnLetters, parseBlock, sheetPrefix, splitSheet } from "../../../src/excel-stand-in/xlsx/addresses";
import { cachedValueOf } from "../../../src/excel-stand-in/xlsx/computed-values";
import { colorFromFile, colorToFile } from "../../../src/excel-stand-in/xlsx/colors";
import { validationsToFile } from "../../../src/excel-stand-in/xlsx/data-validation";
import { serialOfDate, serialOfDateText } from "../../../src/excel-stand-in/xlsx/dates";
import { withFontsInOrder } from "../../../src/excel-stand-in/xlsx/font-order";
import { headerFooterFromFile, headerFooterToFile } from "../../../src/excel-stand-in/xlsx/header-footer";
import { columnsFromFile, columnsToFile, pixelsOfWidth, widthOfPixels } from "../../../src/excel-stand-in/xlsx/sheet-geometry";
import { parseXml, serializeXml } from "../../../src/excel-stand-in/xlsx/xml";

describe("addresses", () => {
  it("count columns as Excel does", () => {
    expect([0, 25, 26, 701, 702, 16_383].map(columnLetters)).toEqual(["A", "Z", "AA", "ZZ", "AAA", "XFD"]);
    fc.assert(fc.property(fc.nat(16_383), (column) => columnIndex(columnLetters(column)) === column));
  });
  it("come back as they were", () => {
    for (const text of ["A1", "B2:C9", "XFD1048576"]) expect(blockAddress(parseBlock(text)!)).toBe(text);
    expect(parseBlock("$1:$3")).toEqual({ startRow: 0, startColumn: 0, endRow: 2, endColumn: 16_383 });
    for (const text of ["", "og", "A1:B2:C3", "A", "#REF!"]) expect(parseBlock(text)).toBeUndefined();
  });
  it("quote sheet names that need it", () => {
    expect(["Lists", "Batch 1", "O'Hara", "A1", "R1C1", "2026"].map(sheetPrefix)).toEqual([
      "Lists!",
      "'Batch 1'!",
      "'O''Hara'!",
      "'A1'!",
      "'R1C1'!",
      "'2026'!",
    ]);
    fc.assert(fc.property(fc.string({ minLength: 1 }), (name) => splitSheet(`${sheetPrefix(name)}$A$1`).sheet === name));
  });
});

describe("dates", () => {
  // The numbers are those of Microsoft's description of the 1900 date system: 1 is 1 January 1900, 39448 is 1 January 2008.
  it("count from 1 January 1900, with Excel's day too many", () => {
    expect(
      [Date.UTC(1900, 0, 1), Date.UTC(1900, 1, 28), Date.UTC(1900, 2, 1), Date.UTC(2008, 0, 1)].map((time) => serialOfDate(new Date(time))),
    ).toEqual([1, 59, 61, 39_448]);
  });
  it("are read from the texts that the grid uses in rules", () => {
    expect(["2008-01-01", "2008/1/1", "1/1/2008", "2008-01-01 12:00:00", "soon"].map(serialOfDateText)).toEqual([
      39_448,
      39_448,
      39_448,
      39_448.5,
      undefined,
    ]);
  });
});

describe("headers and footers", () => {
  it("are split into their three places and put together again", () => {
    const parts = { leftHeader: "A && B", centerHeader: "&P of &N", rightHeader: "&D" };
    expect(headerFooterToFile(parts, "Header")).toBe("&LA && B&C&P of &N&R&D");
    expect(headerFooterFromFile("&LA && B&C&P of &N&R&D", "Header")).toEqual(parts);
    expect(headerFooterFromFile("plain", "Footer")).toEqual({ centerFooter: "plain" });
    expect(headerFooterToFile({}, "Footer")).toBeUndefined();
  });
});

describe("widths", () => {
  // 64 pixels are the width 9.140625 of an untouched column in files of Excel with 11 point Calibri.
  it("are Excel's", () => {
    expect([pixelsOfWidth(9.140625), widthOfPixels(64), pixelsOfWidth(24)]).toEqual([64, 9.140625, 168]);
    fc.assert(fc.property(fc.integer({ min: 1, max: 1700 }), (pixels) => pixelsOfWidth(widthOfPixels(pixels)) === pixels));
  });
  it("of all columns to the last one stay out of the grid and are passed on", () => {
    const columns = [{ width: 20 }, ...Array.from({ length: 16_383 }, () => ({ width: 9, hidden: true }))];
    expect(columnsFromFile(columns)).toEqual({ 0: { w: 140 } });
    expect(columnsToFile({ columnData: { 0: { w: 70 } } }, columns).slice(0, 2)).toEqual([{ width: 10 }, { width: 9, hidden: true }]);
  });
});

describe("colours", () => {
  const theme = ["000000", "FFFFFF", "44546A", "E7E6E6", "4472C4"];
  it("of a theme count light before dark in cells", () => {
    expect([0, 1, 2, 3, 4].map((index) => colorFromFile({ theme: index }, theme))).toEqual([
      "#FFFFFF",
      "#000000",
      "#E7E6E6",
      "#44546A",
      "#4472C4",
    ]);
  });
  it("are read in every way the grid writes them", () => {
    expect(["#abc", "#AABBCC", "rgb(170, 187, 204)", "rgba(170,187,204,0.5)", "#aabbccff", "red", null].map(colorToFile)).toEqual([
      "AABBCC",
      "AABBCC",
      "AABBCC",
      "AABBCC",
      "AABBCC",
      undefined,
      undefined,
    ]);
  });
});

describe("results of the engine", () => {
  it("become cached values, errors apart from texts", () => {
    expect(["#N/A", "#DIV/0!", "no #N/A", "", 1, true, null, undefined, NaN, Infinity].map(cachedValueOf)).toEqual([
      { error: "#N/A" },
      { error: "#DIV/0!" },
      "no #N/A",
      "",
      1,
      true,
      null,
      null,
      { error: "#NUM!" },
      { error: "#NUM!" },
    ]);
  });
});

describe("choice lists", () => {
  const rule = (formula1: string) => [{ uid: "1", ranges: [parseBlock("A1")!], type: "list", formula1 }];
  it("that a file cannot hold are refused with the cure", () => {
    expect(() => validationsToFile(rule('["a,b"]'))).toThrow(/put the choices into cells/);
    expect(() => validationsToFile(rule(JSON.stringify(Array.from({ length: 60 }, (_, index) => `choice ${index}`))))).toThrow(/255/);
  });
  it("may stand with commas or as JSON in the grid", () => {
    expect(validationsToFile(rule("a,b"))[0]?.formula1).toBe('"a,b"');
    expect(validationsToFile(rule('["5\\" tube","b"]'))[0]?.formula1).toBe('"5"" tube,b"');
  });
});

describe("XML", () => {
  it("comes back as it was", () => {
    const source = '<a x="1 &lt; 2"><b/><c:d>text &amp; more</c:d></a>';
    expect(serializeXml(parseXml(source))).toBe(source);
  });
  it("that does not close is refused", () => {
    for (const source of ["<a><b></a>", "<a>", "", "</a>"]) expect(() => parseXml(source)).toThrow(/broken XML/);
  });
});

describe("fonts", () => {
  it("have their parts in the order of ECMA-376 part 1, 18.8.22, in cells' looks and in conditional ones", () => {
    expect(
      withFontsInOrder(
        '<fonts><font><b/><color rgb="FF1F5150"/><sz val="18"/><u/><name val="Calibri"/></font></fonts><dxf><font><color theme="1"/><i/></font></dxf>',
      ),
    ).toBe(
      '<fonts><font><b/><u/><sz val="18"/><color rgb="FF1F5150"/><name val="Calibri"/></font></fonts><dxf><font><i/><color theme="1"/></font></dxf>',
    );
  });
});
