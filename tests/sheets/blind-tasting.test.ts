import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { addToClub, insertClub, insertLarger } from "../../src/workbook/sheets/club/add-to-club";
import {
  beersOfClub,
  insertScoreSheets,
  insertTasting,
  scoresInWorkbook,
  takeScores,
  tastingSheets,
} from "../../src/workbook/sheets/club/blind-tasting";
import { clubSheet, NoRoom } from "../../src/workbook/sheets/club/club-sheet";
import { address } from "../../src/workbook/grid/plan/addresses";
import type { NamedCells } from "../../src/workbook/grid/read/named-cells";
import { readAllSheets } from "../../src/workbook/grid/read/read-sheets";
import { benchTimeout, openBatchBench } from "../support/batch-bench";

let bench: HeadlessBench;
beforeEach(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterEach(() => bench.dispose());

const batch = (index: number, others: Partial<BatchContents> = {}): BatchContents => ({
  ...exampleBatch({
    id: `id${index}`,
    sheetName: `B${index}`,
    batchName: `Beer ${index}`,
    brewedOn: 46270,
    volume: 20,
    units: "metric",
    topUp: 0,
    method: "all-grain",
  }),
  wort: { collected: "", reading: 1.04 + index / 1000, scale: "SG", sampleTemperature: 20, volume: 20 },
  ...others,
});
const entries = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, at) => ({ member: `M${from + at}`, batch: batch(from + at) }));
const at = (sheet: string, cell: string) => bench.valueAt(sheet, cell) ?? "";
const sheetOf = async (name: string): Promise<NamedCells> => {
  await bench.calculate();
  const found = (await Excel.run(readAllSheets)).find(({ sheetName }) => sheetName === name);
  if (!found) throw new Error(`no sheet ${name}`);
  return found;
};
const type = (sheet: string, cells: Record<string, string | number>) =>
  Excel.run(async (context) => {
    for (const [cell, content] of Object.entries(cells)) context.workbook.worksheets.getItem(sheet).getRange(cell).values = [[content]];
    await context.sync();
  });

