import { expect, test } from "vitest";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import type { BenchPage } from "./support/bench-page";
import { useBench, wideGrid } from "./support/bench-fixture";
import { openScreen } from "./support/pane-screens";
import { pictures } from "./support/pictures";

const bench = useBench({ profile: "each test", viewport: wideGrid });

const plan = planBatch(
  exampleBatch({
    id: "test",
    sheetName: "First",
    batchName: "First",
    brewedOn: 46270,
    volume: 20,
    units: "metric",
    topUp: 0,
    method: "extract",
  }),
);
const cellOf = (name: string): string => plan.names.find((candidate) => candidate.name === name)?.range.split(":")[0] ?? "";

async function write(tab: BenchPage, name: string, kit?: string): Promise<void> {
  const pane = await tab.pane();
  await openScreen(pane, "Plan", "New batch");
  if (kit) await pane.getByLabel(kit, { exact: true }).check();
  await pane.getByLabel("Name of the batch").fill(name);
  await pane.getByLabel("An example pale ale to change").check();
  await pane.getByRole("button", { name: "Write the batch sheet" }).click();
  await pane.getByText(`“${name}” is in the workbook`).waitFor();
  await tab.calculated();
}

/** What anybody does with the tabs in the grid itself, past the pane. */
const onGrid = (tab: BenchPage, what: "rename" | "copy" | "delete" | "first", sheetName: string) =>
  tab.page.evaluate(
    async ([does, name]) => {
      const workbook = window.gylebookBench.univerAPI.getActiveWorkbook()!;
      const sheet = workbook.getSheetByName(name)!;
      if (does === "rename") sheet.setName("First of all");
      else if (does === "copy") workbook.duplicateSheet(sheet);
      else if (does === "delete") workbook.deleteSheet(sheet);
      else await workbook.moveSheet(sheet, 0);
    },
    [what, sheetName] as const,
  );

const list = async (tab: BenchPage): Promise<unknown[]> => Promise.all([41, 42, 43, 44].map((row) => tab.valueAt("Season", `X${row}`)));

/** The season sheet follows a moment after the tabs did. */
const follows = (tab: BenchPage, sheets: readonly (string | null)[]) => expect.poll(() => list(tab), { timeout: 20_000 }).toEqual(sheets);

test("the season follows the tabs; a batch starts from the kit and draws on the stores once", async () => {
  const tab = await bench.open();
  const pane = await tab.pane();
  await write(tab, "First");
  await openScreen(pane, "Season", "Season");
  await pane.getByRole("button", { name: "Write the season sheet" }).click();
  await pane.getByText("“Season” shows the one batch of this workbook").waitFor();
  await follows(tab, ["First", null, null, null]);

  await onGrid(tab, "rename", "First");
  await follows(tab, ["First of all", null, null, null]);
  await onGrid(tab, "copy", "First of all");
  await expect.poll(async () => (await list(tab)).filter((name) => name !== null).length, { timeout: 20_000 }).toBe(2);
  const [, copy] = await list(tab);
  await onGrid(tab, "first", String(copy));
  await follows(tab, [String(copy), "First of all", null, null]);
  await tab.page.screenshot({ path: `${pictures}copied-sheet.png` });
  await pane.getByRole("button", { name: `“${String(copy)}” is the copy` }).click();
  await pane.getByText(`“${String(copy)}” is a batch of its own now.`).waitFor();
  await expect.poll(() => pane.getByText("are copies of one sheet").count(), { timeout: 20_000 }).toBe(0);
  await onGrid(tab, "delete", String(copy));
  await follows(tab, ["First of all", null, null, null]);
  await tab.page.screenshot({ path: `${pictures}season.png` });

  await openScreen(pane, "Season", "Kit");
  await pane.getByLabel("Name of the kit").fill("Shed");
  await pane.getByRole("button", { name: "Write the kit sheet" }).click();
  await pane.getByText("Shed: 1 batch").waitFor();
  await tab.setValue("First of all", cellOf("volume_reached"), 19);
  await tab.calculated();
  await pane.getByRole("button", { name: "Learn from the batches again" }).click();
  await pane.getByRole("button", { name: "Use it for new batches: Boil-off rate" }).click();
  await pane.getByRole("button", { name: "Go back to the typical value: Boil-off rate" }).waitFor();
  await tab.calculated();
  const learned = await tab.valueAt("Kit", "H5");
  expect(Number(learned)).toBeGreaterThan(3);
  await tab.page.screenshot({ path: `${pictures}kit.png` });
  await write(tab, "Second", "Shed");
  expect(await tab.valueAt("Second", cellOf("boil_off"))).toBe(learned);
  expect(await tab.valueAt("Second", cellOf("kit_name"))).toBe("Shed");
  await expect.poll(async () => (await list(tab)).filter((name) => name !== null).length, { timeout: 20_000 }).toBe(2);

  await openScreen(pane, "Season", "Stores");
  await pane.getByRole("button", { name: "Write the stores sheet" }).click();
  await pane.getByRole("button", { name: /^Draw .*: Second$/ }).waitFor();
  await tab.setValue("Stores", "A5", "Pale malt extract, liquid");
  await tab.setValue("Stores", "D5", 9);
  await pane.getByRole("button", { name: /^Draw .*: Second$/ }).click();
  await pane.getByText("“Second” has drawn 1 thing from the stores.").waitFor();
  await tab.calculated();
  expect(Number(await tab.valueAt("Stores", "F5"))).toBeLessThan(9);
  expect(await pane.getByRole("button", { name: /^Draw .*: Second$/ }).count()).toBe(0);
  await pane.getByText("Drawn already: 1 batch").click();
  await pane.getByRole("button", { name: "Put back what Second drew" }).click();
  await pane.getByRole("button", { name: /^Draw .*: Second$/ }).waitFor();
  await tab.calculated();
  expect(await tab.valueAt("Stores", "F5")).toBe(9);
});
