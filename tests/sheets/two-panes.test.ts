import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { insertBatch } from "../../src/workbook/batch/insert-batch";
import { repairFormulas } from "../../src/workbook/care/check/repair";
import { addToClub, insertClub } from "../../src/workbook/sheets/club/add-to-club";
import type { ClubEntry } from "../../src/workbook/sheets/club/club-facts";
import { replaceOnClub, standingOnClub, type Standing } from "../../src/workbook/sheets/club/replace-on-club";
import { appendNote } from "../../src/workbook/brewing/companion/append-note";
import { markDone } from "../../src/workbook/brewing/companion/brew-day/mark-line";
import { dayLines } from "../../src/workbook/brewing/companion/brew-day/day-lines";
import { corrections } from "../../src/workbook/brewing/companion/correction/corrections";
import { missedPlan } from "../../src/workbook/brewing/companion/correction/plan-and-measured";
import { writeCorrection } from "../../src/workbook/brewing/companion/correction/write-correction";
import { packagingIn } from "../../src/workbook/brewing/companion/packaging/packaging-form";
import { writePackaging } from "../../src/workbook/brewing/companion/packaging/write-packaging";
import { addReading } from "../../src/workbook/brewing/companion/reading/add-reading";
import type { NewReading } from "../../src/workbook/brewing/companion/reading/reading-line";
import { writeOriginal } from "../../src/workbook/brewing/companion/reading/original-gravity";
import { tastingIn, writeTasting } from "../../src/workbook/brewing/companion/tasting/tasting-form";
import { instantOf } from "../../src/workbook/brewing/companion/wall-clock";
import { dayNumber } from "../../src/workbook/grid/words/day-number";
import { putIntoCell } from "../../src/workbook/care/explain/put-into-cell";
import { insertKit } from "../../src/workbook/sheets/kit/insert-kit";
import { migrateSheets } from "../../src/workbook/care/migrate";
import { readBatchSheet } from "../../src/workbook/batch/read/batch-sheets";
import type { NamedCells } from "../../src/workbook/grid/read/named-cells";
import { keepLog, writeReadings } from "../../src/workbook/exchange/readings-file/write-readings";
import { insertPage } from "../../src/workbook/sheets/pages/insert-page";
import { insertSeason } from "../../src/workbook/sheets/season/insert-season";
import { refreshSeason } from "../../src/workbook/sheets/season/refresh-season";
import { takeLearned } from "../../src/workbook/sheets/kit/take-learned";
import type { LearnedKey } from "../../src/workbook/sheets/kit/kit-rows";
import { agedHops, writeAgedHops } from "../../src/workbook/sheets/stores/aged-hops";
import { shoppingList, writeShoppingList } from "../../src/workbook/sheets/stores/shopping";
import { giveBack, planDraw, readStoresAndBatches, writeDraws, type StoresAndBatches } from "../../src/workbook/sheets/stores/draw";
import { insertStores } from "../../src/workbook/sheets/stores/insert-stores";
import { plugIn, unpluggedCopies } from "../../src/workbook/exchange/unplug";
import { benchTimeout, openBatchBench } from "../support/batch-bench";
import { crossingOrders, interleaved, type Ending, type Writer } from "../support/interleaving";
import { openFile } from "../support/open-file";

/**
 * Two members, two panes, one workbook: their round trips to Excel cross each other. Whatever the order, the workbook
 * must end as if one of them had come after the other, so nothing is lost and nothing is there twice. A writer joins
 * with one line in `cases`.
 */
let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => bench.dispose());

const empty = async () =>
  bench.load({ id: `book-${crypto.randomUUID()}`, sheetOrder: ["one"], sheets: { one: { id: "one", name: "Sheet1" } } });

/** Where a case starts is made once; afterwards it is opened again as it was, with what both panes have read there. */
function once(make: () => Promise<void>): () => Promise<void> {
  let kept: { text: string; seen: NamedCells | undefined; shelves: StoresAndBatches | undefined } | undefined;
  return async () => {
    if (kept === undefined) {
      await make();
      await bench.calculate();
      const text = JSON.stringify(bench.snapshot());
      await again(text);
      kept = {
        text,
        seen: await Excel.run((context) => readBatchSheet(context, "Batch 1")),
        shelves: await Excel.run(readStoresAndBatches),
      };
    } else await again(kept.text);
    if (kept.seen) seen = kept.seen;
    shelves = kept.shelves;
  };
}
const again = (text: string) =>
  bench.load({ ...(JSON.parse(text) as ReturnType<HeadlessBench["snapshot"]>), id: `book-${crypto.randomUUID()}` });
