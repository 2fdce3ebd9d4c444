import { describe, expect, it } from "vitest";
import { exampleBatch } from "../../../src/workbook/batch/example-batch";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { deletedNames, overwrittenFormulas, textNumbers } from "../../../src/workbook/care/check/planned-formulas";
import { address } from "../../../src/workbook/grid/plan/addresses";
import { NamedCells, type CellValue } from "../../../src/workbook/grid/read/named-cells";

const plan = planBatch(
  exampleBatch({
    id: "test",
    sheetName: "Batch",
    batchName: "Any",
    brewedOn: 46270,
    volume: 20,
    units: "metric",
    topUp: 0,
    method: "extract",
  }),
);
const ranges = new Map(plan.names.map(({ name, range }) => [name, range]));
const cellOf = (name: string): string => ranges.get(name)?.split(":")[0] ?? "";
const plannedAt = (name: string): CellValue =>
  (plan.cells.find((cell) => cell.address === cellOf(name))?.content as CellValue | undefined) ?? "";

/** The sheet as planned, but for what stands in some cells; formulas are not calculated, but may show something. */
function sheet(
  changed: Readonly<Record<string, CellValue>> = {},
  names: ReadonlyMap<string, string> = ranges,
  shows: CellValue = "",
): NamedCells {
  const contents = new Map<string, CellValue>(plan.cells.map(({ address: at, content }) => [at, (content as CellValue | undefined) ?? ""]));
  for (const [at, content] of Object.entries(changed)) contents.set(at, content);
  const formulas = Array.from({ length: 260 }, (_, row) =>
    Array.from({ length: 45 }, (__, column) => contents.get(address(row + 1, column + 1)) ?? ""),
  );
  const values = formulas.map((row) => row.map((content) => (String(content).startsWith("=") ? shows : content)));
  return new NamedCells("Batch", names, { row: 1, column: 1 }, values, formulas);
}

describe("planned formulas", () => {
  it("are there in a sheet as planned", () => {
    expect(overwrittenFormulas(sheet(), plan)).toEqual([]);
    expect(String(plannedAt("fg_plan"))).toMatch(/^=/);
  });

  it("that a figure was typed over, or that were deleted, come back by their repair", () => {
    const at = cellOf("fg_plan");
    expect(overwrittenFormulas(sheet({ [at]: 1.02 }), plan)).toEqual([
      {
        sheet: "Batch",
        address: at,
        weight: "look",
        words: `${at} (fg_plan) should calculate, but 1.02 was typed over its formula: it does not follow the batch any more.`,
        repair: { sheet: "Batch", address: at, formula: plannedAt("fg_plan"), was: 1.02, kind: "overwritten" },
      },
    ]);
    expect(overwrittenFormulas(sheet({ [at]: "" }), plan)).toMatchObject([
      { words: `${at} (fg_plan) should calculate, but its formula was deleted, or its row was put in.`, repair: { was: "" } },
    ]);
    expect(overwrittenFormulas(sheet({ [at]: "about one point oh one two, I think" }), plan)).toMatchObject([
      { words: expect.stringContaining("the text “about one point oh one two, I …” was typed") as string },
    ]);
  });

  it("are looked for where they stand now: two rows put in at the top, of which the names know", () => {
    const down = (text: string) =>
      text.replace(/(?<![A-Z_.])([A-Z]{1,2})(\d+)(?![\d(])/g, (_, column: string, row: string) => `${column}${Number(row) + 2}`);
    const moved = new Map([...ranges].map(([name, range]) => [name, down(range)]));
    const planned = sheet();
    const lower = (read: (row: number, column: number) => CellValue) =>
      Array.from({ length: 262 }, (_, row) => Array.from({ length: 45 }, (__, column) => (row < 2 ? "" : read(row - 1, column + 1))));
    const shifted = (changed: string) => {
      const formulas = lower((row, column) => (address(row + 2, column) === changed ? 1.5 : planned.formulaAt(row, column)));
      return new NamedCells(
        "Batch",
        moved,
        { row: 1, column: 1 },
        lower((row, column) => planned.at(row, column)),
        formulas,
      );
    };
    expect(overwrittenFormulas(shifted(""), plan)).toEqual([]);
    // The gravity of the first reading, corrected for temperature: a formula of addresses.
    const reading = plan.cells.find(({ content }) => String(content).startsWith("=GYLE.WORT.HYDROMETER(B"));
    const at = down(reading?.address ?? "");
    expect(overwrittenFormulas(shifted(at), plan)).toMatchObject([
      { address: at, repair: { formula: down(String(reading?.content)), was: 1.5 } },
    ]);
  });

  it("in whose place the brewer has a formula of their own are left alone", () => {
    expect(overwrittenFormulas(sheet({ [cellOf("fg_plan")]: "=1.01+0.002" }), plan)).toEqual([]);
  });
});

describe("a text where a number belongs", () => {
  const words = (name: string, typed: CellValue) => textNumbers(sheet({ [cellOf(name)]: typed }), plan).map((finding) => finding.words);

  it("is told at its cell, as a number or a date", () => {
    expect(textNumbers(sheet(), plan)).toEqual([]);
    expect(words("volume", "20 L")).toEqual([
      `${cellOf("volume")} holds the text “20 L” where a number belongs, so it counts as not filled in. Type a number alone, without a unit, with the decimal sign of your Excel.`,
    ]);
    expect(words("brewed_on", "8.9.")).toEqual([expect.stringContaining("holds the text “8.9.” where a date belongs")]);
  });

  it("is no blank, no number, no formula, and no word where words belong", () => {
    for (const fine of ["", "  ", 21]) expect(words("volume", fine)).toEqual([]);
    expect(textNumbers(sheet({ [cellOf("volume")]: '="20"&" L"' }, ranges, "20 L"), plan)).toEqual([]);
    expect(words("happened", "noon")).toEqual([expect.stringContaining("where a time belongs")]);
    expect(words("og_scale", "P")).toEqual([]);
  });

  it("is no place of a hop, in the column of its minutes alone", () => {
    for (const fine of ["first wort", "stand", "dry", " Dry "]) expect(words("hop_minutes", fine)).toEqual([]);
    expect(words("hop_minutes", "whirl")).toEqual([expect.stringContaining("where a number belongs")]);
    expect(words("volume", "stand")).toEqual([expect.stringContaining("where a number belongs")]);
  });
});

describe("names that are gone", () => {
  const without = (count: number) => deletedNames(sheet({}, new Map([...ranges].slice(count))), plan).map(({ words }) => words);
  const gone = [...ranges.keys()];

  it("are listed, eight at the most", () => {
    expect(without(0)).toEqual([]);
    expect(without(2)).toEqual([
      expect.stringContaining(`Cells that the formulas need were deleted: ${gone.slice(0, 2).join(", ")}. Undo`),
    ]);
    expect(without(8)[0]).toContain(`${gone.slice(0, 8).join(", ")}. Undo`);
    expect(without(9)[0]).toContain(`${gone.slice(0, 8).join(", ")} and 1 more. Undo`);
  });
});
