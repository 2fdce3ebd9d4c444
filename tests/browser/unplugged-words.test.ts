import { expect, test } from "vitest";
import { useBench, wideGrid } from "./support/bench-fixture";
import { insertFootbridge } from "./support/footbridge";
import { openScreen } from "./support/pane-screens";
import { pictures } from "./support/pictures";

const bench = useBench({ profile: "each test", viewport: wideGrid });
const patienceMs = 300_000;

test(
  "an unplugged batch is skipped in words by what counts and writes, and read by what only reads",
  async () => {
    const tab = await bench.open();
    const pane = await tab.pane();
    const told = (words: string) => pane.getByText(`“Footbridge unplugged” is ${words}`).waitFor();
    await insertFootbridge(tab, pane);
    await openScreen(pane, "Share", "Unplug");
    await pane.getByRole("button", { name: "Make the unplugged copy" }).click();
    await pane.getByText("“Footbridge unplugged” is in the workbook").waitFor();
    await tab.calculated();

    await openScreen(pane, "Season", "Season");
    await pane.getByRole("button", { name: "Write the season sheet" }).click();
    await told("an unplugged copy of “Footbridge” and is skipped.");
    await tab.page.evaluate(() => {
      const workbook = window.gylebookBench.univerAPI.getActiveWorkbook()!;
      workbook.deleteSheet(workbook.getSheetByName("Footbridge")!);
    });
    await told("unplugged; plug it back in to have it in the season (Share, Unplug).");

    await openScreen(pane, "Season", "Kit");
    await pane.getByLabel("Name of the kit").fill("Shed");
    await pane.getByRole("button", { name: "Write the kit sheet" }).click();
    await told("unplugged; plug it back in to learn from it (Share, Unplug).");
    await tab.page.screenshot({ path: `${pictures}kit-unplugged.png` });

    await openScreen(pane, "Season", "Stores");
    await pane.getByRole("button", { name: /Write the stores/u }).click();
    await told("unplugged; plug it back in to draw and buy for it (Share, Unplug).");

    await tab.page.evaluate(() => {
      const workbook = window.gylebookBench.univerAPI.getActiveWorkbook()!;
      workbook.setActiveSheet(workbook.getSheetByName("Footbridge unplugged")!);
    });
    for (const [place, title] of [
      ["Brew", "Brew day"],
      ["Brew", "Too high, too low"],
      ["Ferment", "Reading"],
      ["Package", "Packaging"],
      ["Package", "Tasting"],
    ] as const) {
      await openScreen(pane, place, title);
      await told("unplugged; plug it back in to work on it (Share, Unplug).");
    }
    await tab.page.screenshot({ path: `${pictures}tasting-unplugged.png` });

    await openScreen(pane, "Ferment", "Calendar");
    await pane.getByRole("heading", { name: "Footbridge" }).waitFor();
    await openScreen(pane, "Plan", "Pages to print");
    await pane.getByRole("button", { name: "Write the page: Recipe page" }).click();
    await pane.getByText("is in the workbook. Print it with Print in the bar above").waitFor();
    await tab.calculated();
    expect(await tab.valueAt("Footbridge unplugged recipe", "A1")).toBe("Footbridge");
  },
  patienceMs,
);
