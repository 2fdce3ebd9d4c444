import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { checkWorkbook } from "../../src/workbook/care/check/check-workbook";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { batchToShare, placeFor } from "../../src/workbook/sheets/batch-to-share";
import { readBatchFile } from "../../src/workbook/exchange/batch-file/read-batch-file";
import { writeBatchFile } from "../../src/workbook/exchange/batch-file/write-batch-file";
import { batchDates, datedBatch } from "../../src/workbook/brewing/calendar/batch-dates";
import { addToClub, insertClub } from "../../src/workbook/sheets/club/add-to-club";
import { batchInFront } from "../../src/workbook/brewing/companion/batch-in-front";
import { fermentationLog } from "../../src/workbook/brewing/fermentation/fermentation-log";
import { handOut } from "../../src/workbook/sheets/handout/hand-out";
import { insertKit } from "../../src/workbook/sheets/kit/insert-kit";
import { learnKits } from "../../src/workbook/sheets/kit/learn-kits";
import { position } from "../../src/workbook/grid/plan/addresses";
import { batchToRead } from "../../src/workbook/batch/read/batch-sheets";
import { batchesInWorkbook, type BatchInWorkbook } from "../../src/workbook/sheets/batches-in-workbook";
import { passedOver } from "../../src/workbook/batch/read/unplugged-batches";
import { keepLog, writeReadings } from "../../src/workbook/exchange/readings-file/write-readings";
import { insertPage } from "../../src/workbook/sheets/pages/insert-page";
import { scaledCopy } from "../../src/workbook/batch/scale/scaled-copy";
import { insertSeason } from "../../src/workbook/sheets/season/insert-season";
import { refreshSeason } from "../../src/workbook/sheets/season/refresh-season";
import { planDraw, readStoresAndBatches } from "../../src/workbook/sheets/stores/draw";
import { insertStores } from "../../src/workbook/sheets/stores/insert-stores";
import { shoppingList } from "../../src/workbook/sheets/stores/shopping";
import { plugIn, unpluggedCopies } from "../../src/workbook/exchange/unplug";
import { benchTimeout, insertOn, openBatchBench } from "../support/batch-bench";
import { batchUnderWay, cellsOn, differentValues } from "../support/unplug-bench";

/*
 * Two batches: “Mine” stands beside its unplugged copy, “Theirs” is there unplugged only, as in a file from a member. Each
 * reader is tried on both: what only reads a batch gets from the copy what it got from the original; what counts batches or
 * writes to them passes the copy over, and says so. The tests go on one after the other.
 */
const steps: BatchContents["steps"] = [
  {
    what: '="Heat to "&TEXT(GYLE.WATER.STRIKE(mash_thickness,3,20,67),"0")&" °C"',
    part: "before",
    minutes: "=GYLE.HEAT.WARM(20,15,68,3)",
    caution: "It scalds.",
    why: "",
  },
  { what: '="A blank: "&GYLE.BEER.ABV("",1.01)', part: "before", minutes: '=GYLE.BEER.ABV("",1.01)', caution: "", why: "" },
  { what: '="A colour: "&GYLE.BEER.HEX(8)', part: "boil", minutes: 10, caution: "", why: "It has no plain form." },
  { what: "Pour", part: "after", minutes: 5, caution: "", why: "Gently" },
];
const underWay = batchUnderWay("us", "all-grain", "bottles");
const mine: BatchContents = {
  ...underWay,
  id: "mine",
  sheetName: "Mine",
  batchName: "Mine",
  steps,
  kitName: "Shed",
  happened: [0.4, 0.41],
  readings: underWay.readings.slice(0, 3),
  packaging: { ...underWay.packaging, packagedOn: "" },
  tasting: { ...underWay.tasting, notes: "- drier next time" },
};
const theirs = exampleBatch({
  id: "theirs",
  sheetName: "Theirs",
  batchName: "Theirs",
  brewedOn: 46280,
  volume: 19,
  units: "metric",
  topUp: 0,
  method: "extract",
});
const [mineCopy, theirsCopy] = ["Mine unplugged", "Theirs unplugged"];

let bench: HeadlessBench;
let whenPlugged: ReadonlyMap<string, BatchInWorkbook>;
const run = <T>(work: (context: Excel.RequestContext) => Promise<T>): Promise<T> => Excel.run(work);
const readAll = async () => new Map((await run(batchesInWorkbook)).batches.map((batch) => [batch.sheetName, batch]));
const activate = (sheetName: string) =>
  run(async (context) => {
    context.workbook.worksheets.getItem(sheetName).activate();
    await context.sync();
  });
