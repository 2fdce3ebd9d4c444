import { mkdirSync, readFileSync } from "node:fs";
import type { Frame } from "playwright-core";
import { beforeAll, describe, expect, test } from "vitest";
import type { Place } from "../../src/pane/screens";
import { findingsInAll } from "./support/axe";
import { useBench } from "./support/bench-fixture";
import type { BenchPage } from "./support/bench-page";
import { layoutFaults } from "./support/layout";
import { openScreen } from "./support/pane-screens";

/* Screens beside a batch in each of its states, and beside a season's workbook. */
const bench = useBench({ profile: "whole file" });
const pictures = new URL("../../.cache/pictures/states/", import.meta.url).pathname;
/** What is looked at beside axe, and by the eye, in each width: lay-outs do not go by the look. */
const looks = { 320: "contrast", 400: "light", 1000: "light" } as const;

let tab: BenchPage;
let pane: Frame;
beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  tab = await bench.open();
  await tab.openFile(readFileSync(new URL("../../sample-workbooks/season.xlsx", import.meta.url)), "season.xlsx");
  await tab.page.waitForFunction(() => window.gylebookBench.univerAPI.getActiveWorkbook()?.getSheetByName("Stores") != null);
  await tab.calculated();
  pane = await tab.pane();
  // One more, brewed today, with everything on its sheet.
  await openScreen(pane, "Plan", "New batch");
  await pane.getByLabel("Name of the batch").fill("Today");
  await pane.getByLabel("Metric: L, kg, °C").check();
  await pane.getByLabel("Grain, mashed").check();
  await pane.getByLabel("An example pale ale to change").check();
  await pane.getByText("More on the sheet", { exact: true }).last().click();
  for (const block of await pane.getByRole("checkbox").all()) await block.check();
  await pane.getByRole("button", { name: "Write the batch sheet" }).click();
  await pane.getByText("“Today” is in the workbook").waitFor();
  await tab.calculated();
}, 300_000);

const bring = (sheet: string): Promise<void> =>
  tab.page.evaluate((name) => {
    const workbook = window.gylebookBench.univerAPI.getActiveWorkbook()!;
    const batches = workbook.getSheets().filter((one) => one.getSheetName() !== "Today");
    // The season's batches stand in the order of their brewing: the oldest first.
    workbook.setActiveSheet(name === "oldest" ? batches[0]! : name === "newest" ? batches[10]! : workbook.getSheetByName(name)!);
  }, sheet);

const settled = () =>
  pane.waitForFunction(
    () => document.querySelector("h1") !== null && !/(Opening|Reading|Looking)[^.]*…/.test(document.body.textContent ?? ""),
  );

async function expectWellLaid(name: string): Promise<void> {
  const faults = await findingsInAll(tab, pane, async (width, look) => {
    if (looks[width] !== look) return [];
    await tab.page.locator("#pane").screenshot({ path: `${pictures}${name}-${width}.png` });
    return layoutFaults(pane);
  });
  expect(faults, name).toEqual([]);
}

const visits: readonly (readonly [state: string, sheet: string, place: Place, title: string])[] = [
  ["planned", "Today", "Plan", "More on the sheet"],
  ["planned", "Today", "Plan", "Scale and copy"],
  ["brewing", "Today", "Brew", "Brew day"],
  ["brewing", "Today", "Brew", "Why"],
  ["fermenting", "newest", "Ferment", "Reading"],
  ["fermenting", "newest", "Ferment", "Fermentation"],
  ["fermenting", "newest", "Package", "Packaging"],
  ["packaged", "oldest", "Brew", "Brew day"],
  ["packaged", "oldest", "Brew", "Too high, too low"],
  ["packaged", "oldest", "Ferment", "Fermentation"],
  ["packaged", "oldest", "Package", "Packaging"],
  ["packaged", "oldest", "Package", "Tasting"],
  ["a season", "Season", "Season", "Season"],
  ["a season", "Season", "Season", "Kit"],
  ["a season", "Season", "Season", "Stores"],
  ["a season", "Season", "Share", "Club"],
  ["a season", "Season", "Help", "Older sheets"],
];

describe.each(visits)("%s: “%s”, %s, %s", (state, sheet, place, title) => {
  test("is readable, whole and usable in three widths", async () => {
    await bring(sheet);
    await openScreen(pane, place, title);
    await settled();
    for (const summary of await pane.locator("details:not([open]) > summary").all()) await summary.click();
    await expectWellLaid(`${state}-${place}-${title}`.replaceAll(/[ ,]+/g, "-"));
  });
});

test("a figure on the brew day's card: corrected, doubted, written", async () => {
  await bring("Today");
  await openScreen(pane, "Brew", "Brew day");
  await settled();
  const reach = async (what: RegExp) => {
    for (let line = 0; line < 8 && !what.test((await pane.locator(".due h2").textContent()) ?? ""); line += 1) {
      const before = await pane.locator(".day").getAttribute("data-next");
      await pane.locator(".due .main-action").click();
      const early = pane.getByRole("button", { name: /^Yes, write/ });
      await pane.waitForFunction(
        (row) => document.querySelector(".day")?.getAttribute("data-next") !== row || document.querySelector("[role=group]") !== null,
        before,
      );
      if (await early.count()) await early.click();
      await pane.waitForFunction((row) => document.querySelector(".day")?.getAttribute("data-next") !== row, before);
    }
  };
  await reach(/^Note volume and gravity/);
  const form = pane.getByRole("form", { name: "Before the boil" });
  await form.getByLabel("In the kettle before the boil, L").fill("24");
  await form.getByLabel("Reading before the boil").fill("1.060");
  await form.getByText("How warm was the sample?").waitFor();
  await expectWellLaid("card-problem");
  await form.getByLabel("Temperature of the sample before the boil, °C").fill("30");
  await tab.page.keyboard.press("Enter");
  await form.getByText("Can that be right?").waitFor();
  await expectWellLaid("card-doubt");
  // Escape takes the question back, and nothing that was typed.
  await form.getByLabel("Reading before the boil").press("Escape");
  await form.getByText("Can that be right?").waitFor({ state: "detached" });
  await form.getByLabel("Reading before the boil").fill("1.038");
  // Another screen in between loses nothing of it.
  await openScreen(pane, "Brew", "Why");
  await openScreen(pane, "Brew", "Brew day");
  expect(await form.getByLabel("Reading before the boil").inputValue()).toBe("1.038");
  await form.getByLabel("Reading before the boil").press("Enter");
  await pane.getByText(/^Before the boil, gravity 1\.0(39|40|41): it is in the sheet\.$/).waitFor();
  expect(await pane.evaluate(() => document.activeElement?.className)).toContain("main-action");
  await expectWellLaid("card-written");
}, 400_000);
