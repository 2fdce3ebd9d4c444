import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { BenchPage } from "./support/bench-page";
import { useBench, wideGrid } from "./support/bench-fixture";
import { openScreen } from "./support/pane-screens";
import { openWorkbook } from "../../src/excel-stand-in/xlsx";
import { compared, shownByLibreOffice, shownByUs, soffice } from "../support/libre-office";
import { pictures } from "./support/pictures";

const bench = useBench({ profile: "each test", viewport: wideGrid });

const focused = (tab: BenchPage) => tab.page.evaluate(() => document.activeElement?.id);
const sheetsOf = (tab: BenchPage) =>
  tab.page.evaluate(() =>
    window.gylebookBench.univerAPI
      .getActiveWorkbook()!
      .getSheets()
      .map((sheet) => sheet.getSheetName()),
  );

test("the first visit names the example as invented, and its ways on come first for the keyboard", async () => {
  const tab = await bench.open("");
  await tab.page.getByText("An invented example:").waitFor();
  for (const [width, height] of [
    [1440, 900],
    [1000, 800],
  ] as const) {
    await tab.page.setViewportSize({ width, height });
    await tab.page.screenshot({ path: `${pictures}first-visit-${width}.png` });
  }
  const order = [await focused(tab)];
  for (let press = 0; press < 3; press += 1) {
    await tab.page.keyboard.press("Tab");
    order.push(await focused(tab));
  }
  expect(order).toEqual(["welcome-start", "welcome-try", "welcome-guide", "welcome-close"]);

  // The guide is a page that is there, in a tab of its own.
  const opened = bench.context.waitForEvent("page");
  await tab.page.locator("#welcome-guide").press("Enter");
  const guide = await opened;
  await guide.getByRole("heading", { level: 1 }).first().waitFor();
  expect(new URL(guide.url()).pathname).toBe("/guide/index.html");
  await guide.close();
  expect(await tab.page.locator("#welcome").isVisible()).toBe(false);
  await tab.keepNow();
  await tab.reload();
  expect(await tab.valueAt("Batch 1", "A1")).toBe("Quillmarsh Footbridge Pale");
  expect(await tab.page.locator("#welcome").isVisible()).toBe(false);
  expect(await tab.page.locator("#guide-link").getAttribute("href")).toBe("../guide/index.html");
});

test("one key starts an own batch: an empty workbook, and the pane asks for the batch", async () => {
  const tab = await bench.open("");
  await tab.page.keyboard.press("Enter");
  await expect.poll(() => sheetsOf(tab), { timeout: 20_000 }).toEqual(["Sheet 1"]);
  const pane = await tab.pane();
  await pane.getByRole("heading", { name: "New batch" }).waitFor();
  await expect.poll(() => pane.evaluate(() => document.activeElement?.id)).toBe("new-batch-title");
  // From the heading on, by the keyboard alone.
  await tab.page.keyboard.press("Tab");
  await tab.page.keyboard.type("Mine");
  expect(await pane.getByLabel("Name of the batch").inputValue()).toBe("Mine");
  await tab.page.screenshot({ path: `${pictures}first-own-batch.png` });
});

test("a formula is begun in a free cell, the functions are listed, and what is typed goes on there", async () => {
  const tab = await bench.open("");
  await tab.page.locator("#welcome-try").press("Enter");
  await (await tab.pane()).getByRole("heading", { name: "Functions" }).waitFor();
  await tab.page.waitForFunction(() => window.gylebookBench.univerAPI.getActiveWorkbook()!.isCellEditing());
  // In the grid, not in the pane: the list stands open before anything is typed.
  await tab.page.getByText("GYLE.WORT.PLATO").first().waitFor({ timeout: 3_000 });
  await tab.page.screenshot({ path: `${pictures}first-formula-begun.png` });
  await tab.page.keyboard.type("BEER.AB", { delay: 30 });
  await tab.page.getByText("Alcohol by volume of a beer").first().waitFor();
  await tab.page.keyboard.type("V(1.05,1.01)", { delay: 30 });
  await tab.leaveEditor();
  await tab.calculated();
  // 5.31: the example in src/functions/beer/abv.ts.
  expect(await tab.valueAt("Try a formula", "D2")).toBeCloseTo(5.31, 2);
  expect(await sheetsOf(tab)).toEqual(["Batch 1", "Try a formula"]);
});

