import type { CDPSession, Frame } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { useBench } from "./support/bench-fixture";
import type { BenchPage } from "./support/bench-page";

/* A batch through the pane by the keyboard alone, on a computer that is six times as slow: nothing is written twice, nothing typed is lost. */
const bench = useBench({ profile: "whole file" });
/** A busy machine, made slower still. */
const patienceMs = 400_000;

let tab: BenchPage;
let pane: Frame;
let processor: CDPSession;
beforeAll(async () => {
  tab = await bench.open();
  // A small grid is drawn sooner.
  await tab.page.setViewportSize({ width: 900, height: 600 });
  pane = await tab.pane();
  processor = await bench.context.newCDPSession(tab.page);
}, patienceMs);

const slow = (rate: number) => processor.send("Emulation.setCPUThrottlingRate", { rate });
const press = (key: string) => tab.page.keyboard.press(key);
const sheets = () =>
  tab.page.evaluate(() =>
    window.gylebookBench.univerAPI
      .getActiveWorkbook()!
      .getSheets()
      .map((sheet) => sheet.getSheetName()),
  );
/** What has the focus, as a person would call it. */
const focused = () =>
  pane.evaluate(() => {
    const element = document.activeElement as HTMLInputElement;
    return (element.getAttribute("aria-label") ?? element.labels?.[0]?.textContent ?? element.textContent ?? "").trim();
  });

/** Tab by Tab to what is called so; a person would give up after three screens of it. */
async function tabTo(name: string | RegExp): Promise<void> {
  for (let step = 0; step < 60; step += 1) {
    const here = await focused();
    if (typeof name === "string" ? here === name : name.test(here)) return;
    await press("Tab");
  }
  throw new Error(`Tab does not lead to ${String(name)}`);
}

test(
  "a batch is written once, however often Enter is pressed",
  async () => {
    await pane.locator("h1").waitFor();
    await pane.getByLabel("Name of the batch").focus();
    await slow(6);
    await tab.page.keyboard.type("Slow Water");
    await tabTo("Metric: L, kg, °C");
    await press("Space");
    await tabTo("Blank, I fill in my own");
    await press("ArrowDown");
    expect(await focused()).toBe("An example pale ale to change");
    expect(await pane.getByLabel("An example pale ale to change").isChecked()).toBe(true);
    // Enter in any line writes, as everywhere; a second and a third press come while it is at work.
    await tabTo("Write the batch sheet");
    await press("Enter");
    await press("Enter");
    await press("Enter");
    await pane.getByText("“Slow Water” is in the workbook").waitFor();
    await slow(1);
    await tab.calculated();
    expect((await sheets()).filter((name) => name.startsWith("Slow Water"))).toEqual(["Slow Water"]);
  },
  patienceMs,
);
