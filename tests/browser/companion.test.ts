import type { Frame } from "playwright-core";
import { expect, test } from "vitest";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { dayNumber } from "../../src/workbook/grid/words/day-number";
import { useBench } from "./support/bench-fixture";
import { CompanionPage, fakePaneClock } from "./support/companion-pane";
import { openScreen } from "./support/pane-screens";
import { picture } from "./support/theme-pictures";

const bench = useBench({ profile: "each test" });
const contents = exampleBatch({
  id: "test",
  sheetName: "Footbridge",
  batchName: "Footbridge",
  brewedOn: dayNumber("2026-09-05"),
  volume: 5,
  units: "us",
  topUp: 0,
  method: "extract",
});

/** The example batch on the bench, with the pane as narrow as it gets. */
async function openCompanion(): Promise<CompanionPage> {
  const tab = await bench.open();
  const pane = await tab.pane();
  await fakePaneClock(tab.page, pane);
  // Tall, so that a picture shows a whole screen; the grid beside it is not what is looked at.
  await tab.page.setViewportSize({ width: 740, height: 1700 });
  await tab.page.evaluate(() => {
    document.getElementById("pane-side")!.style.width = "320px";
  });
  const page = new CompanionPage(tab, pane, contents);
  await page.at("2026-09-05T09:30");
  await page.insertExample();
  return page;
}

const fits = (pane: Frame) => pane.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth);

/** Words of the chart that reach over its edges. */
const cutOff = (pane: Frame): Promise<string[]> =>
  pane.locator(".ferment-chart svg text").evaluateAll((texts) =>
    texts
      .filter((text) => {
        const [word, chart] = [text.getBoundingClientRect(), text.closest("svg")!.getBoundingClientRect()];
        return word.left < chart.left || word.right > chart.right || word.top < chart.top || word.bottom > chart.bottom;
      })
      .map(({ textContent }) => textContent ?? ""),
  );

test("a brew day by the clock: the boil, a late step, a reload, a slip taken back, the teacher's words", async () => {
  const page = await openCompanion();
  const { pane, tab } = page;
  await openScreen(pane, "Brew", "Brew day");
  await pane.locator(".countdown", { hasText: "30:00" }).waitFor();
  await pane.locator(".due").getByText("Cleaner burns skin and eyes").waitFor();
  await picture(page, "before");

  await page.at("2026-09-05T10:00");
  await pane.locator(".countdown", { hasText: "Now" }).waitFor();
  await picture(page, "due");
  await pane.getByLabel("Fill its card with colour").uncheck();
  await picture(page, "due-plain");
  await pane.getByLabel("Fill its card with colour").check();

  // Twelve minutes after the plan's time: the day begins now and the rest of it moves; the plan in the sheet does not.
  const planned = await page.get("timeline", 5);
  await page.at("2026-09-05T10:12");
  await pane.locator(".countdown", { hasText: "Start now" }).waitFor();
  await pane.getByText("when you start now").waitFor();
  await pane.getByText("Planned for 10:00. The plan shifts with you.").waitFor();
  await picture(page, "late");
  await page.pressDue(0);
  expect(Number(await page.get("happened"))).toBeCloseTo((10 * 60 + 12) / 1440, 8);
  expect(await page.get("timeline", 5)).toBe(planned);
  await pane.locator(".running").getByText("15:00").waitFor();

  // A slip of the thumb: fifteen minutes early is asked about, and a yes taken back.
  await page.pressAndBeAsked(/^Start: Collect/, "15 min before its time: it is due at 10:27. Has it really been begun already?");
  await pane.getByRole("button", { name: "Yes, write 10:12" }).click();
  await pane.locator('.day[data-next="2"]').waitFor();
  await pane.getByRole("button", { name: /^Undo: Collect/ }).click();
  await pane.locator('.day[data-next="1"]').waitFor();
  expect(await page.get("happened", 1)).toBe(null);

  // A teacher's own words show at once.
  await page.type("steps", "Fill the kettle, said the teacher", 1);
  await tab.setValue("Footbridge", page.cell("steps", 1).replace("K", "N"), "Mind your back.");
  await tab.setValue("Footbridge", page.cell("steps", 1).replace("K", "O"), "Because beer is mostly water.");
  await pane.locator(".due").getByText("Fill the kettle, said the teacher").waitFor();
  await pane.locator(".due").getByText("Mind your back.").waitFor();
  await pane.locator(".due").getByRole("button", { name: "Why?" }).click();
  await pane.locator(".due").getByText("Because beer is mostly water.").waitFor();

  // In the boil: the times of the steps before it are typed by hand, as somebody without the pane would.
  for (let row = 1; row <= 6; row += 1) await page.type("happened", (10 * 60 + 20 + row) / 1440, row);
  await page.at("2026-09-05T11:00");
  await pane.locator(".due").getByText("Boil begins").waitFor();
  await page.pressDue(7);
  // The first hops boil for 55 minutes.
  await page.at("2026-09-05T11:05");
  await page.pressDue(8);
  // A line of the boil that is marked twenty minutes early is asked about, and not written before the answer.
  await page.at("2026-09-05T11:05");
  await pane.locator(".due .countdown", { hasText: "20:00" }).waitFor();
  await page.pressAndBeAsked(/^Done: Soak/, "20 min before its time: it is due at 11:25. Has it really been done already?");
  await pane.getByRole("button", { name: "No, not yet" }).click();
  expect(await page.get("happened", 9)).toBe(null);
  await page.at("2026-09-05T11:26");
  await page.pressDue(9);
  await page.at("2026-09-05T11:30");
  await expect.poll(() => pane.locator(".running .left").allTextContents()).toEqual(["30:00"]);
  await pane.getByText(/^Done in it: .+ 11:05; Soak hoses.+ 11:26$/).waitFor();
  await pane.locator(".due .countdown", { hasText: "12:00" }).waitFor();
  await picture(page, "boil");
  expect(await fits(pane)).toBe(true);

  // Everything stands in the sheet: a reload loses nothing.
  await tab.keepNow();
  await tab.reload();
  const again = await tab.pane();
  await fakePaneClock(tab.page, again);
  await openScreen(again, "Brew", "Brew day");
  await again.locator(".due .countdown", { hasText: "12:00" }).waitFor();
  await expect.poll(() => again.locator(".running .left").allTextContents()).toEqual(["30:00"]);
  await openScreen(again, "Brew", "Why");
  await again.getByText("Because beer is mostly water.").waitFor();
  await picture(page, "why");
}, 400_000);

