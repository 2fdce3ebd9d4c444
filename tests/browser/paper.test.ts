import { beforeAll, describe, expect, it } from "vitest";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { printedBatches, printedPages, printedTasting, printedWorkbook } from "../support/printed-workbook";
import { pageKinds } from "../../src/workbook/sheets/pages/insert-page";
import { useBench } from "./support/bench-fixture";
import type { BenchPage } from "./support/bench-page";
import { pdftotext, readPdf } from "./support/read-pdf";

const bench = useBench({ profile: "whole file" });

/** A batch takes three pages, and more where it has blocks, each page to print one; the season's list and the stores' shopping list have their own, and so has each kit. */
const expectedPages: Readonly<Record<string, number>> = {
  ...Object.fromEntries(printedBatches().map((batch) => [batch.sheetName, planBatch(batch).print.breaksBeforeRow.length + 1])),
  ...Object.fromEntries(
    printedPages.flatMap((sheetName) =>
      // With every block a recipe and a lesson are longer than a page on which everybody can read them.
      pageKinds.map((kind) => [`${sheetName} ${kind}`, sheetName === "US blocks" && (kind === "recipe" || kind === "lesson") ? 2 : 1]),
    ),
  ),
  Season: 2,
  Kit: 3,
  Stores: 2,
  Club: 1,
  Class: 1,
  ...Object.fromEntries(printedTasting.map(({ sheetName, print }) => [sheetName, print.breaksBeforeRow.length + 1])),
};
/** A batch with readings has its fermentation, a blank one no empty frame; the season its months, gravities, efficiency with bitterness, and scores. */
const charts = new Map<string, number>([
  ...printedBatches().map(({ sheetName, readings }) => [sheetName, readings.length > 0 ? 1 : 0] as const),
  ["Season", 4],
]);
const smallestPoints = 8;

interface Printed {
  /** What the grid shows in the print area, cell by cell. */
  readonly shown: readonly string[];
  readonly onPaper: readonly string[];
  readonly cut: readonly string[];
  readonly smallest: number;
  readonly charts: number;
  readonly footers: readonly string[];
  /** Of the fullest page: how far its cells reach beyond the lower margin, in points. */
  readonly over: number;
}

/** The paper as it stands just before the browser prints, asked of the page itself. */
const laidOut = (tab: BenchPage, sheet: string): Promise<Printed> =>
  tab.page.evaluate(async (name) => {
    const area = await Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem(name).pageLayout.getPrintAreaOrNullObject().load("address");
      await context.sync();
      return range.address.slice(range.address.lastIndexOf("!") + 1);
    });
    const workbook = window.gylebookBench.univerAPI.getActiveWorkbook()!;
    const worksheet = workbook.getSheetByName(name)!;
    workbook.setActiveSheet(worksheet);
    window.dispatchEvent(new Event("beforeprint"));
    const paper = document.getElementById("paper")!;
    const cells = [...paper.querySelectorAll("td")];
    const texts = [...paper.querySelectorAll("td, figcaption, li, svg text, .paper-edge span")].filter((one) => one.textContent !== "");
    const pages = [...paper.querySelectorAll<HTMLElement>(".paper-page")];
    const printed = {
      shown: worksheet
        .getRange(area)
        .getDisplayValues()
        .flat()
        .map((text) => text.replace(/[\r\n]+$/u, ""))
        .filter((text) => text !== ""),
      onPaper: cells.map((cell) => cell.textContent ?? "").filter((text) => text !== ""),
      cut: cells.filter((cell) => cell.scrollWidth > cell.clientWidth + 1).map((cell) => cell.textContent ?? ""),
      // What a chart is drawn smaller by counts too.
      smallest: Math.min(
        ...texts.map((one) => {
          const drawn = one instanceof SVGTextElement ? one.getScreenCTM()?.a || one.getScreenCTM()?.b || 1 : 1;
          return parseFloat(getComputedStyle(one).fontSize) * 0.75 * Math.abs(drawn);
        }),
      ),
      charts: paper.querySelectorAll(".bench-chart svg[viewBox]").length,
      footers: pages.map((page) => page.querySelector("footer")?.textContent ?? ""),
      over: Math.max(
        ...pages.map((page) => {
          const footer = page.querySelector("footer")!.getBoundingClientRect().top;
          return (page.querySelector(".paper-cells")!.getBoundingClientRect().bottom - footer) * 0.75;
        }),
      ),
    };
    window.dispatchEvent(new Event("afterprint"));
    return printed;
  }, sheet);

