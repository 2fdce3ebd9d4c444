import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { drawFor, giveBackOf, writeAlphas, writeList, lookAtStores, type StoresState } from "../../../src/pane/stores/stores-work";
import { learnNow, take, type KitState } from "../../../src/pane/kit/kit-work";
import { bringAlong } from "../../../src/pane/older-sheets/ask-workbook";
import { growSheet } from "../../../src/pane/grow/grow-work";
import { refreshNow, seasonState } from "../../../src/pane/season/follow-season";
import { inWorkbook, type Done } from "../../../src/pane/sheets/in-workbook";
import { plugInFront, unplug } from "../../../src/pane/unplug/unplug-work";
import { writeBatch } from "../../../src/pane/new-batch/write-batch";
import { insertBatch } from "../../../src/workbook/batch/insert-batch";
import { exampleBatch, firstExtractBatch } from "../../../src/workbook/batch/example-batch";
import { readingTableRows } from "../../../src/workbook/batch/sheet/readings";
import { readBatchSheet } from "../../../src/workbook/batch/read/batch-sheets";
import type { DayLine } from "../../../src/workbook/brewing/companion/brew-day/day-lines";
import { brewToday, markDone, takeBackDone } from "../../../src/workbook/brewing/companion/brew-day/mark-line";
import { carryOut, type Outcome } from "../../../src/workbook/brewing/companion/outcome";
import { giveOwnMark } from "../../../src/workbook/brewing/companion/own-mark";
import { packagingIn } from "../../../src/workbook/brewing/companion/packaging/packaging-form";
import { writePackaging } from "../../../src/workbook/brewing/companion/packaging/write-packaging";
import { addReading, type NewReading } from "../../../src/workbook/brewing/companion/reading/add-reading";
import { writeOriginal } from "../../../src/workbook/brewing/companion/reading/original-gravity";
import { tastingIn, writeTasting } from "../../../src/workbook/brewing/companion/tasting/tasting-form";
import { instantOf } from "../../../src/workbook/brewing/companion/wall-clock";
import { repair } from "../../../src/pane/check/repair-work";
import { readBatchFile } from "../../../src/workbook/exchange/batch-file/read-batch-file";
import { writeBatchFile } from "../../../src/workbook/exchange/batch-file/write-batch-file";
import { keepLog, writeReadings } from "../../../src/workbook/exchange/readings-file/write-readings";
import { unpluggedCopies } from "../../../src/workbook/exchange/unplug";
import { dayNumber } from "../../../src/workbook/grid/words/day-number";
import type { NamedCells } from "../../../src/workbook/grid/read/named-cells";
import { addToClub, insertClub } from "../../../src/workbook/sheets/club/add-to-club";
import { replaceOnClub, standingOnClub } from "../../../src/workbook/sheets/club/replace-on-club";
import { handOut } from "../../../src/workbook/sheets/handout/hand-out";
import { insertUnpluggedHandOut } from "../../../src/workbook/sheets/handout/unplugged-hand-out";
import { openUnpluggedHandOut } from "../../../src/workbook/sheets/handout/unplugged-workbook";
import { insertKit } from "../../../src/workbook/sheets/kit/insert-kit";
import { insertPage } from "../../../src/workbook/sheets/pages/insert-page";
import { insertSeason } from "../../../src/workbook/sheets/season/insert-season";
import { insertStores } from "../../../src/workbook/sheets/stores/insert-stores";
import { openFile } from "../../support/open-file";

/** What the pane says at the end. */
export interface Told {
  readonly done: boolean;
  readonly words: string;
}

export interface Operation {
  readonly name: string;
  /** The workbook that it begins with; the same for several operations is made once. */
  readonly from: Beginning;
  /** Looked up once, in the workbook as it begins. */
  readonly ready?: () => Promise<unknown>;
  readonly act: (ready: never) => Promise<Told>;
  /** Of the places that words about something unsure may name, one is enough. */
  readonly places: readonly string[];
  /** Excel refuses it, faults or none. */
  readonly isRefused?: true;
  /** Enters no function that was not there, or says itself which of them Excel does not know even now. */
  readonly isForAnyExcel?: true;
  /** What the bench does in its own way. */
  readonly overlooks?: RegExp;
  /** Takes a second or more each time: few of its faults are drawn, in turn. */
  readonly isDear?: true;
}

