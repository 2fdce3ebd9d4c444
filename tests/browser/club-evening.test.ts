import type { BrowserContext, Frame } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { smallGrid } from "./support/bench-fixture";
import { BenchPage, watch, type Misdeeds } from "./support/bench-page";
import { serveBuiltSite, type BuiltSite } from "./support/built-site";
import { useChromium } from "./support/chromium";
import { openScreen } from "./support/pane-screens";

/*
 * An evening of the imaginary Quillmarsh Brew Club: Ada brews in US units, Ben in metric ones, and Cleo has no add-in.
 * Each sits at a computer (a browser profile) of their own; what they exchange are files and texts, nothing else.
 */
let site: BuiltSite;
const chromium = useChromium();
const seats: BrowserContext[] = [];
const misdeeds: Misdeeds[] = [];
beforeAll(async () => {
  site = await serveBuiltSite();
});
afterAll(() => site?.close());

interface Seat {
  readonly tab: BenchPage;
  readonly pane: Frame;
}

/** A computer with an empty workbook; without the add-in its functions script is empty, so no GYLE function is there. */
async function takeSeat({ addIn }: { addIn: boolean }): Promise<Seat> {
  const context = await chromium.browser.newContext({ viewport: smallGrid });
  context.setDefaultTimeout(100_000);
  seats.push(context);
  misdeeds.push(watch(context, site.origin));
  if (!addIn) await context.route("**/functions.js", (route) => route.fulfill({ contentType: "text/javascript", body: "" }));
  const tab = await BenchPage.open(context, site.origin);
  return { tab, pane: await tab.pane() };
}

const layoutOf = (units: "us" | "metric", method: "extract" | "all-grain") => {
  const { names } = planBatch(
    exampleBatch({ id: "x", sheetName: "X", batchName: "X", brewedOn: 46270, volume: 20, units, topUp: 0, method }),
  );
  return (name: string): string => names.find((candidate) => candidate.name === name)?.range.split(":")[0] ?? "";
};
const footbridge = layoutOf("us", "extract");
const reedBed = layoutOf("metric", "all-grain");
const figures = [
  "og_plan",
  "fg_plan",
  "abv_plan",
  "ibu_plan",
  "colour_plan",
  "og",
  "fg",
  "abv_reached",
  "ibu_reached",
  "verdict",
  "sugar_mass",
] as const;

async function writeBatch({ tab, pane }: Seat, name: string, units: string, method: string): Promise<void> {
  await openScreen(pane, "Plan", "New batch");
  await pane.getByLabel("Name of the batch").fill(name);
  await pane.getByLabel(units).check();
  await pane.getByLabel(method).check();
  await pane.getByLabel("An example pale ale to change").check();
  await pane.getByRole("button", { name: "Write the batch sheet" }).click();
  await pane.getByText(`“${name}” is in the workbook`).waitFor();
  await tab.calculated();
}

/** What a brewer fills in by the end: the first reading, two that agree, and how it tasted. */
async function brew(
  { tab }: Seat,
  sheet: string,
  cellOf: (name: string) => string,
  sample: number,
  volume: number,
  score: number,
): Promise<void> {
  const day = Number(await tab.valueAt(sheet, cellOf("brewed_on")));
  const below = (name: string, rows: number): string => cellOf(name).replace(/\d+/, (row) => String(Number(row) + rows));
  for (const [cell, value] of [
    [cellOf("og_reading"), 1.05],
    [cellOf("og_temperature"), sample],
    [cellOf("volume_reached"), volume],
    [below("scores", 0), score],
    [below("scores", 1), score - 1],
  ] as const)
    await tab.setValue(sheet, cell, value);
  for (const [index, reading] of [1.024, 1.012, 1.012].entries()) {
    const row = Number(cellOf("readings").replace(/\D/g, "")) + index;
    for (const [column, value] of [
      ["A", day + 3.5 + 3 * index],
      ["B", reading],
      ["C", "SG"],
      ["D", sample],
    ] as const)
      await tab.setValue(sheet, `${column}${row}`, value);
  }
  await tab.calculated();
}

const show = async ({ tab }: Seat, sheet: string, cellOf: (name: string) => string) =>
  Object.fromEntries(await Promise.all(figures.map(async (name) => [name, await tab.valueAt(sheet, cellOf(name))] as const)));

