import { describe, expect, it } from "vitest";
import { openWorkbook, saveWorkbook } from "../../../src/excel-stand-in/xlsx";
import { goldenFeatures } from "./support/golden-features";
import { packageProblems } from "./support/package-problems";
import { golden, textOf } from "./support/parts";

const functionNames = ["ABV", "PLAN"];

describe("golden.xlsx opened and saved", async () => {
  const opened = await openWorkbook(golden(), { functionNames });
  const saved = await saveWorkbook(opened.snapshot, opened.computed, opened.carry);
  const features = goldenFeatures(saved);

  it("is looked at for 35 features, and the checker finds them in the original except where Excel's form differs", () => {
    expect(Object.keys(features)).toHaveLength(35);
    expect(Object.entries(goldenFeatures(golden())).filter(([, found]) => !found)).toEqual([]);
  });

  it.each(Object.entries(features))("keeps: %s", (_, found) => expect(found).toBe(true));

  it("does not lose a chart, a table's total or a link without the opened file's parts, except totals", async () => {
    const alone = goldenFeatures(await saveWorkbook(opened.snapshot, opened.computed));
    expect(
      Object.entries(alone)
        .filter(([, found]) => !found)
        .map(([name]) => name),
    ).toEqual(["totals row"]);
  });

  it("has sound parts", () => expect(packageProblems(saved)).toEqual([]));

  it("reads the same again", async () => {
    const again = await openWorkbook(saved, { functionNames });
    expect(again.computed).toEqual(opened.computed);
    expect({ ...again.snapshot, resources: parsed(again.snapshot.resources) }).toEqual({
      ...opened.snapshot,
      resources: parsed(opened.snapshot.resources),
    });
  });

  it("writes every custom function the way Excel does, and asks for no calculation on opening", () => {
    expect(textOf(saved, "xl/worksheets/sheet1.xml")).toContain('<f t="array" ref="B4">_xldudf_GYLE_ABV(OG,B3)</f><v>5.25</v>');
    expect(textOf(saved, "xl/workbook.xml")).not.toContain("fullCalcOnLoad");
    expect(textOf(saved, "docProps/app.xml")).toContain("<Application>Gylebook</Application>");
    expect(textOf(saved, "docProps/core.xml")).not.toMatch(/creator|lastModifiedBy/);
  });

  it("gives equal bytes for equal contents", async () => {
    const savedAt = new Date(Date.UTC(2026, 2, 1));
    const twice = await Promise.all([1, 2].map(() => saveWorkbook(opened.snapshot, opened.computed, opened.carry, { savedAt })));
    expect(twice[0]).toEqual(twice[1]);
  });
});

/** Ids of names count the file's entries, and Excel's order of names is alphabetical: compare by content. */
function parsed(resources: { name: string; data: string }[] | undefined): Record<string, unknown> {
  return Object.fromEntries(
    (resources ?? []).map(({ name, data }) => {
      const value = JSON.parse(data) as Record<string, { id?: string; name?: string }>;
      if (name !== "SHEET_DEFINED_NAME_PLUGIN") return [name, value];
      return [
        name,
        Object.values(value)
          .map(({ id: _, ...rest }) => rest)
          .sort((a, b) => (a.name! < b.name! ? -1 : 1)),
      ];
    }),
  );
}