export type Beginning = keyof typeof beginnings;

type Work<T = unknown> = (context: Excel.RequestContext) => Promise<T>;

const choices = {
  id: "new",
  sheetName: "Batch 2",
  batchName: "Two",
  brewedOn: 46270,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "extract",
} as const;
const sample = firstExtractBatch();
const brewed = {
  ...sample,
  sheetName: "Batch 1",
  happened: sample.happened.slice(0, 5),
  wort: { ...sample.wort, reading: "" as const, sampleTemperature: "" as const, volume: "" as const },
  readings: sample.readings.slice(0, 2),
  tasting: { ...sample.tasting, notes: "Mine" },
};

/** Cells that stay open when the sheet is protected. */
async function protect(sheetName: string, open: string): Promise<void> {
  await Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem(sheetName);
    sheet.getRange(open).format.protection.locked = false;
    sheet.protection.protect();
    await context.sync();
  });
}

const stock = {
  malt: [{ name: "Pale malt extract, liquid", bought: 6, price: 8 }],
  hops: [
    {
      name: "Willamette",
      bought: 200,
      price: 6,
      lot: 2025,
      dated: 45935,
      hop: { alphaPercent: 8.5, openedOn: 46150, storedAt: 4, package: "sealed" } as const,
    },
  ],
};

/** A log of readings as a device writes it. */
const logged = Array.from({ length: 6 }, (_, index) => ({
  line: index + 2,
  when: 46280 + index,
  gravity: 1.03 - index * 0.003,
  temperatureC: 19,
}));

export const beginnings = {
  "an empty workbook": () =>
    Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Sheet1").getRange("A1:B1").values = [["mine", 1]];
      await context.sync();
    }),
  "a batch": () => Excel.run((context) => insertBatch(context, brewed)),
  "a full table of readings": async () => {
    const readings = Array.from({ length: readingTableRows }, (_, index) => ({
      ...sample.readings[0]!,
      when: Number(sample.readings[0]!.when) + index / 2,
    }));
    await Excel.run(async (context) => {
      await insertBatch(context, { ...brewed, readings });
      // The bench brings a sheet to the front when a row is put in.
      context.workbook.worksheets.getItem("Sheet1").delete();
      await context.sync();
    });
  },
  "a batch of 31 letters": () => Excel.run((context) => insertBatch(context, { ...brewed, sheetName: "A name of thirty-one letters 31" })),
  "a copied batch": async () => {
    await beginnings["a batch"]();
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Batch 1").copy("End").name = "Copy";
      await context.sync();
    });
  },
  stores: async () => {
    await beginnings["a batch"]();
    await Excel.run((context) => insertStores(context, { sheetName: "Stores", units: "metric", today: 46300, stock }));
  },
  "stores and a batch without costs": async () => {
    await beginnings.stores();
    await Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Batch 1");
      for (const name of ["malt_cost", "hop_cost", "yeast_cost"]) sheet.names.getItem(name).getRange().clear("Contents");
      await context.sync();
    });
  },
  "stores and a plan": async () => {
    await beginnings.stores();
    await Excel.run((context) => insertBatch(context, exampleBatch(choices)));
  },
  "stores drawn on": async () => {
    await beginnings.stores();
    await drawFor("Batch 1");
  },
  "stores, protected with open cells": async () => {
    await beginnings.stores();
    await protect("Stores", "A1:AA200");
  },
  kit: async () => {
    await beginnings["a batch"]();
    await Excel.run((context) => insertKit(context, { sheetName: "Kit", units: "metric", kitNames: ["Shed"], readings: [] }));
  },
  "kit, learned of": async () => {
    await beginnings.kit();
    await learnNow();
  },
  season: async () => {
    await Excel.run((context) => insertSeason(context, { sheetName: "Season", units: "metric", today: 46300 }));
    await beginnings["a batch"]();
  },
  "a season with a batch too many": async () => {
    await beginnings["a batch"]();
    await Excel.run((context) => insertSeason(context, { sheetName: "Season", units: "metric", today: 46300 }));
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Batch 1").delete();
      await context.sync();
    });
  },
  "season, protected with open cells": async () => {
    await beginnings.season();
    await protect("Season", "A1:BZ200");
  },
  club: () =>
    Excel.run((context) => insertClub(context, { sheetName: "Club", units: "metric", entries: [{ member: "Ann", batch: sample }] })),
  unplugged: async () => {
    await beginnings["a batch"]();
    await Excel.run(async (context) => {
      await unpluggedCopies(context, ["Batch 1"], { prices: true, standalone: false, copyName: "Unplugged" });
      context.workbook.worksheets.getItem("Sheet1").delete();
      context.workbook.worksheets.getItem("Batch 1").delete();
      await context.sync();
    });
  },
  "two older sheets": async (bench: HeadlessBench) => {
    await openFile(bench, new URL("../../samples/old/first-extract-batch-plan-2.xlsx", import.meta.url));
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Batch 1").copy("End").name = "Batch 2";
      await context.sync();
    });
  },
  "cells at #NAME?": async () => {
    await beginnings["an empty workbook"]();
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Sheet1").getRange("A3:A5").formulas = [["=GYLE.WORT.SG(10)"], [7], ["a word"]];
      await context.sync();
    });
  },
} satisfies Record<string, (bench: HeadlessBench) => Promise<unknown>>;

