import { expect, test } from "vitest";
import { useBench } from "./support/bench-fixture";
import { get, insertFootbridge } from "./support/footbridge";
import { openScreen } from "./support/pane-screens";
import { pictures } from "./support/pictures";

const bench = useBench({ profile: "whole file" });

const device = [
  "Time,SG,Temp F",
  ...Array.from(
    { length: 400 },
    (_, index) =>
      `2026-11-${String(26 + Math.floor(index / 100)).padStart(2, "0")} ${String(Math.floor((index % 100) / 5)).padStart(2, "0")}:${String((index % 5) * 12).padStart(2, "0")},${(1.012 + 0.04 / (1 + Math.exp(1.4 * (index / 60 - 2.5)))).toFixed(4)},67`,
  ),
  "2026-11-29 23:50,999,67",
].join("\n");

/** Many steps in one go, since starting the grid is what takes the time; a busy machine takes many times as long. */
const patienceMs = 400_000;

test(
  "scaling, page, file, hand-out, club and a device's readings, one after the other in one workbook",
  async () => {
    const tab = await bench.open();
    const pane = await tab.pane();
    await insertFootbridge(tab, pane);

    await openScreen(pane, "Plan", "Scale and copy");
    await pane.getByLabel("Metric: L, kg, °C").check();
    await pane.getByLabel("Beer in the fermenter, litres").fill("10");
    await pane.getByText("Willamette, 12 min").waitFor();
    await pane.getByRole("button", { name: "Write the copy on a sheet of its own" }).click();
    await pane.getByText("“Footbridge, again” is in the workbook").waitFor();
    await tab.calculated();
    // Hops are weighed to a gram: half a gram of the 8 that bitter it is 1 IBU.
    for (const [name, within] of [
      ["og_plan", 0.001],
      ["ibu_plan", 1],
      ["fg_plan", 0.001],
    ] as const) {
      expect(Math.abs(Number(await get(tab, "Footbridge, again", name)) - Number(await get(tab, "Footbridge", name))), name).toBeLessThan(
        within,
      );
    }

    await openScreen(pane, "Plan", "Pages to print");
    await pane.getByLabel("Batch").selectOption("Footbridge");
    await pane.getByRole("button", { name: "Write the page: Recipe page" }).click();
    await pane.getByText("“Footbridge recipe” is in the workbook").waitFor();
    await tab.calculated();
    expect(await tab.valueAt("Footbridge recipe", "C4")).toBe(await get(tab, "Footbridge", "og_plan"));
    await tab.page.screenshot({ path: `${pictures}recipe-page.png` });

    await openScreen(pane, "Share", "Batch file");
    await pane.getByLabel("Batch", { exact: true }).selectOption("Footbridge");
    await pane.getByRole("button", { name: "Make the batch file" }).click();
    const text = await pane.getByLabel("Or copy its text").inputValue();
    const [download] = await Promise.all([
      tab.page.waitForEvent("download"),
      pane.getByRole("link", { name: "Save “Footbridge.gylebook.json”" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("Footbridge.gylebook.json");
    await pane.getByLabel("Or paste its text").fill(text.replace(/"batchName": ?"Footbridge"/, '"batchName": "=HYPERLINK(1)"'));
    await pane.getByRole("button", { name: "Read the pasted text" }).click();
    await pane.getByText("Nothing was written").waitFor();
    await pane.getByLabel("Or paste its text").fill(text);
    await pane.getByRole("button", { name: "Read the pasted text" }).click();
    await pane.getByText("This very batch is in the workbook already, on “Footbridge”").waitFor();
    await pane.getByRole("button", { name: "Put it on a second sheet “Footbridge (2)”" }).click();
    await pane.getByText("“Footbridge (2)” is in the workbook").waitFor();
    await tab.calculated();
    for (const name of ["og_plan", "ibu_plan", "colour_plan", "sugar_mass"])
      expect(await get(tab, "Footbridge (2)", name), name).toBe(await get(tab, "Footbridge", name));
    expect(await get(tab, "Footbridge (2)", "cost_plan")).toBe("");

    await openScreen(pane, "Share", "Hand-out");
    await pane.getByLabel("Batch", { exact: true }).selectOption("Footbridge");
    await pane.getByLabel("Their volume, US gallons").fill("1");
    await pane.getByRole("button", { name: "Write the blank on a sheet of its own" }).click();
    await pane.getByText("“Footbridge, blank” is in the workbook").waitFor();

    await openScreen(pane, "Share", "Club");
    await pane.getByLabel("Or paste the text of one").fill(text);
    await pane.getByRole("button", { name: "Use the pasted text" }).click();
    await pane.getByRole("button", { name: "Write the club sheet" }).click();
    await pane.getByText("The member's name, please").waitFor();
    await pane.getByLabel("Whose is “Footbridge”?").fill("Ada");
    await pane.getByRole("button", { name: "Write the club sheet" }).click();
    await pane.getByText("on “Club” now").waitFor();
    await tab.calculated();
    expect(await tab.valueAt("Club", "B5")).toBe("Ada");
    expect(await tab.valueAt("Club", "B12")).toBeCloseTo(Number(await get(tab, "Footbridge", "og_plan")), 9);
    await tab.page.screenshot({ path: `${pictures}club.png` });
    // Once more from the same member: the pane says what would change, and replaces it when asked to.
    await tab.setValue("Club", "P4", "Mended by hand");
    await pane.getByLabel("Or paste the text of one").fill(text);
    await pane.getByRole("button", { name: "Use the pasted text" }).click();
    await pane.getByLabel("Whose is “Footbridge”?").fill("Ada");
    await pane.getByRole("button", { name: "Add to “Club”" }).click();
    await pane.getByText("Beer: “Mended by hand” becomes “Footbridge”").waitFor();
    expect(await tab.valueAt("Club", "P4")).toBe("Mended by hand");
    await tab.page.screenshot({ path: `${pictures}club-replace.png` });
    await pane.getByRole("button", { name: "Replace it" }).click();
    await pane.getByText("on “Club” now").waitFor();
    await tab.calculated();
    expect([await tab.valueAt("Club", "P4"), await tab.valueAt("Club", "P5")]).toEqual(["Footbridge", null]);

    await openScreen(pane, "Ferment", "Readings from a file");
    await pane.getByLabel("Batch", { exact: true }).selectOption("Footbridge");
    // A decimal comma that also separates the columns, in UTF-16: asked about, never read as a gravity of 1.
    const commas = Buffer.from("\uFEFFDate,SG\n2026-09-10,1,050\n2026-09-11,1,042\n", "utf16le");
    await pane.locator("#log-file").setInputFiles({ name: "commas.csv", mimeType: "text/csv", buffer: commas });
    await pane.getByLabel("2026-09-10 | 1 | 050 (each comma between columns)").waitFor();
    expect(await pane.getByRole("heading", { name: "What the columns mean" }).count()).toBe(0);
    await pane.getByLabel("2026-09-10 | 1,050 (a comma inside numbers)").check();
    await pane.getByRole("cell", { name: "1,050" }).waitFor();
    await pane.locator("#log-file").setInputFiles({ name: "float.csv", mimeType: "text/csv", buffer: Buffer.from(device) });
    await pane.getByText("999 SG cannot be").waitFor();
    await pane.getByRole("heading", { name: "By all 400 readings" }).waitFor();
    await pane.getByRole("button", { name: "Write 16 of them into “Footbridge”" }).click();
    await pane.getByText("On “Footbridge”: 16 readings.").waitFor();
    await tab.calculated();
    expect(Number(await get(tab, "Footbridge", "fg"))).toBeLessThan(1.02);
    await pane.getByRole("button", { name: "Keep all 400 on a sheet of their own" }).click();
    await pane.getByText("All 400 readings are on “Footbridge log”").waitFor();
    await tab.calculated();
    expect(await tab.valueAt("Footbridge log", "A4")).toBe("state");
    await tab.page.screenshot({ path: `${pictures}log.png` });
  },
  patienceMs,
);
