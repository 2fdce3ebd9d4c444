import { describe, expect, it } from "vitest";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { newBatch } from "../../src/workbook/batch/new-batch";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { planClass } from "../../src/workbook/sheets/club/class-plan";
import { factRow } from "../../src/workbook/sheets/club/facts-plan";
import { planClub } from "../../src/workbook/sheets/club/club-plan";
import { planScoreSheet } from "../../src/workbook/sheets/club/score-sheet-plan";
import { planTasting } from "../../src/workbook/sheets/club/tasting-plan";
import { planLabels } from "../../src/workbook/sheets/pages/labels-plan";
import { planLesson } from "../../src/workbook/sheets/pages/lesson-plan";
import { planRecipe } from "../../src/workbook/sheets/pages/recipe-plan";
import { planShopping } from "../../src/workbook/sheets/pages/shopping-plan";
import { filledBlocks } from "../support/filled-blocks";
import { plannedSheet } from "../support/planned-sheet";
import { regionalIn } from "../support/regional-formulas";
import { planKit } from "../../src/workbook/sheets/kit/kit-plan";
import type { SheetPlan } from "../../src/workbook/grid/plan/sheet-plan";
import { planSeason } from "../../src/workbook/sheets/season/season-plan";
import { planStores } from "../../src/workbook/sheets/stores/stores-plan";

const unsafe = ({ cells, highlights }: SheetPlan): string[] =>
  [
    ...cells.map(({ address, content }) => [address, content] as const),
    ...highlights.map(({ range, formula }) => [range, formula] as const),
  ].flatMap(([place, content]) =>
    typeof content === "string" && content.startsWith("=") ? regionalIn(content).map((what) => `${place}: ${what}`) : [],
  );

const blank = (units: "metric" | "us", method: "extract" | "all-grain") =>
  planBatch(newBatch({ id: "x", sheetName: "Batch", batchName: "", brewedOn: 46270, volume: 20, units, topUp: 0, method }));
const example = firstExtractBatch();
const inWorkbook = (contents: BatchContents) => ({
  sheetName: contents.sheetName,
  contents,
  cells: plannedSheet(planBatch(contents)),
});
const facts = { sheetName: "Facts", units: "us", rows: [factRow({ member: "Ann", batch: example }, "us")] } as const;
const plans: readonly [string, SheetPlan][] = [
  ...(["metric", "us"] as const).flatMap((units) =>
    (["extract", "all-grain"] as const).map((method): [string, SheetPlan] => [`${units} ${method} sheet`, blank(units, method)]),
  ),
  ["example", planBatch(example)],
  ...(["metric", "us"] as const).map((units): [string, SheetPlan] => [
    `${units} sheet with every block`,
    planBatch(filledBlocks(units, "Blocks")),
  ]),
  ...[planRecipe, planShopping, planLesson, planLabels].flatMap((plan) =>
    [example, filledBlocks("us", "Blocks")].map((contents): [string, SheetPlan] => [
      `${plan.name} of ${contents.sheetName}`,
      plan(inWorkbook(contents), "Page"),
    ]),
  ),
  ["club sheet", planClub(facts)],
  ["class sheet", planClass(facts)],
  [
    "tasting",
    planTasting({
      sheetName: "Tasting",
      id: "x",
      paper: "a4",
      beers: [1, 2].map((n) => ({ beer: "", member: "", code: 120 + n })),
      tasters: ["Ann"],
    }),
  ],
  [
    "score sheet",
    planScoreSheet({ sheetName: "Scores", tastingName: "Tasting", tastingId: "x", paper: "a4", taster: "Ann", codes: [121, 122] }),
  ],
  ["kit sheet", planKit({ sheetName: "Kit", units: "metric", kitNames: ["Usual"] })],
  ["season", planSeason({ sheetName: "Season", units: "metric", today: 46270, rows: [] })],
  ["stores", planStores({ sheetName: "Stores", units: "us", today: 46270 })],
];

describe("numbers in words", () => {
  it.each(plans)("follow no regional setting in the %s", (_name, plan) => {
    expect(unsafe(plan)).toEqual([]);
  });

  it("would be found", () => {
    expect(regionalIn('="a "&TEXT(MAX(a,INDEX(b,MATCH(1,(c),0))),"0.0")&TEXT(x,"0")&TEXT(day,"yyyy-mm-dd")&TEXT(x,pattern)')).toEqual([
      '"0.0"',
      'TEXT with "0.0"',
      'TEXT with "yyyy-mm-dd"',
      "TEXT with pattern",
    ]);
    expect(regionalIn('=COUNTIFS(a,">=0.97",b,"<"&1.2,c,">0",d,"write 1.012")+"1.5"*1+VALUE(x)+("2026-12-01">x)')).toEqual([
      '">=0.97"',
      '"1.5"',
      "VALUE",
      '"2026-12-01"',
    ]);
  });
});
