import { makeWorkbook, sampleBytes } from "../../src/build/make-sample";
import { noteSeason, seasonBatches } from "../../src/build/sample-season";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { newBatch } from "../../src/workbook/batch/new-batch";
import { handOut } from "../../src/workbook/sheets/handout/hand-out";
import { insertClub } from "../../src/workbook/sheets/club/add-to-club";
import { insertKit } from "../../src/workbook/sheets/kit/insert-kit";
import { insertSeason } from "../../src/workbook/sheets/season/insert-season";
import { insertStores } from "../../src/workbook/sheets/stores/insert-stores";
import { blockKeys } from "../../src/workbook/batch/fields/blocks";
import { filledBlocks } from "./filled-blocks";
import { insertPage, pageKinds } from "../../src/workbook/sheets/pages/insert-page";
import { loadHeadlessBench } from "./headless-bench";

const choices = (sheetName: string, units: "us" | "metric", method: "extract" | "all-grain") =>
  ({
    id: `paper-${sheetName}`,
    sheetName,
    batchName: sheetName,
    brewedOn: 46270,
    volume: units === "us" ? 5 : 20,
    units,
    topUp: 0,
    method,
  }) as const;

/** One batch of every kind that differs on paper: method, units, filled and blank, and a blank for somebody else. */
export const printedBatches = (): BatchContents[] => {
  const [extract, grain, , , strong] = seasonBatches();
  return [
    { ...firstExtractBatch(), sheetName: "US extract" },
    newBatch(choices("US extract blank", "us", "extract")),
    exampleBatch(choices("US grain", "us", "all-grain")),
    { ...extract!, sheetName: "Metric extract" },
    { ...(strong ?? grain)!, sheetName: "Metric grain" },
    newBatch(choices("Metric grain blank", "metric", "all-grain")),
    { ...filledBlocks("us", "US blocks"), id: "paper-us-blocks" },
    newBatch(choices("Metric blocks blank", "metric", "extract"), blockKeys),
    handOut(grain!, { name: "Hand-out", brewedOn: 46300, prices: false, volume: 10, units: "metric" }),
  ];
};

/** A workbook with these batches, the pages of each that has a recipe, season, kit, stores and club. */
export async function printedWorkbook(): Promise<Uint8Array> {
  const batches = printedBatches();
  const sheets = async (context: Excel.RequestContext) => {
    await insertSeason(context, { sheetName: "Season", units: "metric", today: 46300, allowance: 400 });
    await insertKit(context, { sheetName: "Kit", units: "metric", kitNames: ["Shed"] });
    await insertStores(context, {
      sheetName: "Stores",
      units: "metric",
      today: 46300,
      stock: {
        malt: [{ name: "Pale malt extract, liquid", bought: 18, price: 7.5, remark: "Two tins are dented; those first" }],
        hops: [
          {
            name: "Willamette",
            bought: 400,
            price: 6,
            lot: 2025,
            dated: 45945,
            hop: { alphaPercent: 8.5, openedOn: 46095, storedAt: -18, package: "barrier" },
          },
        ],
      },
    });
    for (const { sheetName } of batches.filter(({ sheetName }) => !sheetName.endsWith("blank")))
      for (const kind of pageKinds) await insertPage(context, sheetName, kind);
    await insertClub(context, {
      sheetName: "Club",
      units: "metric",
      entries: batches.slice(3, 6).map((batch, index) => ({ member: `Member ${index + 1}`, batch })),
    });
  };
  const made = await makeWorkbook(await loadHeadlessBench(), batches, sheets, noteSeason);
  made.bench.dispose();
  return sampleBytes(made);
}
