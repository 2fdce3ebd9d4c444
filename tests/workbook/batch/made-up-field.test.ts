import { describe, expect, it } from "vitest";
import { SheetBuilder } from "../../../src/workbook/grid/plan/sheet-builder";
import type { SheetPlan } from "../../../src/workbook/grid/plan/sheet-plan";
import { describeFields, type On, type ValuesOf } from "../../../src/workbook/batch/describe/field";
import { convertFields, roundFields } from "../../../src/workbook/batch/derived/convert-fields";
import { mapTexts } from "../../../src/workbook/batch/derived/map-texts";
import { withoutMeasured, withoutPrices } from "../../../src/workbook/batch/derived/parts";
import { readFields } from "../../../src/workbook/batch/derived/read-fields";
import { nameTable, sheetLines, tableCells, tableColumns, type SheetLine } from "../../../src/workbook/batch/derived/sheet-lines";
import { cellsSince, filledUp } from "../../../src/workbook/batch/derived/since";
import { usualValues } from "../../../src/workbook/batch/derived/usual-values";
import { batchFields } from "../../../src/workbook/batch/fields";
import { kitFields } from "../../../src/workbook/batch/fields/kit";
import { fieldRows, inputTable, type BatchBuilder } from "../../../src/workbook/batch/sheet/fields";
import { typedFigures } from "../../../src/workbook/care/check/typed-figures";
import { schemaOf } from "../../../src/workbook/exchange/batch-file/schema";
import { plannedSheet } from "../../support/planned-sheet";

/** The fields that there are, and six that nobody ever wrote a line of code for. */
const fields = describeFields({
  ...batchFields,
  kit: {
    ...batchFields.kit,
    fields: describeFields({
      ...kitFields,
      hose: {
        kind: "number",
        since: 3,
        cell: "hose_length",
        label: "Hose",
        measure: "length",
        format: "one",
        limits: [0.5, 90],
        held: true,
        usual: { metric: 3, us: 10 },
        step: 0.1,
        plausible: { from: 1, to: 20, words: "A hose of" },
        note: "From the kettle to the fermenter.",
      },
    }),
  },
  cellar: {
    kind: "group",
    label: "Cellar",
    fields: {
      coldest: {
        kind: "number",
        cell: "coldest",
        label: "Coldest",
        role: "measured",
        measure: "temperature",
        format: "whole",
        limits: [-30, 250],
        blank: true,
      },
      rent: { kind: "number", cell: "rent", label: "Rent", role: "price", format: "money", limits: [0, 1e6], blank: true },
      light: { kind: "choice", cell: "light", label: "Light", choices: ["dark", "dim", "bright"] },
      keeper: { kind: "text", since: 2, cell: "keeper", label: "Keeper", longest: 20 },
    },
  },
  jars: {
    kind: "table",
    label: "Jars",
    areas: { jars: "B:C", jar_mass: "B:B" },
    longest: 3,
    columns: {
      what: { kind: "text", column: "A", label: "What", longest: 20 },
      mass: { kind: "number", column: "B", label: "Mass", measure: "smallMass", format: "one", limits: [0, 900], held: true },
      lid: { kind: "choice", column: "C", label: "Lid", choices: ["cork", "cap"], message: "cork or cap." },
    },
  },
});
type Contents = ValuesOf<typeof fields>;

const [metric, us] = (["metric", "us"] as const).map((units): On => ({ units, method: "extract" })) as [On, On];
/** By inference: a misspelt key, or a word for the number, does not compile. */
const typed: Contents = {
  ...usualValues(fields, metric),
  sheetName: "Made up",
  brewedOn: 46270,
  volume: 20,
  cellar: { coldest: 6, rent: 30, light: "dim", keeper: "Wren" },
  jars: [
    { what: "=Honey", mass: 450, lid: "cork" },
    { what: "Spice", mass: 12.5, lid: "cap" },
  ],
};

/** One place for each, as a section of the sheet gives it. */
function planned(contents: Contents, on: On): SheetPlan {
  const b = new SheetBuilder() as BatchBuilder;
  const lines = sheetLines(fields, contents, on);
  const left: SheetLine[] = [lines.kit.hose, lines.cellar.coldest, lines.cellar.rent];
  fieldRows(b, left, [lines.cellar.light, lines.cellar.keeper]);
  nameTable(b, fields.jars, on, inputTable(b, "Jars", tableColumns(fields.jars, on), tableCells(fields.jars, contents.jars), 4));
  return b.build("Made up", [], { area: "A1:I9", paper: "a4", breaksBeforeRow: [], footer: "" }, 1);
}
const { kit, cellar, jars } = fields;
const ours = { kit: { ...kit, fields: { hose: kit.fields.hose } }, cellar, jars };

