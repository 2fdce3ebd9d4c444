import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { learned, type Learned } from "../../src/core/kit/shrink";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { newBatch, usualKit, withBlocks } from "../../src/workbook/batch/new-batch";
import { insertBatch } from "../../src/workbook/batch/insert-batch";
import { insertKit, readKits } from "../../src/workbook/sheets/kit/insert-kit";
import { onKit } from "../../src/workbook/sheets/kit/kits-on-sheet";
import { learnedRows, type LearnedKey } from "../../src/workbook/sheets/kit/kit-rows";
import { learnKits, type LearnedFigure } from "../../src/workbook/sheets/kit/learn-kits";
import { takeLearned } from "../../src/workbook/sheets/kit/take-learned";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet } from "../support/batch-bench";

const choices = {
  id: "one",
  sheetName: "Batch 1",
  batchName: "One",
  brewedOn: 46270,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "all-grain",
} as const;
const base = exampleBatch(choices);
/* Two litres short after an hour's boil; chilled from 100 to 19 °C in 80 minutes; 36 half-litre bottles out of 18.4 L. */
const contents = {
  ...base,
  wort: { collected: "", reading: 1.05, scale: "SG", sampleTemperature: 20, volume: 18.4 },
  packaging: { ...base.packaging, packagedOn: 46284, bottlesFilled: 36 },
} as const;

let bench: HeadlessBench;
let batch: BatchSheet;
const run = <T>(work: (context: Excel.RequestContext) => Promise<T>): Promise<T> => Excel.run(work);
const figures = async (): Promise<Record<LearnedKey, LearnedFigure>> => {
  const report = await run(learnKits);
  await bench.calculate();
  return Object.fromEntries(report!.kits[0]!.figures.map((figure) => [figure.key, figure])) as Record<LearnedKey, LearnedFigure>;
};

beforeAll(async () => {
  bench = await openBatchBench();
  batch = await insertOn(bench, contents);
  await run((context) =>
    insertKit(context, {
      sheetName: "Kit",
      units: "metric",
      kitNames: ["Shed"],
      readings: [
        { kit: "Shed", day: 46270, what: "hydrometer in plain water", value: 1.002, remark: "" },
        { kit: "shed", day: 46270, what: "left in the kettle", value: 1.1, remark: "" },
        { kit: "Another", day: 46270, what: "left in the kettle", value: 9, remark: "" },
      ],
    }),
  );
  await bench.calculate();
}, benchTimeout);
afterAll(() => bench.dispose());

const typicalOf = (key: LearnedKey, value: number) => ({ value, ...learnedRows.find((row) => row.key === key)!.spread });

function isAbout(found: Learned, wanted: Learned): void {
  expect(found.value).toBeCloseTo(wanted.value, 9);
  expect(found.plusMinus).toBeCloseTo(wanted.plusMinus, 9);
  expect(found.batches).toBe(wanted.batches);
}