/** Mass and bitterness of each hop addition, from the table on the sheet. */
async function hopTable(
  { tab }: Seat,
  sheet: string,
  cellOf: (name: string) => string,
): Promise<{ readonly mass: number; readonly ibu: number }[]> {
  const first = Number(cellOf("hops").slice(1));
  const lines = await Promise.all(
    [0, 1, 2, 3, 4, 5].map(async (index) => ({
      mass: Number(await tab.valueAt(sheet, `B${first + index}`)),
      ibu: Number(await tab.valueAt(sheet, `G${first + index}`)),
    })),
  );
  return lines.filter(({ mass }) => mass > 0);
}

async function batchFileOf({ pane }: Seat, sheet: string): Promise<string> {
  await openScreen(pane, "Share", "Batch file");
  await pane.getByLabel("Batch", { exact: true }).selectOption(sheet);
  await pane.getByRole("button", { name: "Make the batch file" }).click();
  return pane.getByLabel("Or copy its text").inputValue();
}

async function takeIn({ tab, pane }: Seat, text: string, sheet: string): Promise<void> {
  await openScreen(pane, "Share", "Batch file");
  await pane
    .locator("#batch-file-file")
    .setInputFiles({ name: "from-a-member.gylebook.json", mimeType: "application/json", buffer: Buffer.from(text) });
  await pane.getByRole("button", { name: `Put it on a sheet “${sheet}”` }).click();
  await pane.getByText(`“${sheet}” is in the workbook.`).waitFor();
  await tab.calculated();
}

async function clubSheet({ tab, pane }: Seat, units: string, files: readonly (readonly [string, string])[]): Promise<void> {
  await openScreen(pane, "Share", "Club");
  await pane
    .locator("#club-file")
    .setInputFiles(files.map(([member, text]) => ({ name: `${member}.json`, mimeType: "application/json", buffer: Buffer.from(text) })));
  for (const [index, [member]] of files.entries())
    await pane
      .getByLabel(/^Whose is/)
      .nth(index)
      .fill(member);
  await pane.getByLabel(units).check();
  await pane.getByRole("button", { name: "Write the club sheet" }).click();
  await pane.getByText("on “Club” now").waitFor();
  await tab.calculated();
}

/** Figures of the two beers on a club sheet, B and C, and their mean, L. */
const clubRow = ({ tab }: Seat, row: number) =>
  Promise.all(["B", "C", "L"].map(async (column) => Number(await tab.valueAt("Club", `${column}${row}`))));

/** Many steps in one go, since starting the grid is what takes the time; a busy machine takes many times as long. */
const patienceMs = 400_000;

