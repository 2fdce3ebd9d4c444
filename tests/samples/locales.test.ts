import { beforeAll, describe, expect, it } from "vitest";
import { openWorkbook, saveWorkbook, valuesOnlyCopy } from "../../src/excel-stand-in/xlsx";
import { makeWorkbook } from "../../src/build/make-sample";
import { addSeasonSheets, seasonBatches } from "../../src/build/sample-season";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { handOut } from "../../src/workbook/sheets/handout/hand-out";
import { insertUnpluggedHandOut } from "../../src/workbook/sheets/handout/unplugged-hand-out";
import { openUnpluggedHandOut } from "../../src/workbook/sheets/handout/unplugged-workbook";
import { keepLog } from "../../src/workbook/exchange/readings-file/write-readings";
import { unpluggedCopies } from "../../src/workbook/exchange/unplug";
import { insertClub } from "../../src/workbook/sheets/club/add-to-club";
import { beersOfClub, insertScoreSheets, insertTasting } from "../../src/workbook/sheets/club/blind-tasting";
import { clubSheet } from "../../src/workbook/sheets/club/club-sheet";
import { insertPage, pageKinds } from "../../src/workbook/sheets/pages/insert-page";
import { filledBlocks } from "../support/filled-blocks";
import { loadHeadlessBench } from "../support/headless-bench";
import { shownInLocale, soffice } from "../support/libre-office";

/** Where the comma is the decimal sign; in France a narrow space parts the thousands, in Germany a point. */
const elsewhere = ["de-DE", "fr-FR"] as const;
const patience = 900_000;

/** In both methods, both units, with all blocks. */
const unplugged = ["Example", "In gallons", "Blocks metric", "US extract"];

/** Slips of the hand that the sheet tells by a limit between two whole numbers, and what it says of them. */
const slips = ["A reading is no specific gravity.", "A reading of about 1 °P looks like specific gravity:", "An alpha acid below 0.3 %?"];
const [gravityAsPlato, platoAsGravity] = [
  { reading: 1.012, scale: "P" },
  { reading: 12.4, scale: "SG" },
] as const;
const withSlip = (of: BatchContents, sheetName: string, slip: Partial<BatchContents["readings"][number]>): BatchContents => ({
  ...of,
  id: sheetName,
  sheetName,
  hops: of.hops.map((hop) => ({ ...hop, alphaPercent: 0.05 })),
  readings: of.readings.map((reading, index) => (index === 0 ? { ...reading, ...slip } : reading)),
});

/** A workbook, and the hand-out that is a file of its own. */
const files = ["workbook", "hand-out"] as const;
type File = (typeof files)[number];
const bytes = {} as Record<File, Uint8Array>;
const home = {} as Record<File, Map<string, string[][]>>;

/**
 * Every kind of sheet in one workbook: batches with what our functions answer in their cells, and as unplugged copies; all other
 * formulas as they are, without one cached value. LibreOffice calculates them by the regional settings of a country. What they say
 * must be the same everywhere, but for the decimal sign.
 */
beforeAll(async () => {
  if (soffice === undefined) return;
  const season = seasonBatches();
  const extract = { ...firstExtractBatch(), id: "example", sheetName: "Example" };
  const allGrain = season.find(({ method, packaging }) => method === "all-grain" && packaging.into === "bottles")!;
  const kegged = season.find(({ packaging }) => packaging.into === "keg")!;
  const batches = [allGrain, kegged, season.at(-1)!];
  const blocks = (["metric", "us"] as const).map((units) => filledBlocks(units, `Blocks ${units}`));
  const inGallons = (of: BatchContents, sheetName: string) => ({
    ...handOut(of, { volume: 5, units: "us", prices: true, name: sheetName, brewedOn: 46400 }),
    sheetName,
  });
  const made = await makeWorkbook(
    await loadHeadlessBench(),
    [
      ...[extract, ...batches, ...blocks, inGallons(allGrain, "In gallons"), inGallons(extract, "US extract")],
      ...[withSlip(extract, "Slip", platoAsGravity), withSlip(extract, "Other slip", gravityAsPlato)],
    ],
    async (context) => {
      await addSeasonSheets(context, batches);
      for (const kind of pageKinds) await insertPage(context, "Example", kind);
      await insertPage(context, allGrain.sheetName, "recipe");
      await insertPage(context, "Blocks us", "lesson");
      const entries = [extract, allGrain].map((batch, index) => ({ member: `Member ${index + 1}`, batch }));
      for (const kind of ["club", "class"] as const)
        await insertClub(context, { sheetName: kind === "club" ? "Club" : "Class", units: "metric", entries, kind });
      const club = await clubSheet(context, "Club");
      await insertTasting(context, { sheetName: "Tasting", club, beers: beersOfClub(club), tasters: ["Ann", "Bert"] });
      await insertScoreSheets(context, "Tasting");
      const log = Array.from({ length: 30 }, (_, line) => ({
        line,
        when: 46272.3 + line / 4,
        gravity: 1.048 - line / 1000,
        temperatureC: 18.5,
      }));
      await keepLog(context, "Example", [], "us", log);
      await unpluggedCopies(context, unplugged, { prices: true, standalone: false });
      const blank = (name: string, units: "metric" | "us") =>
        handOut(extract, { volume: 10.5, units, prices: true, name, brewedOn: 46400 });
      await insertUnpluggedHandOut(context, blank("Hand-out", "us"));
      await openUnpluggedHandOut(context, blank("For the club", "metric"), (base64) =>
        Promise.resolve((bytes["hand-out"] = new Uint8Array(Buffer.from(base64, "base64")))),
      );
    },
  );
  bytes.workbook = await saveWorkbook(valuesOnlyCopy(made.snapshot, made.computed), {}, undefined, {});
  made.bench.dispose();
  const { snapshot } = await openWorkbook(bytes["hand-out"], {});
  bytes["hand-out"] = await saveWorkbook(snapshot, {}, undefined, {});
  for (const file of files) home[file] = shownInLocale(bytes[file], "en-US");
}, patience);

