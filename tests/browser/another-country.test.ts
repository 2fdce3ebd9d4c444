import { afterEach, expect, test } from "vitest";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { dayNumber } from "../../src/workbook/grid/words/day-number";
import { writingMark } from "../../src/workbook/grid/write/writing-mark";
import { useBench } from "./support/bench-fixture";
import { CompanionPage, fakePaneClock } from "./support/companion-pane";
import { behave } from "./support/pane-faults";
import { openScreen } from "./support/pane-screens";
import { pictures } from "./support/pictures";

/** A quarter of an hour off every other zone, and so far east that its morning is the evening before in UTC: 13 h 45 min in summer time. */
const bench = useBench({ profile: "whole file", locale: "de-DE", timezoneId: "Pacific/Chatham" });
const onTheIsland = (day: number, hour: number, minute: number): string =>
  new Date(Date.UTC(2028, 1, day, hour, minute) - (13 * 60 + 45) * 60_000).toISOString();
/** The switches are the page's, and outlive a workbook. */
afterEach(async () => {
  const [page] = bench.context.pages();
  await page?.evaluate(() => window.gylebookBench.ready);
  const pane = page?.frames().find((frame) => frame.url().endsWith("taskpane.html"));
  if (pane) await behave(pane, {});
});
/** Right to left: "harvest beer". */
const name = "בירת קציר";

test("the day and the hour are those of the wall: on 29 February, in a far time zone, in a German browser, with a name from right to left", async () => {
  const tab = await bench.open();
  const first = await tab.pane();
  await fakePaneClock(tab.page, first);
  await atInstant(onTheIsland(29, 6, 0));
  await tab.reload();
  const pane = await tab.pane();
  await openScreen(pane, "Plan", "New batch");
  expect(await pane.getByLabel("Brewed on").inputValue()).toBe("2028-02-29");
  // In the units of a German browser.
  expect(await pane.getByLabel(/^Metric/).isChecked()).toBe(true);
  await pane.getByLabel("Name of the batch").fill(name);
  await pane.getByLabel("An example pale ale to change").check();
  await pane.getByRole("button", { name: "Write the batch sheet" }).click();
  await pane.getByText(`“${name}” is in the workbook`).waitFor();
  await tab.calculated();

  const day = dayNumber("2028-02-29");
  const contents = exampleBatch({
    id: "island",
    sheetName: name,
    batchName: name,
    brewedOn: day,
    volume: 20,
    units: "metric",
    topUp: 0,
    method: "extract",
  });
  const page = new CompanionPage(tab, pane, contents);
  expect(await page.get("brewed_on")).toBe(day);
  expect(await page.get("batch_name")).toBe(name);
  await openScreen(pane, "Brew", "Brew day");
  await atInstant(onTheIsland(29, 10, 7));
  await page.pressDue(0);
  expect(Number(await page.get("happened"))).toBeCloseTo((10 * 60 + 7) / 1440, 8);

  async function atInstant(iso: string): Promise<void> {
    const now = await tab.pane();
    await now.evaluate((time) => sessionStorage.setItem("clock of the test", time), String(Date.parse(iso)));
  }
});

test("a formula is typed, put into a cell and explained as German Excel writes it, its hint too", async () => {
  const tab = await bench.emptied();
  const pane = await tab.pane();
  await behave(pane, { locale: "de-DE" });
  await openScreen(pane, "Help", "Functions");
  await pane.getByRole("button", { name: "GYLE.BEER.ABV", exact: true }).click();
  await pane.getByLabel("original_gravity", { exact: true }).fill("12,4");
  await pane.getByLabel("final_gravity", { exact: true }).fill("MIN(1,010;1,020)");
  await pane.getByText("=GYLE.BEER.ABV(12,4; MIN(1,010;1,020))").waitFor();
  await pane.getByText("wrap it in GYLE.WORT.SG(12,4)").waitFor();
  await pane.locator("form.put").screenshot({ path: `${pictures}put-german.png` });
  await pane.getByRole("button", { name: /^Put into/ }).click();
  await pane.getByText("Written. The cell shows").waitFor();
  await tab.calculated();

  await openScreen(pane, "Help", "Explain");
  await pane.getByText("wrap it in GYLE.WORT.SG(12,4)").first().waitFor();
  await pane.locator("body").screenshot({ path: `${pictures}explain-german.png` });
  await tab.setValue("Sheet 1", "A1", "=GYLE.BEER.ABV(1.048,1.010)");
  await pane.getByText("=GYLE.BEER.ABV(1,048;1,010)").waitFor();
});

test("an Excel without notes says before it unplugs that nobody can plug in again", async () => {
  const tab = await bench.emptied();
  const pane = await tab.pane();
  const words = pane.getByText("the copy calculates, but nobody can plug it in again");
  await openScreen(pane, "Share", "Unplug");
  await pane.getByRole("button", { name: "Make the unplugged copy" }).waitFor();
  expect(await words.count()).toBe(0);
  await openScreen(pane, "Help", "Explain");
  await behave(pane, { excelApi: 17 });
  await openScreen(pane, "Share", "Unplug");
  await words.waitFor();
});

test("what a write left behind is told at the pane's start, and goes when that is asked for", async () => {
  const tab = await bench.emptied();
  const before = await tab.pane();
  await before.evaluate(
    (name) =>
      Excel.run(async ({ workbook }) => {
        const begun = new Date(Date.now() - 600_000).toISOString();
        for (const left of ["Half", "Other half"]) workbook.worksheets.add(left).names.add(name, `="${begun} abcdef"`);
      }),
    writingMark,
  );
  await tab.keepNow();
  await tab.reload();
  const pane = await tab.pane();
  const told = pane.getByRole("region", { name: "Left behind" });
  await told.getByText("“Half”, “Other half” were left behind when writing broke off.").waitFor();
  await told.screenshot({ path: `${pictures}left-behind.png` });
  await told.getByRole("button", { name: "Delete them" }).click();
  await told.waitFor({ state: "detached" });
  const names = await pane.evaluate(() =>
    Excel.run(async (context) => {
      const sheets = context.workbook.worksheets.load("items/name");
      await context.sync();
      return sheets.items.map(({ name }) => name);
    }),
  );
  expect(names).toEqual(["Sheet 1"]);
});
