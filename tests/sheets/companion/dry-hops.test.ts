import { afterAll, beforeAll, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { exampleBatch } from "../../../src/workbook/batch/example-batch";
import { readBatchSheet } from "../../../src/workbook/batch/read/batch-sheets";
import { dryHops, dryHopsProblem, writeDryHops } from "../../../src/workbook/brewing/companion/reading/dry-hops";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet } from "../../support/batch-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => bench.dispose());

const plain = exampleBatch({
  ...{ id: "d", sheetName: "D", batchName: "D", brewedOn: 46270, volume: 20, units: "metric", topUp: 0, method: "extract" },
});
const look = async () => (await Excel.run((context) => readBatchSheet(context, "D")))!;
const dryName = (sheet: BatchSheet, minutes: string | number) => {
  const [from] = sheet.rangeOf("hop_plan").split(":");
  const row = Number(/\d+/.exec(from!)![0]);
  return Excel.run(async (context) => {
    context.workbook.worksheets.getItem("D").getRange(`A${row}:D${row}`).values = [["Fuggle", 40, 5, minutes]];
    await context.sync();
  });
};

it(
  "the day of the dry hops is noted once, after pitching and not ahead; from then on the sheet counts from it",
  async () => {
    const sheet = await insertOn(bench, {
      ...plain,
      wort: { ...plain.wort, reading: 1.048, sampleTemperature: 20, volume: 20 },
      readings: [6, 7].map((day) => ({
        ...{ when: 46270.75 + day, reading: 1.012, scale: "SG" as const, sampleTemperature: 20, beerTemperature: 19 },
      })),
    });
    expect(dryHops(await look())).toBeUndefined();
    await dryName(sheet, "dry");
    await bench.calculate();
    const seen = await look();
    expect(dryHops(seen)).toEqual({ names: ["Fuggle"], noted: undefined });
    // Brewed on 5 September 2026.
    expect(dryHopsProblem(seen, 46269, 46280)).toMatch(/^The yeast went in on .*5 Sep.*: dry hops come after it\.$/);
    expect(dryHopsProblem(seen, 46281, 46280.9)).toMatch(/still to come/);
    expect([dryHopsProblem(seen, 46275, 46280), dryHopsProblem(seen, "", 46280)]).toEqual(["", ""]);
    expect(sheet.get("verdict")).toBe("steady");
    await Excel.run((context) => writeDryHops(context, seen, 46278));
    await bench.calculate();
    expect(sheet.get("dry_hopped_on")).toBe(46278);
    // Both readings are from before that day: hops can wake the beer.
    expect(sheet.get("verdict")).not.toBe("steady");
    expect(dryHops(await look())!.noted).toBe(46278);
    const again = await look();
    await expect(Excel.run((context) => writeDryHops(context, again, 46279))).rejects.toThrow(/filled in already/);
    // Who had the sheet open before somebody else noted it overwrites nothing.
    await expect(Excel.run((context) => writeDryHops(context, seen, 46279))).rejects.toThrow(/just changed/);
    expect(sheet.get("dry_hopped_on")).toBe(46278);
  },
  benchTimeout,
);
