import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { ourSteps as stepsOf } from "../../src/workbook/batch/sheet/steps";
import { readBatchFile } from "../../src/workbook/exchange/batch-file/read-batch-file";
import { writeBatchFile } from "../../src/workbook/exchange/batch-file/write-batch-file";
import { checkWorkbook } from "../../src/workbook/care/check/check-workbook";
import { handOut } from "../../src/workbook/sheets/handout/hand-out";
import { batchContents } from "../../src/workbook/batch/read/batch-contents";
import { readBatchSheet } from "../../src/workbook/batch/read/batch-sheets";
import { insertPage } from "../../src/workbook/sheets/pages/insert-page";
import { scaleBatch } from "../../src/workbook/batch/scale/scale-batch";
import { plugIn, unpluggedCopies } from "../../src/workbook/exchange/unplug";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet } from "../support/batch-bench";

/* A brewer with nine malts, eight hop additions, twenty steps and eighteen readings: every table is longer than on a new sheet. */
const base = exampleBatch({
  id: "long1",
  sheetName: "Long",
  batchName: "Long bill",
  brewedOn: 46270,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "all-grain",
});
const ourSteps = stepsOf("all-grain", "metric", []);
const batch: BatchContents = {
  ...base,
  malt: Array.from({ length: 9 }, (_, index) => ({
    ingredient: `Malt ${index + 1}`,
    mass: 0.5,
    yieldPercent: 78,
    handling: "mash" as const,
    colour: 5 + index,
    cost: 1,
    ...(index === 8 && { remark: "the last" }),
  })),
  hops: Array.from({ length: 8 }, (_, index) => ({
    hop: `Hop ${index + 1}`,
    mass: 11,
    alphaPercent: 5,
    minutes: 60 - 5 * index,
    form: "pellets",
    cost: 0.5,
    ...(index === 7 && { remark: "late" }),
  })),
  steps: [
    ...ourSteps,
    ...Array.from({ length: 20 - ourSteps.length }, (_, index) => ({
      what: `Look again, ${index + 1}`,
      part: "after" as const,
      minutes: 5,
      caution: "",
      why: "",
    })),
  ],
  wort: { collected: "", reading: 1.05, scale: "SG", sampleTemperature: 20, volume: 20 },
  readings: Array.from({ length: 18 }, (_, index) => ({
    when: 46271.5 + index,
    reading: Number((1.012 + 0.038 * Math.exp(-0.6 * (index + 1))).toFixed(4)),
    scale: "SG" as const,
    sampleTemperature: 20,
    beerTemperature: 19,
  })),
};

let bench: HeadlessBench;
let sheet: BatchSheet;
const contentsOf = async (sheetName: string): Promise<BatchContents> =>
  batchContents((await Excel.run((context) => readBatchSheet(context, sheetName)))!);
const rows = (name: string): number => {
  const [from = "", to = from] = sheet.rangeOf(name).split(":");
  return Number(to.replace(/\D/g, "")) - Number(from.replace(/\D/g, "")) + 1;
};
const column = (name: string): unknown[] => {
  const [from = ""] = sheet.rangeOf(name).split(":");
  const [, letter = "", row = ""] = /^([A-Z]+)(\d+)$/.exec(from) ?? [];
  return Array.from({ length: rows(name) }, (_, index) => bench.valueAt(sheet.sheetName, `${letter}${Number(row) + index}`));
};

beforeAll(async () => {
  bench = await openBatchBench();
  sheet = await insertOn(bench, batch);
}, benchTimeout);
afterAll(() => bench.dispose());