let seen: NamedCells;
let shelves: StoresAndBatches | undefined;

const brewed = {
  ...firstExtractBatch(),
  happened: firstExtractBatch().happened.slice(0, 5),
  wort: { ...firstExtractBatch().wort, reading: "", sampleTemperature: "", volume: "" },
  readings: firstExtractBatch().readings.slice(0, 2),
  tasting: { ...firstExtractBatch().tasting, notes: "Mine" },
} as const;
const another = exampleBatch({
  id: "other1",
  sheetName: "Batch 2",
  batchName: "Two",
  brewedOn: 46270,
  volume: 5,
  units: "us",
  topUp: 0,
  method: "extract",
});
const old = once(async () => {
  await openFile(bench, new URL("../samples/old/first-extract-batch-plan-1.xlsx", import.meta.url));
});
const withSeason = once(async () => {
  await empty();
  await Excel.run((context) => insertBatch(context, { ...firstExtractBatch(), sheetName: "First", id: "first" }));
  await Excel.run((context) => insertSeason(context, { sheetName: "Season", units: "us", today: 46300 }));
});
const withBatch = once(async () => {
  await empty();
  await Excel.run((context) => insertBatch(context, brewed));
});
const withStores = once(async () => {
  await empty();
  await Excel.run((context) => insertBatch(context, { ...another, sheetName: "Batch 1", id: "one" }));
  await Excel.run((context) => insertBatch(context, another));
  await Excel.run((context) =>
    insertStores(context, {
      sheetName: "Stores",
      units: "us",
      today: 46300,
      stock: {
        malt: [{ name: "Pale malt extract, liquid", bought: 20, price: 3 }],
        hops: [
          {
            name: "Willamette",
            bought: 8,
            price: 2,
            lot: 2025,
            dated: 46000,
            hop: { alphaPercent: 6.2, openedOn: 46150, storedAt: 39, package: "sealed" },
          },
        ],
        yeast: [],
        caps: [],
      },
    }),
  );
});
/** Both batches have drawn; a hop of the first one has a date and a temperature, so its alpha can be aged. */
const withDraws = once(async () => {
  await withStores();
  const found = await Excel.run(readStoresAndBatches);
  await Excel.run((context) =>
    writeDraws(
      context,
      found!,
      ["Batch 1", "Batch 2"].map((name) => ({ plan: planDraw(found!, name), day: 46270 })),
    ),
  );
});
const withKit = once(async () => {
  await empty();
  await Excel.run((context) => insertBatch(context, { ...brewed, kitName: "Shed" }));
  await Excel.run((context) => insertKit(context, { sheetName: "Kit", units: "us", kitNames: ["Shed"] }));
});
const withWordsInTheWay = once(async () => {
  await empty();
  await Excel.run(types("Sheet1", "C3", "mine"));
});
const ofAda = firstExtractBatch();
const scored = [2, 5].map((score) => ({
  member: "Ada",
  batch: { ...ofAda, tasting: { ...ofAda.tasting, looks: { ...ofAda.tasting.looks, score } } },
}));
/** What a member was shown before she said yes to having her batch replaced. */
let shown: readonly Standing[] = [];
const withClub = once(async () => {
  await empty();
  await Excel.run((context) => insertBatch(context, brewed));
  await Excel.run((context) => insertClub(context, { sheetName: "Club", units: "us", entries: [{ member: "Ada", batch: ofAda }] }));
  // Each pane was told of its own file: both at once would be one member's batch twice.
  const told: Standing[] = [];
  for (const entry of scored) told.push(...(await Excel.run((context) => standingOnClub(context, "Club", [entry]))));
  shown = told;
});
const withLostFormulas = once(async () => {
  await empty();
  await Excel.run((context) => insertBatch(context, brewed));
  await Excel.run(types("Sheet1", "A1", "=_xldudf_GYLE_BEER_ABV(1.05,1.01)"));
});
const withFormula = once(async () => {
  await empty();
  await Excel.run(types("Sheet1", "A1", "=GYLE.BEER.ABV(1.05,1.01)"));
});
const withUnplugged = once(async () => {
  await withFormula();
  await Excel.run((context) => unpluggedCopies(context, ["Sheet1"], { prices: true, standalone: false }));
});