describe("the kit sheet", () => {
  it(
    "learns from the batch sheets and from what was measured by hand, each figure with its number of batches",
    async () => {
      const happened = Number(batch.cellOf("happened").slice(1));
      const chill = Array.from({ length: 23 }, (_, index) => String(bench.valueAt("Batch 1", `A${happened + index}`))).findIndex((words) =>
        words.startsWith("Chill to"),
      );
      expect(chill).toBeGreaterThan(3);
      await run(async (context) => {
        context.workbook.worksheets.getItem("Batch 1").getRange(`F${happened + chill}:F${happened + chill + 1}`).values = [
          [23.5 / 24],
          [(0.5 + 1 / 3) / 24],
        ];
        await context.sync();
      });
      await bench.calculate();
      const found = await figures();
      // 20 L wanted, 18.4 L there, one hour: 1.6 L/h more than the 2.8 L/h of the plan; litres of wort are litres of water to a hundredth here.
      const { value: away, batches: brewed } = found.boilOff.learned;
      expect(Math.abs(away - learned([2.8 + 1.6], typicalOf("boilOff", 2.8)).value)).toBeLessThan(0.02);
      expect(brewed).toBe(1);
      expect(found.grainEfficiencyPercent.learned.value).toBeCloseTo(
        learned([batch.number("efficiency_reached")], typicalOf("grainEfficiencyPercent", 70)).value,
        9,
      );
      isAbout(found.bottlingLoss.learned, learned([18.4 - 18], typicalOf("bottlingLoss", 0.5)));
      isAbout(found.kettleLoss.learned, learned([1.1], typicalOf("kettleLoss", 0.8)));
      expect(found.hydrometerOffset.learned.value).toBeCloseTo(learned([0.002], typicalOf("hydrometerOffset", 0)).value, 12);
      // The sheet's own GYLE.HEAT.CHILL with the coil that 80 minutes tell must take 80 minutes again.
      const { value, batches } = found.coilKwPerK.learned;
      expect(batches).toBe(1);
      const told = (value - 0.3) / (1 / 0.06 ** 2 / (1 / 0.06 ** 2 + 1 / 0.15 ** 2)) + 0.3;
      await run(async (context) => {
        context.workbook.worksheets.getItem("Batch 1").getRange(batch.cellOf("coil")).values = [[told]];
        await context.sync();
      });
      await bench.calculate();
      expect(batch.number("chill_minutes")).toBeCloseTo(80, 6);
      expect([bench.valueAt("Kit", "C5"), bench.valueAt("Kit", "E5")]).toEqual([found.boilOff.learned.value, 1]);
    },
    benchTimeout,
  );

  it(
    "goes by the typical value, by the learned one once it is taken, and before all by the brewer's own",
    async () => {
      const used = () => [bench.valueAt("Kit", "H5"), bench.valueAt("Kit", "H7")];
      expect(used()).toEqual([2.8, 70]);
      await run((context) => takeLearned(context, true, 1, "boilOff"));
      const found = await figures();
      expect(found.boilOff.taken).toBe(true);
      expect(used()).toEqual([found.boilOff.learned.value, 70]);
      await run(async (context) => {
        context.workbook.worksheets.getItem("Kit").getRange("G5:G7").values = [[3.3], [""], [81]];
        await context.sync();
      });
      await bench.calculate();
      expect(used()).toEqual([3.3, 81]);
      await figures();
      expect(bench.valueAt("Kit", "G5")).toBe(3.3);
    },
    benchTimeout,
  );

  it(
    "starts a new batch, in its own units, and the recipe keeps its rest",
    async () => {
      const [kit] = await run(readKits);
      expect(kit).toMatchObject({ name: "Shed", number: 1 });
      const us = { ...choices, units: "us", volume: 5, method: "extract" } as const;
      const started = onKit(us, kit!);
      expect(started.kitName).toBe("Shed");
      // NIST SP 811: 1 US gal = 3.785411784 L.
      expect(started.kit.boilOff).toBeCloseTo(3.3 / 3.785411784, 9);
      expect(started.kit.kettleSize).toBeCloseTo(usualKit.metric.kettleSize / 3.785411784, 9);
      expect(started.kit.soakTemperature).toBe(newBatch(us).kit.soakTemperature);
      expect(started.kit.grainEfficiencyPercent).toBe(50);
      expect(onKit(choices, kit!).kit.grainEfficiencyPercent).toBe(81);
    },
    benchTimeout,
  );

  it(
    "counts a batch to the kit that it names, and says which kits it does not know",
    async () => {
      await run((context) => insertBatch(context, { ...contents, sheetName: "Batch 2", kitName: "Cellar" }));
      await bench.calculate();
      const report = await run(learnKits);
      expect(report).toMatchObject({ unknown: ["Batch 2"], kits: [{ name: "Shed", batches: 1 }] });
    },
    benchTimeout,
  );

  it(
    "needs three round trips whatever the number of batches",
    async () => {
      const before = bench.valueAt("Kit", "C5");
      const syncs = bench.host.faults.syncCount;
      await run(learnKits);
      expect(bench.host.faults.syncCount - syncs).toBe(3);
      expect(bench.valueAt("Kit", "C5")).toBe(before);
    },
    benchTimeout,
  );

  it(
    "learns absorption and dead space from what was noted before the boil, on an older kit sheet as well",
    async () => {
      const noted = withBlocks({ ...contents, id: "two", sheetName: "Batch 3", kitName: "Shed" }, ["beforeBoil"]);
      await run((context) =>
        insertBatch(context, {
          ...noted,
          beforeBoil: { ...noted.beforeBoil!, volume: 22.4, reading: 1.045, sampleTemperature: 20, tunLeft: 0.7 },
        }),
      );
      await bench.calculate();
      const labels = Array.from({ length: 40 }, (_, index) => String(bench.valueAt("Kit", `A${index + 1}`)));
      const row = labels.indexOf("Water that the grain keeps") + 1;
      expect(row).toBeGreaterThan(10);
      // As a kit sheet of before: nothing but typical and own.
      await run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Kit");
        sheet.getRange(`C${row}:F${row}`).values = [["", "", "", ""]];
        sheet.getRange(`H${row}`).formulas = [[`=IF(ISNUMBER(G${row}),G${row},B${row})`]];
        await context.sync();
      });
      const found = await figures();
      expect([found.absorption.learned.batches, found.deadSpace.learned.batches]).toEqual([1, 1]);
      expect(found.deadSpace.learned.value).toBeCloseTo(learned([0.7], { value: 0, betweenKits: 1, betweenBatches: 0.2 }).value, 9);
      expect(["E", "F"].map((column) => bench.valueAt("Kit", `${column}${row}`))).toEqual([1, "no"]);
      await run((context) => takeLearned(context, true, 1, "absorption"));
      await bench.calculate();
      expect(bench.valueAt("Kit", `H${row}`)).toBe(found.absorption.learned.value);
      expect(found.absorption.learned.value).not.toBe(1);
    },
    benchTimeout,
  );

  it(
    "is inserted once",
    async () => {
      await expect(run((context) => insertKit(context, { sheetName: "Kit 2", units: "us", kitNames: [] }))).rejects.toThrow(
        'a kit sheet already: "Kit"',
      );
    },
    benchTimeout,
  );
});
