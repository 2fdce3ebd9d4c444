import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { axisText } from "../../src/bench/page/charts/scales";
import { momentField } from "../../src/pane/fields/moments";
import { batchDates, datedBatch } from "../../src/workbook/brewing/calendar/batch-dates";
import { calendarFile } from "../../src/workbook/brewing/calendar/calendar-file";
import { dayAndMonth } from "../../src/workbook/batch/sheet/steps";
import { numberFormats } from "../../src/workbook/grid/plan/styles";
import { isoDay } from "../../src/workbook/grid/words/day-number";
import { dayShort, dayShown, momentShown } from "../../src/workbook/grid/words/day-words";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import type { NumberFormat, SheetPlan } from "../../src/workbook/grid/plan/sheet-plan";
import type { BatchInWorkbook } from "../../src/workbook/sheets/batches-in-workbook";
import { planLabels } from "../../src/workbook/sheets/pages/labels-plan";
import { planLesson } from "../../src/workbook/sheets/pages/lesson-plan";
import { planRecipe } from "../../src/workbook/sheets/pages/recipe-plan";
import { planShopping } from "../../src/workbook/sheets/pages/shopping-plan";
import { columns } from "../../src/workbook/sheets/season/season-columns";
import { filledBlocks } from "../support/filled-blocks";
import { paperSheet } from "../support/paper-sheet";

/* The same figure has the same decimals wherever it stands: on the card, in the words of a check, on a page to print, in the season's list. */

const choices = { id: "same", sheetName: "Same", batchName: "Same", brewedOn: 46270, topUp: 0, method: "all-grain" } as const;
const batches: [string, BatchContents][] = [
  ["extract, us", { ...firstExtractBatch(), sheetName: "Same" }],
  ["extract, metric", { ...firstExtractBatch("metric"), sheetName: "Same" }],
  ["all-grain, us", exampleBatch({ ...choices, units: "us", volume: 5 })],
  ["all-grain, metric", exampleBatch({ ...choices, units: "metric", volume: 20 })],
  ["every block, us", filledBlocks("us", "Same")],
  ["every block, metric", filledBlocks("metric", "Same")],
];

const decimals: Readonly<Partial<Record<NumberFormat, number>>> = { gravity: 3, fineGravity: 4, one: 1, two: 2, money: 2, whole: 0 };
const datesAndTimes: readonly (NumberFormat | undefined)[] = ["date", "time", "dateTime", "monthDay"];

/** The format of the cell that a name or an address of the batch sheet stands for. */
function formatsOf(plan: SheetPlan): (place: string) => NumberFormat | undefined {
  const cells = new Map(plan.cells.map(({ address, format }) => [address, format]));
  const names = new Map(plan.names.map(({ name, range }) => [name.toLowerCase(), range]));
  return (place) => cells.get((names.get(place.toLowerCase()) ?? place).split(":")[0]!.replaceAll("$", ""));
}

interface Compared {
  readonly where: string;
  readonly own: NumberFormat;
  readonly there: string;
  readonly isSame: boolean;
}