const reading = (when: string, gravity: number): NewReading => ({
  when: dayNumber(when),
  reading: gravity,
  scale: "SG",
  sampleTemperature: 67,
  beerTemperature: 66,
  gravity,
});
const marks =
  (line: number, at: string): Writer =>
  (context) =>
    markDone(context, seen, dayLines(seen)[line]!, instantOf(dayNumber(at)));
const reads =
  (when: string, gravity: number): Writer =>
  (context) =>
    addReading(context, seen, reading(when, gravity));
const notesDown =
  (line: string): Writer =>
  (context) =>
    appendNote(context, seen, line);
const packs: Writer = (context) =>
  writePackaging(context, seen, { ...packagingIn(seen), into: "keg", packagedOn: 46284, kegTemperature: 38 }, true);
const tastes =
  (note: string): Writer =>
  (context) =>
    writeTasting(context, seen, { tastedOn: 46298, lines: tastingIn(seen).lines.map(() => ({ score: 2 as const, words: "dull" })), note });
const measures =
  (gravity: number): Writer =>
  (context) =>
    writeOriginal(context, seen, { reading: gravity, scale: "SG", sampleTemperature: 70, gravity, volume: 5 });
const correctionNoted: Writer = (context) => {
  const missed = missedPlan(seen, "fermenter", { volume: 5, gravity: 1.06 })!;
  return writeCorrection(context, seen, missed, corrections(missed)[0]!, dayNumber("2026-09-05T14:00"));
};
const log = (from: number) =>
  Array.from({ length: 40 }, (_, index) => ({ when: from + index / 4, gravity: 1.05 - index / 1000, temperatureC: 19.5, line: index + 2 }));
const fromFile =
  (from: number): Writer =>
  (context) =>
    writeReadings(context, "Batch 1", log(from), true);
const draws =
  (sheetName: string): Writer =>
  (context) =>
    writeDraws(context, shelves!, [{ plan: planDraw(shelves!, sheetName), day: 46270 }]);
const joins =
  (member: string): Writer =>
  (context) =>
    addToClub(context, "Club", [{ member, batch: another }]);
const replaces =
  (entry: ClubEntry): Writer =>
  (context) =>
    replaceOnClub(context, "Club", [entry], shown);
const puts =
  (formula: string): Writer =>
  async (context) => {
    const { kind } = await putIntoCell(context, { sheet: "Sheet1", address: "C3" }, formula, { rows: 1, columns: 1 });
    if (kind === "occupied") throw new Error("occupied");
  };
/** Both panes were told that the cell holds "mine" and may be written over. */
const putsOver =
  (formula: string): Writer =>
  async (context) => {
    const outcome = await putIntoCell(context, { sheet: "Sheet1", address: "C3" }, formula, { rows: 1, columns: 1 }, "mine");
    if (outcome.kind === "occupied") throw new Error("occupied");
  };
const repairs: Writer = (context) =>
  repairFormulas(context, [
    { kind: "stuck", sheet: "Sheet1", address: "A1", formula: "=GYLE.BEER.ABV(1.05,1.01)", was: "=_xldudf_GYLE_BEER_ABV(1.05,1.01)" },
  ]);
const unplugs: Writer = (context) => unpluggedCopies(context, ["Sheet1"], { prices: true, standalone: false });
const plugs: Writer = (context) => plugIn(context, "Sheet1 unplugged", { leaveChanged: false });

const givesBack =
  (id: string): Writer =>
  (context) =>
    giveBack(context, shelves!, id);
const listsShopping: Writer = (context) => writeShoppingList(context, shelves!, shoppingList(shelves!));
const takesAlphas: Writer = (context) => writeAgedHops(context, "Batch 1", agedHops(shelves!.stores, shelves!.batches[0]!));
const learns =
  (key: LearnedKey): Writer =>
  (context) =>
    takeLearned(context, true, 1, key);

