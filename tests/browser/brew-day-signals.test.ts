import type { Frame } from "playwright-core";
import { expect, test } from "vitest";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { dayNumber } from "../../src/workbook/grid/words/day-number";
import { useBench } from "./support/bench-fixture";
import { CompanionPage, fakePaneClock } from "./support/companion-pane";
import { openScreen } from "./support/pane-screens";
import { picture } from "./support/theme-pictures";

const bench = useBench({ profile: "each test" });
const contents = exampleBatch({
  id: "test",
  sheetName: "Footbridge",
  batchName: "Footbridge",
  brewedOn: dayNumber("2026-09-05"),
  volume: 5,
  units: "us",
  topUp: 0,
  method: "extract",
});

declare global {
  interface Window {
    /** Tones that the pane has really had started by a running context. */
    tonesStarted?: number;
    /** How often the screen's clock has ticked. */
    ticks?: number;
    /** Lets a sound go that the browser holds back. */
    letSound?: () => void;
  }
}

/** Counts in the pane's own window what the browser is asked to sound; the real context still does its work. */
const countTones = () => {
  const { start } = OscillatorNode.prototype;
  window.tonesStarted = 0;
  // The screen's clock ticks each second: here ten times as often, and counted.
  const { setInterval: interval } = window;
  window.ticks = 0;
  window.setInterval = ((tick: () => void, ms?: number) =>
    interval(
      () => {
        tick();
        if (ms === 1000) window.ticks! += 1;
      },
      ms === 1000 ? 100 : ms,
    )) as typeof window.setInterval;
  OscillatorNode.prototype.start = function (this: OscillatorNode, when?: number) {
    if (this.context.state === "running" && (when ?? 0) >= this.context.currentTime - 0.1)
      window.tonesStarted = (window.tonesStarted ?? 0) + 1;
    start.call(this, when);
  };
};

const tones = (pane: Frame): Promise<number> => pane.evaluate(() => window.tonesStarted ?? -1);
const signal = (pane: Frame) =>
  pane.locator(".due").evaluate((card) => ({
    filled: getComputedStyle(card).backgroundColor === getComputedStyle(card).borderTopColor,
    says: card.querySelector(".countdown")?.textContent?.trim(),
  }));

/** Six ticks of the screen's clock have gone by, or three of two clocks, so what was to sound has been asked for. */
async function ticks(pane: Frame): Promise<void> {
  const before = await pane.evaluate(() => window.ticks!);
  await pane.waitForFunction((before) => window.ticks! >= before + 6, before);
}

/** The example batch half an hour before its first step, with the brew day's screen open. */
async function openDay(): Promise<CompanionPage> {
  const tab = await bench.open();
  await bench.context.addInitScript(countTones);
  const pane = await tab.pane();
  await pane.evaluate(countTones);
  await fakePaneClock(tab.page, pane);
  const page = new CompanionPage(tab, pane, contents);
  await page.at("2026-09-05T09:30");
  await page.insertExample();
  await openScreen(pane, "Brew", "Brew day");
  await pane.locator(".countdown", { hasText: "30:00" }).waitFor();
  return page;
}

test("what comes due fills its card and, where it is wanted, sounds three tones, once; both choices outlive the pane", async () => {
  const page = await openDay();
  const { pane, tab } = page;
  const sound = (frame: Frame) => frame.getByLabel("Sound three tones");
  const colour = (frame: Frame) => frame.getByLabel("Fill its card with colour");
  expect(await sound(pane).isChecked()).toBe(false);
  expect(await colour(pane).isChecked()).toBe(true);
  expect((await signal(pane)).filled).toBe(false);

  // Without sound: the card alone, and its words for a screen reader.
  await page.at("2026-09-05T10:00");
  await expect.poll(() => signal(pane)).toEqual({ filled: true, says: "Now" });
  await expect.poll(() => pane.locator('.day > [aria-live="polite"].unseen').textContent()).toMatch(/^Now: /);
  await ticks(pane);
  expect(await tones(pane)).toBe(0);

  // Whoever chooses the sound hears it; what is overdue by now makes none of its own.
  await sound(pane).check();
  await expect.poll(() => tones(pane)).toBe(3);
  await ticks(pane);
  expect(await tones(pane)).toBe(3);

  // The timer that the first step started ends when the next is due: one sound for both.
  await page.pressDue(0);
  await pane.locator(".running").getByText("15:00").waitFor();
  expect((await signal(pane)).filled).toBe(false);
  await page.at("2026-09-05T10:15");
  await pane.locator(".running.over").waitFor();
  await expect.poll(() => tones(pane)).toBe(6);
  await ticks(pane);
  expect(await tones(pane)).toBe(6);

  // Without the colour the words still tell.
  await colour(pane).uncheck();
  await expect.poll(() => signal(pane)).toEqual({ filled: false, says: "Now" });

  // The pane opens anew, on this screen, with both choices.
  await tab.keepNow();
  await tab.reload();
  const again = await tab.pane();
  await again.locator(".due").waitFor();
  expect(await sound(again).isChecked()).toBe(true);
  expect(await colour(again).isChecked()).toBe(false);

  const reopened = new CompanionPage(tab, again, contents);
  await reopened.pressDue(1);
  await reopened.at("2026-09-05T10:25");
  await expect.poll(() => tones(again)).toBe(3);
  expect(await signal(again)).toEqual({ filled: false, says: "Now" });
}, 300_000);