describe("a batch with more lines than a new sheet has rows", () => {
  it(
    "gets a row for each, and is read back as it was",
    async () => {
      expect(["malt", "hops", "steps", "readings"].map(rows)).toEqual([9, 8, 20, 18]);
      expect(await contentsOf("Long")).toEqual(batch);
    },
    benchTimeout,
  );

  it(
    "counts all of them",
    async () => {
      expect(sheet.number("grain_mass")).toBeCloseTo(4.5, 9);
      // Every kind of hop brings bitterness, the last one least; the clock names each, and the last reading has its gravity.
      const first = Number(sheet.cellOf("hops").slice(1));
      const each = Array.from({ length: 8 }, (_, index) => Number(bench.valueAt("Long", `G${first + index}`)));
      expect(each.every((ibu) => ibu > 0.5)).toBe(true);
      expect(each.reduce((sum, ibu) => sum + ibu, 0)).toBeCloseTo(sheet.number("ibu_plan"), 6);
      const clock = Number(sheet.cellOf("timeline").replace(/\D/g, ""));
      const lines = Array.from({ length: rows("timeline") }, (_, index) => String(bench.valueAt("Long", `A${clock + index}`) ?? ""));
      for (const { hop } of batch.hops)
        expect(
          lines.some((line) => line.includes(hop)),
          hop,
        ).toBe(true);
      for (const { what } of batch.steps!.slice(-5)) expect(lines).toContain(what);
      expect(lines.at(-1)).toBe("Brew day done");
      expect(column("gravities").at(-1)).toBeCloseTo(1.012, 4);
      expect(sheet.get("verdict")).toBe("steady");
      expect(sheet.complaints().map(({ label, text }) => `${label}: ${text}`)).toEqual([]);
      const { sheets } = await Excel.run((context) => checkWorkbook(context, {}, 46300));
      expect(sheets.flatMap(({ findings }) => findings).filter(({ weight, repair }) => weight === "stop" || repair !== undefined)).toEqual(
        [],
      );
    },
    benchTimeout,
  );

  it(
    "travels as a file, is scaled and handed out whole",
    async () => {
      expect(readBatchFile(writeBatchFile(batch, { prices: true }))).toEqual(batch);
      const scaled = { ...scaleBatch(batch, { volume: 10, units: "us" }), id: "long2", sheetName: "Long, scaled" };
      const copy = await insertOn(bench, scaled);
      expect(await contentsOf("Long, scaled")).toEqual(scaled);
      // What is left over: half a hundredth of a pound of each of nine malts is two thousandths of the gravity at most.
      expect(Math.abs(copy.number("og_plan") - sheet.number("og_plan"))).toBeLessThan(0.002);
      const blank = handOut(batch, { name: "Long, blank", brewedOn: 46300, volume: 10, units: "metric", prices: false });
      const given = await insertOn(bench, blank);
      expect([(await contentsOf("Long, blank")).malt.length, given.get("verdict") ?? ""]).toEqual([9, ""]);
      const page = await Excel.run((context) => insertPage(context, "Long", "recipe"));
      await bench.calculate();
      const words = Array.from({ length: 90 }, (_, row) =>
        ["A", "B", "C", "D", "E", "F", "G", "H"].map((letter) => String(bench.valueAt(page, `${letter}${row + 1}`) ?? "")),
      ).flat();
      for (const name of ["Malt 9", "Hop 8"]) expect(words).toContain(name);
    },
    benchTimeout,
  );

  it(
    "is unplugged and plugged in again",
    async () => {
      await Excel.run((context) => unpluggedCopies(context, ["Long"], { prices: true, standalone: false }));
      await bench.calculate();
      const [first = ""] = sheet.rangeOf("gravities").split(":");
      expect(bench.valueAt("Long unplugged", first)).toBeCloseTo(Number(bench.valueAt("Long", first)), 6);
      expect(bench.valueAt("Long unplugged", sheet.cellOf("ibu_plan"))).toBeCloseTo(sheet.number("ibu_plan"), 5);
      await Excel.run((context) => plugIn(context, "Long unplugged", { leaveChanged: false }));
      await bench.calculate();
      expect(bench.valueAt("Long unplugged", sheet.cellOf("ibu_plan"))).toBeCloseTo(sheet.number("ibu_plan"), 9);
    },
    benchTimeout,
  );
});

it(
  "a batch within a new sheet's rows gets the very sheet that it got before",
  async () => {
    const usual = await insertOn(bench, { ...firstExtractBatch(), sheetName: "Usual" });
    const height = (name: string): string[] =>
      usual
        .rangeOf(name)
        .split(":")
        .map((cell) => cell.replace(/\D/g, ""));
    expect(["malt", "hops", "steps", "timeline", "readings"].map((name) => Number(height(name)[1]) - Number(height(name)[0]) + 1)).toEqual([
      6, 6, 18, 23, 16,
    ]);
  },
  benchTimeout,
);
