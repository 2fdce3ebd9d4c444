import { expect, test } from "vitest";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { dayNumber } from "../../src/workbook/grid/words/day-number";
import { useBench } from "./support/bench-fixture";
import { CompanionPage, fakePaneClock } from "./support/companion-pane";
import { openScreen } from "./support/pane-screens";

/** A quarter of an hour off every other zone, and so far east that its morning is the evening before in UTC: 13 h 45 min in summer time. */
const bench = useBench({ profile: "whole file", locale: "de-DE", timezoneId: "Pacific/Chatham" });
const onTheIsland = (day: number, hour: number, minute: number): string =>
  new Date(Date.UTC(2028, 1, day, hour, minute) - (13 * 60 + 45) * 60_000).toISOString();
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
