import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { drawFor } from "../../../src/pane/stores/stores-work";
import { refreshNow } from "../../../src/pane/season/follow-season";
import { learnNow } from "../../../src/pane/kit/kit-work";
import { insertBatch } from "../../../src/workbook/batch/insert-batch";
import { exampleBatch, firstExtractBatch } from "../../../src/workbook/batch/example-batch";
import { readingTableRows } from "../../../src/workbook/batch/sheet/readings";
import { unpluggedCopies } from "../../../src/workbook/exchange/unplug";
import { insertClub } from "../../../src/workbook/sheets/club/add-to-club";
import { beersOfClub, insertTasting } from "../../../src/workbook/sheets/club/blind-tasting";
import { clubSheet } from "../../../src/workbook/sheets/club/club-sheet";
import { insertKit } from "../../../src/workbook/sheets/kit/insert-kit";
import { insertSeason } from "../../../src/workbook/sheets/season/insert-season";
import { insertStores } from "../../../src/workbook/sheets/stores/insert-stores";
import { openFile } from "../../support/open-file";

/** The workbooks that the operations begin with, each made once. */
export type Beginning = keyof typeof beginnings;

export const choices = {
  id: "new",
  sheetName: "Batch 2",
  batchName: "Two",
  brewedOn: 46270,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "extract",
} as const;
export const sample = firstExtractBatch();
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

export const stock = {
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
export const logged = Array.from({ length: 6 }, (_, index) => ({
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
  "season, up to date": async () => {
    await beginnings.season();
    await refreshNow();
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
  "club of two": () =>
    Excel.run((context) =>
      insertClub(context, {
        sheetName: "Club",
        units: "metric",
        entries: ["Ann", "Bert"].map((member) => ({ member, batch: { ...sample, id: member } })),
      }),
    ),
  "a tasting": async () => {
    await beginnings["club of two"]();
    await Excel.run(async (context) => {
      const club = await clubSheet(context, "Club");
      await insertTasting(context, { sheetName: "Tasting", club, beers: beersOfClub(club), tasters: ["Ann", "Bert"] }, () => 0);
    });
  },
  unplugged: async () => {
    await beginnings["a batch"]();
    await Excel.run(async (context) => {
      await unpluggedCopies(context, ["Batch 1"], { prices: true, standalone: false, copyName: "Unplugged" });
      context.workbook.worksheets.getItem("Sheet1").delete();
      context.workbook.worksheets.getItem("Batch 1").delete();
      await context.sync();
    });
  },
  "older season and stores": async (bench: HeadlessBench) => {
    await openFile(bench, new URL("../../samples/old/season-plan-2.xlsx", import.meta.url));
    // One batch of each kind is enough, and quicker.
    await Excel.run(async (context) => {
      const sheets = context.workbook.worksheets.load("items/name");
      await context.sync();
      const others = sheets.items.filter(({ name }) => !["Season", "Stores"].includes(name));
      for (const sheet of others.slice(2)) sheet.delete();
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
