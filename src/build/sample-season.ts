import type { BatchContents, Filled, Method } from "../workbook/batch/contents";
import { exampleBatch } from "../workbook/batch/example-batch";
import { dayNumber } from "../workbook/grid/words/day-number";
import { insertKit } from "../workbook/sheets/kit/insert-kit";
import { learnKits } from "../workbook/sheets/kit/learn-kits";
import { insertSeason } from "../workbook/sheets/season/insert-season";
import { refreshSeason } from "../workbook/sheets/season/refresh-season";
import { typedColumns } from "../workbook/sheets/season/season-columns";
import { plannedFirstRow } from "../workbook/sheets/season/season-plan";
import { afterDraw, planDraw, readStoresAndBatches, writeDraws } from "../workbook/sheets/stores/draw";
import { insertStores } from "../workbook/sheets/stores/insert-stores";
import { shoppingList, writeShoppingList } from "../workbook/sheets/stores/shopping";

/* A season of the imaginary Quillmarsh Brew Club: every batch and every figure is made up to be plausible. */

/** The day on which the sample stands still, so that its states do not change with the calendar. */
const today = dayNumber("2026-10-04");

interface SampleBatch {
  readonly name: string;
  readonly style: string;
  readonly day: string;
  readonly method: Method;
  readonly volume: number;
  /** All malt and hops of the example times so much. */
  readonly strength: number;
  /** The hops times so much again, for a style that is more or less bitter than its gravity. */
  readonly hopped?: number;
  /** Packs of yeast in hand, where two are too few. */
  readonly packs?: number;
  /** Roasted malt, kg. */
  readonly roast?: number;
  /** Minutes late of each noted line of the brew day; none: not brewed yet. */
  readonly noted: number;
  /** Days after brewing and gravity. */
  readonly readings: readonly (readonly [days: number, gravity: number])[];
  readonly into?: "bottles" | "keg";
  readonly packagedAfter?: number;
  readonly bottles?: number;
  readonly scores?: readonly [number, number, number, number, number];
}

const batches: readonly SampleBatch[] = [
  {
    name: "Quillmarsh Footbridge Pale",
    style: "American Pale Ale",
    day: "2026-01-17",
    method: "extract",
    volume: 20,
    strength: 1,
    noted: 20,
    readings: [
      [3, 1.028],
      [7, 1.014],
      [9, 1.013],
      [10, 1.013],
    ],
    packagedAfter: 13,
    bottles: 38,
    scores: [4, 4, 4, 3, 5],
  },
  {
    name: "Sluice Keeper's Bitter",
    style: "Best Bitter",
    day: "2026-02-14",
    method: "all-grain",
    volume: 20,
    strength: 0.86,
    noted: 20,
    readings: [
      [4, 1.018],
      [8, 1.012],
      [10, 1.011],
      [11, 1.011],
    ],
    packagedAfter: 14,
    bottles: 37,
    scores: [4, 3, 4, 4, 4],
  },
  {
    name: "Eel Weir Brown",
    style: "English Brown Ale",
    day: "2026-03-14",
    method: "extract",
    volume: 20,
    strength: 0.95,
    hopped: 0.75,
    roast: 0.25,
    noted: 20,
    readings: [
      [4, 1.02],
      [9, 1.013],
      [11, 1.013],
    ],
    into: "keg",
    packagedAfter: 14,
    scores: [3, 3, 4, 4, 3],
  },
  {
    name: "Reedbed Wheat",
    style: "American Wheat Beer",
    day: "2026-04-18",
    method: "all-grain",
    volume: 22,
    strength: 0.92,
    hopped: 0.6,
    noted: 20,
    readings: [
      [3, 1.02],
      [7, 1.012],
      [9, 1.012],
    ],
    packagedAfter: 12,
    bottles: 42,
    scores: [5, 4, 4, 4, 5],
  },
  {
    name: "Causeway Strong",
    style: "Old Ale",
    day: "2026-05-09",
    method: "all-grain",
    volume: 18,
    strength: 1.35,
    packs: 3,
    roast: 0.12,
    noted: 20,
    readings: [
      [5, 1.035],
      [12, 1.02],
      [18, 1.018],
      [20, 1.018],
    ],
    packagedAfter: 28,
    bottles: 34,
    scores: [4, 5, 5, 4, 5],
  },
  {
    name: "Punt Club Summer",
    style: "British Golden Ale",
    day: "2026-06-20",
    method: "extract",
    volume: 20,
    strength: 0.84,
    noted: 20,
    readings: [
      [3, 1.02],
      [6, 1.012],
      [8, 1.011],
      [9, 1.011],
    ],
    into: "keg",
    packagedAfter: 12,
    scores: [4, 4, 3, 4, 4],
  },
  {
    name: "Heron's Foot Amber",
    style: "American Amber Ale",
    day: "2026-08-15",
    method: "all-grain",
    volume: 20,
    strength: 1.05,
    noted: 20,
    readings: [
      [4, 1.022],
      [9, 1.014],
      [11, 1.014],
    ],
    packagedAfter: 15,
    bottles: 38,
  },
  {
    name: "Lock Gate Porter",
    style: "American Porter",
    day: "2026-09-05",
    method: "extract",
    volume: 20,
    strength: 1.08,
    packs: 3,
    roast: 0.45,
    noted: 20,
    readings: [
      [5, 1.022],
      [10, 1.014],
      [12, 1.014],
    ],
    packagedAfter: 20,
    bottles: 38,
  },
  {
    name: "Willow Bed Mild",
    style: "Dark Mild",
    day: "2026-09-12",
    method: "all-grain",
    volume: 20,
    strength: 0.72,
    hopped: 0.6,
    roast: 0.25,
    noted: 20,
    readings: [
      [4, 1.014],
      [9, 1.01],
      [11, 1.01],
    ],
  },
  {
    name: "Sunken Barge IPA",
    style: "American IPA",
    day: "2026-09-19",
    method: "extract",
    volume: 20,
    strength: 1.15,
    hopped: 1.3,
    noted: 20,
    readings: [
      [5, 1.034],
      [10, 1.026],
      [12, 1.026],
    ],
  },
  {
    name: "First Frost Pale",
    style: "American Pale Ale",
    day: "2026-09-30",
    method: "all-grain",
    volume: 20,
    strength: 1,
    noted: 20,
    readings: [[3, 1.031]],
  },
  {
    name: "Midwinter Stout",
    style: "American Stout",
    day: "2026-10-24",
    method: "all-grain",
    volume: 20,
    strength: 1.12,
    packs: 3,
    roast: 0.6,
    noted: 0,
    readings: [],
  },
];

