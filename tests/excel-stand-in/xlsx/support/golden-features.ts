import { unpack } from "../../../../src/excel-stand-in/xlsx/package-parts";

/** The features of golden.xlsx, looked for in the XML of a saved file: each must be there as a program reads it. */
export function goldenFeatures(bytes: Uint8Array): Record<string, boolean> {
  const parts = new Map([...unpack(bytes)].map(([path, data]) => [path, new TextDecoder().decode(data)]));
  const sheet = parts.get("xl/worksheets/sheet1.xml") ?? "";
  const workbook = parts.get("xl/workbook.xml") ?? "";
  const styles = parts.get("xl/styles.xml") ?? "";
  const all = [...parts.values()].join("");
  const cell = (address: string): string => new RegExp(`<c [^>]*r="${address}"[^>]*?(?:/>|>.*?</c>)`, "s").exec(sheet)?.[0] ?? "";
  const has = (path: string): boolean => [...parts.keys()].some((name) => name.includes(path));
  return {
    "custom function in its file form": cell("B4").includes("_xldudf_GYLE_ABV("),
    "its cached value": cell("B4").includes("<v>5.25"),
    "spill with its range": cell("D1").includes('t="array"') && cell("D1").includes("D1:F3"),
    "spill marked as dynamic": cell("D1").includes('cm="1"') && has("metadata"),
    "spilled values": cell("E1").includes("<v>0") && cell("E2").includes("<v>1"),
    "prefix of newer functions": cell("B7").includes("_xlfn.XLOOKUP"),
    "prefix of variables": cell("B8").includes("_xlpm.x,5,_xlpm.x*2"),
    "name of a range": workbook.includes('name="OG"'),
    "name of a constant": workbook.includes('name="Factor"'),
    "print area": workbook.includes("Print_Area"),
    "hidden sheet": workbook.includes('state="hidden"'),
    table: has("tables/"),
    "table style": all.includes("TableStyleMedium3"),
    "totals row": all.includes("totalsRowFunction"),
    validation: sheet.includes("<dataValidation ") && sheet.includes("Lists!"),
    "validation message": sheet.includes("Pick one"),
    "conditional format by formula": sheet.includes('type="expression"'),
    "colour scale": sheet.includes("colorScale"),
    "colour of a conditional format": styles.includes("FFB0B0"),
    "column width": sheet.includes('width="24"'),
    "row height": sheet.includes('ht="24"'),
    "number format": styles.includes("0.000"),
    "font colour": styles.includes("7A3300"),
    fill: styles.includes("FFE0A0"),
    border: styles.includes("thin"),
    "wrapped text": styles.includes("wrapText"),
    "unlocked cell": styles.includes('locked="'),
    "frozen panes": sheet.includes('state="frozen"'),
    "no gridlines": sheet.includes('showGridLines="0"'),
    "tab colour": sheet.includes("CC6600"),
    protection: sheet.includes("sheetProtection"),
    "merged cells": sheet.includes("D15:F15"),
    note: all.includes("Original gravity note"),
    chart: has("charts/"),
    landscape: sheet.includes('orientation="landscape"'),
  };
}
