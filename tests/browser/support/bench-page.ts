import type { BrowserContext, Frame, Page } from "playwright-core";
import { expect } from "vitest";

/** What pages of one context did that they should not: requests off the origin, errors, warnings of the security policy. */
export interface Misdeeds {
  foreignRequests: string[];
  errors: string[];
}

export function watch(context: BrowserContext, origin: string): Misdeeds {
  const misdeeds: Misdeeds = { foreignRequests: [], errors: [] };
  context.on("request", (request) => {
    const address = request.url();
    if (!address.startsWith(`${origin}/`) && !/^(data|blob):/u.test(address)) misdeeds.foreignRequests.push(address);
  });
  context.on("weberror", (problem) => misdeeds.errors.push(String(problem.error())));
  context.on("console", (message) => {
    if (message.type() === "error") misdeeds.errors.push(message.text());
  });
  return misdeeds;
}

/** The bench in one tab, worked through the mouse and the keyboard; values are read through the page's own handle. */
export class BenchPage {
  constructor(
    readonly page: Page,
    readonly origin: string,
  ) {}

  /** Starts with an empty workbook where nothing is kept. */
  static async open(context: BrowserContext, origin: string, query = "?empty=1"): Promise<BenchPage> {
    const bench = new BenchPage(await context.newPage(), origin);
    await bench.page.goto(`${origin}/bench/${query}`);
    await bench.ready();
    return bench;
  }

  async ready(): Promise<void> {
    await this.page.waitForFunction(() => window.gylebookBench !== undefined);
    await this.page.evaluate(() => window.gylebookBench.ready);
    // What the grid starts late would come into the middle of the typing: see src/bench/page/late-parts.ts.
    expect(
      await this.page.evaluate(() => {
        const { univerAPI } = window.gylebookBench;
        return univerAPI.getCurrentLifecycleStage() === univerAPI.Enum.LifecycleStages.Steady;
      }),
    ).toBe(true);
  }

  async reload(): Promise<void> {
    await this.page.reload();
    await this.ready();
  }

  /** An empty workbook without a question, as if the bench had just been opened. */
  async startEmpty(): Promise<void> {
    await this.page.evaluate(() => window.gylebookBench.session.openEmpty());
    await this.calculated();
    // Another workbook has a pane of its own.
    await this.pane();
  }

  async click(sheet: string, a1: string): Promise<void> {
    const { x, y } = await this.middleOf(sheet, a1);
    await this.page.mouse.click(x, y);
  }

  /** Scrolls a cell into the middle of things, and waits until the grid stands still there. */
  async scrollTo(sheet: string, a1: string): Promise<void> {
    await this.page.evaluate(
      async ([sheet, a1]) => {
        const { univerAPI, rectOf } = window.gylebookBench;
        const worksheet = univerAPI.getActiveWorkbook()!.getSheetByName(sheet)!;
        const range = worksheet.getRange(a1);
        worksheet.scrollToCell(Math.max(0, range.getRow() - 6), Math.max(0, range.getColumn() - 3));
        for (let last = "", still = 0; still < 3;) {
          await new Promise(requestAnimationFrame);
          const now = JSON.stringify(rectOf(sheet, a1));
          still = now === last ? still + 1 : 0;
          last = now;
        }
      },
      [sheet, a1] as const,
    );
  }

  async hover(sheet: string, a1: string): Promise<void> {
    const { x, y } = await this.middleOf(sheet, a1);
    // The grid answers to movement, not to a pointer that is suddenly there.
    await this.page.mouse.move(x - 4, y - 2);
    await this.page.mouse.move(x, y, { steps: 4 });
  }

  /** Clicks a cell, types into it as a person does, and leaves it with Enter. */
  async enter(sheet: string, a1: string, typed: string): Promise<void> {
    await this.click(sheet, a1);
    await this.page.keyboard.type(typed, { delay: 10 });
    await this.leaveEditor();
    await this.calculated();
  }

  /** Enter, once. Where the grid swallows it a person would press it again, and would be right to complain: so does this. */
  async leaveEditor(): Promise<void> {
    const closed = (timeout: number) =>
      this.page
        .waitForFunction(() => !window.gylebookBench.univerAPI.getActiveWorkbook()!.isCellEditing(), undefined, { timeout })
        .then(
          () => true,
          () => false,
        );
    await this.page.keyboard.press("Enter");
    if (await closed(20_000)) return;
    const focused = await this.page.evaluate(() => `${document.activeElement?.tagName ?? "nothing"} ${document.activeElement?.id ?? ""}`);
    await this.page.keyboard.press("Enter");
    throw new Error(
      `The grid swallowed Enter (the keyboard was with ${focused.trim()}): ${(await closed(20_000)) ? "a second press left the editor" : "a second press did not leave the editor either"}.`,
    );
  }

  /** Writes without the keyboard, for what a test is not about. */
  async setValue(sheet: string, a1: string, value: number | string): Promise<void> {
    await this.page.evaluate(([sheet, a1, value]) => window.gylebookBench.setValue(sheet, a1, value), [sheet, a1, value] as const);
  }

  valueAt(sheet: string, a1: string): Promise<number | string | boolean | null> {
    return this.page.evaluate(([sheet, a1]) => window.gylebookBench.valueAt(sheet, a1), [sheet, a1] as const);
  }

  async calculated(): Promise<void> {
    await this.page.evaluate(() => window.gylebookBench.calculated());
  }

  async saveFile(): Promise<Uint8Array> {
    return new Uint8Array(await this.page.evaluate(async () => [...(await window.gylebookBench.save())]));
  }

  async openFile(bytes: Uint8Array, name: string): Promise<void> {
    await this.page.setInputFiles("#file-input", {
      name,
      mimeType: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
      buffer: Buffer.from(bytes),
    });
  }

  async keepNow(): Promise<void> {
    await this.page.evaluate(() => window.gylebookBench.keepNow());
  }

  /** The pane's own document, once it stands beside the workbook that is open now and the bench has handed it `Excel`. */
  async pane(): Promise<Frame> {
    await this.page.waitForFunction(() => document.getElementById("pane")!.dataset["workbook"] === window.gylebookBench.session.unitId);
    const element = await this.page.locator("#pane").elementHandle();
    const frame = (await element!.contentFrame())!;
    await frame.waitForURL(/taskpane\.html$/u);
    await frame.waitForFunction(() => typeof Excel !== "undefined");
    return frame;
  }

  get notices() {
    return this.page.locator("#notices");
  }

  private async middleOf(sheet: string, a1: string): Promise<{ x: number; y: number }> {
    const { x, y, width, height } = await this.page.evaluate(([sheet, a1]) => window.gylebookBench.rectOf(sheet, a1), [sheet, a1] as const);
    return { x: x + width / 2, y: y + height / 2 };
  }
}
