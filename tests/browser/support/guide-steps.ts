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
};

const sheet = "Sheet 1";

async function writeColumn(tab: BenchPage, column: string, values: readonly (number | string)[]): Promise<void> {
  for (const [index, value] of values.entries()) await tab.setValue(sheet, `${column}${index + 1}`, value);
}