test(
  "three members exchange batches and unplugged copies, and no figure changes on the way",
  async () => {
    const ada = await takeSeat({ addIn: true });
    await writeBatch(ada, "Footbridge", "US: gal, lb, °F", "Malt extract, some grain steeped");
    await brew(ada, "Footbridge", footbridge, 68, 5.1, 4);
    const adas = await show(ada, "Footbridge", footbridge);
    expect(adas["verdict"]).toBe("steady");
    const fromAda = await batchFileOf(ada, "Footbridge");

    const ben = await takeSeat({ addIn: true });
    await writeBatch(ben, "Reed Bed", "Metric: L, kg, °C", "Grain, mashed");
    await brew(ben, "Reed Bed", reedBed, 20, 20.5, 5);
    const bens = await show(ben, "Reed Bed", reedBed);
    const fromBen = await batchFileOf(ben, "Reed Bed");

    // Ben has Ada's beer as she brewed it, and plans it once more in his own units: the same beer, as far as scales can weigh.
    await takeIn(ben, fromAda, "Footbridge");
    expect(await show(ben, "Footbridge", footbridge)).toEqual(adas);
    await openScreen(ben.pane, "Plan", "Scale and copy");
    await ben.pane.getByLabel("Batch", { exact: true }).selectOption("Footbridge");
    await ben.pane.getByLabel("Metric: L, kg, °C").check();
    await ben.pane.getByLabel("Name of the copy").fill("Footbridge at Ben's");
    await ben.pane.getByRole("button", { name: "Write the copy on a sheet of its own" }).click();
    await ben.pane.getByText("“Footbridge at Ben's” is in the workbook").waitFor();
    await ben.tab.calculated();
    const copied = await show(ben, "Footbridge at Ben's", layoutOf("metric", "extract"));
    expect(Math.abs(Number(copied["og_plan"]) - Number(adas["og_plan"]))).toBeLessThan(0.001);
    // Hops of ten grams and more are weighed to whole grams, so each addition is off by half a gram at most. What half a gram
    // is worth is told by the copy's own hop table: its IBU (column G) over its grams (column B), times 0.5 g. With about 16 g
    // for 22 IBU, 37 g for 10 and 20 g for 5 that is 0.5 × (22/16 + 10/37 + 5/20), or 0.9 IBU, for the batch.
    const own = await hopTable(ben, "Footbridge at Ben's", layoutOf("metric", "extract"));
    const wanted = await hopTable(ada, "Footbridge", footbridge);
    expect(own).toHaveLength(3);
    const halfGrams = own.map(({ mass, ibu }) => (0.5 * ibu) / mass);
    for (const [index, { mass, ibu }] of own.entries()) {
      expect(mass, "a mass to weigh in whole grams").toBeGreaterThanOrEqual(10);
      expect(Math.abs(ibu - (wanted[index]?.ibu ?? 0)), `addition ${index + 1}`).toBeLessThanOrEqual(halfGrams[index]! + 1e-6);
    }
    expect(Math.abs(Number(copied["ibu_plan"]) - Number(adas["ibu_plan"]))).toBeLessThanOrEqual(
      halfGrams.reduce((sum, one) => sum + one, 0) + 1e-6,
    );
    // Definitions: 25 EBC for 12.7 SRM.
    expect(Number(copied["colour_plan"]) / Number(adas["colour_plan"]) / (25 / 12.7)).toBeCloseTo(1, 1);

    await takeIn(ada, fromBen, "Reed Bed");
    expect(await show(ada, "Reed Bed", reedBed)).toEqual(bens);

    // Both lay the two beers side by side, each in the units of the house.
    const files = [
      ["Ada", fromAda],
      ["Ben", fromBen],
    ] as const;
    await clubSheet(ada, "US: gal, SRM", files);
    await clubSheet(ben, "Metric: L, EBC", files);
    expect(await clubRow(ada, 13)).toEqual(
      [Number(adas["og"]), Number(bens["og"]), (Number(adas["og"]) + Number(bens["og"])) / 2].map(
        (value) => expect.closeTo(value, 6) as unknown,
      ),
    );
    expect(await clubRow(ben, 13)).toEqual((await clubRow(ada, 13)).map((value) => expect.closeTo(value, 6) as unknown));
    expect(await clubRow(ben, 21)).toEqual((await clubRow(ada, 21)).map((value) => expect.closeTo((value * 25) / 12.7, 3) as unknown));

    // Cleo gets an unplugged copy in a file, and has no GYLE functions.
    await ada.tab.page.evaluate(() => window.gylebookBench.univerAPI.getActiveWorkbook()?.getSheetByName("Footbridge")?.activate());
    await openScreen(ada.pane, "Share", "Unplug");
    await ada.pane.getByRole("button", { name: "Make the unplugged copy" }).click();
    await ada.pane.getByText("“Footbridge unplugged” is in the workbook").waitFor();
    await ada.tab.calculated();
    const bytes = await ada.tab.saveFile();
    const cleo = await takeSeat({ addIn: false });
    await cleo.tab.openFile(bytes, "from-ada.xlsx");
    await cleo.tab.page.waitForFunction(
      () => window.gylebookBench.univerAPI.getActiveWorkbook()?.getSheetByName("Footbridge unplugged") != null,
    );
    await cleo.tab.calculated();
    await cleo.tab.setValue("Footbridge unplugged", "J1", "=GYLE.BEER.ABV(1.05,1.01)");
    await cleo.tab.calculated();
    expect(String(await cleo.tab.valueAt("Footbridge unplugged", "J1"))).toMatch(/^#/);
    const same = (shown: Record<string, unknown>) =>
      Object.fromEntries(
        Object.entries(shown).map(([name, value]) => [name, typeof value === "number" ? expect.closeTo(value, 5) : value]),
      );
    expect(await show(cleo, "Footbridge unplugged", footbridge)).toEqual(same(adas));
    // It calculates on: she and Ada change the same two inputs and see the same figures.
    for (const [seat, sheet] of [
      [cleo, "Footbridge unplugged"],
      [ada, "Footbridge"],
    ] as const) {
      await seat.tab.setValue(sheet, footbridge("malt"), 1.5);
      await seat.tab.setValue(sheet, footbridge("volume_reached"), 4.8);
      await seat.tab.calculated();
    }
    const changed = await show(ada, "Footbridge", footbridge);
    expect(changed["og_plan"]).not.toBe(adas["og_plan"]);
    const cleos = await show(cleo, "Footbridge unplugged", footbridge);
    for (const name of ["og_plan", "fg_plan", "abv_plan", "ibu_plan", "colour_plan"] as const)
      expect(cleos[name], name).toEqual(expect.closeTo(Number(changed[name]), 5));

    for (const seat of misdeeds) expect(seat.foreignRequests).toEqual([]);
  },
  patienceMs,
);
