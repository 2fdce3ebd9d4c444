import type { Frame } from "playwright-core";
import { exampleBatch } from "../../../src/workbook/batch/example-batch";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import type { BenchPage } from "./bench-page";
import { openScreen } from "./pane-screens";

/** Where things stand on the sheet of the example batch in US units; the plan is the same data that the writer uses. */
const plan = planBatch(
  exampleBatch({
    id: "test",
    sheetName: "Footbridge",
    batchName: "Footbridge",
    brewedOn: 46270,
    volume: 5,
    units: "us",
    topUp: 0,
    method: "extract",
  }),
);
export const cellOf = (name: string): string => plan.names.find((candidate) => candidate.name === name)?.range.split(":")[0] ?? "";
export const get = (tab: BenchPage, sheet: string, name: string) => tab.valueAt(sheet, cellOf(name));

/** The example batch on a sheet “Footbridge”, written from the pane. */
export async function insertFootbridge(tab: BenchPage, pane: Frame): Promise<void> {
  await openScreen(pane, "Plan", "New batch");
  await pane.getByLabel("Name of the batch").fill("Footbridge");
  await pane.getByLabel("US: gal, lb, °F").check();
  await pane.getByLabel("An example pale ale to change").check();
  await pane.getByRole("button", { name: "Write the batch sheet" }).click();
  await pane.getByText("“Footbridge” is in the workbook").waitFor();
  await tab.calculated();
}