const inserts =
  (sheetName: string): Writer =>
  (context) =>
    insertBatch(context, { ...firstExtractBatch(), sheetName, id: sheetName.toLowerCase() });
const migrates: Writer = (context) => migrateSheets(context);
const refreshes: Writer = refreshSeason;
const types =
  (sheetName: string, cell: string, value: string): Writer =>
  async (context) => {
    context.workbook.worksheets.getItem(sheetName).getRange(cell).values = [[value]];
    await context.sync();
  };

/** The brewer swaps the hop that the other pane is about to age. */
const changesHop: Writer = (context) => {
  const [aged] = agedHops(shelves!.stores, shelves!.batches[0]!);
  return types("Batch 1", aged!.line.range.split(":")[0]!, "Challenger")(context);
};

interface Case {
  readonly what: string;
  readonly open: () => Promise<void>;
  readonly writers: readonly [Writer, Writer];
  /** Round trips that each makes at most when nobody is in its way. */
  readonly trips: readonly [number, number];
  /** The second may also refuse in these words, with the workbook as the first left it: looking again would have told it. */
  readonly refuses?: RegExp;
  /** The second may find the work begun, and do all of it again: then both are done, and the workbook is the same. */
  readonly doneAgain?: true;
  /** Both do the same: an order and its mirror image tell the same. */
  readonly alike?: true;
}

