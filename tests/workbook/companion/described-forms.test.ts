import { describe, expect, it } from "vitest";
import { describeFields } from "../../../src/workbook/batch/describe/field";
import { formCells, formLabel, typedOn } from "../../../src/workbook/batch/derived/form-fields";
import { lineCells, tableOffsets } from "../../../src/workbook/batch/derived/table-places";
import { writePackaging } from "../../../src/workbook/brewing/companion/packaging/write-packaging";
import { packagingIn } from "../../../src/workbook/brewing/companion/packaging/packaging-form";
import { handSheet } from "../../support/hand-sheet";

/** Fields that nobody ever wrote a form for. */
const fields = describeFields({
  hose: { kind: "number", cell: "hose", label: "Hose", measure: "length", format: "one", limits: [0.5, 90], usual: { metric: 3, us: 10 } },
  lid: { kind: "choice", cell: "lid", label: "Lid", choices: ["cork", "cap"] },
  keeper: { kind: "text", cell: "keeper", label: "Keeper", longest: 20, offers: ["Wren"], usual: "Wren" },
  filledOn: { kind: "moment", cell: "filled_on", label: "Filled on", format: "date", blank: true },
});
const on = { units: "us", method: "extract" } as const;

describe("a form over described fields", () => {
  it("holds what stands on the sheet: no number for words, the usual word for none", () => {
    const sheet = handSheet({ hose: "long", lid: "cap", keeper: "", filled_on: 46300 });
    expect(typedOn(fields, sheet)).toEqual({ hose: "", lid: "cap", keeper: "Wren", filledOn: 46300 });
    expect(typedOn(fields, handSheet({ hose: 7, lid: "string", keeper: "Robin", filled_on: "" }))).toEqual({
      hose: 7,
      lid: "cork",
      keeper: "Robin",
      filledOn: "",
    });
  });

  it("asks in the sheet's units, and names each cell by its label", () => {
    expect([formLabel(fields.hose, on), formLabel(fields.lid, on)]).toEqual(["Hose, ft", "Lid"]);
    expect(formLabel(fields.hose, { ...on, units: "metric" })).toBe("Hose, m");
    const typed = { hose: 7, lid: "cap", keeper: "Wren", filledOn: "" } as const;
    expect(formCells(fields, typed, on).map(({ name, label, content }) => [name, label, content])).toEqual([
      ["hose", "“Hose”", 7],
      ["lid", "“Lid”", "cap"],
      ["keeper", "“Keeper”", "Wren"],
      ["filled_on", "“Filled on”", ""],
    ]);
  });

  it("says what a cell may not hold", () => {
    const problem = (hose: number | "") => formCells(fields, { hose, lid: "cap", keeper: "", filledOn: "" }, on)[0]?.problem;
    expect([problem(0.5), problem(90), problem("")]).toEqual([undefined, undefined, undefined]);
    expect(problem(90.1)).toBe("Hose 90.1 ft? It may be from 0.5 to 90.");
    expect(problem(-1)).toMatch(/less than nothing cannot be/);
  });

  it("of the packaging writes no figure that its cell may not hold, not even a count of bottles", async () => {
    const sheet = handSheet({
      ...{ units: "metric", into: "bottles", packaged_on: 46284, carbonation: 2.4, warmest_beer: 20, priming_sugar: "sucrose" },
      ...{ bottle_volume: 500, bottle_kind: "ordinary", warmest_storage: 15, bottling_loss: 1, conditioning_temperature: 20 },
      ...{ keg_temperature: 4, bottles_filled: "" },
    });
    const context = undefined as unknown as Excel.RequestContext;
    await expect(writePackaging(context, sheet, { ...packagingIn(sheet), bottlesFilled: -3 }, true)).rejects.toThrow(
      "-3 in this field: less than nothing cannot be.",
    );
  });
});

describe("a line of a described table", () => {
  const table = {
    kind: "table",
    label: "Jars",
    areas: { jar_mass: "B:B", jars: "A:C" },
    longest: 3,
    columns: {
      what: { kind: "text", column: "A", label: "What", longest: 20 },
      mass: { kind: "number", column: "B", label: "Mass", format: "one", limits: [0, 900] },
      lid: { kind: "choice", column: "C", label: "Lid", choices: ["cork", "cap"] },
    },
  } as const;
  it("is spoken to by the table's first name, whichever column that is", () => {
    expect(tableOffsets(table)).toEqual({ what: -1, mass: 0, lid: 1 });
    expect(lineCells(table, 2, { lid: "cap", what: "Honey" })).toEqual([
      { key: "what", name: "jar_mass", row: 2, column: -1, content: "Honey" },
      { key: "lid", name: "jar_mass", row: 2, column: 1, content: "cap" },
    ]);
  });
});