const toldDone = <T>(done: Done<T>): Told => (done.kind === "done" ? { done: true, words: "" } : { done: false, words: done.message });
const toldOutcome = (outcome: Outcome): Told =>
  outcome.kind === "written" ? { done: true, words: "" } : { done: false, words: outcome.message };
const toldState = (state: StoresState | KitState | ReturnType<typeof seasonState>): Told =>
  state.kind === "failed" ? { done: false, words: state.message } : { done: true, words: "" };

const inserting = (what: string, work: Work) => async (): Promise<Told> =>
  toldDone(await inWorkbook(`The ${what} was not written, and the workbook is as it was.`, work));

const read = (sheetName = "Batch 1"): Promise<NamedCells> =>
  Excel.run(async (context) => (await readBatchSheet(context, sheetName))!) as Promise<NamedCells>;

/** A change of the companion, made from the sheet as the brewer saw it. */
const changing = (
  name: string,
  change: (context: Excel.RequestContext, seen: NamedCells) => Promise<unknown>,
  from: Beginning = "a batch",
): Operation => ({
  name,
  from,
  ready: () => read(),
  act: async (seen: NamedCells) => toldOutcome(await carryOut(async (context) => void (await change(context, seen)))),
  places: ["Batch 1"],
});

const noted = (seen: NamedCells): number => Number(seen.block("happened")[4]?.[0]);

const reading: NewReading = {
  when: dayNumber("2026-09-14T18:30"),
  reading: 1.013,
  scale: "SG",
  sampleTemperature: 67,
  beerTemperature: 66,
  gravity: 1.0135,
  note: "Worked out from a refractometer.",
};
const blank = handOut(sample, { name: "For the class", brewedOn: 46300, volume: 10, units: "metric", prices: false });
const clubEntries = [{ member: "Bert", batch: { ...sample, id: "other" } }];
const replaced = [{ member: "Ann", batch: { ...sample, style: "Other" } }];