test("a reading waits for a cell in edit, is corrected and questioned, a miss is put right, and nothing is bottled that may burst", async () => {
  const page = await openCompanion();
  const { pane, tab } = page;
  await page.at("2026-09-05T14:00");
  await openScreen(pane, "Ferment", "Reading");
  await pane.getByLabel("Reading, SG").fill("1,080");
  await pane.getByLabel("Sample temperature, °F").fill("70");
  await pane.getByLabel("In the fermenter, US gal").fill("5");
  await pane.getByText("Gravity 1.081").waitFor();
  expect(await page.get("og_reading")).toBe(null);
  await pane.getByRole("button", { name: "Write the reading" }).click();
  await pane.getByText("Reading 1.081 is more than the malt can give").waitFor();
  expect(await page.get("og_reading")).toBe(null);
  await picture(page, "doubt");
  // Drawn before a gallon of top-up water: the 66 points of four gallons (the hydrometer was read warm) are 53 in five.
  await page.type("top_up", 1);
  await pane.getByLabel("before the top-up water").check();
  await pane.getByLabel("Reading, SG").fill("1.065");
  await pane.getByLabel("Wort without the water, US gal").fill("4");
  await pane.getByLabel("Top-up water, US gal").fill("1");
  await pane.getByText("Gravity 1.053").waitFor();
  await pane.getByText("Read as 1.066 in 4.00 US gal before 1.00 US gal of top-up water; this is the gravity of the whole.").waitFor();
  await picture(page, "top-up");
  await pane.getByLabel("with the top-up water mixed in").check();
  await page.type("top_up", 0);
  await pane.getByLabel("In the fermenter, US gal").fill("5");
  await pane.getByLabel("Reading, SG").fill("1.057");
  // While a cell is being typed in, the reading waits for it; neither is lost.
  await tab.scrollTo("Footbridge", page.cell("batch_number"));
  await tab.click("Footbridge", page.cell("batch_number"));
  await tab.page.keyboard.type("41", { delay: 30 });
  await tab.page.waitForFunction(() => window.gylebookBench.univerAPI.getActiveWorkbook()!.isCellEditing());
  await pane.getByRole("button", { name: "Write the reading" }).evaluate((button: HTMLElement) => button.click());
  await pane.getByRole("button", { name: "Writing…" }).waitFor();
  await tab.page.waitForTimeout(1000);
  expect(await page.get("og_reading")).toBe(null);
  await tab.leaveEditor();
  await pane.getByText("The original gravity is in the sheet.").waitFor();
  expect(await page.get("og_reading")).toBe(1.057);
  expect(await page.get("batch_number")).toBe(41);

  // Before the screen reads the sheet: a note that came after would be somebody else's change, and refused.
  await page.type("notes", "Mine.");
  await openScreen(pane, "Brew", "Too high, too low");
  await pane.getByRole("heading", { name: "Add water" }).waitFor();
  await picture(page, "correction");
  await pane.getByRole("button", { name: "Note this: Add water" }).click();
  await pane.getByText("It is in the notes of the sheet").waitFor();
  expect(await page.get("notes")).toMatch(
    /^Mine\.\nSat 5 Sept?, 14:00, in the fermenter: 5\.00 US gal at 1\.058 instead of 5\.00 US gal at 1\.051\. Add water: Stir in 0\.\d\d US gal of water\./,
  );

  // By refractometer, well into the fermentation: written as SG with a note.
  await page.at("2026-09-12T18:00");
  await openScreen(pane, "Ferment", "Reading");
  await pane.getByLabel("Refractometer").check();
  await pane.getByLabel("Reading now, °Brix").fill("7.4");
  await pane.getByText("Worked out from a refractometer: 7.4 °Brix").waitFor();
  await picture(page, "reading");
  await pane.getByRole("button", { name: "Write the reading" }).click();
  await pane.getByText("The yeast is at work.").waitFor();
  await pane.getByText("Read again on Sun 13 Sep").waitFor();
  expect(Number(await page.get("gravities"))).toBeGreaterThan(1.01);
  await picture(page, "standing");

  // Few readings: a wide curve by what is expected, and nothing of the chart is cut off.
  await openScreen(pane, "Ferment", "Fermentation");
  await pane.locator(".ferment-chart").waitFor();
  expect(await cutOff(pane)).toEqual([]);
  await picture(page, "fermentation");

  // Not steady: a danger to be named. Too much gas for the glass: not at all.
  await openScreen(pane, "Package", "Packaging");
  await pane.getByText("The readings are not steady.").waitFor();
  await picture(page, "not-steady");
  const write = pane.getByRole("button", { name: "Write it to the sheet" });
  expect(await write.isDisabled()).toBe(true);
  await pane.getByText("only if you accept the danger above").waitFor();
  await pane.getByLabel("Carbonation, volumes of CO2").fill("4");
  await pane.getByText("Do not bottle this.").waitFor();
  await pane.getByText("None is given: see above.").first().waitFor();
  await pane.getByText(/Pressure check: over\. [\d.]+ volumes at \d+ °F make [\d.]+ psi in an ordinary beer bottle/).waitFor();
  expect(await write.count()).toBe(0);
  await picture(page, "refused");
  expect(await page.get("packaged_on")).toBe(null);
  // The same carbonation in a cold keg: its readings are named, and no sugar; in a hot one no pressure either.
  await pane.getByLabel("Keg", { exact: true }).check();
  await pane.getByLabel("Keg stands at, °F").fill("110");
  await pane.getByText("Do not fill the keg.").waitFor();
  expect(await pane.locator("dl.answer").textContent()).toMatch(/^Set the keg toNot at any pressure: see above\./);
  expect(await write.count()).toBe(0);
  await pane.getByLabel("Keg stands at, °F").fill("38");
  await pane.getByLabel("I know that the keg may take more pressure than planned").waitFor();
  expect(await pane.locator("dl.answer").textContent()).toMatch(/^Set the keg to\d\d\.\d psi.*carbon dioxide suffocates/);
  expect(await write.isDisabled()).toBe(true);
  await picture(page, "keg");
  await pane.getByLabel("Bottles", { exact: true }).check();
  await pane.getByLabel("Carbonation, volumes of CO2").fill("1.8");
  await pane.getByLabel("I know that these bottles may burst").check();
  await write.click();
  await pane.getByText("It is in the sheet, in section 8.").waitFor();
  expect(await page.get("packaged_on")).toBe(dayNumber("2026-09-12"));
  expect(await page.get("carbonation")).toBe(1.8);
  await openScreen(pane, "Package", "Tasting");
  await pane.getByLabel("Note to add").waitFor();
  await picture(page, "tasting");
  expect(await fits(pane)).toBe(true);
}, 400_000);
