import { afterAll, beforeAll, beforeEach, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import type { BenchContext } from "../support/member-table";
import { openTestBench, START_TIMEOUT } from "../support/test-bench";

/** Methods that the other files of this folder leave out: nothing happens before the sync, and what they say after it. */
let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());
beforeEach(async () => {
  await bench.load({
    id: `book-${crypto.randomUUID()}`,
    sheetOrder: ["one", "two"],
    sheets: { one: { id: "one", name: "Malts" }, two: { id: "two", name: "Other" } },
  });
  await bench.Excel.run(async (context) => {
    const made = sheetOf(context);
    made.getRange("A1:B3").values = [
      ["Malt", "Mass"],
      ["Pale", 4],
      ["Dark", 1],
    ];
    made.tables.add("A1:B3", true).name = "Bill";
    made.names.add("total", "=Malts!$B$6");
    made.notes.add("B6", "The malt");
    made.getRange("D1:E2").merge();
    made.getRange("G1").formulas = [["=GYLE.STEPS(2)"]];
    made.freezePanes.freezeRows(1);
    made.horizontalPageBreaks.add("A9");
    made.charts.add("ColumnClustered", made.getRange("A1:B3"), "Columns").name = "Shares";
    await context.sync();
  });
});

const sheetOf = (context: BenchContext) => context.workbook.worksheets.getItem("Malts");
type Look = (context: BenchContext) => Promise<unknown>;
const loaded =
  (what: (context: BenchContext) => { load(names: string): object }, name: string): Look =>
  async (context) => {
    const object = what(context);
    object.load(name);
    await context.sync();
    return (object as unknown as Record<string, unknown>)[name];
  };
const counted =
  (what: (context: BenchContext) => { getCount(): { value: number } }): Look =>
  async (context) => {
    const count = what(context).getCount();
    await context.sync();
    return count.value;
  };
const extras = () => bench.host.extras.ofSheet(bench.host.unitId, "one");

/** What is done, how another pane looks, what it sees before and after the sync. */
const acts: [string, (context: BenchContext) => unknown, Look, before: unknown, after: unknown][] = [
  ["Chart.delete", (context) => sheetOf(context).charts.getItem("Shares").delete(), counted((context) => sheetOf(context).charts), 1, 0],
  [
    "ChartLineFormat.color",
    (context) => {
      sheetOf(context).charts.getItem("Shares").series.getItemAt(0).format.line.color = "#AA0000";
    },
    async () => extras().charts?.[0]?.series[0]?.color,
    undefined,
    "#AA0000",
  ],
  [
    "ChartFill.setSolidColor",
    (context) => sheetOf(context).charts.getItem("Shares").series.getItemAt(0).format.fill.setSolidColor("#00AA00"),
    async () => extras().charts?.[0]?.series[0]?.color,
    undefined,
    "#00AA00",
  ],
  ["Note.delete", (context) => sheetOf(context).notes.getItem("B6").delete(), counted((context) => sheetOf(context).notes), 1, 0],
  [
    "Table.delete",
    (context) => sheetOf(context).tables.getItem("Bill").delete(),
    loaded((context) => sheetOf(context).getRange("A2:B2"), "values"),
    [["Pale", 4]],
    [["", ""]],
  ],
];

it.each(acts)("%s waits for the sync", async (_member, act, look, before, after) => {
  await bench.Excel.run(async (context) => {
    act(context);
    expect(await bench.Excel.run(look)).toEqual(before);
    await context.sync();
  });
  expect(await bench.Excel.run(look)).toEqual(after);
});

/** Methods and objects that lead elsewhere: where to. */
const leads: [string, (context: BenchContext) => { load(names: string): object }, property: string, wanted: unknown][] = [
  ["Worksheet.getCell", (context) => sheetOf(context).getCell(1, 1), "address", "Malts!B2"],
  ["Worksheet.getRangeByIndexes", (context) => sheetOf(context).getRangeByIndexes(1, 0, 2, 2), "address", "Malts!A2:B3"],
  ["Worksheet.getUsedRange", (context) => sheetOf(context).getUsedRange(true), "address", "Malts!A1:I2".replace("I2", "I3")],
  ["WorksheetCollection.getFirst", (context) => context.workbook.worksheets.getFirst(), "name", "Malts"],
  ["Note.getLocation", (context) => sheetOf(context).notes.getItem("B6").getLocation(), "address", "Malts!B6"],
  ["NoteCollection.getItemOrNullObject", (context) => sheetOf(context).notes.getItemOrNullObject("C9"), "isNullObject", true],
  ["TableCollection.getItemOrNullObject", (context) => sheetOf(context).tables.getItemOrNullObject("none"), "isNullObject", true],
  ["ChartCollection.getItemOrNullObject", (context) => sheetOf(context).charts.getItemOrNullObject("none"), "isNullObject", true],
  ["PageLayout.getPrintAreaOrNullObject", (context) => sheetOf(context).pageLayout.getPrintAreaOrNullObject(), "isNullObject", true],
];

it.each(leads)("%s leads there", async (_member, to, property, wanted) => {
  await bench.Excel.run(async (context) => {
    const object = to(context);
    if (property !== "isNullObject") object.load(property);
    expect(() => (object as unknown as Record<string, unknown>)[property]).toThrow(expect.objectContaining({ code: "PropertyNotLoaded" }));
    await context.sync();
    expect((object as unknown as Record<string, unknown>)[property]).toEqual(wanted);
  });
});

it("calculation can be put off, through the workbook and through the context alike", async () => {
  await bench.Excel.run(async (context) => {
    expect(context.application).toBe(context.workbook.application);
    context.workbook.application.suspendApiCalculationUntilNextSync();
    const cell = sheetOf(context).getRange("G1").load("values");
    await context.sync();
    expect(cell.values).toEqual([["step 1"]]);
  });
});

it("a print area is known by its address", async () => {
  await bench.Excel.run(async (context) => {
    sheetOf(context).pageLayout.setPrintArea("A1:B3");
    const area = sheetOf(context).pageLayout.getPrintAreaOrNullObject().load("address");
    await context.sync();
    expect(area.address).toBe("Malts!A1:B3");
  });
});
