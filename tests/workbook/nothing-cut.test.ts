import { expect, it } from "vitest";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { block, position } from "../../src/workbook/grid/plan/addresses";
import { pageHeight, widthScale } from "../../src/workbook/grid/plan/print-scale";
import { rowHeightPoints } from "../../src/workbook/grid/plan/sheet-builder";
import type { SheetPlan } from "../../src/workbook/grid/plan/sheet-plan";
import { styles } from "../../src/workbook/grid/plan/styles";
import { planClass } from "../../src/workbook/sheets/club/class-plan";
import { planClub } from "../../src/workbook/sheets/club/club-plan";
import { factRow } from "../../src/workbook/sheets/club/facts-plan";
import { planScoreSheet } from "../../src/workbook/sheets/club/score-sheet-plan";
import { planTasting } from "../../src/workbook/sheets/club/tasting-plan";
import { planKit } from "../../src/workbook/sheets/kit/kit-plan";
import { keptColumns } from "../../src/workbook/sheets/season/season-columns";
import { planSeason } from "../../src/workbook/sheets/season/season-plan";
import type { SeasonRow } from "../../src/workbook/sheets/season/season-rows";
import { planStores } from "../../src/workbook/sheets/stores/stores-plan";
import { seasonBatches } from "../../src/build/sample-season";
import { cutText, cutTexts } from "../support/cut-texts";
import { filledBlocks } from "../support/filled-blocks";
import { printedBatches } from "../support/printed-workbook";

const units = ["us", "metric"] as const;
const choices = { id: "cut", sheetName: "Cut", batchName: "The Quillmarsh Footbridge Pale", brewedOn: 46270 } as const;

/** Batches of each method in each system: small and large, topped up, bottled and kegged, new, finished and stuck, without blocks and with all. */
const batches: [string, BatchContents][] = units.flatMap((system) =>
  (["extract", "all-grain"] as const).flatMap((method) =>
    [false, true].flatMap((blocks) =>
      (["new", "finished", "stuck"] as const).map((course, index): [string, BatchContents] => {
        const volume = (system === "us" ? 5 : 20) * (index + 1);
        const made = blocks
          ? { ...filledBlocks(system, "Cut"), method }
          : exampleBatch({ ...choices, units: system, method, volume, topUp: index === 1 ? volume / 2 : 0 });
        const gravities = course === "new" ? [] : course === "finished" ? [1.03, 1.014, 1.013, 1.013] : [1.036, 1.027, 1.026, 1.026];
        return [
          `${system}, ${method}, ${course}${blocks ? ", every block" : ""}`,
          {
            ...made,
            kit: { ...made.kit, sanitiserDose: system === "us" ? 0.2 : 1.6 },
            wort:
              gravities.length === 0 ? made.wort : { ...made.wort, reading: 1.05, sampleTemperature: system === "us" ? 70 : 21, volume },
            readings: gravities.map((reading, at) => ({
              when: 46273.75 + at * 2.5,
              reading,
              scale: "SG",
              sampleTemperature: system === "us" ? 68 : 20,
              beerTemperature: system === "us" ? 66 : 19,
            })),
            packaging: {
              ...made.packaging,
              into: index === 1 ? "keg" : "bottles",
              packagedOn: course === "finished" ? 46290 : "",
            },
          },
        ];
      }),
    ),
  ),
);

/** A season of batches whose sheets are gone: their kept figures stand in the list, as wide as a season's are. */
const rows: SeasonRow[] = seasonBatches().map(({ id, batchName, style, brewedOn }, index) => {
  const wide: Readonly<Record<string, string | number>> = {
    ...{ A: index + 101, B: batchName, C: style, D: brewedOn, E: "conditioning", F: 1.052, G: 1.051, H: 1.012, I: 1.013 },
    ...{ J: 12.2, K: 12.4, M: 100, L: 101, N: 123.4, P: 123.4, Q: 1234, R: 120.5, S: 1234.5, U: 4.2, AD: 120, AE: 72 },
  };
  const kept = keptColumns.map(({ letter }) => wide[letter] ?? "");
  return {
    sheetName: undefined,
    id,
    lastName: batchName,
    closed: "",
    kept,
    kegCell: false,
    hasParts: false,
    left: 36,
    remark: "",
    own: [],
  };
});

