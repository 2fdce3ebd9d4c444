import { expect, test } from "vitest";
import type { BenchPage } from "./support/bench-page";
import { useBench } from "./support/bench-fixture";

const bench = useBench({ profile: "each test" });
const sheet = "Sheet 1";

test("work comes back after a reload, without having been saved, and so do the width and the look of the pane", async () => {
  const tab = await bench.open();
  await tab.enter(sheet, "B3", "=GYLE.BEER.ABV(1.05,1.01)");
  const width = () => tab.page.locator("#pane-side").evaluate((side: HTMLElement) => side.offsetWidth);
  const before = await width();
  for (const key of ["ArrowLeft", "ArrowLeft", "ArrowLeft", "ArrowRight"]) await tab.page.locator("#pane-divider").press(key);
  const chosen = await width();
  expect(chosen).toBeGreaterThan(before);
  await tab.page.locator("#theme-choice").selectOption("dark");
  await tab.page.locator("#status", { hasText: "kept in this browser at" }).waitFor();
  await tab.reload();
  expect(await tab.valueAt(sheet, "B3")).toBeCloseTo(5.31, 2);
  expect(await width()).toBe(chosen);
  const pane = await tab.pane();
  await pane.waitForFunction(() => document.documentElement.dataset["theme"] === "dark");
});

test("after a reload the sheet that was in front is in front again, with its cells on the screen and for the pane", async () => {
  const tab = await bench.open();
  await tab.page.evaluate(async () => {
    const workbook = window.gylebookBench.univerAPI.getActiveWorkbook()!;
    workbook.insertSheet("Second");
    workbook.insertSheet("Third");
    workbook.setActiveSheet(workbook.getSheetByName("Sheet 1")!);
    await window.gylebookBench.setValue("Second", "B2", 5);
  });
  await tab.keepNow();
  // Going to another sheet is all that is done since.
  await tab.page.evaluate(() => {
    const workbook = window.gylebookBench.univerAPI.getActiveWorkbook()!;
    workbook.setActiveSheet(workbook.getSheetByName("Second")!);
  });
  await tab.keepNow();
  await tab.reload();
  expect(await inFront(tab)).toBe("Second");
  // What is clicked on the screen is that sheet's, and the pane is told the same.
  await tab.enter("Second", "C3", "=B2*2");
  expect(await tab.valueAt("Second", "C3")).toBe(10);
  const pane = await tab.pane();
  expect(
    await pane.evaluate(() =>
      Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getActiveWorksheet();
        sheet.load("name");
        await context.sync();
        return sheet.name;
      }),
    ),
  ).toBe("Second");

  // A sheet that went is no reason not to open.
  await tab.page.evaluate(async () => {
    const workbook = window.gylebookBench.univerAPI.getActiveWorkbook()!;
    await workbook.deleteSheet(workbook.getSheetByName("Second")!);
  });
  await tab.keepNow();
  await tab.reload();
  expect(["Sheet 1", "Third"]).toContain(await inFront(tab));
});

const inFront = (tab: BenchPage) =>
  tab.page.evaluate(() => window.gylebookBench.univerAPI.getActiveWorkbook()!.getActiveSheet().getSheetName());

test("work comes back after a crash", async () => {
  const tab = await bench.open();
  await tab.setValue(sheet, "B3", 42);
  await tab.page.locator("#status", { hasText: "kept in this browser at" }).waitFor();
  await tab.keepNow();
  const session = await bench.context.newCDPSession(tab.page);
  void session.send("Page.crash").catch(() => undefined);
  await tab.page.waitForEvent("crash");
  const next = await bench.open();
  expect(await next.valueAt(sheet, "B3")).toBe(42);
});

test("a second tab says so and does not write over the first one's work", async () => {
  const first = await bench.open();
  await first.setValue(sheet, "B3", 1);
  await first.keepNow();
  const second = await bench.open();
  await second.notices.getByText("open in another tab").waitFor();
  await second.setValue(sheet, "B3", 2);
  await second.keepNow();
  await first.reload();
  expect(await first.valueAt(sheet, "B3")).toBe(1);
});

test("the second tab can take over, with everything the first had", async () => {
  const first = await bench.open();
  const second = await bench.open();
  await first.setValue(sheet, "B3", 3);
  await second.page.getByRole("button", { name: "Work in this tab instead" }).click();
  await second.page.waitForFunction(() => window.gylebookBench.valueAt("Sheet 1", "B3") === 3);
  await first.notices.getByText("goes on in another tab").waitFor();
  await second.setValue(sheet, "B3", 4);
  await second.keepNow();
  await second.reload();
  expect(await second.valueAt(sheet, "B3")).toBe(4);
});

