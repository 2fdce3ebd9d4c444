import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());
beforeEach(() =>
  bench.load({ id: "book", sheetOrder: ["one", "two"], sheets: { one: { id: "one", name: "One" }, two: { id: "two", name: "Two" } } }),
);

/** Handlers run after the change, as in Excel. */
const heardAll = () => new Promise((resolve) => setTimeout(resolve, 0));

describe("events of the collection", () => {
  it("tell of every change to the list of sheets", async () => {
    const heard: object[] = [];
    await bench.Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      const listen = async (args: object) => {
        heard.push(args);
      };
      for (const event of [worksheets.onAdded, worksheets.onDeleted, worksheets.onNameChanged, worksheets.onMoved] as {
        add(handler: typeof listen): unknown;
      }[])
        event.add(listen);
      worksheets.getItem("One").name = "before the handlers are in";
      await context.sync();
      worksheets.getItem("Two").name = "Second";
      worksheets.getItem("Second").position = 0;
      worksheets.getItem("Second").visibility = "Hidden";
      worksheets.getItem("Second").visibility = "Visible";
      worksheets.add("Third");
      await context.sync();
      worksheets.getItem("Third").delete();
      await context.sync();
    });
    await heardAll();
    expect(heard[0]).toMatchObject({ type: "WorksheetNameChanged", worksheetId: "one", nameBefore: "One" });
    expect(heard.slice(1)).toEqual([
      { type: "WorksheetNameChanged", worksheetId: "two", nameBefore: "Two", nameAfter: "Second", source: "Local" },
      { type: "WorksheetMoved", worksheetId: "two", positionBefore: 1, positionAfter: 0, source: "Local" },
      expect.objectContaining({ type: "WorksheetAdded" }),
      expect.objectContaining({ type: "WorksheetDeleted" }),
    ]);
  });

  it("say which sheet comes to the front and which leaves it", async () => {
    const heard: string[] = [];
    await bench.Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      worksheets.onActivated.add(async ({ worksheetId }) => {
        heard.push(`${worksheetId} in front`);
      });
      worksheets.onDeactivated.add(async ({ worksheetId }) => {
        heard.push(`${worksheetId} behind`);
      });
      await context.sync();
      worksheets.getItem("Two").activate();
      await context.sync();
    });
    await heardAll();
    expect(heard.sort()).toEqual(["one behind", "two in front"]);
  });
});

it("calculation is told of the sheets whose formulas have new results, and of no others", async () => {
  const heard: string[] = [];
  await bench.Excel.run(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.getItem("Two").getRange("A1:B1").formulas = [[1, "=A1*2"]];
    await context.sync();
    worksheets.onCalculated.add(async ({ type, worksheetId, address }) => {
      heard.push(`${type} ${worksheetId} ${address}`);
    });
    worksheets.getItem("Two").getRange("A1").values = [[5]];
    const result = worksheets.getItem("Two").getRange("B1").load("values");
    await context.sync();
    expect(result.values).toEqual([[10]]);
  });
  await heardAll();
  expect([...new Set(heard)]).toEqual(["WorksheetCalculated two B1"]);
});

it("changes are told with their kind and cells, no results among them", async () => {
  const heard: string[] = [];
  await bench.Excel.run(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.onChanged.add(async ({ worksheetId, address, changeType }) => {
      heard.push(`${worksheetId} ${changeType} ${address}`);
    });
    await context.sync();
    const two = worksheets.getItem("Two");
    worksheets.getItem("One").getRange("A1").values = [[1]];
    two.getRange("A1:B2").formulas = [
      [1, "=A1*2"],
      [3, 4],
    ];
    two.name = "Second";
    await context.sync();
    two.getRange("2:3").insert("Down");
    two.getRange("D:D").delete("Left");
    await context.sync();
  });
  await bench.calculate();
  await heardAll();
  expect(heard).toEqual(["one RangeEdited A1", "two RangeEdited A1:B2", "two RowInserted 2:3", "two ColumnDeleted D:D"]);
});

it("handlers are removed by the context that added them", async () => {
  const changed: string[] = [];
  const listening = await bench.Excel.run(async (context) => {
    const result = context.workbook.worksheets.onChanged.add(async ({ address }) => {
      changed.push(address);
    });
    await context.sync();
    return result;
  });
  const write = (value: number) =>
    bench.Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Two").getRange("C3").values = [[value]];
    });
  await write(7);
  await expect.poll(() => changed).toEqual(["C3"]);
  await bench.Excel.run(listening, async (context) => {
    listening.remove();
    await context.sync();
  });
  await write(8);
  await heardAll();
  expect(changed).toHaveLength(1);
});

it("another sheet in front is another selection", async () => {
  let heard = 0;
  await bench.Excel.run(async (context) => {
    context.workbook.onSelectionChanged.add(async () => {
      heard++;
    });
    await context.sync();
    context.workbook.worksheets.getItem("Two").activate();
    await context.sync();
  });
  await heardAll();
  expect(heard).toBeGreaterThan(0);
});