/** Every cell that repeats a figure of the batch sheet, and every text that writes one out. */
function comparisons(sheet: string, cells: SheetPlan["cells"], formatAt: ReturnType<typeof formatsOf>): Compared[] {
  return cells.flatMap(({ address, content, format = "general" }) => {
    if (typeof content !== "string" || !content.startsWith("=")) return [];
    const formula = content.replaceAll("Same!", "").replaceAll("'Same'!", "");
    const written = [...formula.matchAll(/FIXED\((?:N\()?([A-Za-z_$][\w$]*)\)?,(\d)/g)].flatMap(([, place = "", digits = ""]) => {
      const own = formatAt(place);
      if (own === undefined || decimals[own] === undefined) return [];
      return [{ where: `${sheet}, ${address}: ${place}`, own, there: `${digits} decimals`, isSame: decimals[own] === Number(digits) }];
    });
    const repeated =
      /^=IF\((?:N\()?([A-Za-z_$][\w$]*)\)?(?:=""|=0),"",\1\)$/.exec(formula) ??
      /^=IF\(ISNUMBER\(([A-Za-z_$][\w$]*)\),\1,""\)$/.exec(formula);
    const own = repeated ? formatAt(repeated[1] ?? "") : undefined;
    if (own === undefined || !(own in decimals || datesAndTimes.includes(own))) return written;
    return [...written, { where: `${sheet}, ${address}: ${repeated?.[1]}`, own, there: format, isSame: own === format }];
  });
}

const other = (found: readonly Compared[]): string[] =>
  found.filter(({ isSame }) => !isSame).map(({ where, own, there }) => `${where} is ${own} on the sheet, ${there} here`);

describe.each(batches)("the figures of a batch (%s)", (_, batch) => {
  const plan = planBatch(batch);
  const formatAt = formatsOf(plan);

  it("are written in the words of its own sheet as their cells show them", () => {
    const found = comparisons("batch", plan.cells, formatAt);
    expect(found.length).toBeGreaterThan(20);
    expect(other(found)).toEqual([]);
  });

  it("are printed on its pages as its sheet shows them", () => {
    const there = { sheetName: "Same", contents: batch, cells: paperSheet(batch) } as unknown as BatchInWorkbook;
    const found = [planRecipe, planShopping, planLesson, planLabels].flatMap((page) =>
      comparisons(page.name, page(there, "Page").cells, formatAt),
    );
    expect(found.length).toBeGreaterThan(20);
    expect(other(found)).toEqual([]);
  });

  it("stand in the season's list as its sheet shows them", () => {
    const cells = columns.flatMap(({ letter, live, format }) => {
      const formula = live?.("", 1, { kegCell: true, hasParts: true });
      return formula === undefined ? [] : [{ address: letter, content: `=${formula}`, style: "result" as const, format }];
    });
    const found = comparisons("season", cells, formatAt);
    expect(found.length).toBeGreaterThan(10);
    expect(other(found)).toEqual([]);
  });
});

describe("a day", () => {
  /** Every month, a single and a double figure, both ends of a year, a leap day. By the calendar itself, not by our own day numbers. */
  const days = [
    ...Array.from({ length: 12 }, (_, month) => [2026, month + 1, 5] as const),
    [2026, 12, 31],
    [2027, 1, 1],
    [2028, 2, 29],
  ] as const;
  const numbered = days.map(([year, month, day]) => ({
    iso: `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`,
    // 1 January 1970 is day 25569 of Excel's calendar (ECMA-376, part 1, 18.17.4.1).
    number: 25569 + Date.UTC(year, month - 1, day) / 86_400_000,
    words: `${day} ${["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sept", "Oct", "Nov", "Dec"][month - 1]}`,
  }));
  const onSheet = (formula: (day: string) => string, number: number): unknown =>
    paperSheet({ ...firstExtractBatch(), sheetName: "Same" }, { brewed_on: number, notes: `=${formula("brewed_on")}` }).value("notes");

  it.each(numbered)("$iso is one and the same on the sheet, in the pane and on a chart", ({ iso, number, words }) => {
    expect(isoDay(number)).toBe(iso);
    expect(axisText(numberFormats.date)(number)).toBe(iso);
    expect(axisText(numberFormats.monthDay)(number)).toBe(iso.slice(5));
    expect(onSheet(dayAndMonth, number)).toBe(words);
    expect([dayShort(number), dayShown(number).replace(/^\w+ /, ""), momentShown(number + 0.75).replace(/^\w+ /, "")]).toEqual([
      words,
      words,
      `${words}, 18:00`,
    ]);
    expect(momentField(number + 0.75)).toBe(`${iso}T18:00`);
  });

  it("in a cell has the sheets' own format, never one that the computer's settings would choose", () => {
    for (const format of datesAndTimes) expect(numberFormats[format!]).toMatch(/^(yyyy-)?(mm-dd)?( ?hh:mm)?$/);
  });

  it("in the calendar's file is the day that its list says", () => {
    const packaging = { ...firstExtractBatch().packaging, packagedOn: "" } as const;
    const batch = datedBatch(paperSheet({ ...firstExtractBatch(), sheetName: "Same", readings: [], packaging }));
    const dates = batchDates(batch);
    expect(dates.length).toBeGreaterThan(3);
    const file = calendarFile(batch, dates, new Date(Date.UTC(2026, 8, 1)));
    for (const { day } of dates) expect(file).toMatch(new RegExp(`^DTSTART[^:]*:${isoDay(day).replaceAll("-", "")}`, "m"));
  });

  it("is put into words in one place: nobody else asks the computer how its country writes one", () => {
    const root = fileURLToPath(new URL("../../src/", import.meta.url));
    const asked = readdirSync(root, { recursive: true, encoding: "utf8" }).filter(
      (name) =>
        /\.tsx?$/.test(name) &&
        name !== "workbook/grid/words/day-words.ts" &&
        /toLocale(Date|Time)?String|DateTimeFormat|to(Date|UTC|Time)String\(/.test(readFileSync(`${root}${name}`, "utf8")),
    );
    expect(asked).toEqual([]);
  });
});