const beers = (count: number) =>
  Array.from({ length: count }, (_, index) => ({ code: 184 + 61 * index, beer: "Quillmarsh Footbridge Pale", member: "Member Thirteen" }));
const learners = (system: "us" | "metric") =>
  seasonBatches().map((batch, index) => factRow({ member: `Member ${index + 1}`, batch }, system));

const sheets: [string, SheetPlan][] = [
  ...printedBatches().map((batch): [string, SheetPlan] => [batch.sheetName, planBatch(batch)]),
  ...batches.map(([name, batch]): [string, SheetPlan] => [name, planBatch(batch)]),
  ...units.flatMap((system): [string, SheetPlan][] => [
    [`season in ${system}`, planSeason({ sheetName: "Season", units: system, today: 46270, rows, allowance: 400 })],
    [`stores in ${system}`, planStores({ sheetName: "Stores", units: system, today: 46270 })],
    [`kit in ${system}`, planKit({ sheetName: "Kit", units: system, kitNames: ["The shed's", "Kitchen"] })],
    [`class in ${system}`, planClass({ sheetName: "Class", units: system, rows: learners(system) })],
    [
      `class of forty in ${system}`,
      planClass({ sheetName: "Class", units: system, rows: Array.from({ length: 4 }, () => learners(system).slice(0, 10)).flat() }),
    ],
    [`club in ${system}`, planClub({ sheetName: "Club", units: system, rows: learners(system) })],
  ]),
  ...(["a4", "letter"] as const).flatMap((paper): [string, SheetPlan][] => [
    ...[2, 12].map((count): [string, SheetPlan] => [
      `tasting of ${count} on ${paper}`,
      planTasting({ sheetName: "Tasting", id: "id", paper, beers: beers(count), tasters: ["Ada", "Ben", "Member Thirteen"] }),
    ]),
    [
      `score sheet on ${paper}`,
      planScoreSheet({
        ...{ sheetName: "Scores", tastingName: "Tasting", tastingId: "id", paper, taster: "Member Thirteen" },
        codes: beers(12).map(({ code }) => code),
      }),
    ],
  ]),
];

it.each(sheets)("%s: no word and no number is cut where it stands", (_, plan) => {
  expect(plan.cells.length).toBeGreaterThan(40);
  expect(cutTexts(plan).map(cutText)).toEqual([]);
});

/** Points of the letters that figures are written in, on paper, when Excel fits the sheet as its set-up says. */
function pointsOnPaper({ cells, columnWidths, rowHeights, print }: SheetPlan): number {
  const { from, to } = block(print.area);
  const printed = columnWidths.slice(from.column - 1, to.column);
  const scale = widthScale(printed, print.paper, print.landscape);
  const heights = new Map(rowHeights.map(({ row, points }) => [row, points]));
  let tall = 0;
  for (let row = from.row; row <= to.row; row += 1) tall += heights.get(row) ?? rowHeightPoints;
  const fits = print.onePage ? Math.min(1, pageHeight(printed, print.paper, print.landscape) / tall) : 1;
  const sizes = cells
    .filter(({ address }) => {
      const { row, column } = position(address);
      return row <= to.row && column <= to.column;
    })
    .map(({ style }) => styles[style].size);
  return Math.min(...sizes) * scale * fits;
}

it.each(sheets)("%s: nothing on paper is below 8 points by Excel's own scaling", (_, plan) =>
  expect(pointsOnPaper(plan)).toBeGreaterThanOrEqual(8),
);
