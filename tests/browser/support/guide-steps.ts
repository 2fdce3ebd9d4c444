import { readFileSync } from "node:fs";
import type { PictureName } from "../../../src/build/guide/pictures";
import type { BenchPage } from "./bench-page";
import { openScreen } from "./pane-screens";

/** How each picture of the guide comes about: from an empty workbook to the moment when the picture is taken. */
export const guideSteps: Readonly<Record<PictureName, (tab: BenchPage) => Promise<void>>> = {
  "first-formula": async (tab) => {
    await writeColumn(tab, "A", ["Gravity", "before", "after", "alcohol %"]);
    await tab.setValue(sheet, "B2", 1.05);
    await tab.setValue(sheet, "B3", 1.01);
    await tab.click(sheet, "B4");
    await tab.page.keyboard.type("=GYLE.BEER.AB", { delay: 30 });
    await tab.page.getByText("Alcohol by volume of a beer").first().waitFor();
  },
  "error-explained": async (tab) => {
    await writeColumn(tab, "A", ["Gravity", "before", "after", "alcohol %"]);
    await tab.setValue(sheet, "B2", 12.4);
    await tab.setValue(sheet, "B3", 1.01);
    await tab.setValue(sheet, "B4", "=GYLE.BEER.ABV(B2,B3)");
    await tab.hover(sheet, "B4");
    await tab.page.getByText("original_gravity is 12.4").first().waitFor();
  },
  "functions-screen": async (tab) => {
    const pane = await tab.pane();
    await openScreen(pane, "Help", "Functions");
    await pane.getByLabel("Look for").fill("priming");
    await pane.getByRole("button", { name: "GYLE.PACK.PRIMING" }).click();
    await pane.getByRole("heading", { name: "GYLE.PACK.PRIMING" }).waitFor();
  },
  "new-batch": async (tab) => {
    const pane = await tab.pane();
    await openScreen(pane, "Plan", "New batch");
    await pane.getByLabel("Name of the batch").fill("Quillmarsh Mild");
    await pane.getByLabel("An example pale ale to change").check();
  },
  "batch-sheet": async (tab) => {
    await guideSteps["new-batch"](tab);
    const pane = await tab.pane();
    await pane.getByRole("button", { name: "Write the batch sheet" }).click();
    await pane.getByText("“Quillmarsh Mild” is in the workbook").waitFor();
    await tab.calculated();
  },
  "water-block": async (tab) => {
    await guideSteps["new-batch"](tab);
    const pane = await tab.pane();
    await pane.getByLabel("Grain, mashed; extract may be added").check();
    await pane.getByRole("button", { name: "Write the batch sheet" }).click();
    await pane.getByText("“Quillmarsh Mild” is in the workbook").waitFor();
    await openScreen(pane, "Plan", "More on the sheet");
    await pane.getByLabel("Water treatment").check();
    await pane.getByRole("button", { name: "Add it", exact: true }).click();
    await pane.getByText(/^Added: /).waitFor();
    await tab.calculated();
    await fillWater(tab, "Quillmarsh Mild");
  },
  "season-sheet": async (tab) => {
    await openSample(tab, "season.xlsx", "Season");
    await openScreen(await tab.pane(), "Season", "Season");
    await (await tab.pane()).getByText("While this pane is open").waitFor();
  },
  "stores-sheet": async (tab) => {
    await openSample(tab, "season.xlsx", "Stores");
    await openScreen(await tab.pane(), "Season", "Stores");
    await (await tab.pane()).getByRole("button", { name: "Write the shopping list" }).waitFor();
  },
  "kit-sheet": async (tab) => {
    await openSample(tab, "season.xlsx", "Kit");
    await openScreen(await tab.pane(), "Season", "Kit");
    await (await tab.pane()).getByRole("button", { name: "Learn from the batches again" }).waitFor();
  },
  "unplugged-sheet": async (tab) => {
    await openSample(tab, "shared-unplugged.xlsx", "Sluice Keeper's unplugged");
    await openScreen(await tab.pane(), "Share", "Unplug");
    await (await tab.pane()).getByRole("heading", { name: "Unplug" }).waitFor();
  },
  "hand-out": async (tab) => {
    await guideSteps["batch-sheet"](tab);
    const pane = await tab.pane();
    await openScreen(pane, "Share", "Hand-out");
    await pane.getByLabel("Batch", { exact: true }).selectOption("Quillmarsh Mild");
    await pane.getByLabel(/^Their volume/).fill("5");
    await pane.getByRole("button", { name: "Write the blank on a sheet of its own" }).click();
    await pane.getByText("“Quillmarsh Mild, blank” is in the workbook").waitFor();
    await tab.calculated();
  },
  "club-sheet": async (tab) => {
    await guideSteps["batch-sheet"](tab);
    const pane = await tab.pane();
    await openScreen(pane, "Share", "Batch file");
    await pane.getByLabel("Batch", { exact: true }).selectOption("Quillmarsh Mild");
    await pane.getByRole("button", { name: "Make the batch file" }).click();
    const text = await pane.getByLabel("Or copy its text").inputValue();
    await openScreen(pane, "Share", "Club");
    await pane.getByLabel("Or paste the text of one").fill(text);
    await pane.getByRole("button", { name: "Use the pasted text" }).click();
    await pane.getByLabel("Whose is “Quillmarsh Mild”?").fill("Ada");
    await pane.getByRole("button", { name: "Write the club sheet" }).click();
    await pane.getByText("on “Club” now").waitFor();
    await tab.calculated();
  },
};

