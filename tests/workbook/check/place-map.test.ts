import { describe, expect, it } from "vitest";
import { newBatch } from "../../../src/workbook/batch/new-batch";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { moved, placeMap } from "../../../src/workbook/care/check/place-map";
import type { SheetPlan } from "../../../src/workbook/grid/plan/sheet-plan";
import { NamedCells } from "../../../src/workbook/grid/read/named-cells";

/** Out of order, as names are. */
const planned = { bottom: "A20", block: "C5:D8", top: "A2" };
const plan: SheetPlan = {
  ...planBatch(
    newBatch({
      id: "test",
      sheetName: "Batch",
      batchName: "Any",
      brewedOn: 46270,
      volume: 20,
      units: "metric",
      topUp: 0,
      method: "extract",
    }),
  ),
  names: Object.entries(planned).map(([name, range]) => ({ name, range })),
};

/** Where a planned cell stands on a sheet whose names are now at these ranges. */
const placeOn = (names: Readonly<Record<string, string>>) =>
  placeMap(plan, new NamedCells("Batch", new Map(Object.entries(names)), { row: 1, column: 1 }, [[]], [[]]));

describe("where a planned cell stands now", () => {
  it("is its own place while nothing was put in", () => {
    const place = placeOn(planned);
    expect(["A1", "A2", "B3", "C5", "D7", "Z99"].map(place)).toEqual(["A1", "A2", "B3", "C5", "D7", "Z99"]);
  });

  it("is as many rows lower as the lines around it: above, within and below the rows that were put in", () => {
    const place = placeOn({ ...planned, bottom: "A23" });
    expect(["A1", "B3", "B6", "D8"].map(place)).toEqual(["A1", "B3", "B6", "D8"]);
    expect(["A20", "B20", "B25"].map(place)).toEqual(["A23", "B23", "B28"]);
  });

  it("is not certain between two lines that moved by different numbers", () => {
    const place = placeOn({ ...planned, bottom: "A23" });
    expect([place("B9"), place("B12"), place("B19")]).toEqual([undefined, undefined, undefined]);
    expect(placeOn({ ...planned, block: "C5:D10" })("B6")).toBeUndefined();
    expect(placeOn({ ...planned, block: "C7:D10", bottom: "A22" })("C6")).toBe("C8");
    expect(placeOn({ ...planned, block: "C7:D10", bottom: "A22" })("B4")).toBeUndefined();
  });

  it("is as many columns to the right", () => {
    const place = placeOn({ ...planned, block: "D5:E8" });
    expect(["A6", "C6", "D3", "Z6"].map(place)).toEqual(["A6", "D6", "E3", "AA6"]);
    expect(place("B6")).toBeUndefined();
  });

  it("is the cell of its own name, wherever that was moved; a column that tells two stories tells nothing", () => {
    const place = placeOn({ ...planned, bottom: "H40" });
    expect(place("A20")).toBe("H40");
    expect(place("A6")).toBeUndefined();
    expect(place("C6")).toBe("C6");
  });

  it("goes by the names that are left", () => {
    expect(placeOn({ top: "A4" })("B9")).toBe("B11");
    expect(placeOn({ bottom: "B21" })("B9")).toBe("C10");
    expect(placeOn({})("B9")).toBe("B9");
  });
});

describe("a planned formula where its cells stand now", () => {
  const place = placeOn({ ...planned, bottom: "A23" });

  it("has its addresses moved, and names, words and numbers left alone", () => {
    expect(moved('=A20+SUM(C5:D8)*og&"A20"+20', place)).toBe('=A23+SUM(C5:D8)*og&"A20"+20');
    expect(moved("=$A$20", place)).toBe("=$A$23");
  });

  it("is none where one of them is not certain", () => {
    expect(moved("=A20+B12", place)).toBeUndefined();
    expect(moved("=SUM(B9:B20)+A20", place)).toBeUndefined();
  });
});
