import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { registry } from "../../src/functions/registry";
import { serveBuiltSite, type BuiltSite } from "./support/built-site";
import { useChromium } from "./support/chromium";
import { actAsExcelOnWindows, officeJsFolder, serveOfficeJs } from "./support/office-js";
import { openScreen } from "./support/pane-screens";

/** The page that Excel loads, with Microsoft's own office.js: without Excel around it, and with Excel's side of it played by us. */
const chromium = useChromium();
let site: BuiltSite;
let page: Page;
let asked: string[];
let violations: string[];

beforeAll(async () => {
  site = await serveBuiltSite();
});
afterEach(() => page.close());
afterAll(() => site.close());

async function newPage(): Promise<void> {
  page = await chromium.browser.newPage({ viewport: { width: 350, height: 700 } });
  asked = [];
  violations = [];
  page.on("request", (request) => asked.push(request.url()));
  await page.exposeFunction("noteViolation", (what: string) => violations.push(what));
  await page.addInitScript(() =>
    document.addEventListener(
      "securitypolicyviolation",
      (event) =>
        void (window as unknown as { noteViolation(what: string): void }).noteViolation(`${event.effectiveDirective} ${event.blockedURI}`),
    ),
  );
}

const notOurs = () => asked.filter((url) => !url.startsWith(`${site.origin}/`)).map((url) => url.replace(officeJsFolder, ""));
/** office.js hides a frame for Microsoft's usage reports; our policy is to keep it from loading. */
const usageReports = /^frame-src https:\/\/telemetryservice\.firstpartyapps\.oaspapps\.com/;

describe("the task pane's page without Excel", () => {
  it("says in words that there is no workbook beside it, and leads to the bench and the page about installing", async () => {
    await newPage();
    await serveOfficeJs(page, site.origin);
    await page.goto(`${site.origin}/taskpane.html`);
    await page.getByRole("status").waitFor();
    expect(await page.getByRole("status").textContent()).toContain("there is no workbook beside it");
    for (const [name, title] of [
      ["Open the bench", "Gylebook bench"],
      ["Put Gylebook into your Excel", "Gylebook: put it into your Excel"],
    ] as const) {
      const address = await page.getByRole("link", { name }).evaluate((link: HTMLAnchorElement) => link.href);
      expect(await (await fetch(address)).text()).toContain(`<title>${title}</title>`);
    }
    expect(notOurs()).toEqual(["office.js", "o15apptofilemappingtable.js"]);
    expect(violations.filter((what) => !usageReports.test(what))).toEqual([]);
  });

  it("says so too when office.js cannot be fetched", async () => {
    await newPage();
    await page.route(`${officeJsFolder}**`, (route) => route.abort());
    await page.goto(`${site.origin}/taskpane.html`);
    await page.getByRole("status").waitFor();
    expect(await page.getByRole("status").textContent()).toContain("there is no workbook beside it");
  });

  it("has every function registered before the pane asks the host for anything", async () => {
    await newPage();
    const noting = `window.registered = [];
      window.CustomFunctions = { associate: (all) => window.registered.push(...Object.keys(all)), Error: class {} };
      window.Office = { onReady: async () => { window.registeredWhenAsked = window.registered.length; return { host: null, platform: null }; } };`;
    await page.route(`${officeJsFolder}office.js`, (route) => route.fulfill({ contentType: "text/javascript", body: noting }));
    // A pane that is slow to arrive keeps no function waiting.
    await page.route("**/taskpane.js", async (route) => {
      await page.waitForFunction("window.registered?.length > 0");
      await route.continue();
    });
    await page.goto(`${site.origin}/taskpane.html`);
    await page.getByRole("status").waitFor();
    expect(await page.evaluate("window.registeredWhenAsked")).toBe(registry.length);
    expect(await page.evaluate("window.registered")).toEqual(registry.map(({ id }) => id));
  });
});

