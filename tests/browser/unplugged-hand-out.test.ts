import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import type { Frame } from "playwright-core";
import { expect, test } from "vitest";
import { useBench, wideGrid } from "./support/bench-fixture";
import type { BenchPage } from "./support/bench-page";
import { cellOf, get, insertFootbridge } from "./support/footbridge";
import { openScreen } from "./support/pane-screens";
import { pictures } from "./support/pictures";

const bench = useBench({ profile: "whole file", viewport: wideGrid });

const tabs = (tab: BenchPage) =>
  tab.page.evaluate(() =>
    window.gylebookBench.univerAPI
      .getActiveWorkbook()!
      .getSheets()
      .map((sheet) => sheet.getSheetName()),
  );
/** Formulas in the cells of a sheet that still call us. */
const callsOurs = (tab: BenchPage, sheet: string) =>
  tab.page.evaluate((name) => {
    const found = window.gylebookBench.univerAPI.getActiveWorkbook()!.getSheetByName(name)!.getRange("A1:Z200").getFormulas();
    return found.flat().filter((formula) => formula.includes("GYLE."));
  }, sheet);

async function choose(pane: Frame, name: string): Promise<void> {
  await openScreen(pane, "Share", "Hand-out");
  await pane.getByLabel("Batch", { exact: true }).selectOption("Footbridge");
  await pane.getByLabel("Name of the blank").fill(name);
  await pane.getByLabel("Their volume, US gallons").fill("2.5");
}

const patienceMs = 400_000;

test(
  "a blank for members without Gylebook is made as a sheet, plugged in by one who has it, and made as a workbook",
  async () => {
    const tab = await bench.open();
    const pane = await tab.pane();
    await insertFootbridge(tab, pane);

    await choose(pane, "For Wren");
    await pane.getByLabel("A sheet in this workbook, for members without Gylebook").check();
    await pane.getByRole("button", { name: "Write the unplugged blank on a sheet of its own" }).click();
    await pane.getByText("“For Wren” is in the workbook, unplugged").waitFor();
    await tab.calculated();
    await tab.page.screenshot({ path: `${pictures}hand-out-unplugged.png` });
    // The sheet that it stood on for a moment is gone, and with it every call of ours.
    expect(await tabs(tab)).toEqual(["Sheet 1", "Footbridge", "For Wren"]);
    expect(await callsOurs(tab, "For Wren")).toEqual([]);
    expect((await callsOurs(tab, "Footbridge")).length).toBeGreaterThan(25);
    for (const [name, within] of [
      ["og_plan", 0.001],
      ["ibu_plan", 1],
      ["fg_plan", 0.001],
    ] as const) {
      expect(Math.abs(Number(await get(tab, "For Wren", name)) - Number(await get(tab, "Footbridge", name))), name).toBeLessThan(within);
    }

    const alcohol = Number(await get(tab, "For Wren", "abv_plan"));

    // Pupils type what they changed: the plain formulas follow to what ours give for the same blank with Gylebook.
    await choose(pane, "With Gylebook");
    await pane.getByLabel("A sheet in this workbook", { exact: true }).check();
    await pane.getByRole("button", { name: "Write the blank on a sheet of its own" }).click();
    await pane.getByText("“With Gylebook” is in the workbook").waitFor();
    // Said to be there is not yet calculated: a slow machine shows the new sheet's cells empty for a moment.
    await expect.poll(async () => typeof (await get(tab, "With Gylebook", "abv_plan")), { timeout: 60_000 }).toBe("number");
    const typed = { attenuation: 70, altitude: 3000, carbonation: 2.6 };
    for (const sheet of ["For Wren", "With Gylebook"])
      for (const [name, value] of Object.entries(typed)) await tab.setValue(sheet, cellOf(name), value);
    await tab.calculated();
    await expect.poll(() => get(tab, "With Gylebook", "boils_at"), { timeout: 60_000 }).not.toBe(await get(tab, "Footbridge", "boils_at"));
    for (const name of ["fg_plan", "abv_plan", "boils_at", "sugar_mass"]) {
      const [plain, ours] = [await get(tab, "For Wren", name), await get(tab, "With Gylebook", name)];
      expect(typeof ours, name).toBe("number");
      expect(Number(plain), name).toBeCloseTo(Number(ours), 6);
      expect(ours, `${name} follows`).not.toBe(await get(tab, "Footbridge", name));
    }

    // Who has Gylebook plugs it in: the very formulas of the blank that was never unplugged, with what was typed.
    await tab.page.evaluate(() => window.gylebookBench.univerAPI.getActiveWorkbook()!.getSheetByName("For Wren")!.activate());
    await openScreen(pane, "Share", "Unplug");
    await pane.getByRole("button", { name: "Plug this sheet in again" }).click();
    await pane.getByText(/“For Wren”: \d+ formulas are GYLE’s again/u).waitFor();
    await tab.calculated();
    expect(await callsOurs(tab, "For Wren")).toEqual(await callsOurs(tab, "With Gylebook"));
    for (const name of ["fg_plan", "abv_plan", "boils_at", "sugar_mass", "attenuation"])
      expect(await get(tab, "For Wren", name), name).toBe(await get(tab, "With Gylebook", name));

    // The same blank as a workbook of its own: on the bench a file, which is opened in place of this workbook.
    await choose(pane, "For Finch");
    await pane.getByLabel("A new workbook, for members without Gylebook").check();
    const [download] = await Promise.all([
      tab.page.waitForEvent("download"),
      pane.getByRole("button", { name: "Make a workbook of the unplugged blank" }).click(),
    ]);
    await pane.getByText("A new workbook with “For Finch” was saved as a file").waitFor();
    expect(await tabs(tab)).not.toContain("For Finch");
    const bytes = readFileSync(await download.path());
    expect(strFromU8(unzipSync(bytes)["docProps/core.xml"]!)).not.toMatch(/<(dc:creator|cp:lastModifiedBy)>[^<]/u);
    await tab.calculated();
    await tab.startEmpty();
    await tab.openFile(bytes, "For Finch.xlsx");
    await tab.page.waitForFunction(() =>
      window.gylebookBench.univerAPI
        .getActiveWorkbook()
        ?.getSheets()
        .some((sheet) => sheet.getSheetName() === "For Finch"),
    );
    await tab.calculated();
    expect(await tabs(tab)).toEqual(["For Finch"]);
    // Nobody has changed it yet: the bench would not ask before another file takes its place.
    expect(await tab.page.evaluate(() => window.gylebookBench.session.edited)).toBe(false);
    expect(await callsOurs(tab, "For Finch")).toEqual([]);
    expect(await get(tab, "For Finch", "abv_plan")).toBeCloseTo(alcohol, 9);
    await tab.setValue("For Finch", cellOf("attenuation"), 60);
    await tab.calculated();
    expect(Number(await get(tab, "For Finch", "abv_plan"))).toBeLessThan(alcohol - 0.5);
  },
  patienceMs,
);