export const seasonBatches = (): BatchContents[] => batches.map(contents);

function contents(sample: SampleBatch, index: number): BatchContents {
  const {
    name,
    style,
    day,
    method,
    volume,
    strength,
    hopped = 1,
    packs,
    roast = 0,
    noted,
    readings,
    into = "bottles",
    packagedAfter,
    bottles = "",
    scores,
  } = sample;
  const brewedOn = dayNumber(day);
  const batch = exampleBatch({
    id: `quillmarsh-season-${index + 1}`,
    sheetName: name,
    batchName: name,
    brewedOn,
    volume,
    units: "metric",
    topUp: 0,
    method,
  });
  const two = (value: number): number => Math.round(value * 100) / 100;
  // The mash won a little more or less each time.
  const won = 1 + ((index % 3) - 1) * 0.02;
  const gravity = Math.round((1 + 0.0522 * strength * won) * 1000) / 1000;
  return {
    ...batch,
    number: index + 1,
    style,
    kitName: "Shed",
    malt: [
      ...batch.malt.map((line) => ({ ...line, mass: two(line.mass * strength), cost: two(Number(line.cost) * strength) })),
      ...(roast > 0
        ? [
            {
              ingredient: "Roasted malt",
              mass: roast,
              yieldPercent: 65,
              handling: method === "extract" ? "steep" : "mash",
              colour: 1100,
              cost: two(roast * 3.5),
            } as const,
          ]
        : []),
    ],
    hops: batch.hops.map((line) => ({ ...line, mass: Math.round(line.mass * strength * hopped) })),
    yeast: { ...batch.yeast, packsInHand: packs ?? batch.yeast.packsInHand },
    happened: Array.from({ length: noted }, (_, at) => (10 * 60 + at * 14 + (at % 4) * 3) / 1440),
    wort:
      noted > 0
        ? { collected: "", reading: gravity, scale: "SG", sampleTemperature: 20, volume: two(volume - 0.3 * (index % 3)) }
        : batch.wort,
    readings: readings.map(([days, reading]) => ({
      when: brewedOn + days + 0.75,
      reading,
      scale: "SG",
      sampleTemperature: 20,
      beerTemperature: 19,
    })),
    packaging: {
      ...batch.packaging,
      into,
      packagedOn: packagedAfter === undefined ? "" : brewedOn + packagedAfter,
      bottlesFilled: bottles,
    },
    tasting: scores ? tasted(batch.tasting, scores, brewedOn + (packagedAfter ?? 0) + 16) : batch.tasting,
  };
}

