import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import type { ChartRecord } from "../../src/excel-stand-in/excel/sheet-extras";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { newBatch } from "../../src/workbook/batch/new-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { followFirstReadings } from "../../src/workbook/brewing/fermentation/first-chart";
import { address, block } from "../../src/workbook/grid/plan/addresses";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet } from "../support/batch-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => bench.dispose());

const chartsOf = (sheetName: string): readonly ChartRecord[] =>
  bench.chartsOf(bench.univerAPI.getActiveWorkbook()!.getSheetByName(sheetName)!.getSheetId());

type Point = readonly [day: unknown, value: unknown];

/** What Excel would be given to draw: each series' cells as they stand. */
function drawn(sheet: BatchSheet, name: string): Point[] {
  const sheetId = bench.univerAPI.getActiveWorkbook()!.getSheetByName(sheet.sheetName)!.getSheetId();
  const chart = bench.chartsOf(sheetId)[0] as ChartRecord;
  const series = chart.series.find((one) => one.name?.startsWith(name));
  if (!series?.xValues || !series.values) throw new Error(`the chart has no series ${name}`);
  const column = ({ row, column: letters, rowCount }: NonNullable<typeof series.values>) =>
    Array.from({ length: rowCount }, (_, index) => bench.valueAt(sheet.sheetName, address(row + index + 1, letters + 1)));
  const [xs, ys] = [column(series.xValues), column(series.values)];
  return ys.map((y, index) => [xs[index], y]);
}

const distinct = (points: readonly Point[]): Point[] => [...new Map(points.map((point) => [JSON.stringify(point), point])).values()];
const seriesNames = ["Gravity read", "Fitted curve", "95 % band", "Upper edge", "Temperature"];

/** Excel draws a text at 0 and complains of errors; a cell without anything in it is passed over. */
function expectDrawable(sheet: BatchSheet): void {
  for (const name of seriesNames) {
    for (const [day, value] of drawn(sheet, name)) {
      expect(typeof day, `${name}: a day`).toBe("number");
      expect([true, false], `${name}: ${JSON.stringify(value)}`).toContain(value === null || typeof value === "number");
      expect(value === "" || Number.isNaN(value)).toBe(false);
      if (typeof value === "number" && name !== "Temperature") expect(value).toBeGreaterThan(0.98);
    }
  }
}

describe("the chart of the sample batch", () => {
  let sheet: BatchSheet;
  beforeAll(async () => {
    sheet = await insertOn(bench, firstExtractBatch());
  }, benchTimeout);

  it("shows what the yeast was given and every reading, where they were taken", () => {
    const readings = distinct(drawn(sheet, "Gravity read"));
    expect(readings).toHaveLength(6);
    // The time that was written beside the line that pitches: 14:12.
    expect(readings[0]).toEqual([expect.closeTo(sheet.number("brewed_on") + (14 + 12 / 60) / 24, 6), sheet.number("og")]);
    expect(readings.at(-1)).toEqual([sheet.number("last_reading"), sheet.number("fg")]);
    expectDrawable(sheet);
  });

  it("draws the curve through the readings, inside its band, falling all the way and level at the end", () => {
    const [curve, low, high] = ["Fitted curve", "95 % band", "Upper edge"].map((name) =>
      drawn(sheet, name).map(([, value]) => Number(value)),
    ) as [number[], number[], number[]];
    expect(curve).toHaveLength(33);
    curve.forEach((gravity, index) => {
      expect(gravity).toBeGreaterThanOrEqual(low[index] ?? 2);
      expect(gravity).toBeLessThanOrEqual(high[index] ?? 0);
      if (index > 0) expect(gravity).toBeLessThanOrEqual(curve[index - 1] ?? 0);
    });
    // The sample's log ends at 1.012 read at 67 °F with a hydrometer of 60 °F, some 0.001 higher by its own table.
    expect(curve.at(-1)).toBeCloseTo(sheet.number("fg"), 2);
  });

  it("puts the temperature of the beer on an axis of its own", () => {
    expect(distinct(drawn(sheet, "Temperature")).map(([, temperature]) => temperature)).toEqual([66, 67, 67, 66, 66, 66]);
    const sheetId = bench.univerAPI.getActiveWorkbook()!.getSheetByName("Batch 1")!.getSheetId();
    const [chart] = bench.chartsOf(sheetId);
    expect(chart?.series.map(({ secondary }) => secondary ?? false)).toEqual([false, false, false, false, true]);
    expect(chart?.axes.secondary).toEqual({ numberFormat: "0", title: "Beer °F", minimum: 30, maximum: 120 });
  });

  it("gives a forecast only while there is something to forecast", async () => {
    expect(sheet.get("end_expected")).toBe("");
    expect(sheet.get("verdict")).toBe("steady");
  });
});