const cases: readonly Case[] = [
  { what: "two batches are inserted", open: empty, writers: [inserts("One"), inserts("Two")], trips: [2, 2], alike: true },
  { what: "two batches of one name are inserted", open: empty, writers: [inserts("One"), inserts("ONE")], trips: [2, 2], alike: true },
  { what: "both bring the old sheets along", open: old, writers: [migrates, migrates], trips: [3, 3], alike: true },
  { what: "old sheets are updated while a batch is inserted", open: old, writers: [migrates, inserts("Two")], trips: [3, 2] },
  {
    what: "old sheets are updated while somebody types",
    open: old,
    writers: [migrates, types("Batch 1", "B5", "Another name")],
    trips: [3, 1],
  },
  {
    what: "both press done beside one step",
    open: withBatch,
    writers: [marks(5, "2026-09-05T11:33"), marks(5, "2026-09-05T11:34")],
    trips: [2, 2],
    alike: true,
  },
  {
    what: "each presses done beside another step",
    open: withBatch,
    writers: [marks(5, "2026-09-05T11:33"), marks(6, "2026-09-05T11:40")],
    trips: [2, 2],
    alike: true,
  },
  {
    what: "both add a reading",
    open: withBatch,
    writers: [reads("2026-09-14T18:30", 1.013), reads("2026-09-14T19:00", 1.014)],
    trips: [2, 2],
    alike: true,
  },
  {
    what: "one adds a reading while the other presses done",
    open: withBatch,
    writers: [reads("2026-09-14T18:30", 1.013), marks(5, "2026-09-05T11:33")],
    trips: [2, 2],
  },
  { what: "both add a line to the notes", open: withBatch, writers: [notesDown("mine"), notesDown("theirs")], trips: [2, 2], alike: true },
  { what: "one packages while the other tastes", open: withBatch, writers: [packs, tastes("malty")], trips: [2, 2] },
  { what: "both taste", open: withBatch, writers: [tastes("malty"), tastes("dry")], trips: [2, 2], alike: true },
  { what: "both measure the original gravity", open: withBatch, writers: [measures(1.051), measures(1.053)], trips: [2, 2], alike: true },
  {
    what: "a correction is noted while somebody writes a note",
    open: withBatch,
    writers: [correctionNoted, notesDown("theirs")],
    trips: [3, 2],
  },
  { what: "both take readings from one file", open: withBatch, writers: [fromFile(46285), fromFile(46285)], trips: [3, 3], alike: true },
  {
    what: "readings come from a file while one is added by hand",
    open: withBatch,
    writers: [fromFile(46285), reads("2026-09-14T18:30", 1.013)],
    trips: [3, 2],
  },
  {
    what: "both keep a log on a sheet of its own",
    open: withBatch,
    writers: [1, 2].map((): Writer => (context) => keepLog(context, "Batch 1", ["Sheet1", "Batch 1"], "us", log(46285))) as [
      Writer,
      Writer,
    ],
    trips: [2, 2],
    alike: true,
  },
  {
    what: "both write the recipe page",
    open: withBatch,
    writers: [(context) => insertPage(context, "Batch 1", "recipe"), (context) => insertPage(context, "Batch 1", "recipe")],
    trips: [5, 5],
    alike: true,
    refuses: /^There is a sheet "Batch 1 recipe" already/,
  },
  {
    what: "both make the season sheet",
    open: withBatch,
    writers: [1, 2].map((): Writer => (context) => insertSeason(context, { sheetName: "Season", units: "us", today: 46300 })) as [
      Writer,
      Writer,
    ],
    trips: [4, 4],
    alike: true,
    refuses: /^There is a sheet "Season" already/,
  },
  {
    what: "both make the kit sheet",
    open: withBatch,
    writers: [1, 2].map((): Writer => (context) => insertKit(context, { sheetName: "Kit", units: "us", kitNames: ["Shed"] })) as [
      Writer,
      Writer,
    ],
    trips: [4, 4],
    alike: true,
    refuses: /^There is a sheet "Kit" already/,
  },
  { what: "two batches draw on the stores", open: withStores, writers: [draws("Batch 1"), draws("Batch 2")], trips: [1, 1], alike: true },
  {
    what: "one batch draws on the stores in both panes",
    open: withStores,
    writers: [draws("Batch 1"), draws("Batch 1")],
    trips: [1, 1],
    alike: true,
  },
  {
    what: "two batches give back what they drew",
    open: withDraws,
    writers: [givesBack("one"), givesBack("other1")],
    trips: [1, 1],
    alike: true,
  },
  {
    what: "one batch gives back in both panes",
    open: withDraws,
    writers: [givesBack("one"), givesBack("one")],
    trips: [1, 1],
    alike: true,
  },
  { what: "both write the shopping list", open: withStores, writers: [listsShopping, listsShopping], trips: [1, 1], alike: true },
  { what: "both take the alpha of the brewing day", open: withStores, writers: [takesAlphas, takesAlphas], trips: [2, 2], alike: true },
  {
    what: "the alpha of the brewing day is taken while somebody changes the hop",
    open: withStores,
    writers: [takesAlphas, changesHop],
    trips: [2, 1],
  },
  {
    what: "both take a figure that was learned",
    open: withKit,
    writers: [learns("boilOff"), learns("kettleLoss")],
    trips: [3, 3],
    alike: true,
  },
  { what: "two members' batches join the club sheet", open: withClub, writers: [joins("Ben"), joins("Cleo")], trips: [3, 3], alike: true },
  {
    what: "one member's batch joins the club sheet twice",
    open: withClub,
    writers: [joins("Ben"), joins("Ben")],
    trips: [3, 3],
    alike: true,
  },
  {
    what: "both replace one member's batch on the club sheet",
    open: withClub,
    writers: [replaces(scored[0]!), replaces(scored[1]!)],
    trips: [3, 3],
    alike: true,
  },
  {
    what: "a batch is replaced on the club sheet while another joins",
    open: withClub,
    writers: [replaces(scored[0]!), joins("Ben")],
    trips: [3, 3],
  },
  {
    what: "a batch is replaced on the club sheet while somebody types into its row",
    open: withClub,
    writers: [replaces(scored[0]!), types("Club", "P4", "A name by hand")],
    trips: [3, 1],
  },
  { what: "both put a formula into one cell", open: withBatch, writers: [puts("=1+1"), puts("=2+2")], trips: [3, 3], alike: true },
  {
    what: "both put a formula over words that they gave up",
    open: withWordsInTheWay,
    writers: [putsOver("=1+1"), putsOver("=2+2")],
    trips: [3, 3],
    alike: true,
  },
  {
    what: "a formula is put over words that somebody changes",
    open: withWordsInTheWay,
    writers: [putsOver("=1+1"), types("Sheet1", "C3", "theirs")],
    trips: [3, 1],
  },
  {
    what: "a formula is repaired while somebody types over it",
    open: withLostFormulas,
    writers: [repairs, types("Sheet1", "A1", "theirs")],
    trips: [4, 1],
  },
  { what: "both repair a formula", open: withLostFormulas, writers: [repairs, repairs], trips: [4, 4], alike: true },
  { what: "both unplug a sheet", open: withFormula, writers: [unplugs, unplugs], trips: [4, 4], alike: true },
  { what: "both plug a sheet in", open: withUnplugged, writers: [plugs, plugs], trips: [3, 3], alike: true, doneAgain: true },
  { what: "both refresh the season sheet", open: withSeason, writers: [refreshes, refreshes], trips: [4, 4], alike: true },
];

