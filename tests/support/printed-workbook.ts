import { makeWorkbook, sampleBytes } from "../../src/build/make-sample";
import { noteSeason, seasonBatches } from "../../src/build/sample-season";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { newBatch } from "../../src/workbook/batch/new-batch";
import { handOut } from "../../src/workbook/sheets/handout/hand-out";
import { insertSheet } from "../../src/workbook/grid/write/insert-sheet";
import { insertClub } from "../../src/workbook/sheets/club/add-to-club";
import { planScoreSheet } from "../../src/workbook/sheets/club/score-sheet-plan";
import { planTasting } from "../../src/workbook/sheets/club/tasting-plan";
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

/** Batches whose pages are printed: of each method and unit system once, one with every block, and a hand-out. */
export const printedPages = ["US extract", "Metric grain", "US blocks", "Hand-out"] as const;

const codes = [184, 271, 356, 443, 518, 602];
const tasters = ["Ada", "Ben", "Member Thirteen"];
/** A blind tasting and the score sheet of one who tastes, as they are handed out. */
export const printedTasting = [
  planTasting({
    ...{ sheetName: "Tasting", id: "paper", paper: "a4", tasters },
    beers: codes.map((code) => ({ code, beer: "Quillmarsh Footbridge Pale", member: "Member Thirteen" })),
  }),
  planScoreSheet({ sheetName: "Scores Ada", tastingName: "Tasting", tastingId: "paper", paper: "a4", taster: "Ada", codes }),
];

/** A workbook with these batches, the pages of each that has a recipe, season, kit, stores, club, class and blind tasting. */
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
    for (const sheetName of printedPages) for (const kind of pageKinds) await insertPage(context, sheetName, kind);
    for (const kind of ["club", "class"] as const)
      await insertClub(context, {
        sheetName: kind === "club" ? "Club" : "Class",
        units: "metric",
        entries: batches.slice(3, 6).map((batch, index) => ({ member: `Member ${index + 1}`, batch })),
        kind,
      });
    for (const plan of printedTasting) await insertSheet(context, plan, "A1");
  };
  const made = await makeWorkbook(await loadHeadlessBench(), batches, sheets, noteSeason);
  made.bench.dispose();
  return sampleBytes(made);
}