describe("a club of more than ten", () => {
  it(
    "has its batches ten to a page, mean and spread over all of them, and a larger copy of a sheet that is full",
    async () => {
      await Excel.run((context) => insertClub(context, { sheetName: "Club", units: "metric", entries: entries(1, 10) }));
      await expect(Excel.run((context) => addToClub(context, "Club", entries(11, 13)))).rejects.toThrow(NoRoom);
      await type("Club", { P5: "Corrected by hand" });
      const larger = await Excel.run((context) => insertLarger(context, "Club", entries(11, 13)));
      expect(larger).toBe("Club (2)");
      await bench.calculate();
      // Original gravity reached stands in row 13 of the first page; a page is 32 rows long.
      expect([at(larger, "B5"), at(larger, "K5"), at(larger, "B37"), at(larger, "D37"), at(larger, "E37")]).toEqual([
        "M1",
        "M10",
        "M11",
        "M13",
        "",
      ]);
      expect([at(larger, "C6"), at("Club", "B5"), at("Club", "K5")]).toEqual(["Corrected by hand", "M1", "M10"]);
      const gravities = Array.from({ length: 13 }, (_, index) =>
        Number(at(larger, index < 10 ? address(13, 2 + index) : address(45, index - 8))),
      );
      const mean = gravities.reduce((sum, one) => sum + one, 0) / 13;
      const spread = Math.sqrt(gravities.reduce((sum, one) => sum + (one - mean) ** 2, 0) / 12);
      for (const row of [13, 45]) {
        expect(Number(at(larger, `L${row}`))).toBeCloseTo(mean, 9);
        expect(Number(at(larger, `M${row}`))).toBeCloseTo(spread, 9);
      }
      for (let row = 1; row < 70; row += 1)
        for (const column of "ABCDEKLM") expect(String(at(larger, `${column}${row}`)), `${column}${row}`).not.toMatch(/^#[A-Z/]+[!?A]?$/);
      await Excel.run((context) => addToClub(context, larger, entries(14, 20)));
      await bench.calculate();
      expect(at(larger, "K37")).toBe("M20");
      await expect(Excel.run((context) => insertLarger(context, larger, entries(21, 41)))).rejects.toThrow(
        "One sheet holds 40 batches, not 41",
      );
      const twice = [...entries(1, 1), ...entries(1, 1)];
      await expect(Excel.run((context) => insertClub(context, { sheetName: "Twice", units: "us", entries: twice }))).rejects.toThrow(
        "“Beer 1” of M1 is on the list twice",
      );
    },
    benchTimeout,
  );
});

describe("a class", () => {
  it(
    "sees what each plan predicted beside what each learner measured, with the difference",
    async () => {
      // One blank, two learners, one of whom has measured it to the end: the same mark, other readings.
      const reading = (value: number, when: number) => ({
        when,
        reading: value,
        scale: "SG" as const,
        sampleTemperature: 20,
        beerTemperature: 20,
      });
      const learners = [
        { member: "Ada", batch: batch(1, { readings: [reading(1.012, 46277), reading(1.012, 46279)] }) },
        { member: "Ben", batch: batch(1, { wort: { collected: "", reading: 1.05, scale: "SG", sampleTemperature: 20, volume: 20 } }) },
      ];
      await Excel.run((context) => insertClub(context, { sheetName: "Class", units: "metric", entries: learners, kind: "class" }));
      await bench.calculate();
      const row = (line: number) => ["A", "C", "D", "E", "F", "G", "H", "J"].map((column) => at("Class", `${column}${line}`));
      const [ada, ben] = [row(6), row(7)];
      expect([ada[0], ben[0]]).toEqual(["Ada", "Ben"]);
      // Both plans are the blank's; what was measured is what was typed (a sample at 20 °C needs no correction).
      expect(ada[1]).toBe(ben[1]);
      expect(Number(ada[2])).toBeCloseTo(1.041, 6);
      expect(Number(ben[2])).toBeCloseTo(1.05, 6);
      expect(Number(ada[3])).toBeCloseTo(1.041 - Number(ada[1]), 6);
      expect(Number(ada[5])).toBeCloseTo(1.012, 6);
      expect([ben[5], ben[6], ben[7]]).toEqual(["", "", ""]);
      // 131.25 × 0.029 = 3.81 % by the simple rule; by extract within 0.1 of it.
      expect(Math.abs(Number(ada[7]) - 3.81)).toBeLessThan(0.12);
      expect(Number(at("Class", "D17"))).toBeCloseTo((1.041 + 1.05) / 2, 6);
      await Excel.run((context) => addToClub(context, "Class", [{ member: "Cleo", batch: batch(2) }]));
      await bench.calculate();
      expect(at("Class", "A8")).toBe("Cleo");
      for (let line = 1; line < 22; line += 1)
        for (const column of "ABCDEFGHIJKLMN")
          expect(String(at("Class", `${column}${line}`)), `${column}${line}`).not.toMatch(/^#[A-Z/]+[!?A]?$/);
    },
    benchTimeout,
  );
});

describe("a blind tasting", () => {
  it(
    "goes from codes over score sheets, in sheets and in letters, to a ranking",
    async () => {
      await Excel.run((context) =>
        insertClub(context, { sheetName: "Club", units: "metric", entries: [{ member: "=1+1", batch: batch(1) }, ...entries(2, 3)] }),
      );
      const club = await Excel.run((context) => clubSheet(context, "Club"));
      const beers = beersOfClub(club);
      expect(beers.map(({ member }) => member)).toEqual(["=1+1", "M2", "M3"]);
      await Excel.run((context) => insertTasting(context, { sheetName: "Tasting", club, beers, tasters: ["Ada", "Ben", "Cleo"] }));
      const codes = (await sheetOf("Tasting")).block("tasting_codes").flat().map(Number);
      expect([...codes].sort((one, other) => one - other)).toEqual(codes);

      const names = await Excel.run((context) => insertScoreSheets(context, "Tasting"));
      expect(names).toEqual(["Scores Ada", "Scores Ben", "Scores Cleo"]);
      // Nobody can tell from a score sheet which beer is which.
      for (const name of names) {
        const words = [...(await sheetOf(name)).filled()].map(({ value }) => String(value)).join(" ");
        expect(words).not.toMatch(/Beer \d|M2|M3/);
      }
      // All three like the beers in the order of their codes, the first best: by marks of 5, 4 and 3.
      const fillIn = async (name: string, markOf: (code: number) => number) => {
        const sheet = await sheetOf(name);
        const { from } = sheet.area("score_codes");
        for (const [index, [code]] of sheet.block("score_codes").entries())
          for (let column = 2; column <= 6; column += 1) await type(name, { [address(from.row + index, column)]: markOf(Number(code)) });
      };
      const liked = (code: number) => 5 - codes.indexOf(code);
      for (const name of ["Scores Ada", "Scores Ben"]) await fillIn(name, liked);
      await bench.calculate();
      const first = await Excel.run(async (context) => takeScores(context, "Tasting", await scoresInWorkbook(context)));
      expect(first.taken).toEqual([
        { taster: "Ada", beers: 3, of: 3 },
        { taster: "Ben", beers: 3, of: 3 },
      ]);
      expect(first.left).toHaveLength(3);
      for (const words of first.left) expect(words).toMatch(/^“Scores Cleo”: \d{3} has not all its marks yet\.$/);
      let sheet = await sheetOf("Tasting");
      expect(sheet.block("tasting_scores").slice(0, 3)).toEqual([
        [25, 20, 15],
        [25, 20, 15],
        ["", "", ""],
      ]);

      // Cleo writes a letter, Dora comes unannounced, and somebody's line is of another evening.
      const id = sheet.text("tasting_id");
      const line = (taster: string, sums: readonly number[], of = id) => ({
        from: `the line of ${taster}`,
        tastingId: of,
        taster,
        sums: codes.map((code, index) => ({ code, sum: sums[index] ?? 0 })),
      });
      const second = await Excel.run((context) =>
        takeScores(context, "Tasting", [
          line("cleo", [24, 21, 16]),
          line("Dora", [23, 26, 14]),
          line("Eve", [5, 6, 7], "other"),
          line("Ada", [25, 20, 16]),
        ]),
      );
      expect(second.taken.map(({ taster, beers: count }) => [taster, count])).toEqual([
        ["cleo", 3],
        ["Dora", 2],
        ["Ada", 2],
      ]);
      expect(second.left).toEqual([
        `the line of Dora: 26 for ${codes[1]} cannot be; 5 marks of 1 to 5 come to 5 to 25.`,
        "the line of Eve belongs to another tasting.",
        `the line of Ada: ${codes[2]} has 16, but 15 stands on “Tasting” already. Clear that cell to take the other.`,
      ]);
      sheet = await sheetOf("Tasting");
      expect(sheet.block("tasting_scores").slice(0, 4)).toEqual([
        [25, 20, 15],
        [25, 20, 15],
        [24, 21, 16],
        [23, "", 14],
      ]);
      expect(sheet.block("tasting_tasters").flat().slice(0, 5)).toEqual(["Ada", "Ben", "Cleo", "Dora", ""]);
      // Dora has not scored all: the three others agree in everything, 6 of 216 orders.
      const ranking = sheet.block("tasting_ranking");
      expect(ranking.map((row) => [row[0], row[1], row[7]])).toEqual([
        [1, codes[0], 3],
        [2, codes[1], 6],
        [3, codes[2], 9],
      ]);
      const key = new Map(
        [...sheet.filled()].filter(({ address: cell }) => /^A\d+$/.test(cell)).map(({ value, address: cell }) => [value, cell.slice(1)]),
      );
      for (const row of ranking) expect(row[2]).toBe(sheet.at(Number(key.get(row[1] ?? "")), 2));
      expect([...sheet.filled()].map(({ value }) => String(value)).join()).toContain("rank sums are more than 4.8 apart differ");
      expect((await Excel.run(tastingSheets)).map(({ sheetName }) => sheetName)).toEqual(["Tasting"]);
    },
    benchTimeout,
  );

  it(
    "hands the score sheets out in a workbook of their own, and leaves none of them here",
    async () => {
      await Excel.run((context) => insertClub(context, { sheetName: "Club", units: "us", entries: entries(1, 2) }));
      const club = await Excel.run((context) => clubSheet(context, "Club"));
      await Excel.run((context) => insertTasting(context, { sheetName: "Tasting", club, beers: beersOfClub(club), tasters: ["Ada"] }));
      await bench.calculate();
      const opened: string[] = [];
      await Excel.run((context) =>
        insertScoreSheets(context, "Tasting", (base64) => {
          opened.push(base64);
          return Promise.resolve();
        }),
      );
      expect(opened).toHaveLength(1);
      const file = Buffer.from(opened[0] ?? "", "base64");
      const { unzipSync, strFromU8 } = await import("fflate");
      const parts = unzipSync(file);
      const text = Object.entries(parts)
        .filter(([name]) => name.endsWith(".xml"))
        .map(([, bytes]) => strFromU8(bytes))
        .join("\n");
      expect(text).toContain("Scores Ada");
      expect(text).not.toMatch(/Beer \d|GYLE/);
      const names = await Excel.run(async (context) => {
        const { worksheets } = context.workbook;
        worksheets.load("items/name");
        await context.sync();
        return worksheets.items.map(({ name }) => name);
      });
      expect(names).not.toContain("Scores Ada");
    },
    benchTimeout,
  );
});
