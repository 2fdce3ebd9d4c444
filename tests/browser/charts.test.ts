import { expect, test } from "vitest";
import { useBench, wideGrid } from "./support/bench-fixture";

const bench = useBench({ profile: "whole file", viewport: wideGrid });

test("a chart that the pane adds is drawn over its cells and follows them", async () => {
  const tab = await bench.open();
  const frame = await tab.pane();
  await frame.evaluate(() =>
    Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getActiveWorksheet();
      sheet.getRange("A1:B4").values = [
        ["Day", "Gravity"],
        [0, 1.05],
        [3, 1.02],
        [7, 1.01],
      ];
      const chart = sheet.charts.add("XYScatterLines", sheet.getRange("A1:B4"), "Columns");
      chart.title.text = "Fermentation";
      chart.setPosition("D3", "H14");
      await context.sync();
    }),
  );
  const figure = tab.page.locator(".bench-chart");
  await figure.getByText("Fermentation").waitFor();
  expect(await figure.locator("svg [aria-label='dot'] > *").count()).toBe(3);

  const box = (await figure.boundingBox())!;
  const corner = await tab.page.evaluate(() => window.gylebookBench.rectOf("Sheet 1", "D3"));
  expect(Math.abs(box.x - corner.x)).toBeLessThanOrEqual(1);
  expect(Math.abs(box.y - corner.y)).toBeLessThanOrEqual(1);

  // With one figure left there is nothing to see but axes: it is not drawn, and comes back with the second.
  for (const cell of ["B3", "B4"]) await tab.setValue("Sheet 1", cell, "");
  await figure.waitFor({ state: "hidden" });
  await tab.setValue("Sheet 1", "B3", 1.03);
  await figure.waitFor({ state: "visible" });
  await tab.page.waitForFunction(() => document.querySelectorAll(".bench-chart svg [aria-label='dot'] > *").length === 2);

  await tab.page.mouse.move(300, 600);
  await tab.page.mouse.wheel(0, 60);
  await tab.page.waitForFunction((before) => document.querySelector(".bench-chart")!.getBoundingClientRect().y < before - 10, box.y);
  const moved = (await figure.boundingBox())!;
  const cornerNow = await tab.page.evaluate(() => window.gylebookBench.rectOf("Sheet 1", "D3"));
  expect(Math.abs(moved.y - cornerNow.y)).toBeLessThanOrEqual(1);
});

test("a workbook opened while the script for charts is still loading costs nobody an error", async () => {
  let letGo = (): void => {};
  const held = new Promise<void>((resolve) => (letGo = resolve));
  const asked = new Promise<void>((resolve) => {
    void bench.context.route(/charts[^/]*\.js$/, async (route) => {
      resolve();
      await held;
      await route.continue();
    });
  });
  const tab = await bench.open("");
  await asked;
  await tab.startEmpty();
  letGo();
  await tab.page.waitForFunction(() => performance.getEntriesByType("resource").some(({ name }) => /charts[^/]*\.js$/.test(name)));
  await tab.calculated();
  expect(await tab.page.locator(".bench-chart").count()).toBe(0);
});
