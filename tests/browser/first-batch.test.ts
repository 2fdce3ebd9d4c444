import { expect, test } from "vitest";
import type { BenchPage } from "./support/bench-page";
import { useBench } from "./support/bench-fixture";
import { cellOf, get as footbridge, insertFootbridge } from "./support/footbridge";
import { openScreen } from "./support/pane-screens";
import { pictures } from "./support/pictures";

const bench = useBench({ profile: "whole file" });

const rowOf = (name: string): number => Number(cellOf(name).replace(/\D/g, ""));

/** Types a reading into the first free row of the table, as a brewer would; the sheet must be scrolled to it. */
async function typeReading(tab: BenchPage, index: number, when: number, reading: number): Promise<void> {
  const row = rowOf("reading_times") + index;
  await tab.setValue("Footbridge", `A${row}`, when);
  await tab.setValue("Footbridge", `C${row}`, "SG");
  await tab.setValue("Footbridge", `D${row}`, 68);
  await tab.scrollTo("Footbridge", `B${row}`);
  await tab.enter("Footbridge", `B${row}`, String(reading));
}

const get = (tab: BenchPage, name: string) => footbridge(tab, "Footbridge", name);

// First: only a new profile has no work of its own to come back to.
test("the first visit finds the sample batch on screen", async () => {
  const tab = await bench.open("");
  const sample = await tab.page.evaluate(() => window.gylebookBench.univerAPI.getActiveWorkbook()?.getSheets()[0]?.getSheetName());
  expect(sample).toBe("Batch 1");
  expect(await tab.valueAt("Batch 1", "A1")).toBe("Quillmarsh Footbridge Pale");
  await tab.calculated();
  await tab.page.screenshot({ path: `${pictures}sample.png` });
});

test("a batch from the pane to the verdict, through a reload and a saved file", async () => {
  const tab = await bench.emptied();
  await insertFootbridge(tab, await tab.pane());
  expect(await get(tab, "og_plan")).toBeCloseTo(1.0511, 3);
  expect(await get(tab, "verdict")).toBe("");
  await tab.page.screenshot({ path: `${pictures}inserted.png` });

  await typeReading(tab, 0, 46273.75, 1.03);
  expect(await get(tab, "verdict")).toBe("working");
  const gravity = Number(await get(tab, "fg"));
  const alcohol = Number(await get(tab, "abv_reached"));
  await typeReading(tab, 1, 46279.75, 1.012);
  await typeReading(tab, 2, 46280.8, 1.012);
  expect(await get(tab, "verdict")).toBe("steady");
  expect(Number(await get(tab, "fg"))).toBeLessThan(gravity - 0.015);
  expect(Number(await get(tab, "abv_reached"))).toBeGreaterThan(alcohol + 2);
  await tab.page.screenshot({ path: `${pictures}readings.png` });

  const names = ["og_plan", "fg", "abv_reached", "verdict", "ibu_plan", "sugar_mass", "pressure_verdict", "first_taste"];
  const shown = await Promise.all(names.map((name) => get(tab, name)));
  await tab.keepNow();
  await tab.reload();
  expect(await Promise.all(names.map((name) => get(tab, name)))).toEqual(shown);

  const bytes = await tab.saveFile();
  await tab.startEmpty();
  await tab.openFile(bytes, "footbridge.xlsx");
  await tab.page.waitForFunction(() => window.gylebookBench.univerAPI.getActiveWorkbook()?.getSheetByName("Footbridge") != null);
  await tab.calculated();
  expect(await Promise.all(names.map((name) => get(tab, name)))).toEqual(shown);
});

test("a name that is taken is asked about, never written over; wrong entries are answered beside their fields", async () => {
  const tab = await bench.emptied();
  const pane = await tab.pane();
  await openScreen(pane, "Plan", "New batch");
  await pane.getByRole("button", { name: "Write the batch sheet" }).click();
  await pane.getByText("The batch needs a name").waitFor();
  await insertFootbridge(tab, await tab.pane());
  await tab.setValue("Footbridge", cellOf("batch_number"), 7);

  await pane.getByLabel("Name of the batch").fill("footbridge");
  await pane.getByRole("button", { name: "Write the batch sheet" }).click();
  await pane.getByText("There is a sheet “footbridge” already").or(pane.getByText('There is a sheet "footbridge" already')).waitFor();
  await tab.page.screenshot({ path: `${pictures}taken.png` });
  await pane.getByRole("button", { name: "Use “footbridge (2)”" }).click();
  await pane.getByText("“footbridge (2)” is in the workbook").waitFor();
  expect(await tab.valueAt("Footbridge", cellOf("batch_number"))).toBe(7);
});

test("the pane explains every function, and finds one by a word", async () => {
  const tab = await bench.emptied();
  const pane = await tab.pane();
  await openScreen(pane, "Help", "Functions");
  await pane.getByLabel("Look for").fill("bottle pressure");
  await pane.getByRole("button", { name: "GYLE.PACK.CHECK" }).click();
  await pane.getByRole("heading", { name: "GYLE.PACK.CHECK" }).waitFor();
  await pane.getByText("No verdict makes a bottle safe").waitFor();
  await pane.getByText("=GYLE.PACK.CHECK(").first().waitFor();
  await tab.page.screenshot({ path: `${pictures}function.png` });
  await pane.getByRole("button", { name: "All functions" }).click();
  await pane.getByLabel("Look for").waitFor();

  await pane.getByLabel("Look for").fill("sugar for bottling");
  await pane.getByText(/^\d of \d+, the likeliest first$/).waitFor();
  await tab.page.screenshot({ path: `${pictures}function-search.png` });
  expect(await pane.locator(".functions button").first().textContent()).toBe("GYLE.PACK.PRIMING");
  await pane.getByRole("button", { name: "GYLE.PACK.PRIMING" }).click();
  // A function that the words name leads to its page, at its top.
  await pane.getByLabel("Take care").getByRole("button", { name: "GYLE.PACK.CHECK" }).click();
  const heading = pane.getByRole("heading", { name: "GYLE.PACK.CHECK" });
  await heading.waitFor();
  expect(await heading.evaluate((element) => element === document.activeElement)).toBe(true);
  await tab.page.screenshot({ path: `${pictures}function-linked.png` });
});