describe("the chart of a log under way", () => {
  let sheet: BatchSheet;
  const full = firstExtractBatch();
  const withReadings = (count: number) => ({ ...full, sheetName: `Log ${count}`, readings: full.readings.slice(0, count) });

  it.each([1, 2])("can be drawn with %d readings, without an error in any cell behind it", async (count) => {
    sheet = await insertOn(bench, withReadings(count));
    expectDrawable(sheet);
    const plan = planBatch(withReadings(count));
    for (const { address: cell } of plan.cells) {
      if (block(cell).from.column >= 23) expect(String(bench.valueAt(sheet.sheetName, cell)), cell).not.toMatch(/^#/);
    }
    expect(distinct(drawn(sheet, "Gravity read"))).toHaveLength(count + 1);
    // The original gravity and one reading leave a curve with a wide band.
    expect(drawn(sheet, "Fitted curve").filter(([, value]) => value !== null)).toHaveLength(33);
  });

  it("tells when it should be at its end, with its ±, on a day after the last reading", async () => {
    sheet = await insertOn(bench, { ...withReadings(2), sheetName: "Forecast" });
    expect(sheet.get("verdict")).toBe("working");
    expect(sheet.number("end_expected")).toBeGreaterThan(sheet.number("last_reading"));
    expect(sheet.number("end_expected")).toBeLessThan(sheet.number("brewed_on") + 21);
    expect(bench.valueAt("Forecast", sheet.cellOf("end_expected").replace("B", "C"))).toMatch(/^± \d+\.\d days \(a forecast\)$/);
  });

  it("never forecasts an end out of a stall: the curve goes on level", async () => {
    const [first] = full.readings;
    const readings = [1.042, 1.031, 1.025, 1.024, 1.024].map((reading, index) => ({
      ...first!,
      reading,
      when: full.brewedOn + 1.5 + 2 * index,
    }));
    sheet = await insertOn(bench, { ...full, sheetName: "Stalled", readings });
    expect(sheet.get("verdict")).toBe("stalled");
    expect(sheet.get("end_expected")).toBe("");
    const curve = drawn(sheet, "Fitted curve").map(([, value]) => Number(value));
    expect(curve.at(-1)).toBeCloseTo(sheet.number("fg"), 4);
  });

  it("is not there on an empty sheet, and comes with the first reading, whoever types it", async () => {
    const empty = newBatch({
      ...{ id: "empty", sheetName: "Empty", batchName: "Empty", brewedOn: 46270, volume: 20, units: "metric" },
      ...{ topUp: 0, method: "extract" },
    });
    await followFirstReadings((work) => Excel.run(work));
    sheet = await insertOn(bench, empty);
    expect(chartsOf("Empty")).toEqual([]);
    const type = (row: number, values: (string | number)[], from = "A") =>
      Excel.run(async (context) => {
        const area = block(sheet.rangeOf("reading_times"));
        const [left, top] = [from.charCodeAt(0) - 64, area.from.row + row];
        context.workbook.worksheets.getItem("Empty").getRange(`${address(top, left)}:${address(top, left + values.length - 1)}`).formulas =
          [values];
        await context.sync();
      });
    // A date alone is no reading yet; nor is a figure elsewhere.
    await type(0, [46273.75]);
    await sheet.set({ volume_reached: 19 });
    await bench.calculate();
    expect(chartsOf("Empty")).toEqual([]);
    await type(0, [1.03], "B");
    await vi.waitFor(() => expect(chartsOf("Empty")).toHaveLength(1), { timeout: 20_000 });
    const [withOne] = planBatch({
      ...empty,
      readings: [{ when: 46273.75, reading: 1.03, scale: "SG", sampleTemperature: 20, beerTemperature: "" }],
    }).charts;
    expect(chartsOf("Empty")[0]).toMatchObject({
      name: "Fermentation",
      title: withOne!.title,
      anchor: { startCell: withOne!.from, endCell: withOne!.to },
    });
    await type(0, ["SG", 20], "C");
    await bench.calculate();
    expectDrawable(sheet);
    expect(distinct(drawn(sheet, "Gravity read"))).toHaveLength(2);

    // Taken away by somebody, it stays away when the next reading comes.
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Empty").charts.getItem("Fermentation").delete();
      await context.sync();
    });
    await type(1, [46275.75, 1.02]);
    await bench.calculate();
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(chartsOf("Empty")).toEqual([]);
  });
});
