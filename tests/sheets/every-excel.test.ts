import { afterAll, beforeAll, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import type { Switches } from "../../src/excel-stand-in/excel/switches";
import { batchContents } from "../../src/workbook/batch/read/batch-contents";
import { readBatchSheet } from "../../src/workbook/batch/read/batch-sheets";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { insertBatch } from "../../src/workbook/batch/insert-batch";
import { batchInFront } from "../../src/workbook/brewing/companion/batch-in-front";
import { carryOut } from "../../src/workbook/brewing/companion/outcome";
import { addReading } from "../../src/workbook/brewing/companion/reading/add-reading";
import { checkWorkbook } from "../../src/workbook/care/check/check-workbook";
import { explainActiveCell } from "../../src/workbook/care/explain/explain-cell";
import { migrateSheets } from "../../src/workbook/care/migrate";
import { isElsewhere } from "../../src/workbook/grid/words/host-words";
import { plugIn, PlugInRefused, unpluggedCopies } from "../../src/workbook/exchange/unplug";
import { insertKit } from "../../src/workbook/sheets/kit/insert-kit";
import { insertPage } from "../../src/workbook/sheets/pages/insert-page";
import { insertSeason } from "../../src/workbook/sheets/season/insert-season";
import { followSheets } from "../../src/workbook/sheets/season/follow-sheets";
import { refreshSeason } from "../../src/workbook/sheets/season/refresh-season";
import { planDraw, readStoresAndBatches, writeDraws } from "../../src/workbook/sheets/stores/draw";
import { insertStores } from "../../src/workbook/sheets/stores/insert-stores";
import { benchTimeout, openBatchBench } from "../support/batch-bench";
import { openFile } from "../support/open-file";
import { batchUnderWay, cellsOn } from "../support/unplug-bench";

/**
 * One brewer's way through the workbook under each Excel that the manifest lets in, and under what some of them do besides. All must
 * come to the same as in the best; only notes, which came with ExcelApi 1.18, are missing in the older.
 */
let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => bench.dispose());

const contents = batchUnderWay("metric", "all-grain", "bottles");
const oldSample = new URL("../samples/old/first-extract-batch-plan-1.xlsx", import.meta.url);

const run = async <T>(work: (context: Excel.RequestContext) => Promise<T>): Promise<T> => {
  await bench.calculate();
  return Excel.run(work);
};
/** Without what is chance: the mark by which batches are told apart. */
const plain = (thing: unknown): unknown =>
  JSON.parse(
    JSON.stringify(thing, (_key, value: unknown) => (typeof value === "string" && /^[a-z\d]{12}$/.test(value) ? "a mark" : value)),
  );
const shownBy = async (sheetName: string) => [...(await cellsOn(sheetName)).values];