const remove = (sheetName: string) =>
  run(async (context) => {
    context.workbook.worksheets.getItem(sheetName).delete();
    await context.sync();
  });
/** The original as it was read, and its unplugged copy as it is read now. */
async function pairs(): Promise<readonly (readonly [BatchInWorkbook, BatchInWorkbook])[]> {
  const now = await readAll();
  return [
    [whenPlugged.get("Mine")!, now.get(mineCopy)!],
    [whenPlugged.get("Theirs")!, now.get(theirsCopy)!],
  ];
}
const renamed = (contents: BatchContents, { sheetName }: Pick<BatchContents, "sheetName">): BatchContents => ({ ...contents, sheetName });

beforeAll(async () => {
  bench = await openBatchBench();
  for (const batch of [mine, theirs]) await insertOn(bench, batch);
  await run((context) => insertSeason(context, { sheetName: "Season", units: "metric", today: 46310 }));
  await run((context) => insertKit(context, { sheetName: "Kit", units: "metric", kitNames: ["Shed"] }));
  await run((context) => insertStores(context, { sheetName: "Stores", units: "metric", today: 46310, stock: { malt: [] } }));
  await bench.calculate();
  whenPlugged = await readAll();
  await run((context) => unpluggedCopies(context, ["Mine", "Theirs"], { prices: true, standalone: false }));
  await remove("Theirs");
  await bench.calculate();
}, benchTimeout);
afterAll(() => {
  bench.dispose();
});