test("after Open and New the pane shows what is in front, and it follows what is typed", async () => {
  const tab = await bench.open();
  const season = readFileSync(new URL("../../sample-workbooks/shared-unplugged.xlsx", import.meta.url));
  const sample = readFileSync(new URL("../../sample-workbooks/first-extract-batch.xlsx", import.meta.url));
  await tab.openFile(sample, "Footbridge.xlsx");
  await tab.page.waitForFunction(() => document.title.startsWith("Footbridge"));
  const pane = await tab.pane();
  await openScreen(pane, "Package", "Packaging");
  await pane.getByText("Quillmarsh Footbridge Pale").waitFor();
  await tab.setValue("Batch 1", "B4", "Renamed Pale");
  await pane.getByText("Renamed Pale").waitFor({ timeout: 3_000 });

  // Another sheet in front: the form says whose it is.
  await tab.page.evaluate(() => {
    const workbook = window.gylebookBench.univerAPI.getActiveWorkbook()!;
    workbook.setActiveSheet(workbook.insertSheet("Notes"));
  });
  await pane.getByText("Its sheet “Batch 1” is not the one in front").waitFor({ timeout: 3_000 });

  await tab.page.locator("#new-button").click();
  await tab.page.getByRole("button", { name: "Empty workbook" }).click();
  await tab.page.waitForFunction(() => document.title.startsWith("Workbook"));
  await tab.pane();
  await pane.getByRole("heading", { name: "New batch" }).waitFor({ timeout: 5_000 });
  expect(await pane.getByText("Renamed Pale").count()).toBe(0);

  await tab.openFile(season, "Shared.xlsx");
  await tab.page.waitForFunction(() => document.title.startsWith("Shared"));
  await openScreen(await tab.pane(), "Package", "Packaging");
  await pane.getByText("Sluice Keeper's unplugged").first().waitFor({ timeout: 5_000 });
});

test("a workbook is called by its batch, and what is saved for everyone shows the same figures in LibreOffice", async ({ skip }) => {
  const tab = await bench.open();
  const pane = await tab.pane();
  await pane.getByLabel("Name of the batch").fill("Quillmarsh Mild");
  await pane.getByLabel("An example pale ale to change").check();
  await pane.getByRole("button", { name: "Write the batch sheet" }).click();
  await pane.getByText("“Quillmarsh Mild” is in the workbook").waitFor();
  await tab.calculated();
  await expect.poll(() => tab.page.locator("#workbook-name").inputValue(), { timeout: 20_000 }).toBe("Quillmarsh Mild");

  const waiting = tab.page.waitForEvent("download");
  await tab.page.getByRole("button", { name: "Save for everyone" }).click();
  const download = await waiting;
  expect(download.suggestedFilename()).toBe("Quillmarsh Mild for everyone.xlsx");
  const notice = tab.notices.getByText("any spreadsheet program shows this file");
  await notice.waitFor();
  await tab.page.screenshot({ path: `${pictures}saved-for-everyone.png` });
  expect(await sheetsOf(tab)).toEqual(["Sheet 1", "Quillmarsh Mild"]);
  // The notice stays while the pointer rests on it, and leaves by itself afterwards.
  await notice.hover();
  const bytes = new Uint8Array(readFileSync(await download.path()));
  const opened = await openWorkbook(bytes, { functionNames: [] });
  const parts = JSON.stringify(opened.snapshot);
  expect(parts).toContain("unplugged");
  if (!soffice) skip("LibreOffice was not found");
  const sheet = opened.snapshot.sheetOrder.findIndex((id) => opened.snapshot.sheets[id]?.name === "Quillmarsh Mild unplugged");
  expect(sheet).toBe(1);
  const front = { ...opened.snapshot, sheetOrder: opened.snapshot.sheetOrder.slice(sheet) };
  const found = compared(shownByUs({ snapshot: front, computed: opened.computed }), shownByLibreOffice(bytes, sheet + 1));
  expect(found.different).toEqual([]);
  expect(found.numbers).toBeGreaterThan(100);
  expect(await notice.isVisible()).toBe(true);
  await tab.page.mouse.move(5, 5);
  await notice.waitFor({ state: "detached", timeout: 60_000 });
}, 400_000);