/** Sheets, cells, names and tables, without what chance or order of arrival decides: ids, positions, numbers of tables. */
function state(): string {
  const { sheets, resources } = bench.snapshot();
  const tables = JSON.parse(resources?.find(({ name }) => name === "SHEET_TABLE_PLUGIN")?.data || "{}") as Record<
    string,
    { tables: { name: string }[] }
  >;
  const names = Object.values(
    JSON.parse(resources?.find(({ name }) => name === "SHEET_DEFINED_NAME_PLUGIN")?.data || "{}") as Record<
      string,
      { name: string; formulaOrRefString: string }
    >,
  );
  const text =
    JSON.stringify(
      Object.values(sheets)
        .map(({ id, name, cellData }) => ({
          name,
          tables: (tables[id ?? ""]?.tables ?? []).map((table) => table.name).sort(),
          cells: contents(cellData as Cells),
        }))
        .sort((a, b) => (a.name! < b.name! ? -1 : 1)),
    ) + JSON.stringify(names.map(({ name, formulaOrRefString }) => `${name} ${formulaOrRefString}`).sort());
  return text.replaceAll(/((?:Malt|Hops|Readings|[A-Z][A-Za-z]+)_)\d+\b/gu, "$1n").replaceAll(/: [a-z0-9]{12}"/gu, ': mark"');
}

type Cells = Record<string, Record<string, { f?: string | null; v?: unknown; s?: unknown } | null>> | undefined;
const contents = (cells: Cells) =>
  Object.entries(cells ?? {}).flatMap(([row, columns]) =>
    Object.entries(columns).flatMap(([column, cell]) =>
      cell?.f || (cell?.v ?? "") !== "" ? [`${row},${column}: ${String(cell?.f ?? cell?.v)}`] : [],
    ),
  );

/** The first words are enough: what a cell holds now is told by whoever has seen it. */
const words = (endings: readonly Ending[]) =>
  endings.map((ending) => (ending.ended === "done" ? "done" : ending.problem.message.replace(/[:.].*$/su, "")));

describe.each(cases)("$what", ({ open, writers, trips, alike, refuses, doneAgain }) => {
  it(
    "ends as one after the other, whatever comes between",
    async () => {
      const allOf = (who: 0 | 1) => Array.from({ length: 20 }, () => who);
      const results = new Map<string, string[]>();
      const states = new Set<string>();
      const alone = new Set<string>();
      if (refuses) {
        await open();
        await interleaved([writers[0], () => Promise.resolve()], []);
        alone.add(state());
      }
      for (const first of [0, 1] as const) {
        await open();
        const endings = await interleaved(writers, [...allOf(first), ...allOf(first === 0 ? 1 : 0)]);
        results.set(`${JSON.stringify(words(endings))}${state()}`, words(endings));
        states.add(state());
      }
      for (const order of crossingOrders(...trips).filter(([first]) => !alike || first === 0)) {
        await open();
        const endings = await interleaved(writers, order);
        const found = `${JSON.stringify(words(endings))}${state()}`;
        const [problem] = endings.flatMap((ending) => (ending.ended === "refused" ? [ending.problem.message] : []));
        if (refuses && problem !== undefined && refuses.test(problem) && words(endings).includes("done") && alone.has(state())) continue;
        if (doneAgain && problem === undefined && states.has(state())) continue;
        if (!results.has(found)) expect(found, `order ${order.join("")}`).toEqual([...results.keys()][0]);
      }
      expect([...results.values()].some((endings) => endings.includes("done"))).toBe(true);
    },
    benchTimeout * 4,
  );
});
