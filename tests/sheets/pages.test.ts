import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { insertPage, pageKinds, type PageKind } from "../../src/workbook/sheets/pages/insert-page";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet } from "../support/batch-bench";

/* The pages of one batch: what they say follows the batch sheet, and nothing that it holds is missing on them. */

let bench: HeadlessBench;
let sheet: BatchSheet;
const batch = firstExtractBatch();
const pages = {} as Record<PageKind, string>;

beforeAll(async () => {
  bench = await openBatchBench();
  sheet = await insertOn(bench, batch);
  for (const kind of pageKinds) pages[kind] = await Excel.run((context) => insertPage(context, batch.sheetName, kind));
  await bench.calculate();
}, benchTimeout);
afterAll(() => bench.dispose());

const rowsOf = (kind: PageKind): string[][] =>
  Array.from({ length: 120 }, (_, row) => [..."ABCDEFGH"].map((letter) => String(bench.valueAt(pages[kind], `${letter}${row + 1}`) ?? "")));
const lineOf = (kind: PageKind, what: string): string[] => rowsOf(kind).find((cells) => cells.some((cell) => cell.includes(what))) ?? [];
const set = (sheetName: string, cell: string, value: string | number) =>
  Excel.run(async (context) => {
    context.workbook.worksheets.getItem(sheetName).getRange(cell).values = [[value]];
    await context.sync();
  });