async function wayThrough(switches: Partial<Switches>): Promise<Record<string, unknown>> {
  bench.host.behave({});
  await bench.load({ id: `book-${crypto.randomUUID()}`, sheetOrder: ["one"], sheets: { one: { id: "one", name: "Sheet1" } } });
  // Names of the workbook that are called like the sheets' own, and lead astray.
  await run(async (context) => {
    for (const { name } of planBatch(contents).names) context.workbook.names.add(name, "=Sheet1!$Z$99");
    await context.sync();
  });
  bench.host.behave(switches);
  const came: Record<string, unknown> = {};
  await run((context) => insertBatch(context, contents));
  await run((context) => followSheets(context, () => undefined));
  came["inserted"] = await shownBy("Batch 1");
  const sheet = (await run((context) => readBatchSheet(context, "Batch 1")))!;
  came["read"] = batchContents(sheet);
  const reading = {
    when: 46290.5,
    reading: 1.0118,
    gravity: 1.0118,
    scale: "SG",
    sampleTemperature: 20,
    beerTemperature: 20,
    note: "a word",
  } as const;
  came["reading"] = await run(() => carryOut((context) => addReading(context, sheet, reading)));
  came["read again"] = batchContents((await run((context) => readBatchSheet(context, "Batch 1")))!);
  await run((context) => insertKit(context, { sheetName: "Kit", units: "metric", kitNames: ["Pot"] }));
  await run((context) =>
    insertStores(context, {
      sheetName: "Stores",
      units: "metric",
      today: 46300,
      stock: { malt: [{ name: "Pale malt", bought: 20, price: 3 }], hops: [], yeast: [] },
    }),
  );
  const stores = (await run(readStoresAndBatches))!;
  const draw = planDraw(stores, "Batch 1");
  came["drawn"] = [draw, await run((context) => writeDraws(context, stores, [{ plan: draw, day: 46300 }])).then(() => "written")];
  await run((context) => insertSeason(context, { sheetName: "Season", units: "metric", today: 46310, allowance: 30 }));
  came["season"] = [await run(refreshSeason), await shownBy("Season")];
  came["recipe"] = await shownBy(await run((context) => insertPage(context, "Batch 1", "recipe")));
  came["check"] = (await run((context) => checkWorkbook(context, {}, 46310))).sheets;
  await run(async (context) => {
    context.workbook.worksheets.getItem("Batch 1").activate();
    context.workbook.worksheets.getItem("Batch 1").getRange(sheet.range("abv_reached")).select();
    await context.sync();
  });
  came["explained"] = await run(explainActiveCell);
  const [copy] = await run((context) => unpluggedCopies(context, ["Batch 1"], { prices: true, standalone: false }));
  came["unplugged"] = { ...copy, privateNotes: 0, canPlugIn: true };
  came["can plug in"] = copy!.canPlugIn;
  came["copy"] = await shownBy(copy!.copyName);
  came["plugged in"] = await run((context) => plugIn(context, copy!.copyName, { leaveChanged: false })).then(
    () => "plugged in",
    (problem: unknown) => (problem instanceof PlugInRefused ? problem.message : String(problem)),
  );
  bench.host.behave({});
  await openFile(bench, oldSample);
  bench.host.behave(switches);
  came["migrated"] = [await run((context) => migrateSheets(context)), await shownBy("Batch 1")];
  bench.host.behave({});
  return plain(came) as Record<string, unknown>;
}

let best: Record<string, unknown>;
beforeAll(async () => {
  best = await wayThrough({});
}, benchTimeout);

it("while another workbook is in front, the batch is not read, and the pane can tell why", async () => {
  const look = () => Excel.run((context) => batchInFront(context, undefined)).then(({ kind }) => kind, isElsewhere);
  await bench.load({ id: `book-${crypto.randomUUID()}`, sheetOrder: ["one"], sheets: { one: { id: "one", name: "Sheet1" } } });
  await Excel.run((context) => insertBatch(context, contents));
  await bench.calculate();
  bench.host.behave({ otherWorkbookInFront: true });
  expect(await look()).toBe(true);
  bench.host.behave({});
  expect(await look()).toBe("batch");
});

it("the best Excel comes through, notes and all", () => {
  expect([best["can plug in"], best["plugged in"]]).toEqual([true, "plugged in"]);
  expect(best["reading"]).toMatchObject({ kind: "written" });
  expect((best["inserted"] as unknown[]).filter((value) => typeof value === "string" && /^#(?:NAME|REF|VALUE)/.test(value))).toEqual([]);
});

it.each<[string, Partial<Switches>, plugsIn: boolean]>([
  ["ExcelApi 1.12", { excelApi: 12 }, false],
  ["ExcelApi 1.14, Excel 2021 under volume licence", { excelApi: 14 }, false],
  ["ExcelApi 1.17, Excel 2024 under volume licence", { excelApi: 17 }, false],
  ["the workbook's names among a sheet's", { workbookNamesOnSheets: true }, true],
  ["formulas in the cells that others spill into", { spilledFormulas: true }, true],
])(
  "%s: the same comes of it",
  async (_name, switches, plugsIn) => {
    const came = await wayThrough(switches);
    expect(came["can plug in"]).toBe(plugsIn);
    expect(came["plugged in"]).toBe(plugsIn ? "plugged in" : "This Excel cannot read notes, which keep the formulas. Nothing was changed.");
    for (const step of Object.keys(best)) {
      if (!plugsIn && (step === "can plug in" || step === "plugged in")) continue;
      expect([step, came[step]]).toEqual([step, best[step]]);
    }
  },
  benchTimeout,
);