function tasted(
  tasting: BatchContents["tasting"],
  [looks, smells, tastes, feels, again]: readonly number[],
  tastedOn: number,
): BatchContents["tasting"] {
  const line = (score: Filled<number> = "") => ({ score, words: "" });
  return {
    ...tasting,
    tastedOn,
    looks: line(looks),
    smells: line(smells),
    tastes: line(tastes),
    feels: line(feels),
    again: line(again),
    notes: "Invented demo data of the imaginary Quillmarsh Brew Club.",
  };
}

const crop2025 = { lot: 2025, dated: dayNumber("2025-10-15") };
const hop = {
  openedOn: dayNumber("2026-03-14"),
  storedAt: -18,
  package: "barrier",
} as const;

/** The three sheets over the batches: a season, a kit that has learned from them, and stores that brewed batches have drawn on. */
export async function addSeasonSheets(
  context: Excel.RequestContext,
  there: readonly Pick<BatchContents, "sheetName" | "happened" | "brewedOn">[] = seasonBatches(),
): Promise<void> {
  await insertSeason(context, { sheetName: "Season", units: "metric", today, allowance: 400 });
  await insertKit(context, {
    sheetName: "Kit",
    units: "metric",
    kitNames: ["Shed"],
    readings: [
      { kit: "Shed", day: dayNumber("2026-01-10"), what: "hydrometer in plain water", value: 1.001, remark: "At 20 °C" },
      { kit: "Shed", day: dayNumber("2026-02-14"), what: "left in the kettle", value: 1, remark: "Measured with a jug" },
    ],
  });
  await insertStores(context, {
    sheetName: "Stores",
    units: "metric",
    today,
    stock: {
      malt: [
        { name: "Pale malt", bought: 30, price: 2.1 },
        { name: "Wheat malt", bought: 5, price: 2.3 },
        { name: "Crystal malt, light", bought: 4, price: 3.2 },
        { name: "Roasted malt", bought: 2, price: 3.5 },
        { name: "Pale malt extract, liquid", bought: 18, price: 7.5 },
        { name: "Wheat malt extract, dry", bought: 4, price: 9.5 },
      ],
      hops: [
        { name: "Willamette", bought: 450, price: 6, ...crop2025, hop: { ...hop, alphaPercent: 5.2 } },
        {
          name: "Chinook",
          bought: 150,
          price: 4.5,
          lot: 2024,
          dated: dayNumber("2024-10-12"),
          hop: { ...hop, alphaPercent: 12.6, openedOn: dayNumber("2025-11-02") },
        },
        { name: "Chinook", bought: 350, price: 5, ...crop2025, hop: { ...hop, alphaPercent: 11.8 } },
      ],
      yeast: [{ name: "Clean ale yeast, dry, 10 g", bought: 28, price: 4.2 }],
      caps: [{ name: "Crown caps", bought: 500, price: 0.03 }],
    },
  });
  // Two are drunk up, one has bottles left.
  const season = context.workbook.worksheets.getItem("Season");
  const typed = [
    [0, ""],
    [0, "Went in one evening"],
    [0, ""],
    [11, ""],
    [20, "Keep half for the winter"],
    ["", ""],
  ];
  season.getRange(`${typedColumns.left}${plannedFirstRow}:${typedColumns.remark}${plannedFirstRow + typed.length - 1}`).values = typed;
  await context.sync();
  await learnKits(context);
  const before = await readStoresAndBatches(context);
  const brewed = there.filter(({ happened }) => happened.length > 0);
  if (before) {
    let shelves = before;
    const dated = brewed.map(({ sheetName, brewedOn: day }) => {
      const plan = planDraw(shelves, sheetName);
      shelves = afterDraw(shelves, plan, day);
      return { plan, day };
    });
    await writeDraws(context, before, dated);
  }
  const found = await readStoresAndBatches(context);
  if (found) await writeShoppingList(context, found, shoppingList(found));
  season.activate();
  await context.sync();
}

/** Keeps the figures that the season sheet shows once it is calculated: its charts are drawn from them. */
export const noteSeason = (context: Excel.RequestContext): Promise<unknown> => refreshSeason(context);