describe("the pages of a batch", () => {
  it("show no error, and call nothing of ours", () => {
    const ours = Object.values(bench.snapshot().sheets).filter(({ name = "" }) => Object.values(pages).includes(name));
    expect(ours).toHaveLength(4);
    expect(JSON.stringify(ours.map(({ cellData }) => cellData))).not.toContain("GYLE.");
    for (const kind of Object.keys(pages) as PageKind[])
      expect(
        rowsOf(kind)
          .flat()
          .filter((cell) => /^#[A-Z/]+[!?A]?$/.test(cell)),
        kind,
      ).toEqual([]);
  });

  it(
    "keep their kind in the name, however long the sheet's own name is",
    async () => {
      const long = { ...batch, id: "long", sheetName: "A sheet whose name has 31 signs" };
      await insertOn(bench, long);
      const name = await Excel.run((context) => insertPage(context, long.sheetName, "shopping"));
      expect(name).toMatch(/ shopping$/);
      expect(name.length).toBeLessThanOrEqual(31);
    },
    benchTimeout,
  );
});

describe("the shopping list", () => {
  const needed = (): number[] =>
    rowsOf("shopping")
      .slice(4)
      .map((cells) => Number(cells[2]));

  it("asks for all that the batch takes, each name once", () => {
    const lists: [string, number][] = [
      ...batch.malt.map(({ ingredient, mass }): [string, number] => [ingredient, Number(mass)]),
      ...batch.hops.map(({ hop, mass }): [string, number] => [hop, Number(mass)]),
    ];
    const totals = new Map<string, number>();
    for (const [name, mass] of lists) totals.set(name, (totals.get(name) ?? 0) + mass);
    expect(totals.size).toBeLessThan(lists.length);
    for (const [name, mass] of totals) {
      const lines = rowsOf("shopping").filter((cells) => cells[1] === name);
      expect(
        lines.map((cells) => Number(cells[2])),
        name,
      ).toEqual([expect.closeTo(mass, 9)]);
    }
    expect(needed().filter((mass) => mass > 0).length).toBeGreaterThanOrEqual(totals.size + 3);
  });

  it("takes off what is there, never below nothing, and follows the batch", async () => {
    const [first] = batch.hops;
    const row = rowsOf("shopping").findIndex((cells) => cells[1] === first!.hop) + 1;
    const mass = Number(lineOf("shopping", first!.hop)[2]);
    await set(pages.shopping, `E${row}`, mass / 4);
    await bench.calculate();
    expect(Number(lineOf("shopping", first!.hop)[5])).toBeCloseTo(mass * 0.75, 9);
    await set(pages.shopping, `E${row}`, mass * 9);
    await bench.calculate();
    expect(Number(lineOf("shopping", first!.hop)[5])).toBe(0);
    await set(batch.sheetName, sheet.cellOf("hop_plan"), "Another hop");
    await bench.calculate();
    expect(lineOf("shopping", "Another hop")[2]).not.toBe("");
    await set(batch.sheetName, sheet.cellOf("hop_plan"), first!.hop);
    await bench.calculate();
  });

  it("has no hole where the batch has one, and says when the batch has outgrown it", async () => {
    const [from = ""] = sheet.rangeOf("malt").split(":");
    const row = Number(from.replace(/\D/g, ""));
    const free = row + batch.malt.length + 1;
    await set(batch.sheetName, `A${free}`, "Oat flakes");
    await set(batch.sheetName, `B${free}`, 0.25);
    await bench.calculate();
    const names = rowsOf("shopping")
      .slice(4)
      .map((cells) => cells[1]);
    expect(names.slice(0, batch.malt.length + 1)).toEqual([...batch.malt.map(({ ingredient }) => ingredient), "Oat flakes"]);
    expect(lineOf("shopping", "write the page anew")).toEqual([]);
    await set(batch.sheetName, `A${free + 1}`, "Candy");
    await set(batch.sheetName, `B${free + 1}`, 0.1);
    await bench.calculate();
    expect(lineOf("shopping", "write the page anew")).not.toEqual([]);
    expect(lineOf("recipe", "write the page anew")).not.toEqual([]);
    for (const cell of [`A${free}`, `B${free}`, `A${free + 1}`, `B${free + 1}`]) await set(batch.sheetName, cell, "");
    await bench.calculate();
  });
});

describe("the bottle labels", () => {
  it("say what is in the bottle, as far as it is known, on every one", async () => {
    const words = rowsOf("labels").flat();
    const of = (pattern: RegExp): string[] => words.filter((cell) => pattern.test(cell));
    expect(of(new RegExp(`^${batch.batchName}$`))).toHaveLength(16);
    const alcohol = Number(sheet.get("abv_bottle")).toFixed(1);
    expect(of(new RegExp(`^Alcohol ${alcohol.replace(".", "\\.")} % vol ± \\d\\.\\d, calculated; `))).toHaveLength(16);
    expect(of(/^Drink from \d{4}-\d\d-\d\d, cool, upright/)).toHaveLength(16);
    expect(of(/^Home-brewed; contains gluten/)).toHaveLength(16);
    await set(pages.labels, "A3", "The Quillmarsh Brew Club");
    await bench.calculate();
    expect(
      rowsOf("labels")
        .flat()
        .filter((cell) => cell === "Brewed by The Quillmarsh Brew Club; contains gluten (barley, wheat)"),
    ).toHaveLength(16);
  });

  it("name every cereal that is in it, and none of which there is nothing", async () => {
    const said = () =>
      new Set(
        rowsOf("labels")
          .flat()
          .filter((cell) => cell.includes("gluten"))
          .map((cell) => /\((.*)\)/.exec(cell)?.[1]),
      );
    const row = Number(/(\d+)/.exec(sheet.cellOf("malt"))![1]) + batch.malt.length;
    await set(batch.sheetName, `A${row}`, "Flaked Rye");
    await bench.calculate();
    expect([...said()]).toEqual(["barley, wheat"]);
    await set(batch.sheetName, `B${row}`, 0.1);
    await bench.calculate();
    expect([...said()]).toEqual(["barley, wheat, rye"]);
    for (const cell of [`A${row}`, `B${row}`]) await set(batch.sheetName, cell, "");
    await bench.calculate();
  });

  it(
    "claim no strength before there is one",
    async () => {
      const fresh = {
        ...batch,
        id: "fresh",
        sheetName: "Fresh",
        readings: [],
        packaging: { ...batch.packaging, packagedOn: "" as const },
        wort: { ...batch.wort, reading: "" as const },
      };
      const unread = await insertOn(bench, fresh);
      const name = await Excel.run((context) => insertPage(context, "Fresh", "labels"));
      await bench.calculate();
      const wordsNow = () => Array.from({ length: 20 }, (_, row) => String(bench.valueAt(name, `A${row + 1}`) ?? ""));
      const words = wordsNow();
      expect(words.filter((cell) => cell.startsWith("Alcohol: not known yet"))).not.toEqual([]);
      expect(words.filter((cell) => /\d % vol/.test(cell))).toEqual([]);
      // Nor a comma for a day that is not known.
      expect(words.filter((cell) => cell.startsWith("Batch "))).toEqual(["Batch 1", "Batch 1", "Batch 1"]);
      expect(words.filter((cell) => cell.endsWith("upright: yeast settles"))).toHaveLength(3);
      // Packaged without a reading: the checks say that nobody is to open or move such bottles.
      await set("Fresh", unread.cellOf("packaged_on"), 46284);
      await bench.calculate();
      expect(wordsNow().filter((cell) => cell.startsWith("Drink from") || cell.endsWith("yeast settles"))).toEqual([]);
      expect(wordsNow().filter((cell) => cell === "Wait: the checks of the batch sheet say stop")).toHaveLength(3);
    },
    benchTimeout,
  );
});

describe("the lesson", () => {
  it("has every step of the sheet with its reason and its caution", () => {
    const { from, to } = { from: sheet.rangeOf("steps").split(":")[0]!, to: sheet.rangeOf("steps").split(":")[1]! };
    const words = rowsOf("lesson").flat();
    let steps = 0;
    for (let row = Number(from.replace(/\D/g, "")); row <= Number(to.replace(/\D/g, "")); row += 1) {
      const [what, caution, why] = ["K", "N", "O"].map((letter) => String(bench.valueAt(batch.sheetName, `${letter}${row}`) ?? ""));
      if (what === "") continue;
      steps += 1;
      for (const text of [what, caution, why]) if (text) expect(words).toContain(text);
    }
    expect(steps).toBeGreaterThan(10);
  });

  it("answers its guesses from the readings, and not before them", async () => {
    expect(Number(lineOf("lesson", "1. What will")[3])).toBeCloseTo(sheet.number("og_reached"), 6);
    const reading = sheet.get("og_reading");
    await sheet.set({ og_reading: "" });
    expect(lineOf("lesson", "1. What will")[3]).toBe("after the reading");
    await sheet.set({ og_reading: Number(reading) });
  });
});