/** Days and times look as the country writes them; that is what the cells are for. */
const isMoment = (text: string): boolean => /^\d{1,2}\/\d{1,2}\/\d{4}|^\d{1,2}:\d\d/.test(text);

/** A number alone without what parts its thousands, and a point for the decimal sign in words. */
const truths: Readonly<Record<string, string>> = { WAHR: "TRUE", FALSCH: "FALSE", VRAI: "TRUE", FAUX: "FALSE" };
const inEnglish = (text: string): string =>
  truths[text] ??
  (/^-?[\d.\s\u00a0\u202f]+(,\d+)?\s?%?$/u.test(text) ? text.replaceAll(/[.\s\u00a0\u202f]/gu, "") : text).replaceAll(
    /(?<=\d),(?=\d)/gu,
    ".",
  );
/** The same of what en-US shows. */
const unparted = (text: string): string =>
  (/^-?[\d,]+(\.\d+)?\s?%?$/.test(text) ? text.replaceAll(/[,\s]/g, "") : text).replaceAll(/(?<=\d),(?=\d)/gu, ".");

const textsOf = (file: File): string[] => [...home[file].values()].flat(2);

describe.skipIf(soffice === undefined)("a workbook calculated where the comma is the decimal sign", () => {
  it("holds every kind of sheet", () => {
    expect([...home.workbook.keys()].sort()).toEqual(
      expect.arrayContaining(
        [
          ["Season", "Kit", "Stores", "Club", "Class", "Tasting", "Scores Ann", "Scores Bert", "Example log", "Hand-out"],
          pageKinds.map((kind) => `Example ${kind}`),
          unplugged.map((name) => `${name} unplugged`),
        ].flat(),
      ),
    );
    expect([...home["hand-out"].keys()]).toEqual(["For the club"]);
  });

  it.each([
    ["workbook", 400],
    ["hand-out", 30],
  ] as const)("tells numbers in words, and shows no error: the %s", (file, atLeast) => {
    expect(textsOf(file).filter((text) => /[a-z]{3}.*\d/i.test(text)).length).toBeGreaterThan(atLeast);
    const usual = [...home[file]].filter(([name]) => !/slip$/i.test(name)).flatMap(([, rows]) => rows.flat());
    expect(usual.filter((text) => /^(#[A-Z]+[!/?]|Err:)/.test(text))).toEqual([]);
  });

  it("doubts slips that lie between two whole numbers", () => {
    expect(slips.filter((words) => !textsOf("workbook").some((text) => text.startsWith(words)))).toEqual([]);
  });

  it.each(elsewhere.flatMap((locale) => files.map((file) => [file, locale] as const)))(
    "says the same in the %s in %s as in en-US, but for the decimal sign",
    (file, locale) => {
      const there = shownInLocale(bytes[file], locale);
      expect([...there.keys()].sort()).toEqual([...home[file].keys()].sort());
      const different = [...home[file]].flatMap(([name, rows]) =>
        rows.flatMap((row, line) =>
          row.flatMap((text, column) => {
            const shown = there.get(name)?.[line]?.[column] ?? "";
            return isMoment(text) || inEnglish(shown) === unparted(text)
              ? []
              : [`${name} ${line + 1}/${column + 1}: “${text}” became “${shown}”`];
          }),
        ),
      );
      expect(different.slice(0, 40)).toEqual([]);
    },
    patience,
  );
});