/** The README's picture: a batch that has been brewed, with its fermentation in the pane. */
export async function readmeStep(tab: BenchPage): Promise<void> {
  await openSample(tab, "first-extract-batch.xlsx", "Batch 1");
  await openScreen(await tab.pane(), "Ferment", "Fermentation");
  await (await tab.pane()).locator("svg").first().waitFor();
}

const samples = new URL("../../../sample-workbooks/", import.meta.url);

/** Opens one of our sample workbooks and brings a sheet of it to the front. */
async function openSample(tab: BenchPage, file: string, sheetName: string): Promise<void> {
  await tab.openFile(readFileSync(new URL(file, samples)), file);
  // Asked where the workbook before was changed.
  await tab.page
    .getByRole("button", { name: "Open without saving" })
    .click({ timeout: 3_000 })
    .catch(() => undefined);
  await tab.page.waitForFunction(
    (wanted) => Boolean(window.gylebookBench.univerAPI.getActiveWorkbook()?.getSheetByName(wanted)),
    sheetName,
  );
  await tab.calculated();
  await tab.page.evaluate((wanted) => {
    const workbook = window.gylebookBench.univerAPI.getActiveWorkbook()!;
    workbook.setActiveSheet(workbook.getSheetByName(wanted)!);
  }, sheetName);
}

/** What an invented supplier reports, some of it replaced by demineralised water, and two salts. */
async function fillWater(tab: BenchPage, sheetName: string): Promise<void> {
  const rowOf = (label: string) =>
    tab.page.evaluate(
      ([name, label]) => {
        for (let row = 1; row < 400; row += 1) if (window.gylebookBench.valueAt(name, `A${row}`) === label) return row;
        throw new Error(`the sheet has no line ${label}`);
      },
      [sheetName, label] as const,
    );
  const water = await rowOf("Your water");
  for (const [index, mgPerL] of [60, 10, 15, 25, 30, 180].entries()) await tab.setValue(sheetName, `${"BCDEFG"[index]}${water}`, mgPerL);
  await tab.setValue(sheetName, `B${await rowOf("Demineralised water in it")}`, 50);
  await tab.setValue(sheetName, `B${await rowOf("gypsum")}`, 3);
  await tab.setValue(sheetName, `B${await rowOf("calcium chloride")}`, 2);
  await tab.scrollTo(sheetName, `A${water + 4}`);
}

const sheet = "Sheet 1";

async function writeColumn(tab: BenchPage, column: string, values: readonly (number | string)[]): Promise<void> {
  for (const [index, value] of values.entries()) await tab.setValue(sheet, `${column}${index + 1}`, value);
}