describe("what only reads a batch takes an unplugged one as if it were plugged in", () => {
  it(
    "its contents, with the GYLE formulas that its notes keep",
    async () => {
      expect([...(await readAll()).keys()]).toEqual(["Mine", mineCopy, theirsCopy]);
      for (const [plugged, unplugged] of await pairs()) expect(renamed(unplugged.contents, plugged.contents)).toEqual(plugged.contents);
      expect((await readAll()).get(mineCopy)?.contents.steps).toEqual(steps);
    },
    benchTimeout,
  );

  it(
    "a batch file",
    async () => {
      for (const [plugged, unplugged] of await pairs()) {
        const [was, is] = [plugged, unplugged].map((batch) => readBatchFile(writeBatchFile(batchToShare(batch), { prices: true })));
        expect(renamed(is!, was!)).toEqual(was);
      }
      expect(placeFor(theirs, await run(batchesInWorkbook))).toEqual({ sheetName: "Theirs", hereAlready: theirsCopy });
    },
    benchTimeout,
  );

  it(
    "a scaled copy and a hand-out, to the cell",
    async () => {
      for (const [index, [plugged, unplugged]] of (await pairs()).entries()) {
        for (const make of [
          (batch: BatchContents, name: string) => ({
            ...scaledCopy(batch, { name, brewedOn: 46400, volume: 12, units: "metric" }),
            batchName: "The same",
          }),
          (batch: BatchContents, name: string) => ({
            ...handOut(batch, { name, brewedOn: 46400, volume: 3, units: "us", prices: false }),
            batchName: "The same",
          }),
        ]) {
          const made = [plugged, unplugged].map(({ contents }, side) => ({ ...make(contents, `Made ${index} ${side}`), id: "made" }));
          for (const batch of made) await insertOn(bench, batch);
          const [was, is] = await Promise.all(made.map(({ sheetName }) => cellsOn(sheetName)));
          const tables = (cells: ReadonlyMap<string, unknown>) =>
            [...cells].map(([cell, content]) => [cell, String(content).replace(/\b([A-Z][a-z]+)_\d+\b/g, "$1_n")]);
          expect(tables(is!.formulas)).toEqual(tables(was!.formulas));
          expect(differentValues(was!.values, is!.values)).toEqual([]);
          for (const { sheetName } of made) await remove(sheetName);
        }
      }
    },
    benchTimeout,
  );

  it(
    "a recipe page, which shows the same and follows the copy",
    async () => {
      const page = async (sheetName: string) => {
        const name = await run((context) => insertPage(context, sheetName, "recipe"));
        await bench.calculate();
        return { name, cells: await cellsOn(name) };
      };
      const [was, is] = [await page("Mine"), await page(mineCopy)];
      expect(was.cells.values.size).toBeGreaterThan(100);
      expect(differentValues(was.cells.values, is.cells.values)).toEqual([]);
      expect([...is.cells.formulas.values()].filter((formula) => String(formula).includes("'Mine unplugged'!")).length).toBeGreaterThan(
        100,
      );
      expect([...is.cells.values.values()].filter((value) => /^#[A-Z/]+[!?A]$/.test(String(value)))).toEqual([]);
      for (const { name } of [was, is]) await remove(name);
    },
    benchTimeout,
  );

  it(
    "a row of the club sheet",
    async () => {
      const all = await pairs();
      await run((context) =>
        insertClub(context, {
          sheetName: "Club",
          units: "metric",
          entries: all.map(([plugged], index) => ({ member: `M${index}`, batch: { ...plugged.contents, id: `m${index}` } })),
        }),
      );
      await run((context) =>
        addToClub(
          context,
          "Club",
          all.map(([, unplugged], index) => ({ member: `M${index}`, batch: { ...unplugged.contents, id: `u${index}` } })),
        ),
      );
      await bench.calculate();
      // C and E are “Theirs”; B and D “Mine”, where B also holds the hints beside the headings.
      const column = (letter: string) => Array.from({ length: 40 }, (_, index) => bench.valueAt("Club", `${letter}${index + 1}`) ?? "");
      const of = (letter: string) =>
        column(letter).filter((_, index) => !/^\d|^$/.test(String(bench.valueAt("Club", `A${index + 1}`) ?? "")));
      expect(of("B").filter((value) => value !== "").length).toBeGreaterThan(12);
      expect(of("D")).toEqual(of("B"));
      expect(of("E")).toEqual(of("C"));
      await remove("Club");
    },
    benchTimeout,
  );

  it(
    "the fermentation and the coming dates, these without a forecast that stands still",
    async () => {
      const inFront = async (sheetName: string) => {
        await activate(sheetName);
        return (await run(batchToRead))!;
      };
      const [was, is] = [await inFront("Mine"), await inFront(mineCopy)];
      // Plain formulas agree with GYLE’s to 1e-6.
      const short = (content: unknown): unknown =>
        JSON.parse(JSON.stringify(content, (_, value: unknown) => (typeof value === "number" ? Number(value.toFixed(6)) : value)));
      expect(short({ ...fermentationLog(is), sheetName: "Mine" })).toEqual(short(fermentationLog(was)));
      expect(fermentationLog(is).gravities).toHaveLength(4);
      expect(datedBatch(was).forecastEnd).toBeGreaterThan(46270);
      expect(datedBatch(is)).toEqual({ ...datedBatch(was), forecastEnd: undefined });
      expect(batchDates(datedBatch(is)).map(({ kind }) => kind)).toEqual([
        "brew",
        "first-reading",
        "second-reading",
        "packaging",
        "first-taste",
      ]);
      await activate("Season");
      expect(await run(batchToRead)).toBeUndefined();
    },
    benchTimeout,
  );

  it(
    "readings of a device kept on a sheet of their own",
    async () => {
      const rows = [
        { when: 46291, gravity: 1.02, temperatureC: 19, line: 2 },
        { when: 46292, gravity: 1.015, temperatureC: 19, line: 3 },
      ];
      const names = (await run(batchesInWorkbook)).sheetNames;
      const [mineLog, theirsLog] = [
        await run((context) => keepLog(context, "Mine", names, "us", rows)),
        await run((context) => keepLog(context, mineCopy, names, "us", rows)),
      ];
      await bench.calculate();
      const [was, is] = [await cellsOn(mineLog), await cellsOn(theirsLog)];
      expect(was.values.size).toBeGreaterThan(15);
      expect(differentValues(was.values, is.values)).toEqual([]);
      for (const name of [mineLog, theirsLog]) await remove(name);
    },
    benchTimeout,
  );
});

const beside = "“Mine unplugged” is an unplugged copy of “Mine” and is skipped.";
const alone = (to: string) => `“Theirs unplugged” is unplugged; plug it back in to ${to} (Share, Unplug).`;
const both = [
  { sheetName: mineCopy, original: "Mine" },
  { sheetName: theirsCopy, original: undefined },
];

describe("what counts batches or writes to them passes an unplugged one over, and says so", () => {
  it("in these words", () => {
    expect(both.map((one) => passedOver(one, "learn from it"))).toEqual([beside, alone("learn from it")]);
  });

  it(
    "the season",
    async () => {
      const report = await run(refreshSeason);
      expect(report).toMatchObject({ batches: 1, added: [], dropped: ["Theirs"], copies: [], unplugged: both });
      await bench.calculate();
      expect([bench.valueAt("Season", "X41"), bench.valueAt("Season", "X42") ?? ""]).toEqual(["Mine", ""]);
    },
    benchTimeout,
  );

  it(
    "the kit",
    async () => {
      expect(await run(learnKits)).toMatchObject({ kits: [{ batches: 1 }], unknown: [], copies: [], unplugged: both });
    },
    benchTimeout,
  );

  it(
    "the stores",
    async () => {
      const found = (await run(readStoresAndBatches))!;
      expect(found.unplugged).toEqual(both);
      expect(() => planDraw(found, mineCopy)).toThrow(`${beside} Nothing was taken.`);
      expect(() => planDraw(found, theirsCopy)).toThrow(`${alone("draw for it on the stores")} Nothing was taken.`);
      // “Theirs” is planned, so plugged in it would want malt; “Mine” is brewed.
      expect(shoppingList(found)).toEqual([]);
    },
    benchTimeout,
  );

  it(
    "the companion, which goes on with no other batch instead",
    async () => {
      await activate(theirsCopy);
      expect(await run((context) => batchInFront(context, "Mine"))).toEqual({ kind: "unplugged", sheetName: theirsCopy });
      await activate("Season");
      expect(await run((context) => batchInFront(context, "Mine"))).toMatchObject({ kind: "batch", sheet: { sheetName: "Mine" } });
      expect(await run((context) => batchInFront(context, theirsCopy))).toEqual({ kind: "none" });
      expect(await run((context) => batchInFront(context))).toEqual({ kind: "none" });
    },
    benchTimeout,
  );

  it(
    "readings from a file, into its table",
    async () => {
      const before = await cellsOn(theirsCopy);
      const rows = [{ when: 46291, gravity: 1.02, temperatureC: 19, line: 2 }];
      await expect(run((context) => writeReadings(context, theirsCopy, rows, true))).rejects.toThrow(
        `${alone("write readings into its table")} Nothing was written.`,
      );
      expect(await cellsOn(theirsCopy)).toEqual(before);
    },
    benchTimeout,
  );
});

describe("what somebody has done to an unplugged sheet", () => {
  const stepsOn = async () => (await readAll()).get(mineCopy)?.contents.steps;

  it(
    "counts: a step that was typed over is read as it is now",
    async () => {
      const at = position((await readAll()).get(mineCopy)!.cells.range("steps").split(":")[0]!);
      await run(async (context) => {
        context.workbook.worksheets.getItem(mineCopy).getCell(at.row - 1, at.column - 1).values = [["Heat it"]];
        await context.sync();
      });
      await bench.calculate();
      expect(await stepsOn()).toEqual([{ ...steps[0], what: "Heat it" }, ...steps.slice(1)]);
    },
    benchTimeout,
  );

  it(
    "counts: where rows have moved the kept formulas might speak of other cells, so the plain ones are read, and travel as words",
    async () => {
      await run(async (context) => {
        context.workbook.worksheets.getItem(mineCopy).getRange("3:3").insert("Down");
        await context.sync();
      });
      await bench.calculate();
      expect((await stepsOn())?.[2]?.what).toMatch(/^="A colour: "&IF\(/);
      const shared = batchToShare((await readAll()).get(mineCopy)!).steps!;
      expect(shared[2]?.what).toMatch(/^A colour: #[0-9A-F]{6}$/);
      expect(JSON.stringify(shared)).not.toContain("GYLE.");
      expect(JSON.stringify(shared)).not.toContain("NA()");
      await run(async (context) => {
        context.workbook.worksheets.getItem(mineCopy).getRange("3:3").delete("Up");
        await context.sync();
      });
      await bench.calculate();
      expect((await stepsOn())?.[2]).toEqual(steps[2]);
    },
    benchTimeout,
  );
});

it(
  "is named by the check, which can say less of it than of a batch",
  async () => {
    const { unplugged, sheets } = await run((context) => checkWorkbook(context, {}, 46400));
    expect(unplugged).toEqual(both.map(({ sheetName }) => sheetName));
    expect(sheets.filter(({ sheet, isBatch }) => unplugged.includes(sheet) && isBatch)).toEqual([]);
  },
  benchTimeout,
);

it(
  "plugged back in it is a batch like any other",
  async () => {
    await run((context) => plugIn(context, theirsCopy, { leaveChanged: false }));
    await bench.calculate();
    const [left] = both;
    expect(await run(refreshSeason)).toMatchObject({ batches: 2, added: [theirsCopy], unplugged: [left] });
    const found = (await run(readStoresAndBatches))!;
    expect(found.unplugged).toEqual([left]);
    expect(planDraw(found, theirsCopy).shortages.length).toBeGreaterThan(2);
    expect(shoppingList(found).length).toBeGreaterThan(2);
    await activate(theirsCopy);
    expect(await run((context) => batchInFront(context))).toMatchObject({ kind: "batch" });
  },
  benchTimeout,
);
