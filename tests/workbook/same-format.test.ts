import { describe, expect, it } from "vitest";
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