test("where the newest state is damaged the one before it opens, and the damaged one is set aside", async () => {
  bench.allowErrors();
  const tab = await bench.open();
  await tab.setValue(sheet, "B3", "older");
  await tab.keepNow();
  await tab.setValue(sheet, "B3", "newer");
  await tab.keepNow();
  await damage(tab, "newest");
  await tab.reload();
  await tab.notices.getByText("was damaged").waitFor();
  expect(await tab.valueAt(sheet, "B3")).toBe("older");
  const download = tab.page.waitForEvent("download");
  await tab.page.getByRole("button", { name: "Download what is left" }).click();
  expect((await download).suggestedFilename()).toMatch(/^damaged-.*\.json$/u);
});

test("where both states are damaged a fresh workbook opens", async () => {
  bench.allowErrors();
  const tab = await bench.open();
  await tab.setValue(sheet, "B3", "older");
  await tab.keepNow();
  await tab.setValue(sheet, "B3", "newer");
  await tab.keepNow();
  await damage(tab, "both");
  await tab.reload();
  await tab.notices.getByText("A fresh workbook is open instead").waitFor();
  expect(await tab.valueAt(sheet, "B3")).toBeNull();
});

test("a new workbook is started only after a question in the page", async () => {
  const tab = await bench.open();
  await tab.setValue(sheet, "B3", 5);
  await tab.page.getByRole("button", { name: "New" }).click();
  await tab.page.getByRole("button", { name: "Cancel" }).click();
  expect(await tab.valueAt(sheet, "B3")).toBe(5);
  await tab.page.getByRole("button", { name: "New" }).click();
  await tab.page.getByRole("button", { name: "Empty workbook" }).click();
  await expect.poll(() => tab.valueAt(sheet, "B3"), { timeout: 30_000 }).toBeNull();
});

/** Cuts the text of the kept workbook short, as a broken writing would, behind the page's back. */
async function damage(tab: BenchPage, which: "newest" | "both"): Promise<void> {
  // The page must not write once more when it is left.
  await tab.page.locator("#status", { hasText: "kept in this browser at" }).waitFor();
  await tab.keepNow();
  const damaged = await tab.page.evaluate(async (which) => {
    const done = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await done(indexedDB.open("gylebook-bench"));
    const store = database.transaction("workbooks", "readwrite").objectStore("workbooks");
    const places = ["workbook-a", "workbook-b"];
    const records = (await Promise.all(places.map((place) => done(store.get(place))))) as { generation: number; text: string }[];
    const newest = records[0]!.generation > records[1]!.generation ? 0 : 1;
    const chosen = which === "both" ? [0, 1] : [newest];
    for (const index of chosen) await done(store.put({ ...records[index]!, text: records[index]!.text.slice(0, 100) }, places[index]));
    return chosen.length;
  }, which);
  expect(damaged).toBe(which === "both" ? 2 : 1);
}

test("a browser that blocks sites' data shows the bench all the same, and says that it keeps nothing", async () => {
  bench.allowErrors();
  const first = await bench.open();
  await bench.context.addInitScript(() => {
    const blocked = () => {
      throw new DOMException("Access is denied for this document.", "SecurityError");
    };
    for (const store of ["localStorage", "indexedDB"]) Object.defineProperty(window, store, { get: blocked });
    navigator.locks.request = () => Promise.reject(new DOMException("Access is denied for this document.", "SecurityError"));
  });
  await first.page.close();
  const tab = await bench.open();
  await tab.notices.getByText("This browser keeps nothing for this page").waitFor();
  await tab.enter(sheet, "B3", "=6*7");
  expect(await tab.valueAt(sheet, "B3")).toBe(42);
  await tab.page.locator("#theme-choice").selectOption("dark");
  await tab.page.locator("#pane-button").click();
  expect(await tab.page.locator("#pane").isVisible()).toBe(false);
});

test("where storage is full one warning stands until there is room again", async () => {
  bench.allowErrors();
  const tab = await bench.open();
  await tab.page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
    Object.assign(window, {
      makeRoom: () => {
        IDBObjectStore.prototype.put = put;
      },
    });
  });
  const warning = tab.notices.getByText("This browser refused to keep the latest changes");
  for (const value of [1, 2, 3]) {
    await tab.setValue(sheet, "B3", value);
    await tab.keepNow();
  }
  expect(await warning.count()).toBe(1);
  await tab.page.evaluate(() => (window as unknown as { makeRoom(): void }).makeRoom());
  await tab.setValue(sheet, "B3", 4);
  await warning.waitFor({ state: "detached" });
  await tab.reload();
  expect(await tab.valueAt(sheet, "B3")).toBe(4);
});