describe("a made-up field, described and placed, and nothing else", () => {
  it("has its usual value in a new batch, by the units", () => {
    expect([usualValues(fields, metric).kit.hose, usualValues(fields, us).kit.hose]).toEqual([3, 10]);
    expect(usualValues(fields, us).cellar).toEqual({ coldest: "", rent: "", light: "dark", keeper: "" });
    expect(usualValues(fields, us).jars).toEqual([]);
  });

  it("stands on the sheet with its unit, limits, note and choices", () => {
    const { cells, names, notes, validations } = planned(typed, metric);
    const at = (address: string) => cells.find((cell) => cell.address === address);
    expect([at("A1")?.content, at("B1"), at("C1")?.content]).toEqual([
      "Hose",
      { address: "B1", content: 3, style: "input", format: "one" },
      "m",
    ]);
    expect(planned(typed, us).cells.find(({ address }) => address === "C1")?.content).toBe("ft");
    expect(names).toContainEqual({ name: "hose_length", range: "B1" });
    expect(names).toContainEqual({ name: "jar_mass", range: "B6:B9" });
    expect(notes).toEqual([{ address: "B1", text: "From the kettle to the fermenter." }]);
    expect(validations).toContainEqual(expect.objectContaining({ kind: "decimal", range: "B1", from: 0.5, to: 90 }));
    expect(validations).toContainEqual(expect.objectContaining({ kind: "list", range: "H1", choices: ["dark", "dim", "bright"] }));
    expect(validations).toContainEqual(expect.objectContaining({ kind: "decimal", range: "B6:B9", from: 0, to: 900 }));
    expect([at("A5")?.content, at("B5")?.content, at("B6")?.content]).toEqual(["What", "Mass g", 450]);
  });

  it("is read back from the sheet, and as usual where the sheet is older or was emptied", () => {
    const { kit: _, ...rest } = readFields(ours, plannedSheet(planned({ ...typed, jars: typed.jars.slice(1) }, metric)), metric);
    expect(rest).toEqual({ cellar: typed.cellar, jars: typed.jars.slice(1) });
    const { names, ...plan } = planned(typed, metric);
    const older = readFields(
      ours,
      plannedSheet({ ...plan, names: names.filter(({ name }) => !["hose_length", "keeper"].includes(name)) }),
      metric,
    );
    expect([older.kit.hose, older.cellar.keeper]).toEqual([3, ""]);
    const shorter = { ...typed, kit: { ...typed.kit, hose: 2.5 } };
    expect(readFields(ours, plannedSheet(planned(shorter, metric)), metric).kit.hose).toBe(2.5);
    expect(() => readFields(ours, plannedSheet({ ...plan, names: names.filter(({ name }) => name !== "rent") }), metric)).toThrow("rent");
  });

  it("travels in a file, within its limits", () => {
    const schema = schemaOf(fields, metric);
    const text = (contents: unknown) =>
      schema.safeParse(JSON.parse(JSON.stringify(mapTexts(fields, contents as Contents, (words) => words.replace("=", "'=")))));
    expect(text(typed)).toMatchObject({
      success: true,
      data: { cellar: typed.cellar, kit: { hose: 3 }, jars: [{ what: "'=Honey", mass: 450 }, {}] },
    });
    for (const wrong of [
      { kit: { ...typed.kit, hose: 91 } },
      { kit: kitOf(typed) },
      { cellar: { ...typed.cellar, light: "none" } },
      { cellar: { ...typed.cellar, keeper: "a name of more than twenty letters" } },
      { jars: [...typed.jars, ...typed.jars] },
      { jars: [{ ...typed.jars[0], mass: -1 }] },
      { jars: [{ ...typed.jars[0], colour: 3 }] },
    ])
      expect(text({ ...typed, ...wrong }).success, JSON.stringify(wrong).slice(-60)).toBe(false);
  });

  it("comes along in other units, exactly or as it can be measured", () => {
    const there = convertFields(fields, typed, "metric", "us");
    expect(there.kit.hose).toBeCloseTo(3 / 0.3048, 12);
    expect(there.cellar).toEqual({ ...typed.cellar, coldest: 42.8 });
    expect(there.jars[0]?.mass).toBeCloseTo(450 / 28.349523125, 9);
    expect(roundFields(fields, there, "us").kit.hose).toBe(9.8);
    expect(convertFields(fields, there, "us", "metric").kit.hose).toBeCloseTo(3, 12);
  });

  it("has its texts changed, its prices left behind, and its measurements with them in a plan", () => {
    const shouted = mapTexts(fields, typed, (words) => words.toUpperCase());
    expect([shouted.cellar.keeper, shouted.cellar.light, shouted.jars[0]?.what]).toEqual(["WREN", "dim", "=HONEY"]);
    expect(withoutPrices(fields, typed).cellar).toEqual({ ...typed.cellar, rent: "" });
    expect(withoutMeasured(fields, typed, metric).cellar).toEqual({ ...typed.cellar, coldest: "" });
  });

  it("is filled in when a file or a sheet from before it comes along", () => {
    const older = { units: "us", kit: kitOf(typed), cellar: { ...typed.cellar, keeper: undefined } };
    const [second, third] = ([2, 3] as const).map((version) => filledUp(fields, older, version, us));
    expect(second).toMatchObject({ cellar: { keeper: "" } });
    expect(second).not.toHaveProperty("kit.hose");
    expect(third).toMatchObject({ kit: { hose: 10 } });
    expect(cellsSince(fields, 3)).toContain("hose_length");
    expect(cellsSince(fields, 2)).toContain("keeper");
  });

  it("is asked about by Check where it cannot be", () => {
    const words = (contents: Contents, on: On) =>
      typedFigures(plannedSheet(planned(contents, on)), on.units, ours).map((finding) => finding.words);
    expect(words(typed, metric)).toEqual([]);
    expect(words({ ...typed, kit: { ...typed.kit, hose: 30 } }, metric)).toEqual([
      "A hose of 30 m? That looks like ft; this sheet is in m.",
    ]);
    expect(words({ ...typed, cellar: { ...typed.cellar, rent: -2 } }, metric)).toEqual(["-2 in B3: less than nothing cannot be."]);
    expect(words({ ...typed, jars: [{ what: "", mass: 901, lid: "cap" }] }, metric)).toEqual(["Mass 901 g? It may be from 0 to 900."]);
  });
});

function kitOf({ kit: { hose: _, ...others } }: Contents) {
  return others;
}
