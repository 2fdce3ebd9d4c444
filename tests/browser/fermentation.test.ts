import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { useBench, wideGrid } from "./support/bench-fixture";
import { openScreen } from "./support/pane-screens";
import { pictures } from "./support/pictures";

const bench = useBench({ profile: "whole file", viewport: wideGrid });
const sampleChart = planBatch(firstExtractBatch()).charts[0]!;

test("the sample's chart is drawn over the grid and in the pane with the same series, and follows a new reading", async () => {
  const tab = await bench.open("");
  await tab.page.evaluate(
    (row) => window.gylebookBench.univerAPI.getActiveWorkbook()?.getActiveSheet().scrollToCell(row, 3),
    Number(sampleChart.from.slice(1)) - 8,
  );
  const figure = tab.page.locator(".bench-chart");
  await figure.locator("svg [aria-label='line']").first().waitFor();
  // It is drawn anew while the sheet's figures come in, and while it is scrolled: what it comes to counts.
  const drawn = (what: () => Promise<unknown>) => expect.poll(what, { timeout: 20_000 });
  await drawn(() => figure.locator("li").allTextContents()).toEqual(
    sampleChart.series.filter(({ unnamed }) => !unnamed).map(({ name }) => name),
  );
  // Curve, two edges of its band, temperature; the gravities are marks without a line.
  await drawn(() => figure.locator("svg [aria-label='line'] path").count()).toBe(4);
  // Both edges of the band, and the temperature; never the curve.
  await drawn(() => figure.locator("svg [aria-label='line'][stroke-dasharray]").count()).toBe(3);
  await tab.page.screenshot({ path: `${pictures}sample-chart.png` });

  const pane = await tab.pane();
  await openScreen(pane, "Ferment", "Fermentation");
  await pane.getByText(/^Steady, by .* readings/).waitFor();
  await drawn(() => pane.locator(".ferment-chart circle.mark").count()).toBe(7); // six readings and the one in the key
  const rows = pane.getByRole("table").getByRole("row");
  expect(await rows.count()).toBe(7);

  const [first = ""] = (planBatch(firstExtractBatch()).names.find(({ name }) => name === "reading_times")?.range ?? "").split(":");
  const row = Number(first.slice(1)) + 5;
  for (const [column, value] of [
    ["A", 46283.5],
    ["C", "SG"],
    ["D", 68],
    ["B", 1.02],
  ] as const)
    await tab.setValue("Batch 1", `${column}${row}`, value);
  await pane.getByRole("button", { name: "Look again" }).click();
  await pane.getByText("Rising: beer cannot do that.").waitFor();
  await pane.getByText("No curve yet.").waitFor();
  await drawn(() => rows.count()).toBe(8);

  await pane.getByRole("button", { name: "Type the next reading" }).click();
  const heading = pane.getByRole("heading", { name: "Reading", exact: true });
  await heading.waitFor();
  await drawn(() => heading.evaluate((element) => element === document.activeElement)).toBe(true);
});

test("the dates of a batch to come are a calendar file, to download and to copy; a day wanted is counted backwards", async () => {
  const tab = await bench.emptied();
  const pane = await tab.pane();
  await openScreen(pane, "Plan", "New batch");
  await pane.getByLabel("Name of the batch").fill("Winter");
  await pane.getByLabel("Brewed on").fill("2090-09-05");
  await pane.getByRole("button", { name: "Write the batch sheet" }).click();
  await pane.getByText("“Winter” is in the workbook").waitFor();
  await tab.calculated();
  await openScreen(pane, "Ferment", "Calendar");
  await pane.locator(".dates").getByText("First taste").waitFor();
  await pane.getByRole("button", { name: "Make a calendar file" }).click();
  const [download] = await Promise.all([
    tab.page.waitForEvent("download"),
    pane.getByRole("link", { name: "Download “Winter 2090-09-05.ics”" }).click(),
  ]);
  const file = readFileSync(await download.path(), "utf8");
  expect(file).toMatch(/^BEGIN:VCALENDAR\r\n/);
  expect(file.match(/BEGIN:VEVENT/g)).toHaveLength(6);
  expect(file).toContain("DTSTART:20900905T100000\r\n");
  expect((await pane.getByLabel("The file as text").inputValue()).replaceAll("\n", "\r\n").trim()).toBe(file.trim());

  await pane.getByLabel("First bottle to be poured on").fill("2090-12-24");
  await pane.getByText(/Brew by .* 2 Dec,/).waitFor();
  await tab.page.locator("#pane").screenshot({ path: `${pictures}calendar.png` });
});

test("the pane takes the host's theme, and follows when it changes", async () => {
  const tab = await bench.emptied();
  const pane = await tab.pane();
  const paper = () => pane.evaluate(() => getComputedStyle(document.body).backgroundColor);
  for (const [theme, color] of [
    ["dark", "rgb(38, 38, 38)"],
    ["contrast", "rgb(0, 0, 0)"],
    ["light", "rgb(255, 255, 255)"],
  ] as const) {
    await tab.page.selectOption("#theme-choice", theme);
    await pane.waitForFunction((wanted) => document.documentElement.dataset["theme"] === wanted, theme);
    expect(await paper()).toBe(color);
  }
});
