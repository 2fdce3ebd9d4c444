import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { partText, unpack } from "../../src/excel-stand-in/xlsx/package-parts";
import { packageProblems } from "../excel-stand-in/xlsx/support/package-problems";

/*
 * What Excel itself writes for such workbooks: ECMA-376 part 2 for the package (every link leads to a part, every part has
 * a content type and is reached), and for custom functions and spills what Excel's own files hold.
 */
const folder = new URL("../../sample-workbooks/", import.meta.url);
const files = readdirSync(folder)
  .filter((name) => name.endsWith(".xlsx"))
  .sort();
const plugged = files.filter((name) => !name.includes("unplugged"));

it("all samples are looked at", () =>
  expect(files).toEqual(["first-extract-batch-metric.xlsx", "first-extract-batch.xlsx", "season.xlsx", "shared-unplugged.xlsx"]));

describe.each(files)("%s", (name) => {
  const bytes = new Uint8Array(readFileSync(new URL(name, folder)));
  const parts = unpack(bytes);
  const sheets = [...parts.keys()]
    .filter((path) => /^xl\/worksheets\/sheet\d+\.xml$/.test(path))
    .map((path) => partText(parts, path) ?? "");
  const workbook = partText(parts, "xl/workbook.xml") ?? "";

  it("is a sound package, without parts of a web extension and without a forced calculation", () => {
    expect(packageProblems(bytes)).toEqual([]);
    expect([...parts.keys()].filter((path) => /webextension|taskpane/i.test(path))).toEqual([]);
    expect(workbook).not.toContain("fullCalcOnLoad");
  });

  it("has a cached result beside every formula", () => {
    const calculated = sheets.flatMap((sheet) =>
      [...sheet.matchAll(/<c [^>]*>(?:(?!<\/c>).)*<f[ >](?:(?!<\/c>).)*<\/c>/gs)].map(([cell]) => cell),
    );
    expect(calculated.length).toBeGreaterThan(100);
    expect(calculated.filter((cell) => !/<v[ >/]/.test(cell))).toEqual([]);
  });

  it("has names that belong to a sheet, each on a sheet that is there, and tables with names of their own", () => {
    const count = sheets.length;
    const scopes = [...workbook.matchAll(/<definedName [^>]*localSheetId="(\d+)"/g)].map(([, id]) => Number(id));
    expect(scopes.length).toBeGreaterThan(90);
    expect(scopes.every((scope) => scope < count)).toBe(true);
    const tables = [...parts.keys()]
      .filter((path) => /^xl\/tables\//.test(path))
      .map((path) => /displayName="([^"]+)"/.exec(partText(parts, path) ?? "")?.[1]);
    expect(tables.length).toBeGreaterThanOrEqual(4);
    expect(new Set(tables).size).toBe(tables.length);
  });

  it("names nobody as its author", () =>
    expect(partText(parts, "docProps/core.xml") ?? "").not.toMatch(/<dc:creator>[^<]+|<cp:lastModifiedBy>[^<]+/));
});

describe.each(plugged)("%s, for Excel with Gylebook", (name) => {
  const parts = unpack(new Uint8Array(readFileSync(new URL(name, folder))));
  const sheets = [...parts.keys()]
    .filter((path) => /^xl\/worksheets\/sheet\d+\.xml$/.test(path))
    .map((path) => partText(parts, path) ?? "");

  it("spells its functions as Excel does in a file", () => {
    const formulas = sheets.flatMap((sheet) => [...sheet.matchAll(/<f[^>]*>([^<]*)<\/f>/g)].map(([, formula]) => formula ?? ""));
    expect(formulas.filter((formula) => formula.includes("_xldudf_GYLE_")).length).toBeGreaterThan(25);
    expect(formulas.filter((formula) => /(^|[^_A-Z])GYLE\.[A-Z]/.test(formula.replace(/"[^"]*"/g, "")))).toEqual([]);
  });

  it("marks spilling formulas as dynamic arrays, with the block that they fill", () => {
    const spilling = sheets.flatMap((sheet) => [...sheet.matchAll(/<c [^>]*>(?=<f [^>]*t="array")<f [^>]*>/g)].map(([cell]) => cell));
    expect(spilling.length).toBeGreaterThan(5);
    for (const cell of spilling) expect(cell).toMatch(/<c [^>]*cm="\d+"[^>]*><f [^>]*ref="[A-Z]+\d+(:[A-Z]+\d+)?"/);
    expect(partText(parts, "xl/metadata.xml")).toContain("XLDAPR");
  });
});