describe("the sheet in front, on paper", () => {
  let tab: BenchPage;
  beforeAll(async () => {
    const bytes = [...(await printedWorkbook())];
    tab = await bench.open();
    await tab.page.evaluate(async (file) => {
      await window.gylebookBench.open(new Uint8Array(file), "paper.xlsx");
      await window.gylebookBench.calculated();
    }, bytes);
    // The part that lays out is fetched when the bench has time.
    await tab.page.waitForFunction(() => {
      window.dispatchEvent(new Event("beforeprint"));
      const there = document.getElementById("paper") !== null;
      window.dispatchEvent(new Event("afterprint"));
      return there;
    });
    // Making the workbook is a minute's work of the processor's, and a busy machine gives it a tenth of one.
  }, 900_000);

  it.each(Object.keys(expectedPages))("%s: every cell whole and readable, on as many pages as it is set up for", async (name) => {
    const printed = await laidOut(tab, name);
    expect(printed.shown.length).toBeGreaterThan(/shopping$|^Tasting/.test(name) ? 30 : name.startsWith("Scores") ? 20 : 60);
    expect([...printed.onPaper].sort()).toEqual([...printed.shown].sort());
    expect(printed.cut).toEqual([]);
    expect(printed.smallest).toBeGreaterThanOrEqual(smallestPoints - 0.01);
    expect(printed.over).toBeLessThanOrEqual(0);
    expect(printed.charts).toBe(charts.get(name) ?? 0);
    const pages = expectedPages[name]!;
    expect(printed.footers).toEqual(
      Array.from({ length: pages }, (_, index) =>
        / (recipe|shopping|lesson|labels)$/.test(name) ? `${name} · Gylebook` : `${name} · page ${index + 1} of ${pages}`,
      ),
    );
  });

  it.skipIf(pdftotext === undefined).each(["US grain", "Metric extract", "Hand-out recipe", "Season", "Kit"])(
    "%s as Chromium's own PDF: every word inside its page, none over another, none below 8 points",
    async (name) => {
      const { shown } = await laidOut(tab, name);
      const pages = readPdf(await tab.page.pdf({ preferCSSPageSize: true, printBackground: true }));
      expect(pages).toHaveLength(expectedPages[name]!);
      const words = pages.flatMap(({ words }) => words);
      const text = words.map((word) => word.text).join("");
      const missing = shown.flatMap((cell) => cell.split(/\s+/u)).filter((word) => !text.includes(word));
      expect(missing).toEqual([]);
      for (const { width, height, words } of pages) {
        expect(words.length).toBeGreaterThan(30);
        for (const { text, left, right, top, bottom } of words) {
          expect(left >= 10 && right <= width - 10 && top >= 10 && bottom <= height - 10, `${text} at ${left}, ${top}`).toBe(true);
          // Poppler's box is as high as the letters' size, or a fifth higher. The title of a chart's axis stands upright.
          const line = text.length <= 2 ? Math.max(bottom - top, right - left) : bottom - top;
          expect(line, text).toBeGreaterThanOrEqual(smallestPoints - 0.02);
        }
        const over = words.flatMap((one, index) =>
          words
            .slice(index + 1)
            .filter(
              (other) =>
                Math.min(one.right, other.right) - Math.max(one.left, other.left) > 1 &&
                Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > 3,
            )
            .map((other) => `${one.text} / ${other.text}`),
        );
        expect(over).toEqual([]);
      }
    },
  );
  it("is read by Poppler's pdftotext (set GYLEBOOK_PDFTOTEXT or install poppler-utils)", ({ skip }) => {
    if (pdftotext === undefined) skip("pdftotext was not found");
    expect(pdftotext).toBeTruthy();
  });

  it("is printed by Ctrl+P, by Print, and by PDF, which says what to choose; the bench is as before afterwards", async () => {
    const { page } = tab;
    const title = await page.title();
    await page.evaluate(() => {
      const calls: string[] = [];
      Object.assign(window, {
        printed: calls,
        print: () => {
          window.dispatchEvent(new Event("beforeprint"));
          calls.push(`${document.title}: ${document.querySelectorAll(".paper-page").length}`);
          window.dispatchEvent(new Event("afterprint"));
        },
      });
      const workbook = window.gylebookBench.univerAPI.getActiveWorkbook()!;
      workbook.setActiveSheet(workbook.getSheetByName("US grain")!);
    });
    const printed = (times: number) =>
      page.waitForFunction((count) => (window as unknown as { printed: string[] }).printed.length === count, times);
    await tab.click("US grain", "B5");
    await page.keyboard.press("Control+p");
    await printed(1);
    await page.getByRole("button", { name: "Print", exact: true }).click();
    await printed(2);
    await page.getByRole("button", { name: "PDF", exact: true }).click();
    await page.getByText("choose “Save as PDF”").waitFor();
    await page.getByRole("button", { name: "Open that window" }).click();
    await printed(3);
    expect(await page.evaluate(() => (window as unknown as { printed: string[] }).printed)).toEqual(Array(3).fill("paper US grain: 3"));
    expect(await page.title()).toBe(title);
    expect(await page.locator("#paper").count()).toBe(0);
  });
});
