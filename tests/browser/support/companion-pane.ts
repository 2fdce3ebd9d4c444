import type { Frame, Page } from "playwright-core";
import { expect } from "vitest";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import type { BenchPage } from "./bench-page";

const clockKey = "clock of the test";

/**
 * Gives the pane a clock of the test's own, now and after a reload. Only the pane: Playwright's clock takes over the
 * timers of every frame, and the grid's scheduler breaks under it ("executing a cancelled action").
 */
export async function fakePaneClock(page: Page, pane: Frame): Promise<void> {
  await page.addInitScript(takeOverClock, clockKey);
  await pane.evaluate(takeOverClock, clockKey);
}

/** Runs in the page. */
function takeOverClock(key: string): void {
  if (!location.pathname.endsWith("taskpane.html")) return;
  const RealDate = Date;
  const now = () => Number(sessionStorage.getItem(key)) || RealDate.now();
  window.Date = new Proxy(RealDate, {
    construct: (target, given: []) => (given.length === 0 ? new target(now()) : new target(...given)),
    get: (target, property) => (property === "now" ? now : Reflect.get(target, property)),
  });
}

/** A batch sheet on the bench, its clock, and the pane beside it. */
export class CompanionPage {
  private readonly plan;

  constructor(
    readonly tab: BenchPage,
    readonly pane: Frame,
    readonly contents: BatchContents,
  ) {
    this.plan = planBatch(contents);
  }

  /** What the pane's clock shows from now on, also after a reload. */
  async at(iso: string): Promise<void> {
    await this.pane.evaluate(([key, time]) => sessionStorage.setItem(key, time), [
      clockKey,
      String(new Date(`${iso}:00`).getTime()),
    ] as const);
  }

  /** The first cell of a name, or one so many rows below. */
  cell(name: string, down = 0): string {
    const range = this.plan.names.find((candidate) => candidate.name === name)?.range.split(":")[0];
    if (!range) throw new Error(`the sheet has no name ${name}`);
    return range.replace(/\d+/, (row) => String(Number(row) + down));
  }

  get(name: string, down = 0): Promise<number | string | boolean | null> {
    return this.tab.valueAt(this.contents.sheetName, this.cell(name, down));
  }

  async type(name: string, value: number | string, down = 0): Promise<void> {
    await this.tab.setValue(this.contents.sheetName, this.cell(name, down), value);
  }

  /** Writes the sheet with the example recipe through the pane's first screen. */
  async insertExample(): Promise<void> {
    const { pane, contents } = this;
    await pane.getByLabel("Name of the batch").fill(contents.sheetName);
    await pane.getByLabel("Brewed on").fill("2026-09-05");
    await pane.getByLabel("US: gal, lb, °F").check();
    await pane.getByLabel("An example pale ale to change").check();
    await pane.getByRole("button", { name: "Write the batch sheet" }).click();
    await pane.getByText(`“${contents.sheetName}” is in the workbook`).waitFor();
    await this.tab.calculated();
  }

  /** Presses what is due, says yes where it is asked whether that can be, and waits until its time stands in the sheet. */
  async pressDue(row: number): Promise<void> {
    const due = this.pane.locator(".due");
    await due.getByRole("button", { name: /^(Start|Done): / }).click();
    const yes = due.getByRole("button", { name: /^Yes, write/ });
    await yes
      .or(this.pane.locator(`.day[data-next="${row + 1}"]`))
      .first()
      .waitFor();
    if (await yes.isVisible()) await yes.click();
    await expect.poll(() => this.get("happened", row), { timeout: 60_000, interval: 100 }).not.toBe(null);
    await this.pane.locator(`.day[data-next="${row + 1}"]`).waitFor();
  }

  /** Presses what is due, and waits for the question; the answer is the test's. */
  async pressAndBeAsked(button: RegExp, question: string): Promise<void> {
    await this.pane.locator(".due").getByRole("button", { name: button }).click();
    await this.pane.getByText(question).waitFor();
  }
}