describe("the task pane's page in Microsoft's office.js as Excel on Windows", () => {
  async function openInExcel(options: Parameters<typeof actAsExcelOnWindows>[0] = {}): Promise<void> {
    await newPage();
    await serveOfficeJs(page, site.origin);
    await page.addInitScript(actAsExcelOnWindows, options);
    await page.goto(`${site.origin}/taskpane.html?_host_Info=Excel$Win32$16.01$en-US`);
    await page.getByRole("navigation", { name: "Places in the job" }).waitFor();
  }

  it("shows the pane, and a screen that is fetched on demand, though alert and history are taken away", async () => {
    await openInExcel();
    expect(await page.evaluate(() => [history.pushState, history.replaceState])).toEqual([null, null]);
    await expect(page.evaluate(() => alert("?"))).rejects.toThrow("not supported");
    expect(await page.evaluate(() => document.documentElement.dataset["theme"])).toBe("dark");
    await openScreen(page.mainFrame(), "Help", "Functions");
    await page.getByLabel("Look for").fill("priming");
    await page.getByRole("button", { name: "GYLE.PACK.PRIMING" }).waitFor();
    expect(notOurs().sort()).toEqual(["en-us/office_strings.js", "excel-win32-16.01.js", "office.js", "telemetry/oteljs_agave.js"]);
    expect(violations).toEqual([]);
  });

  it("answers Excel's calls from the same page, also while the pane is being used", async () => {
    await openInExcel();
    const call = (id: number, name: string, parameters: unknown[]) => ({
      messageCategory: 1,
      messageType: 1000,
      message: JSON.stringify([id, name, parameters, "Sheet1!A1", 4]),
    });
    const entries = [
      call(1, "BEER.ABV", [[[1.05]], [[1.01]], null]),
      call(2, "BEER.ABV", [[["soon"]], [[1.01]], null]),
      call(3, "BEER.EBC", [[[5], [""], [10]]]),
    ];
    await page.evaluate((message) => window.excelSide.sendToPage(message), { type: 3, message: { entries } });
    await openScreen(page.mainFrame(), "Help", "Functions");
    await page.waitForFunction(() => window.excelSide.results.length === 3);
    const results = await page.evaluate(() => window.excelSide.results.map(([id, ok, value]) => ({ id, ok, value })));
    expect(results).toEqual([
      { id: 1, ok: true, value: [[expect.closeTo(5.31, 2)]] },
      {
        id: 2,
        ok: true,
        value: [[expect.objectContaining({ code: "#VALUE!", message: expect.stringContaining("must be a number") as string })]],
      },
      // 25 / 12.7 of the value in SRM, the definition of both units.
      { id: 3, ok: true, value: [[expect.closeTo(9.84, 2)], [""], [expect.closeTo(19.69, 2)]] },
    ]);
  });

  const writeBatch = async (): Promise<void> => {
    await page.getByLabel("Name of the batch").fill("Footbridge");
    await page.getByLabel("An example pale ale to change").check();
    await page.getByRole("button", { name: "Write the batch sheet" }).click();
  };
  const workbookRequests = () =>
    page.evaluate(() => window.excelSide.requests.filter(({ names }) => !names.some((name) => name.startsWith("Microsoft."))));

  it("writes a whole batch sheet through Microsoft's Excel library, in at most three round trips", async () => {
    await openInExcel();
    // What the pane asks on opening is not the batch's: wait until it has asked.
    let before = -1;
    await expect
      .poll(
        async () => {
          const last = before;
          before = (await workbookRequests()).length;
          return before === last;
        },
        { interval: 700, timeout: 30_000 },
      )
      .toBe(true);
    await writeBatch();
    await page.getByText("“Footbridge” is in the workbook").waitFor();
    const requests = (await workbookRequests()).slice(before);
    expect(requests.length).toBeLessThanOrEqual(3);
    // The sheet, its cells, tables and names have all passed the library's own checks of members and arguments. Its chart comes with
    // the first reading.
    expect(requests.flatMap(({ names }) => names)).toEqual(expect.arrayContaining(["Worksheets", "Add", "Formulas", "Tables", "Names"]));
    expect(requests.flatMap(({ names }) => names)).not.toContain("Charts");
    expect(Math.max(...requests.map(({ actions }) => actions))).toBeGreaterThan(300);
  });

  it("tells in words when Excel refuses, with Excel's own reason", async () => {
    await openInExcel({ refuseWith: "The workbook is open for reading only." });
    await writeBatch();
    await page
      .getByText("The batch was not written, and the workbook is as it was. The spreadsheet said: The workbook is open for reading only.")
      .waitFor();
  });
});