test("in the boil an addition sounds though the one before it was not marked, and flame-out though neither was", async () => {
  const page = await openDay();
  const { pane } = page;
  for (let row = 0; row <= 6; row += 1) await page.type("happened", (10 * 60 + 20 + row) / 1440, row);
  await page.at("2026-09-05T11:00");
  await pane.locator(".due").getByText("Boil begins").waitFor();
  await page.pressDue(7);
  // The first hops boil for 55 minutes.
  await page.at("2026-09-05T11:05");
  await page.pressDue(8);
  await pane.locator(".due .countdown", { hasText: "20:00" }).waitFor();
  await pane.getByLabel("Sound three tones").check();
  await expect.poll(() => tones(pane)).toBe(3);
  for (const [time, waiting, so] of [
    ["11:25", 0, 6],
    ["11:42", 1, 9],
    ["12:00", 4, 12],
  ] as const) {
    await page.at(`2026-09-05T${time}`);
    await expect.poll(() => tones(pane), { message: time }).toBe(so);
    // Those that wait behind the one that is due are marked as due, too.
    await expect.poll(() => pane.locator(".coming .left strong").count(), { message: time }).toBe(waiting);
  }
  await ticks(pane);
  expect(await tones(pane)).toBe(12);
  await openScreen(pane, "Ferment", "Reading");
  await pane.getByRole("complementary", { name: "Brew day under way" }).getByText("and 4 more").waitFor();
}, 300_000);

test("on the other screens a line above says what is next, follows the sheet, and sounds as the brew day would", async () => {
  const page = await openDay();
  const { pane } = page;
  const strip = pane.getByRole("complementary", { name: "Brew day under way" });
  expect(await strip.count()).toBe(0);
  await pane.getByLabel("Sound three tones").check();
  await expect.poll(() => tones(pane)).toBe(3);
  await openScreen(pane, "Ferment", "Reading");
  await strip.getByText("30:00").waitFor();
  await strip.getByText("Clean all").waitFor();

  // It comes due while somebody looks at the yeast: said, coloured, sounded once, with its caution.
  await page.at("2026-09-05T10:00");
  await strip.getByText("Now", { exact: true }).waitFor();
  await strip.getByText("Cleaner burns skin and eyes").waitFor();
  const filled = () => strip.evaluate((line) => getComputedStyle(line).backgroundColor === getComputedStyle(line).borderBottomColor);
  expect(await filled()).toBe(true);
  await expect.poll(() => tones(pane)).toBe(6);
  await picture(page, "strip");
  await ticks(pane);
  expect(await tones(pane)).toBe(6);

  // Somebody marks the step in the sheet itself: the line goes on to the next, also with another sheet in front.
  await page.type("happened", (10 * 60) / 1440);
  await strip.getByText(/Collect \d\.\d\d gal of chlorine-free water/).waitFor();
  await strip.getByText("15:00").waitFor();
  expect(await filled()).toBe(false);

  // Back on the brew day the line is gone, and what has sounded is not sounded again.
  await page.at("2026-09-05T10:16");
  await expect.poll(() => tones(pane)).toBe(9);
  await strip.getByRole("button", { name: "Go to the brew day" }).click();
  await pane
    .locator(".due")
    .getByText(/Collect \d\.\d\d gal of chlorine-free water/)
    .waitFor();
  expect(await strip.count()).toBe(0);
  await pane.getByLabel("Fill its card with colour").uncheck();
  await ticks(pane);
  expect(await tones(pane)).toBe(9);
  await openScreen(pane, "Package", "Tasting");
  await strip.getByText("Now", { exact: true }).waitFor();
  expect(await filled()).toBe(false);
  await ticks(pane);
  expect(await tones(pane)).toBe(9);
}, 300_000);

test("a sound that the browser holds back until somebody presses something is announced, and does not come late", async () => {
  const page = await openDay();
  const { pane } = page;
  await pane.getByLabel("Sound three tones").check();
  await expect.poll(() => tones(pane)).toBe(3);
  // The driver of this browser counts as somebody who presses: the browser's own holding back is played here.
  await pane.evaluate(() => {
    Object.defineProperty(navigator, "userActivation", { configurable: true, value: { hasBeenActive: false } });
    AudioContext.prototype.resume = () => new Promise((resolve) => (window.letSound = resolve));
  });
  // The screen is drawn anew as the clock goes on.
  await page.at("2026-09-05T09:31");
  await pane.getByText("Press anywhere in this pane once").waitFor();
  await page.at("2026-09-05T10:00");
  await expect.poll(() => signal(pane)).toEqual({ filled: true, says: "Now" });
  await pane.evaluate(() => void Object.defineProperty(navigator, "userActivation", { value: { hasBeenActive: true } }));
  await page.at("2026-09-05T10:01");
  await pane.getByText("Press anywhere in this pane once").waitFor({ state: "detached" });
  // It may sound at last, two and a half seconds after it was asked for.
  await pane.evaluate(() => {
    const now = performance.now.bind(performance);
    performance.now = () => now() + 2500;
    window.letSound!();
  });
  await ticks(pane);
  expect(await tones(pane)).toBe(3);
}, 300_000);