export const operations: readonly Operation[] = [
  {
    name: "new batch",
    from: "an empty workbook",
    act: async () => toldDone(await writeBatch(choices, "example")),
    places: ["Batch 2"],
  },
  {
    name: "batch file taken in",
    isDear: true,
    from: "an empty workbook",
    act: inserting("batch", (context) =>
      insertBatch(context, { ...readBatchFile(writeBatchFile(exampleBatch(choices), { prices: true })), sheetName: "Batch 2" }),
    ),
    places: ["Batch 2"],
  },
  {
    name: "hand-out on a sheet",
    isDear: true,
    from: "an empty workbook",
    act: inserting("blank", (context) => insertBatch(context, blank)),
    places: ["For the class", "Gylebook "],
  },
  {
    name: "hand-out, unplugged",
    isDear: true,
    from: "an empty workbook",
    act: inserting("blank", (context) => insertUnpluggedHandOut(context, blank)),
    places: ["For the class", "Gylebook "],
  },
  {
    name: "hand-out as a workbook",
    isDear: true,
    from: "an empty workbook",
    act: inserting("blank", (context) => openUnpluggedHandOut(context, blank, (base64) => Excel.createWorkbook(base64))),
    places: ["For the class", "Gylebook "],
  },
  {
    name: "season sheet",
    from: "a batch",
    act: inserting("season sheet", (context) => insertSeason(context, { sheetName: "Season", units: "metric", today: 46300 })),
    places: ["Season"],
  },
  {
    name: "kit sheet",
    from: "an empty workbook",
    act: inserting("kit sheet", (context) => insertKit(context, { sheetName: "Kit", units: "metric", kitNames: ["Shed"] })),
    places: ["Kit"],
  },
  {
    name: "stores sheet",
    from: "an empty workbook",
    act: inserting("stores sheet", (context) => insertStores(context, { sheetName: "Stores", units: "metric", today: 46300, stock })),
    places: ["Stores"],
  },
  {
    name: "recipe page",
    from: "a batch",
    act: inserting("page", (context) => insertPage(context, "Batch 1", "recipe")),
    places: ["Batch 1 recipe"],
  },
  {
    name: "club sheet",
    from: "an empty workbook",
    act: inserting("club sheet", (context) => insertClub(context, { sheetName: "Club", units: "metric", entries: clubEntries })),
    places: ["Club"],
  },
  {
    name: "added to a club",
    from: "club",
    act: inserting("club sheet", (context) => addToClub(context, "Club", clubEntries)),
    places: ["Club"],
  },
  {
    name: "replaced on a club",
    from: "club",
    ready: () => Excel.run((context) => standingOnClub(context, "Club", replaced)),
    act: (standing) => inserting("club sheet", (context) => replaceOnClub(context, "Club", [...replaced, ...clubEntries], standing))(),
    places: ["Club"],
  },
  {
    name: "readings from a file",
    from: "a batch",
    act: inserting("log", (context) => writeReadings(context, "Batch 1", logged, false)),
    places: ["Batch 1"],
  },
  {
    name: "log on a sheet of its own",
    from: "a batch",
    act: inserting("log", (context) => keepLog(context, "Batch 1", ["Sheet1", "Batch 1"], "metric", logged)),
    places: ["Batch 1 log"],
  },
  { name: "drawing", from: "stores", act: async () => toldState(await drawFor("Batch 1")), places: ["Stores"] },
  {
    name: "drawing, with what it cost",
    from: "stores and a batch without costs",
    act: async () => toldState(await drawFor("Batch 1")),
    places: ["Stores", "Batch 1"],
  },
  {
    name: "drawing on a protected sheet",
    from: "stores, protected with open cells",
    isRefused: true,
    act: async () => toldState(await drawFor("Batch 1")),
    places: ["Stores"],
  },
  { name: "giving back", from: "stores drawn on", act: async () => toldState(await giveBackOf("Batch 1")), places: ["Stores"] },
  { name: "shopping list", from: "stores and a plan", act: async () => toldState(await writeList()), places: ["Stores"] },
  {
    name: "alpha of the day",
    from: "stores",
    ready: async () => {
      const state = await lookAtStores();
      return state.kind === "there" ? state.batches[0]!.hops : [];
    },
    act: async (hops) => toldState(await writeAlphas("Batch 1", hops)),
    places: ["Batch 1"],
  },
  {
    name: "season brought up to date",
    from: "season",
    act: async () => {
      await refreshNow();
      return toldState(seasonState());
    },
    places: ["Season"],
  },
  {
    name: "season with a row less",
    from: "a season with a batch too many",
    act: async () => {
      await refreshNow();
      return toldState(seasonState());
    },
    places: ["Season"],
  },
  {
    name: "season on a protected sheet",
    from: "season, protected with open cells",
    isRefused: true,
    act: async () => {
      await refreshNow();
      return toldState(seasonState());
    },
    places: ["Season"],
  },
  { name: "learning a kit", from: "kit", act: async () => toldState(await learnNow()), places: ["Kit"] },
  {
    name: "taking what was learned",
    from: "kit, learned of",
    act: async () => {
      const state = await take(true, 1, "boilOff");
      // What is asked for is the choice; learning anew comes after it.
      return state.kind === "failed" && state.message.startsWith("Your choice stands") ? { done: true, words: "" } : toldState(state);
    },
    places: ["Kit"],
  },
  {
    name: "unplugged copy",
    isDear: true,
    from: "a batch",
    act: async () => {
      const told = await unplug({ sheets: "batches", prices: "without", into: "here" }, {});
      return told.kind === "done" ? { done: true, words: "" } : { done: false, words: told.message };
    },
    places: ["Batch 1 unplugged"],
  },
  {
    name: "unplugged copy of 31 letters",
    isDear: true,
    from: "a batch of 31 letters",
    act: async () => {
      const told = await unplug({ sheets: "batches", prices: "without", into: "here" }, {});
      return told.kind === "done" ? { done: true, words: "" } : { done: false, words: told.message };
    },
    places: ["A name of thirty-one"],
  },
  {
    name: "unplugged workbook",
    isDear: true,
    from: "a batch",
    act: async () => {
      const told = await unplug({ sheets: "batches", prices: "without", into: "new" }, {});
      return told.kind === "done" ? { done: true, words: "" } : { done: false, words: told.message };
    },
    places: ["Batch 1 unplugged"],
  },
  {
    name: "plugged in",
    from: "unplugged",
    act: async () => {
      const told = await plugInFront(false);
      return told.kind === "done" ? { done: true, words: "" } : { done: false, words: told.message };
    },
    places: ["Unplugged"],
  },
  {
    name: "older sheets updated",
    isDear: true,
    from: "two older sheets",
    act: async () => {
      const told = await bringAlong();
      return told.ok ? { done: true, words: "" } : { done: false, words: told.problem };
    },
    places: ["Batch 1", "Batch 2"],
  },
  {
    name: "blocks added",
    isDear: true,
    from: "a batch",
    act: async () => toldDone(await growSheet("Batch 1", ["waterTreatment", "lateHops"])),
    places: ["Batch 1"],
  },
  {
    name: "formulas repaired",
    isForAnyExcel: true,
    from: "cells at #NAME?",
    act: async () => {
      const told = await repair([
        { sheet: "Sheet1", address: "A3", formula: "=GYLE.WORT.SG(11)", was: "=GYLE.WORT.SG(10)", kind: "stuck" },
        { sheet: "Sheet1", address: "A4", formula: "=GYLE.WORT.SG(12)", was: 7, kind: "overwritten" },
        { sheet: "Sheet1", address: "A5", formula: "=GYLE.WORT.SG(13)", was: "a word", kind: "overwritten" },
      ]);
      return { done: told.isGood, words: told.words };
    },
    places: ["Sheet1"],
  },
  changing("a time of the brew day", (context, seen) =>
    markDone(context, seen, { row: 5, what: "Boil", happened: "" } as DayLine, instantOf(dayNumber("2026-09-05T11:33"))),
  ),
  changing("a time taken back", (context, seen) =>
    takeBackDone(context, seen, { row: 4, what: "Boil", happened: noted(seen) } as DayLine, noted(seen)),
  ),
  changing("brewing today", (context, seen) => brewToday(context, seen, instantOf(dayNumber("2026-09-06T09:00")))),
  changing("a reading with a note", (context, seen) => addReading(context, seen, reading)),
  {
    ...changing("a reading in a full table", (context, seen) => addReading(context, seen, reading), "a full table of readings"),
    isForAnyExcel: true,
    // Validations below a row that is put in or taken out move late, or not at all.
    overlooks: /^“Batch 1” validations/,
  },
  changing("the original gravity", (context, seen) =>
    writeOriginal(context, seen, {
      reading: 1.051,
      scale: "SG",
      sampleTemperature: 70,
      gravity: 1.052,
      volume: 5,
      note: "Worked out.",
    }),
  ),
  changing("packaging", (context, seen) =>
    writePackaging(context, seen, { ...packagingIn(seen), into: "keg", packagedOn: 46284, kegTemperature: 38 }, true),
  ),
  changing("a tasting", (context, seen) =>
    writeTasting(context, seen, {
      tastedOn: 46298,
      lines: tastingIn(seen).lines.map(() => ({ score: 2 as const, words: "=dull" })),
      note: "Again",
    }),
  ),
  {
    name: "a mark of its own",
    from: "a copied batch",
    act: async () => toldOutcome(await carryOut(async (context) => void (await giveOwnMark(context, "Copy")))),
    places: ["Copy"],
  },
];
