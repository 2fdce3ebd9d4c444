import { beforeAll, describe, expect, it } from "vitest";
import { saveWorkbook } from "../../src/excel-stand-in/xlsx";
import { makeWorkbook } from "../../src/build/make-sample";
import { addSeasonSheets, seasonBatches } from "../../src/build/sample-season";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { handOut } from "../../src/workbook/sheets/handout/hand-out";
import { insertBatch } from "../../src/workbook/batch/insert-batch";
import { unpluggedCopies } from "../../src/workbook/exchange/unplug";
import { insertClub } from "../../src/workbook/sheets/club/add-to-club";
import { insertPage } from "../../src/workbook/sheets/pages/insert-page";
import { loadHeadlessBench } from "../support/headless-bench";
import { shownInLocale, soffice } from "../support/libre-office";

/** Where the comma is the decimal sign; in France a narrow space parts the thousands, in Germany a point. */
const elsewhere = ["de-DE", "fr-FR"] as const;
const patience = 400_000;

let home: Map<string, string[][]>;
let bytes: Uint8Array;

/**
 * Every kind of sheet in one workbook, batches as unplugged copies, without one cached value: LibreOffice calculates all of it by
 * the regional settings of a country. What it says must be the same everywhere, but for the decimal sign.
 */
beforeAll(async () => {
  if (soffice === undefined) return;
  const batches = [{ ...firstExtractBatch(), id: "example", sheetName: "Example" }, ...seasonBatches()];
  const [extract, ...others] = batches;
  const allGrain = others.find(({ method }) => method === "all-grain") ?? others[0]!;
  const made = await makeWorkbook(await loadHeadlessBench(), batches, async (context) => {
    await insertBatch(context, {
      ...handOut(allGrain, { volume: 3, units: "us", prices: true, name: "In gallons", brewedOn: 46400 }),
      sheetName: "In gallons",
    });
    await addSeasonSheets(context);
    await insertPage(context, extract!.sheetName, "recipe");
    await insertPage(context, allGrain.sheetName, "recipe");
    await insertClub(context, {
      sheetName: "Club",
      units: "metric",
      entries: [extract!, allGrain].map((batch, index) => ({ member: `Member ${index + 1}`, batch })),
    });
    const kegged = others.find(({ packaging }) => packaging.into === "keg") ?? others.at(-1)!;
    await unpluggedCopies(context, [extract!.sheetName, allGrain.sheetName, kegged.sheetName, "In gallons"], {
      prices: true,
      standalone: false,
    });
  });
  bytes = await saveWorkbook(made.snapshot, {}, undefined, {});
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
    expect([...home.keys()].sort()).toEqual(expect.arrayContaining(["Season", "Kit", "Stores", "Club", "In gallons unplugged"]));
    expect([...home.keys()].filter((name) => /recipe$/.test(name))).toHaveLength(2);
    const words = [...home.values()].flat(2).filter((text) => /[a-z]{3}.*\d/i.test(text));
    expect(words.length).toBeGreaterThan(400);
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
