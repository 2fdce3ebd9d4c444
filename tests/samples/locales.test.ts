import { beforeAll, describe, expect, it } from "vitest";
import { saveWorkbook, valuesOnlyCopy } from "../../src/excel-stand-in/xlsx";
import { makeWorkbook } from "../../src/build/make-sample";
import { addSeasonSheets, seasonBatches } from "../../src/build/sample-season";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { handOut } from "../../src/workbook/sheets/handout/hand-out";
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

let home: Map<string, string[][]>;
let bytes: Uint8Array;

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
    [extract, ...batches, ...blocks, inGallons(allGrain, "In gallons"), inGallons(extract, "US extract")],
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
      await unpluggedCopies(context, unplugged, { prices: true, standalone: false });
    },
  );
  bytes = await saveWorkbook(valuesOnlyCopy(made.snapshot, made.computed), {}, undefined, {});
  made.bench.dispose();
  home = shownInLocale(bytes, "en-US");
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

describe.skipIf(soffice === undefined)("a workbook calculated where the comma is the decimal sign", () => {
  it("holds every kind of sheet", () => {
    expect([...home.keys()].sort()).toEqual(
      expect.arrayContaining(
        [
          ["Season", "Kit", "Stores", "Club", "Class", "Tasting", "Scores Ann", "Scores Bert"],
          pageKinds.map((kind) => `Example ${kind}`),
          unplugged.map((name) => `${name} unplugged`),
        ].flat(),
      ),
    );
    const words = [...home.values()].flat(2).filter((text) => /[a-z]{3}.*\d/i.test(text));
    expect(words.length).toBeGreaterThan(400);
    const errors = [...home.values()].flat(2).filter((text) => /^(#[A-Z]+[!/?]|Err:)/.test(text));
    expect(errors).toEqual([]);
  });

  it.each(elsewhere)(
    "says in %s what it says in en-US, but for the decimal sign",
    (locale) => {
      const there = shownInLocale(bytes, locale);
      expect([...there.keys()].sort()).toEqual([...home.keys()].sort());
      const different = [...home].flatMap(([name, rows]) =>
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
