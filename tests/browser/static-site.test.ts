import type { BrowserContext } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { parseManifest, elements } from "../../src/build/manifest/document";
import { BenchPage, watch, type Misdeeds } from "./support/bench-page";
import { useChromium } from "./support/chromium";
import { serveOfficeJs } from "./support/office-js";
import { openScreen } from "./support/pane-screens";
import { serveStaticSite, type StaticSite } from "./support/static-site";

/** What a club uploads, from the first page to the last, under a path of its own and with the headers that it asks for. */
let site: StaticSite;
const chromium = useChromium();
let context: BrowserContext;
let misdeeds: Misdeeds;

beforeAll(async () => {
  site = await serveStaticSite();
  context = await chromium.browser.newContext({ viewport: { width: 1400, height: 900 } });
  context.setDefaultTimeout(100_000);
  // Every request must stay under the site's own path, and nothing may be refused by its policy.
  misdeeds = watch(context, site.address);
});
afterAll(() => site.close());

test("the folder's own address tells a member what to do, and leads to the bench, which works", async () => {
  const page = await context.newPage();
  await page.goto(`${site.address}/`);
  await page.getByRole("heading", { name: "Put Gylebook into your Excel" }).waitFor();
  for (const name of ["Excel on the web", "Excel for Mac", "Excel for Windows"]) await page.getByRole("heading", { name }).waitFor();
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("link", { name: /^Download/ }).click()]);
  expect(download.suggestedFilename()).toBe("gylebook-manifest.xml");
  await page.getByRole("link", { name: "Open the bench" }).click();
  const bench = new BenchPage(page, site.address);
  await bench.ready();
  await bench.startEmpty();
  await bench.setValue("Sheet 1", "B3", "=GYLE.BEER.ABV(1.05,1.01)");
  expect(await bench.valueAt("Sheet 1", "B3")).toBeCloseTo(5.31, 2);
  const pane = await bench.pane();
  await openScreen(pane, "Help", "Functions");
  await pane.getByLabel("Look for").waitFor();
  expect(misdeeds).toEqual({ foreignRequests: [], errors: [] });
  await page.close();
});

test("every address in the manifest is answered with the right kind of file, also for Excel on the web", async () => {
  const manifest = parseManifest(await (await fetch(`${site.address}/manifest.xml`)).text());
  const base = "https://club.example/gylebook/";
  const addresses = elements(manifest, "*")
    .map((element) => element.getAttribute("DefaultValue") ?? "")
    .filter((value) => value.startsWith(base));
  expect(new Set(addresses).size).toBeGreaterThanOrEqual(11);
  const types: Record<string, RegExp> = { html: /^text\/html/, js: /javascript/, json: /^application\/json/, png: /^image\/png/ };
  for (const address of new Set(addresses)) {
    const answer = await fetch(`${site.address}/${address.slice(base.length)}`);
    expect([address, answer.status]).toEqual([address, 200]);
    expect(answer.headers.get("content-type")).toMatch(types[address.split(".").at(-1) ?? ""] ?? /never/);
    expect(answer.headers.get("access-control-allow-origin")).toBe(address.endsWith("functions.json") ? "*" : null);
  }
});

test("the pane's page loads everything from its own folder and Microsoft's address, whatever else it is told", async () => {
  const page = await context.newPage();
  await serveOfficeJs(page, site.address);
  await page.goto(`${site.address}/taskpane.html?_host_Info=&other=1#part`);
  await page.getByRole("status").waitFor();
  await page.getByRole("link", { name: "Put Gylebook into your Excel" }).click();
  await page.getByRole("link", { name: "guide" }).click();
  await page.getByRole("link", { name: "Typing formulas" }).click();
  const pictures = page.locator("img");
  expect(await pictures.count()).toBeGreaterThan(2);
  for (const picture of await pictures.all())
    expect(await picture.evaluate((image: HTMLImageElement) => image.decode().then(() => image.naturalWidth))).toBeGreaterThan(300);
  expect(misdeeds.foreignRequests.filter((url) => !url.startsWith("https://appsforoffice.microsoft.com/lib/1/hosted/"))).toEqual([]);
  await page.close();
});
