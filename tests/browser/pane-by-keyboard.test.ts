import type { CDPSession, Frame } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { useBench } from "./support/bench-fixture";
import type { BenchPage } from "./support/bench-page";

/*
 * One batch through the pane by the keyboard alone, on a computer that is six times as slow: nothing is written twice, nothing
 * typed is lost, and Enter and Escape do what they do elsewhere.
 */
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

/** From the top of the pane, by its two rows of buttons. */
async function goTo(place: string, title: string): Promise<void> {
  await pane.getByRole("navigation", { name: "Places in the job" }).getByRole("button").first().focus();
  await tabTo(place);
  await press("Enter");
  await pane.waitForFunction(() => document.activeElement?.tagName === "H1");
  if ((await pane.locator("h1").textContent()) === title) return;
  await pane
    .getByRole("navigation", { name: `Screens of ${place}` })
    .getByRole("button")
    .first()
    .focus();
  await tabTo(title);
  await press("Enter");
  await pane.waitForFunction((wanted) => document.activeElement?.tagName === "H1" && document.activeElement.textContent === wanted, title);
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

test(
  "a step is marked once, and a figure typed on its card outlives the clock, the sheet's news and a step marked early",
  async () => {
    await goTo("Brew", "Brew day");
    await pane.locator(".due .main-action").waitFor();
    const happened = () => pane.locator(".day").getAttribute("data-next");
    expect(await happened()).toBe("0");
    await slow(6);
    await tabTo(/^(Start|Done): /);
    await press("Enter");
    await press("Enter");
    await pane.locator('.day[data-next="1"]').waitFor();
    // A double click on the first line does not fall on the second: the card is another one by then.
    await pane.locator(".due .main-action").dblclick();
    await pane.waitForFunction(
      () => document.querySelector(".day")?.getAttribute("data-next") !== "1" || document.querySelector("[role=group]") !== null,
    );
    await slow(1);
    if (await pane.getByRole("button", { name: "No, not yet" }).count()) {
      // What is asked is answered by the keyboard, too: Escape means no.
      await pane.locator(".due .main-action").focus();
      await press("Escape");
      expect(await pane.getByRole("button", { name: "No, not yet" }).count()).toBe(0);
      expect(await happened()).toBe("1");
    } else expect(await happened()).toBe("2");

    // On to the first figure, by hand on the sheet: eight lines in a row.
    const to = async (what: string) => {
      for (let line = 0; line < 20 && (await pane.getByRole("form", { name: what }).count()) === 0; line += 1) {
        const before = await happened();
        await pane.locator(".due .main-action").click();
        await pane.waitForFunction(
          (row) => document.querySelector(".day")?.getAttribute("data-next") !== row || document.querySelector("[role=group]") !== null,
          before,
        );
        const early = pane.getByRole("button", { name: /^Yes, write/ });
        if (await early.count()) await early.click();
        await pane.waitForFunction((row) => document.querySelector(".day")?.getAttribute("data-next") !== row, before);
      }
    };
    await to("In the fermenter");
    await slow(6);
    await tabTo("Volume in the fermenter, L");
    await tab.page.keyboard.type("2");
    // Somebody types into the sheet meanwhile, and the screen reads it anew.
    await tab.setValue("Slow Water", "Z1", "read anew");
    await tab.page.keyboard.type("0.5");
    await tab.page.waitForTimeout(1500);
    expect(await pane.getByLabel("Volume in the fermenter, L").inputValue()).toBe("20.5");
    // Marked before it is written: the figure waits, and is the same one in the form that asks for all.
    await tabTo(/^(Start|Done): /);
    await press("Enter");
    // The chilling has only just begun: the question is answered by the keyboard, too.
    await pane.getByRole("button", { name: /^Yes, write/ }).waitFor();
    await tabTo(/^Yes, write/);
    await press("Enter");
    await pane.getByRole("form", { name: "Before the yeast" }).waitFor();
    await slow(1);
    expect(await pane.getByLabel("Volume in the fermenter, L").inputValue()).toBe("20.5");
    await slow(6);
    await tabTo(/^Reading before the yeast/);
    await tab.page.keyboard.type("1.048");
    await tabTo(/^Sample temperature, °C/);
    await tab.page.keyboard.type("24");
    await press("Enter");
    await press("Enter");
    await press("Enter");
    await pane.getByText(/^Before the yeast, gravity 1\.04\d: it is in the sheet\./).waitFor();
    await slow(1);
    // The keyboard goes on with the day.
    expect(await focused()).toMatch(/^(Start|Done): /);
    expect(await pane.getByRole("form", { name: "Before the yeast" }).count()).toBe(0);
  },
  patienceMs,
);
