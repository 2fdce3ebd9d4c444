import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { load, put, subjects, value } from "../support/member-table";
import { openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
let sample: ReturnType<HeadlessBench["snapshot"]>;

/** A workbook in which everything of the table is there once. */
beforeAll(async () => {
  bench = await openTestBench();
  await bench.load({
    id: "book",
    sheetOrder: ["one", "two"],
    sheets: { one: { id: "one", name: "Malts" }, two: { id: "two", name: "Other" } },
  });
  await bench.Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Malts");
    sheet.getRange("A1:B3").values = [
      ["Malt", "Mass"],
      ["Pale", 4],
      ["Dark", 1],
    ];
    sheet.tables.add("A1:B3", true).name = "Bill";
    sheet.names.add("total", "=Malts!$B$6", "of malt");
    sheet.getRange("B2").dataValidation.rule = { decimal: { formula1: 0, formula2: 50, operator: "Between" } };
    sheet.getRange("B2").conditionalFormats.add("Custom").custom.rule.formula = "=B2>3";
    sheet.notes.add("B6", "The malt");
    const chart = sheet.charts.add("ColumnClustered", sheet.getRange("A1:B3"), "Columns");
    Object.assign(chart, { name: "Shares" });
    chart.title.text = "Shares";
    chart.axes.valueAxis.title.text = "Mass";
    context.workbook.settings.add("paper", "a4");
    await context.sync();
  });
  await bench.calculate();
  sample = bench.snapshot();
}, START_TIMEOUT);
afterAll(() => bench.dispose());
beforeEach(async () => {
  await bench.load({ ...structuredClone(sample), id: `book-${crypto.randomUUID()}` });
});

/** What another pane would see of a property now. */
const seen = (name: string, property: string) =>
  bench.Excel.run(async (context) => {
    const subject = subjects[name]!.at(context);
    load(subject, property);
    await context.sync();
    return value(subject, property);
  });

const reads = Object.entries(subjects).flatMap(([name, subject]) =>
  Object.entries(subject.reads ?? {}).map(([property, holds]) => [name, property, holds] as const),
);
const sets = Object.entries(subjects).flatMap(([name, subject]) =>
  Object.entries(subject.sets ?? {}).map(([property, to]) => [name, property, to] as const),
);

describe("a property is there after load and sync, and not before", () => {
  it.each([...reads, ...sets])("%s.%s", async (name, property, holds) => {
    await bench.Excel.run(async (context) => {
      const subject = subjects[name]!.at(context);
      expect(() => value(subject, property)).toThrow(expect.objectContaining({ code: "PropertyNotLoaded" }));
      load(subject, property);
      expect(() => value(subject, property)).toThrow(expect.objectContaining({ code: "PropertyNotLoaded" }));
      await context.sync();
      const isRead = property in (subjects[name]!.reads ?? {});
      if (isRead) expect(value(subject, property)).toEqual(holds);
      else expect(value(subject, property)).not.toEqual(holds);
    });
  });
});

describe("what is set can be read at once, and is in the workbook after the sync only", () => {
  it.each(sets)("%s.%s", async (name, property, to) => {
    // A renamed sheet, table or chart is not found under its old name any more: its own object goes on.
    const renamed = property === "name";
    await bench.Excel.run(async (context) => {
      const subject = subjects[name]!.at(context);
      await context.sync();
      put(subject, property, to);
      expect(value(subject, property)).toEqual(to);
      const before = await seen(name, property);
      expect(before).not.toEqual(to);
      await context.sync();
      if (renamed) {
        load(subject, property);
        await context.sync();
        expect(value(subject, property)).toEqual(to);
      } else {
        expect(await seen(name, property)).toEqual(to);
      }
    });
  });
});
